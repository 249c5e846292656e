package notebook

import (
	"bytes"
	"fmt"
	"strings"
)

// delimiters are the ones that are looked for, likeliest first where all
// else is equal: a comma also stands in numbers and in prose.
var delimiters = [...]byte{'\t', ';', '|', ','}

// delimiterName is for notes.
func delimiterName(d byte) string {
	switch d {
	case '\t':
		return "tabs"
	case ';':
		return "semicolons"
	case '|':
		return "bars (|)"
	case ',':
		return "commas"
	case spaces:
		return "two or more spaces"
	case 0:
		return "nothing (each line is one value)"
	}
	return "the character " + string(rune(d))
}

// delimiterOf reads a delimiter as a project file writes it: the character,
// its name, or \t.
func delimiterOf(s string) (byte, error) {
	switch strings.ToLower(strings.TrimSpace(s)) {
	case "", `\t`, "tab", "tabs":
		if strings.Trim(s, " ") == "" && s != "" {
			return spaces, nil
		}
		return '\t', nil
	case "comma", "commas":
		return ',', nil
	case "semicolon", "semicolons":
		return ';', nil
	case "bar", "pipe", "bars":
		return '|', nil
	case "space", "spaces":
		return spaces, nil
	case "none", "nothing":
		return 0, nil
	}
	if s = strings.TrimSpace(s); len(s) != 1 || s[0] >= 0x80 || s[0] == '"' {
		return 0, &Problem{
			Found:  fmt.Sprintf("the project file asks for the delimiter %q, which is not a single plain character", s),
			Advice: "Write the character, or comma, semicolon, tab, bar, spaces or none, or leave it out to have it guessed",
		}
	}
	return s[0], nil
}

// sepLine reads a first line such as sep=; which spreadsheet programs write
// and obey, and returns its size with its line end.
func sepLine(b []byte) (d byte, size int, ok bool) {
	end := bytes.IndexAny(b, "\r\n")
	if end < 0 || end > 16 {
		return 0, 0, false
	}
	line := strings.Trim(string(b[:end]), `"`)
	if len(line) < 5 || !strings.EqualFold(line[:4], "sep=") {
		return 0, 0, false
	}
	switch rest := strings.TrimRight(line[4:], ","); {
	case line[4:] == ",":
		d = ','
	case rest == `\t`:
		d = '\t'
	case len(rest) == 1 && rest[0] < 0x80:
		d = rest[0]
	default:
		return 0, 0, false
	}
	size = end + 1
	if b[end] == '\r' && size < len(b) && b[size] == '\n' {
		size++
	}
	return d, size, true
}

// delimiterScore says how well a delimiter splits a sample.
type delimiterScore struct {
	fields int     // the commonest number of fields
	usual  int     // the same without records that run over lines
	cover  float64 // share of the lines that it splits at all
	share  float64 // share of the lines that it splits into the usual number
	dittos bool    // when lone double quotes are ditto marks
}

func (s delimiterScore) better(t delimiterScore) bool {
	a, b := 2*s.cover+s.share, 2*t.cover+t.share
	if a != b {
		return a > b
	}
	return s.fields > t.fields
}

const sampleRecords = 2000

// scoreDelimiter tries a delimiter. Where a field is nothing but a double
// quote, it may be a ditto mark or the beginning of a quoted text: the reading
// is taken that makes the records more even, and a ditto mark where both do.
func scoreDelimiter(sample []byte, d byte, l Limits) delimiterScore {
	s := scoreReading(sample, d, l, false)
	if d == 0 || !hasLoneQuote(sample, d) {
		return s
	}
	t := scoreReading(sample, d, l, true)
	if a, b := 2*t.cover+t.share, 2*s.cover+s.share; a > b || a == b && t.fields == s.fields {
		return t
	}
	return s
}

