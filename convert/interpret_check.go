package convert

import (
	"strings"

	"fieldfare/convert/layout"
	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
	"fieldfare/convert/spool"
)

// check runs the checks of one record.
func (in *interpreter) check(d *draft, r *spool.Record) []reading.Finding {
	asks := &in.asks
	if r.EmptyVisit {
		asks = nil // they are about records
	}
	var kept []reading.Finding
	for _, f := range in.checks.Check(&r.Occurrence, &r.Facts, asks) {
		if raised(d.findings, f.Code) || f.Code == "asks-square" && !r.Facts.Placed && d.refHeld || f.Code == "remarks-contradict" && d.doubtsCount(f.Written) {
			continue // asked while it was read
		}
		f.Cells = d.cells(f.About)
		d.address(&f)
		d.leaveOut = d.leaveOut || in.leftOut(&f)
		kept = in.raise(kept, f)
	}
	return kept
}

// address puts a finding under the value that was read, as it was written, so
// that it can be answered with another value. Where no single value was read
// for it, the finding is about the record as a whole.
func (d *draft) address(f *reading.Finding) {
	var v *layout.Value
	switch f.About {
	case "date":
		v = d.read.date.here()
	case "name":
		v = d.read.name.here()
	case "grid reference":
		v = d.read.place.here()
	}
	if v != nil {
		f.Written = v.Text
	} else {
		f.About = "record"
	}
}

// doubtsCount tells whether a remark is the question mark of a count, which is
// asked about itself.
func (d *draft) doubtsCount(remark string) bool {
	count, found := d.Get(layout.Count)
	return found && remark == "?" && strings.HasSuffix(strings.TrimSpace(count.Text), "?")
}

// raised tells whether there is a finding with the code.
func raised(findings []reading.Finding, code string) bool {
	for i := range findings {
		if findings[i].Code == code {
			return true
		}
	}
	return false
}

// cells are the addresses of the values with a meaning, or where there are
// none, of the record.
func (d *draft) cells(about string) []string {
	var cells []string
	for i := range d.Values {
		if v := &d.Values[i]; string(v.Meaning) == about && v.Ref.Row > 0 {
			cells = append(cells, v.Ref.String())
		}
	}
	if len(cells) == 0 {
		if at := d.cell(); at.Row > 0 {
			cells = append(cells, at.String())
		}
	}
	return cells
}

// cell is where the record stands: the address of its count in a table, else
// of its name, else of its date; the zero value where there is none.
func (d *draft) cell() notebook.Ref {
	for _, i := range d.shape.stands {
		if at := d.Values[i].Ref; at.Row > 0 {
			return at
		}
	}
	return notebook.Ref{}
}

// lightWords are the words of methods that lure by lamp at night.
var lightWords = []string{"light", "lamp", "actinic", "mercury", "robinson", "skinner", "heath trap", "moth trap", "mv trap", "trap (mv)", "rothamsted", "led trap", "uv trap", "blacklight", "black light", "fluorescent", "mbt"}

// isLight tells whether a method is a trap or lamp by night.
func isLight(method string) bool {
	if method == "" {
		return false
	}
	m := strings.ToLower(method)
	for _, day := range []string{"daylight", "day light", "by day", "twilight", "torchlight", "torch light", "head light"} {
		m = strings.ReplaceAll(m, day, "")
	}
	for _, word := range lightWords {
		if strings.Contains(m, word) {
			return true
		}
	}
	for word := range strings.FieldsFuncSeq(m, func(r rune) bool { return r < 'a' || r > 'z' }) {
		if word == "mv" || word == "mvl" || word == "uv" {
			return true
		}
	}
	return false
}
