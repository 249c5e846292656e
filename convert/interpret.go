package convert

import (
	"fieldfare/convert/layout"
	"fieldfare/convert/reading"
	"fieldfare/convert/spool"
	"fieldfare/convert/tally"
	"fieldfare/convert/taxa"
	"fieldfare/dwc"
	"fieldfare/validate"
)

// interpreter turns drafts into records: what is written into Darwin Core
// terms, with a finding for every doubt. Each worker has its own, since it
// remembers what it has read.
type interpreter struct {
	*settings
	names   *taxa.Matcher
	memory  memory
	said    []byte         // of a content fingerprint, used again
	now     draft          // that is being read, likewise
	shapes  shapes         // of the drafts read last
	columns []tally.Column // of its counts, and their values, likewise
	counted []*layout.Value
	facets  *facets
	recent  *[spool.Kinds]recentFacets
	checks  validate.RecordChecker
}

func newInterpreter(s *settings, f *facets) *interpreter {
	return &interpreter{settings: s, names: s.taxa.NewMatcher(), memory: newMemory(), facets: f, recent: new([spool.Kinds]recentFacets)}
}

// row reads one source row into out, whose slices are used again, but for the
// cells, which are the source's.
func (in *interpreter) row(sheet *sheetRun, from *draftRow, out *spool.Row) {
	out.Sheet, out.Number, out.Skip = sheet.index, from.number, from.skip
	out.Cells = from.cells
	out.Records = out.Records[:0]
	out.Findings = out.Findings[:0]
	for i := range from.notes {
		n := &from.notes[i]
		f := reading.Finding{Verdict: n.Verdict, About: "cell", Written: n.Text, Cells: []string{n.Ref.String()}}
		if in.leftOut(&f) {
			out.Skip, out.Findings = leftOutByAnswer, out.Findings[:0]
			return
		}
		out.Findings = in.raise(out.Findings, f)
	}
	var skips []string
	for i := range from.drafts {
		genus := ""
		if from.genus != nil {
			genus = from.genus[i]
		}
		in.now = draft{Draft: &from.drafts[i], sheet: sheet, genus: genus}
		if reason := in.draft(&in.now, from.cells, out); reason != "" {
			skips = append(skips, reason)
		}
	}
	// A row whose every draft turned out to be no record is skipped itself.
	if out.Skip == "" && len(out.Records) == 0 && reading.Worst(out.Findings) != reading.Held {
		out.Skip = "nothing recorded"
		if len(skips) > 0 {
			out.Skip = skips[0]
		}
	}
}

// draft is one draft while it is being read.
type draft struct {
	*layout.Draft
	sheet    *sheetRun
	genus    string // what an abbreviated genus stands for here
	o        dwc.Occurrence
	facts    validate.Facts
	findings []reading.Finding
	leaveOut bool
	beside   string // what stood beside the name: a stage, a sex, a count, a note
	lit      string // the hour, as 22:45, where it was read
	refHeld  bool   // a reference is there but could not be read
	// read are the values as they were read, several of a row as one.
	read  struct{ date, name, place readValue }
	shape *shape
	// facets are those steps' that were recalled whole, and parts those that
	// the record shares with others.
	facets [spool.Kinds]*facet
	parts  [spool.Kinds]*spool.Part
	// harmless are texts of the writtenTerms in which there is nothing to scrub.
	harmless [maxWritten]string
}

