package convert

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/binary"
	"encoding/hex"
	"encoding/json"
	"io"
	"os"
	"path/filepath"

	"fieldfare/convert/answers"
	"fieldfare/convert/layout"
	"fieldfare/convert/notebook"
	"fieldfare/convert/report"
	"fieldfare/convert/spool"
	"fieldfare/convert/stage"
)

// A large set can be read in parts, by several processes or machines, each of
// some of the notebooks: ReadPart reads them row by row and keeps the result in
// a file. Run takes such files in place of notebooks, and does what concerns
// the set as a whole. Its outputs are those of one run over all the notebooks.
//
// The file is a line that says what it is, the length of its head (eight bytes,
// little-endian), the head as JSON, the parts and rows of the spool, and the
// SHA-256 sum of all this, so that one that is damaged or cut off is noticed. Its
// bytes may differ from one reading to the next, as workers number the parts of
// records in the order in which they meet them; the outputs made of it do not,
// since these numbers lead to the same texts and go no further.

// partMark begins the file of a part, and names its form.
const partMark = "Fieldfare part of a set, form 2\n"

// partHead is what there is to know of a part beside its rows.
type partHead struct {
	// Settings is the sum of all that the reading depends on; parts that
	// were read by different lists or answers do not go together.
	Settings string
	Notes    []string
	Answered []answers.Key // answers that were needed
	Parts    int           // bytes
	Books    []partBook
}

type partBook struct {
	File    string
	Sum     string // of its content; empty where it is no plain file
	Notes   []string
	LeftOut []string
	At      int64 // where its rows begin
	Rows    int
	Sheets  []partSheet
}

type partSheet struct {
	Name    string
	Reading string
	Entries []layout.Entry
	Cells   report.Cells
}

// Part says what a part of a set holds.
type Part struct{ Notebooks, Rows int }

// ReadPart reads the notebooks of the job and keeps what their rows say in a
// file, for a later Run with it and the other parts. The file appears whole or
// not at all.
func ReadPart(ctx context.Context, job Job, path string) (*Part, error) {
	job.part = path
	s, err := job.settle(ctx)
	if err != nil {
		return nil, err
	}
	out, err := stage.Scratch()
	if err != nil {
		return nil, err
	}
	defer out.Discard()
	rows, err := spool.New(out.Temp())
	if err != nil {
		return nil, explained(out, err)
	}
	defer rows.Close()
	books, err := readAll(ctx, job, s, rows, nil)
	if err != nil {
		return nil, explained(out, err)
	}
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	parts := rows.KeptParts()
	head := partHead{Notes: books.found, Answered: s.answers.Asked(), Parts: len(parts)}
	if head.Settings, err = job.sumOf(s); err != nil {
		return nil, err
	}
	for _, book := range books.books {
		head.Books = append(head.Books, book.kept())
	}
	err = stage.File(path, func(w io.Writer) error { return writePart(stage.Until(ctx, w), &head, parts, rows) })
	return &Part{len(books.books), rows.Rows()}, err
}

func writePart(w io.Writer, head *partHead, parts []byte, rows *spool.Spool) error {
	text, err := json.Marshal(head)
	if err != nil {
		return err
	}
	sum := sha256.New()
	all := io.MultiWriter(w, sum)
	for _, b := range [][]byte{[]byte(partMark), binary.LittleEndian.AppendUint64(nil, uint64(len(text))), text, parts} {
		if _, err := all.Write(b); err != nil {
			return err
		}
	}
	if err := rows.KeepRows(all); err != nil {
		return err
	}
	_, err = w.Write(sum.Sum(nil))
	return err
}

// kept is what a part keeps of a notebook.
func (b *bookRun) kept() partBook {
	p := partBook{File: b.file, Sum: contentSum(b.file), Notes: b.notes, LeftOut: b.leftOut, At: b.at, Rows: b.rows}
	for _, s := range b.sheets {
		var text bytes.Buffer
		s.plan.Print(&text)
		p.Sheets = append(p.Sheets, partSheet{s.name, text.String(), s.plan.Entries(), s.cells})
	}
	return p
}

// contentSum is the SHA-256 sum of a file's content; empty where it is no plain
// file.
func contentSum(path string) string {
	if info, err := os.Stat(path); path == notebook.Stdin || err != nil || !info.Mode().IsRegular() {
		return ""
	}
	f, err := os.Open(path)
	if err != nil {
		return ""
	}
	defer f.Close()
	sum := sha256.New()
	if _, err := io.Copy(sum, f); err != nil {
		return ""
	}
	return hex.EncodeToString(sum.Sum(nil))
}

// sumOf is the sum of what the reading of a row depends on beside the notebook.
func (j Job) sumOf(s *settings) (string, error) {
	var project []byte
	if s.project.Path != "" {
		var err error
		if project, err = os.ReadFile(s.project.Path); err != nil {
			return "", err
		}
	}
	type answer struct {
		answers.Key
		Decision answers.Decision
		Value    string
	}
	var given []answer
	for _, a := range s.answers.Sorted() {
		given = append(given, answer{a.Key, a.Decision, a.Value})
	}
	text, err := json.Marshal([]any{Version, j.Today, project, s.versions, given})
	if err != nil {
		return "", err
	}
	sum := sha256.Sum256(text)
	return hex.EncodeToString(sum[:]), nil
}

// isPart tells whether a file is a part of a set.
func isPart(path string) bool {
	if path == notebook.Stdin {
		return false
	}
	info, err := os.Stat(path)
	if err != nil || !info.Mode().IsRegular() {
		return false
	}
	f, err := os.Open(path)
	if err != nil {
		return false
	}
	defer f.Close()
	mark := make([]byte, len(partMark))
	_, err = io.ReadFull(f, mark)
	return err == nil && string(mark) == partMark
}

// partFault is a problem with a part of a set.
func partFault(path, found, advice string) error {
	return &notebook.Problem{File: filepath.Base(path), Found: found, Advice: advice}
}
