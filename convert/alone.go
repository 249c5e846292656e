package convert

import (
	"context"
	"path/filepath"
	"time"

	"fieldfare/convert/answers"
	"fieldfare/convert/stage"
)

// Ids and answers are remembered in files beside the project file. A run that
// writes them has read them before, so of two at once one would lose what the
// other has added. Hence a run with a project file that hands something in
// keeps that folder for itself as long as it lasts; and whoever has changed the
// files meanwhile all the same, by hand or where locks are unknown, is noticed
// before anything is replaced.

// aloneFile is locked while a run may change what is remembered in its folder.
const aloneFile = ".fieldfare.lock"

// holdFolder keeps the folder of remembered ids and answers for this run.
func (s *settings) holdFolder() error {
	folder := filepath.Dir(s.project.Path)
	release, err := stage.Hold(filepath.Join(folder, aloneFile))
	if err != nil {
		return &stage.Error{Path: s.project.Path, Problem: "another run with this project file is at work at this moment, and two at once would not see each other's ids and answers. Wait until it has ended, and run again", Err: err}
	}
	s.release = release
	return nil
}

// letGo gives the folder up.
func (s *settings) letGo() {
	if s.release != nil {
		s.release()
	}
}

// How long a run waits for others that write their answers, and how often it
// looks.
const (
	answersWait  = 10 * time.Second
	answersEvery = 20 * time.Millisecond
)

// rememberAnswers writes the plain file of answers: those that it has by now,
// and above them those given in this run.
func (s *settings) rememberAnswers(ctx context.Context) error {
	if s.release == nil { // there is no project file, so the folder is not held
		release, err := s.awaitFolder(ctx)
		if err != nil {
			return err
		}
		defer release()
	}
	set := s.answers
	if s.answered.seen.Changed() {
		var latest answers.Set
		if err := answers.LoadFile(s.answered.path, latest.Remember); err != nil {
			return err
		}
		set = s.answers.Onto(&latest)
	}
	return stage.File(s.answered.path, set.Write)
}

// awaitFolder holds the folder of remembered answers as soon as no other run
// does; who interrupts the run need not wait for that.
func (s *settings) awaitFolder(ctx context.Context) (release func(), err error) {
	path := filepath.Join(filepath.Dir(s.answered.path), aloneFile)
	for waited := time.Duration(0); ; waited += answersEvery {
		if release, err = stage.Hold(path); err == nil {
			return release, nil
		}
		if waited >= answersWait {
			return nil, &stage.Error{Path: s.answered.path, Problem: "another run is at work in this folder", Err: err}
		}
		select {
		case <-ctx.Done():
			return nil, ctx.Err()
		case <-time.After(answersEvery):
		}
	}
}