// draft reads one draft of a row with those cells into the records of out. A draft that is no record
// returns why.
func (in *interpreter) draft(d *draft, cells []string, out *spool.Row) (skip string) {
	d.shape = in.shapes.of(d)
	for i := range d.Values {
		v := &d.Values[i]
		if v.Doubt.State == reading.Fair {
			continue
		}
		if v.Doubt.Code == layout.SiteOfDay {
			in.noteRecord(d, v.Doubt, v.Text+d.sheet.only(), &layout.Value{Ref: d.cell()}) // elsewhere the page's site is sure
			continue
		}
		if _, answered := in.instead(v); !answered {
			in.note(d, v.Doubt, v)
		}
	}
	in.step(d, spool.Method, in.how, beside{}) // first: whether it is a light trap decides what a date means
	in.step(d, spool.Date, in.when, beside{light: d.facts.Light, night: d.Night})
	in.step(d, spool.Taxon, in.what, beside{empty: d.Empty, month: d.o.Month, genus: d.genus})
	in.step(d, spool.Place, in.where, beside{})
	in.daylight(d)
	in.step(d, spool.People, in.who, beside{})
	in.mentioned(d, cells)
	in.rest(d)
	parts, skip := in.count(d)
	if d.leaveOut {
		return leftOutByAnswer
	}
	if skip != "" {
		return skip
	}
	content, first, cell := in.content(d), len(out.Records), d.cell()
	for i := range parts {
		r := oneMore(out)
		r.Occurrence, r.Facts, r.EmptyVisit, r.Measurements, r.Parts, r.Own = d.o, d.facts, d.Empty, in.measurements(d), d.parts, spool.Terms{}
		fillPart(&parts[i], r)
		in.outgoing(d, i, r)
		r.Content, r.Cell = content, cell
		if len(parts) > 1 {
			r.Content = partContent(content, &r.Occurrence)
		}
		r.Findings = append([]reading.Finding(nil), d.findings...)
		r.Findings = append(r.Findings, in.check(d, r)...)
		if d.leaveOut {
			out.Records = out.Records[:first]
			return leftOutByAnswer
		}
	}
	return ""
}

// oneMore adds a record to the row, in the memory of an earlier one where it
// can: a record is large.
func oneMore(out *spool.Row) *spool.Record {
	n := len(out.Records)
	if n < cap(out.Records) {
		out.Records = out.Records[:n+1]
	} else {
		out.Records = append(out.Records, spool.Record{})
	}
	return &out.Records[n]
}

// leftOutByAnswer is why a row is skipped that the recorder chose to leave out.
const leftOutByAnswer = "left out by answer"

// note raises a verdict about a value of the draft.
func (in *interpreter) note(d *draft, verdict reading.Verdict, values ...*layout.Value) {
	if verdict.State == reading.Fair {
		return
	}
	f := reading.Finding{Verdict: verdict, About: "record"}
	if len(values) == 0 {
		f.Cells = d.cells(f.About)
	}
	for i, v := range values {
		if i == 0 {
			f.About, f.Written = string(v.Meaning), v.Text
		}
		if v.Ref.Row > 0 {
			f.Cells = append(f.Cells, v.Ref.String())
		}
		if v.From == layout.FromAbove {
			f.Cells = append(f.Cells, d.cells("record")...) // the value stands in another row
		}
	}
	if d.repeatsNothing(&f) {
		return
	}
	if at := d.cell(); len(f.Cells) == 0 && f.State != reading.Fair && at.Row > 0 {
		f.Cells = []string{at.String()}
	}
	d.leaveOut = d.leaveOut || in.leftOut(&f)
	d.findings = in.raise(d.findings, f)
}

// noteRecord raises a verdict that no single value can settle: written tells
// one case of it from another.
func (in *interpreter) noteRecord(d *draft, verdict reading.Verdict, written string, at *layout.Value) {
	f := reading.Finding{Verdict: verdict, About: "record", Written: written}
	if at.Ref.Row > 0 {
		f.Cells = []string{at.Ref.String()}
	}
	d.leaveOut = d.leaveOut || in.leftOut(&f)
	d.findings = in.raise(d.findings, f)
}

// repeatsNothing reports whether a finding is about a mark that repeats what is
// above where nothing stands above, which is asked about already: what it is
// no date or name of need not be asked as well.
func (d *draft) repeatsNothing(f *reading.Finding) bool {
	for i := range d.findings {
		g := &d.findings[i]
		if g.Code == "ditto-of-nothing" && g.About == f.About && g.Written == f.Written && f.Code != g.Code {
			return true
		}
	}
	return false
}

// raise adds a finding, unless the recorder has answered it.
func (s *settings) raise(list []reading.Finding, f reading.Finding) []reading.Finding {
	if f.State == reading.Fair || s.settled(&f) {
		return list
	}
	return append(list, f)
}

// text returns what is to be read for a value: what is written, or what the
// recorder answered that it means.
func (in *interpreter) text(v *layout.Value) string {
	if value, found := in.instead(v); found {
		return value
	}
	return v.Text
}
