// Package ledger remembers what was handed in, so that a record keeps its id
// when its spelling, date or count is corrected. The ledger is a plain text
// file beside the project file, one line a record, sorted by id, so that two
// copies merge line by line.
package ledger

import (
	"bufio"
	"bytes"
	"cmp"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"slices"
	"strconv"
	"strings"

	"fieldfare/convert/plainfile"
)

// FileName is the ledger's usual name.
const FileName = "fieldfare-ledger.tsv"

// Fields are what a record says, by which it is known again when one of them
// is corrected.
type Fields struct{ Date, Name, Count, Place, People, Rest string }

// list returns the values in their order.
func (f *Fields) list() [6]string {
	return [6]string{f.Date, f.Name, f.Count, f.Place, f.People, f.Rest}
}

// Line is one record that was handed in, or a visit on which nothing was
// found.
type Line struct {
	// OccurrenceID is empty for such a visit.
	OccurrenceID, EventID string
	Visit                 bool
	// Content is the fingerprint of what was written, with the ordinal among
	// records that are alike to the letter; Event that of its visit.
	Content Content
	Event   [16]byte
	// Source is the notebook and sheet.
	Source string
	Fields
}

// Content is what tells one record from every other.
type Content struct {
	Print   [16]byte
	Ordinal int
}

// Ledger is the file in memory.
type Ledger struct{ Lines []Line }

const heading = "occurrenceID\teventID\tcontent\tordinal\tevent\tsource\tdate\tname\tcount\tplace\tpeople\trest"

// Load reads a ledger; a missing file is an empty one.
func Load(path string) (*Ledger, error) {
	l := &Ledger{}
	if err := plainfile.Check(path); err != nil {
		return nil, fmt.Errorf("%s: %w", path, err)
	}
	file, err := os.Open(path)
	if errors.Is(err, fs.ErrNotExist) {
		return l, nil
	}
	if err != nil {
		return nil, fmt.Errorf("%s: the ledger cannot be opened. Check that you may read the file", path)
	}
	defer file.Close()
	s := bufio.NewScanner(file)
	s.Buffer(nil, 1<<24)
	texts := map[string]string{}
	for n := 1; s.Scan(); n++ {
		if n == 1 {
			if s.Text() != heading {
				return nil, fmt.Errorf("%s, line 1: this is no ledger of Fieldfare. Restore the file, or remove it and let records get their ids anew", path)
			}
			continue
		}
		if s.Text() == heading || s.Text() == "" { // of a ledger merged into this one
			continue
		}
		line, ok := parse(s.Text())
		if !ok {
			return nil, fmt.Errorf("%s, line %d: the line is damaged (a merge left half done?). Mend or remove it", path, n)
		}
		line.share(texts)
		l.Lines = append(l.Lines, line)
	}
	if s.Err() != nil {
		return nil, fmt.Errorf("%s: the ledger cannot be read to its end", path)
	}
	l.sort()
	l.Lines = slices.CompactFunc(l.Lines, func(a, b Line) bool { return a.OccurrenceID == b.OccurrenceID && a.Content == b.Content })
	return l, nil
}

// share lets the line have its texts in common with others, of which most have
// the same, instead of keeping its whole line.
func (x *Line) share(texts map[string]string) {
	for _, text := range []*string{&x.EventID, &x.Source, &x.Date, &x.Name, &x.Count, &x.Place, &x.People, &x.Rest} {
		known, found := texts[*text]
		if !found {
			known = strings.Clone(*text)
			texts[known] = known
		}
		*text = known
	}
	x.OccurrenceID = strings.Clone(x.OccurrenceID)
}

func parse(text string) (Line, bool) {
	v := strings.Split(text, "\t")
	if len(v) != strings.Count(heading, "\t")+1 {
		return Line{}, false
	}
	for i := range v {
		v[i] = unescape.Replace(v[i])
	}
	l := Line{OccurrenceID: v[0], EventID: v[1], Visit: v[0] == "", Source: v[5], Fields: Fields{v[6], v[7], v[8], v[9], v[10], v[11]}}
	_, err := fmt.Sscanf(v[3], "%d", &l.Content.Ordinal)
	return l, err == nil && l.OccurrenceID+l.EventID != "" && decode(l.Content.Print[:], v[2]) && decode(l.Event[:], v[4])
}

func decode(into []byte, text string) bool {
	b, err := hex.DecodeString(text)
	return err == nil && copy(into, b) == len(into) && len(b) == len(into)
}

var (
	escape   = strings.NewReplacer("\\", `\\`, "\t", `\t`, "\n", `\n`, "\r", `\r`)
	unescape = strings.NewReplacer(`\\`, "\\", `\t`, "\t", `\n`, "\n", `\r`, "\r")
)

// sort puts the lines into the order that they have in the file, whatever
// theirs is.
func (l *Ledger) sort() { slices.SortFunc(l.Lines, order) }

// order is that of the file.
func order(a, b Line) int {
	return cmp.Or(
		strings.Compare(a.OccurrenceID, b.OccurrenceID),
		bytes.Compare(a.Content.Print[:], b.Content.Print[:]),
		cmp.Compare(a.Content.Ordinal, b.Content.Ordinal),
		strings.Compare(a.Source, b.Source),
		strings.Compare(a.EventID, b.EventID),
	)
}

// Write writes the ledger, sorted by id.
func (l *Ledger) Write(w io.Writer) error {
	l.sort()
	b := bufio.NewWriter(w)
	fmt.Fprintln(b, heading)
	for i := range l.Lines {
		l.Lines[i].write(b)
	}
	return b.Flush()
}

// write writes a line as it stands in the file; errors wait for the flush.
func (x *Line) write(b *bufio.Writer) {
	for _, s := range [...]string{x.OccurrenceID, x.EventID, hex.EncodeToString(x.Content.Print[:]), strconv.Itoa(x.Content.Ordinal), hex.EncodeToString(x.Event[:]), x.Source, x.Date, x.Name, x.Count, x.Place, x.People} {
		escape.WriteString(b, s)
		b.WriteByte('\t')
	}
	escape.WriteString(b, x.Rest)
	b.WriteByte('\n')
}