// hasLoneQuote reports whether a double quote stands alone between delimiters
// or beside the end of a line.
func hasLoneQuote(b []byte, d byte) bool {
	for i := 0; ; i++ {
		n := bytes.IndexByte(b[i:], '"')
		if n < 0 {
			return false
		}
		i += n
		before, after := byte('\n'), byte('\n')
		if i > 0 {
			before = b[i-1]
		}
		if i+1 < len(b) {
			after = b[i+1]
		}
		if (before == d || isEnd(before) || before == ' ') && (after == d || isEnd(after) || after == ' ') {
			return true
		}
	}
}

func scoreReading(sample []byte, d byte, l Limits, dittos bool) (s delimiterScore) {
	r := newRecords(bytes.NewReader(sample), d, l)
	r.dittos, s.dittos = dittos, dittos
	counts, single := map[int]int{}, map[int]int{}
	lines, split := 0, 0
	for lines < sampleRecords {
		ok, err := r.next()
		if err != nil || !ok {
			break
		}
		n := r.count()
		if n == 0 || len(bytes.TrimSpace(r.data)) == 0 && n == 1 {
			continue
		}
		lines++
		counts[n]++
		if n > 1 {
			split++
		}
		// A text that runs over lines may be one that was never closed, which
		// joins records; what is usual is told by the others.
		if !r.crossed {
			single[n]++
		}
	}
	if lines == 0 {
		return s
	}
	var most int
	s.fields, most = commonest(counts)
	s.usual, _ = commonest(single)
	s.cover = float64(split) / float64(lines)
	s.share = float64(most) / float64(lines)
	return s
}

// spaces stands for runs of two or more spaces between values.
const spaces = ' '

// alignedFields splits a line at runs of two or more spaces.
func alignedFields(line string) []string {
	var fields []string
	for line = strings.Trim(line, " "); line != ""; line = strings.TrimLeft(line, " ") {
		i := strings.Index(line, "  ")
		if i < 0 {
			return append(fields, line)
		}
		fields = append(fields, line[:i])
		line = line[i:]
	}
	return fields
}

// alignment looks for a page whose values are lined up with spaces. aligned:
// several lines are. even: they all have the same number of values, so that
// none is missing and each can be told; a blank place could not.
func alignment(sample []byte) (aligned, even bool) {
	counts := map[int]int{}
	lines := 0
	for line := range strings.FieldsFuncSeq(string(sample), func(r rune) bool { return r == '\n' || r == '\r' }) {
		if n := len(alignedFields(line)); n > 1 {
			counts[n]++
			lines++
		}
	}
	return lines > 2, lines > 2 && len(counts) == 1 && counts[2] == 0
}

// commonest returns the commonest number of fields above one, the larger of
// two, and how often it occurs; one field where there is no other.
func commonest(counts map[int]int) (fields, times int) {
	fields = 1
	for n, t := range counts {
		if n > 1 && (t > times || t == times && n > fields) {
			fields, times = n, t
		}
	}
	return fields, times
}

// prose reports whether the commas are those of sentences: a space follows
// nearly all of them, and no value is quoted or left blank.
func prose(sample []byte) bool {
	commas, spaced := 0, 0
	for i, c := range sample {
		if c != ',' {
			continue
		}
		commas++
		if i+1 < len(sample) && (sample[i+1] == ' ' || isEnd(sample[i+1])) {
			spaced++
		}
	}
	return spaced*10 >= commas*9 && !bytes.Contains(sample, []byte(`"`)) && !bytes.Contains(sample, []byte(", ,"))
}

// guessDelimiter finds the delimiter that splits most lines, and those most
// evenly; 0 where hardly any line is split.
func guessDelimiter(sample []byte, l Limits) byte {
	var best byte
	var bestScore delimiterScore
	for _, d := range delimiters {
		s := scoreDelimiter(sample, d, l)
		// Commas are also found in prose, which they split now and then and
		// in all ways.
		if s.cover < 0.2 || d == ',' && (s.cover < 0.5 && s.share < 0.3 || s.share < 0.5 && prose(sample)) {
			continue
		}
		if best == 0 || s.better(bestScore) {
			best, bestScore = d, s
		}
	}
	return best
}
