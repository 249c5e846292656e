package convert

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"math"
	"path/filepath"
	"strconv"
	"strings"

	"fieldfare/convert/notebook"
	"fieldfare/convert/people"
	"fieldfare/convert/places"
	"fieldfare/convert/plainfile"
	"fieldfare/convert/report"
	"fieldfare/convert/taxa"
)

// loadTaxa loads the taxon lists: those of the command line, then those of
// the project file, else the starter list.
func (j Job) loadTaxa(s *settings) error {
	var lists []*taxa.List
	paths := append([]string(nil), j.Taxa...)
	for _, p := range s.project.Lists.Taxa {
		paths = append(paths, s.project.Resolve(p))
	}
	for _, path := range paths {
		list, problems, err := taxa.Load(path)
		if err != nil {
			return err
		}
		for _, p := range problems {
			s.listProblems = append(s.listProblems, p.Where()+": "+p.Message)
		}
		lists = append(lists, list)
		s.version(path)
	}
	if s.starter = len(lists) == 0; s.starter {
		lists = append(lists, taxa.Starter())
		s.versions = append(s.versions, report.ListVersion{Name: "starter taxon list, for trying out", Version: Version})
	}
	s.taxa = taxa.NewIndex(lists...)
	return nil
}

// loadPlaces loads the places list of the project file.
func (j Job) loadPlaces(ctx context.Context, s *settings) error {
	var list []places.Place
	if path := s.project.Resolve(s.project.Lists.Places); path != "" {
		rows, err := table(ctx, path)
		if err != nil {
			return err
		}
		columns := places.FindColumns(rows[0])
		if columns.Name < 0 {
			return noNames(path)
		}
		for _, row := range rows[1:] {
			list = append(list, placeOf(row, columns))
		}
		s.version(path)
	}
	var problems []string
	list, unlisted := withPrivatePlaces(list, s.project.Privacy.Places)
	for _, name := range unlisted {
		s.listProblems = append(s.listProblems, "“"+name+"”, which the project file has as private, is not on the places list; only what is written like that is blurred.")
	}
	s.places, problems = places.NewList(list)
	s.listProblems = append(s.listProblems, problems...)
	s.privacy = newPrivacyRules(&s.project.Privacy, list)
	return nil
}

// placeOf makes a place of a line of the places list.
func placeOf(row []string, c places.Columns) places.Place {
	blur, _ := strconv.Atoi(strings.TrimSuffix(at(row, c.BlurTo), "m"))
	return places.Place{
		Name: at(row, c.Name), Other: several(at(row, c.Other)), Reference: at(row, c.Reference),
		ViceCounty: at(row, c.ViceCounty), County: at(row, c.County), Private: yes(at(row, c.Private)), BlurTo: blur,
	}
}

// problems are what is wrong with the lists, the first few of them in full.
func (s *settings) problems() []string {
	const most = 10
	if len(s.listProblems) <= most {
		return s.listProblems
	}
	return append(s.listProblems[:most:most], "The lists have "+count(len(s.listProblems)-most, "more line")+" to look at.")
}

func noNames(path string) error {
	return &notebook.Problem{File: path, Found: "The first line of the list names no column for the names", Advice: "Call that column “Name”"}
}

// at returns the cell of a column; empty where there is none.
func at(row []string, column int) string {
	if column < 0 || column >= len(row) {
		return ""
	}
	return row[column]
}

// several splits a cell that holds several spellings.
func several(text string) []string {
	var list []string
	for _, part := range strings.FieldsFunc(text, func(r rune) bool { return r == ';' || r == '|' }) {
		if part = strings.TrimSpace(part); part != "" {
			list = append(list, part)
		}
	}
	return list
}

// yes reads a cell that says yes or nothing.
func yes(text string) bool {
	switch strings.ToLower(text) {
	case "", "no", "n", "false", "0", "-":
		return false
	}
	return true
}

// loadPeople loads the people list of the project file.
func (j Job) loadPeople(ctx context.Context, s *settings) error {
	var list []people.Person
	if path := s.project.Resolve(s.project.Lists.People); path != "" {
		rows, err := table(ctx, path)
		if err != nil {
			return err
		}
		name, initials, other, withhold := people.Columns(rows[0])
		if name < 0 {
			return noNames(path)
		}
		for _, row := range rows[1:] {
			list = append(list, people.Person{
				Name: at(row, name), Initials: several(at(row, initials)), Other: several(at(row, other)), Withhold: yes(at(row, withhold)),
			})
		}
		s.version(path)
	}
	for _, name := range s.project.Privacy.People {
		list = append(list, people.Person{Name: name, Withhold: true})
	}
	var problems []string
	s.people, problems = people.NewList(list)
	s.listProblems = append(s.listProblems, problems...)
	return nil
}

// table reads the first sheet of a list, without blank rows.
func table(ctx context.Context, path string) ([][]string, error) {
	book, err := notebook.Open(ctx, path, notebook.Options{})
	if err != nil {
		return nil, err
	}
	defer book.Close()
	var rows [][]string
	if sheets := book.Sheets(); len(sheets) > 0 {
		err := sheets[0].Walk(func(r *notebook.Row) error {
			row := make([]string, len(r.Cells))
			for i := range r.Cells {
				row[i] = strings.TrimSpace(r.Cells[i].Text)
			}
			if strings.Join(row, "") != "" {
				rows = append(rows, row)
			}
			return nil
		})
		if err != nil {
			return nil, err
		}
	}
	if len(rows) == 0 {
		return nil, &notebook.Problem{File: path, Found: "The list is empty", Advice: "Its first line should name the columns"}
	}
	return rows, nil
}

// version notes which version of a list was used: the beginning of the
// SHA-256 of its bytes.
func (s *settings) version(path string) {
	data, err := plainfile.Read(path, math.MaxInt64)
	if err != nil {
		return // a folder; its lists are noted by name alone
	}
	sum := sha256.Sum256(data)
	s.versions = append(s.versions, report.ListVersion{Name: filepath.Base(path), Version: "sha256:" + hex.EncodeToString(sum[:8])})
}
