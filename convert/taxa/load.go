package taxa

import (
	"bytes"
	_ "embed"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"unicode/utf8"

	"fieldfare/convert/plainfile"

	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"
)

// Load reads a taxon list: delimited text (.csv, .tsv, .txt), a workbook
// (.xlsx, .xls, .ods, of which the sheet with the longest list is taken), or a
// Darwin Core checklist archive (.zip or a folder).
// Columns are found by what their headings mean, wherever the headings stand
// in the first rows. What is wrong in single lines is returned as problems,
// in the order of the list; the error is for a list that cannot be used.
func Load(path string) (*List, []Problem, error) {
	info, err := os.Stat(path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil, fmt.Errorf("the taxon list %s: there is no such file. Check its name, behind --taxa or under [lists] in the project file", path)
	}
	if err != nil {
		return nil, nil, fmt.Errorf("the taxon list %s cannot be opened: %w", path, errors.Unwrap(err))
	}
	name := filepath.Base(path)
	if info.IsDir() {
		return loadArchive(path, name)
	}
	if err := plainfile.Check(path); err != nil {
		return nil, nil, fmt.Errorf("the taxon list %s cannot be used: %w", name, err)
	}
	switch strings.ToLower(filepath.Ext(path)) {
	case ".zip":
		return loadArchive(path, name)
	case ".xlsx", ".xlsm", ".xls", ".ods", ".fods", ".xlsb", ".numbers":
		return loadWorkbook(path, name)
	}
	data, err := os.ReadFile(path)
	if err != nil {
		return nil, nil, fmt.Errorf("the taxon list %s cannot be read: %w", name, err)
	}
	if isWorkbook(data) {
		return loadWorkbook(path, name)
	}
	return loadText(data, name)
}

//go:embed starter/starter.csv
var starterCSV []byte

// Starter returns the list that the program carries: some 500 widespread
// species of Britain and Ireland, written from memory, for trying out and for
// the demonstration. It is no authority.
func Starter() *List {
	l, _, err := loadText(starterCSV, "starter list")
	if err != nil {
		panic(err) // the list is part of the program
	}
	return l
}

// loadText reads delimited text in UTF-8, UTF-16 with a mark, or else
// Windows-1252; the delimiter is the one that the first lines have most of.
func loadText(data []byte, name string) (*List, []Problem, error) {
	data, err := decode(data)
	if err != nil {
		return nil, nil, fmt.Errorf("the taxon list %s cannot be read as text: %w", name, err)
	}
	r := csv.NewReader(bytes.NewReader(data))
	r.Comma = delimiter(data)
	r.FieldsPerRecord = -1
	r.LazyQuotes = true
	r.ReuseRecord = true
	t := tableReader{b: newBuilder(name)}
	t.b.expect(bytes.Count(data, []byte{'\n'}))
	for {
		cells, err := r.Read()
		if err == io.EOF {
			break
		}
		if err != nil {
			return nil, nil, fmt.Errorf("the taxon list %s cannot be read: %w", name, err)
		}
		line, _ := r.FieldPos(0)
		if swallowed(cells, r.Comma) {
			t.b.problem(line, nil, "A quotation mark on this line is not closed before the line ends, so that what follows it was read as part of one cell. Close it, or take it out.")
		}
		t.add(line, cells)
	}
	if err := t.finish(); err != nil {
		return nil, nil, err
	}
	l, problems := t.b.finish()
	if l.Len() == 0 {
		return nil, nil, fmt.Errorf("the taxon list %s has no names", name)
	}
	return l, problems, nil
}

// swallowed: a cell has further lines of the list in it.
func swallowed(cells []string, delimiter rune) bool {
	for _, c := range cells {
		if _, more, broken := strings.Cut(c, "\n"); broken && strings.ContainsRune(more, delimiter) {
			return true
		}
	}
	return false
}

func decode(data []byte) ([]byte, error) {
	switch {
	case bytes.HasPrefix(data, []byte{0xEF, 0xBB, 0xBF}):
		return data[3:], nil
	case bytes.HasPrefix(data, []byte{0xFF, 0xFE}), bytes.HasPrefix(data, []byte{0xFE, 0xFF}):
		return unicode.UTF16(unicode.LittleEndian, unicode.UseBOM).NewDecoder().Bytes(data)
	case !utf8.Valid(data):
		return charmap.Windows1252.NewDecoder().Bytes(data)
	}
	return data, nil
}

// delimiter is the one of tab, semicolon, bar and comma that occurs most often
// in the first lines, counted outside quotes.
func delimiter(data []byte) rune {
	counts := map[byte]int{}
	quoted, lines := false, 0
	for _, c := range data {
		switch c {
		case '"':
			quoted = !quoted
		case '\t', ';', '|', ',':
			if !quoted {
				counts[c]++
			}
		case '\n':
			lines++
		}
		if lines > 20 {
			break
		}
	}
	best := byte(',')
	for _, c := range [...]byte{'\t', '|', ';', ','} {
		// Semicolons and bars also part several names in one cell.
		weight := counts[c]
		if counts[best] < weight {
			best = c
		}
	}
	return rune(best)
}
