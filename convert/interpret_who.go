package convert

import (
	"cmp"
	"strings"

	"fieldfare/convert/layout"
	"fieldfare/convert/people"
	"fieldfare/convert/privacy"
	"fieldfare/convert/reading"
)

// who reads recorders, determiners and verifiers.
func (in *interpreter) who(d *draft) {
	o := &d.o
	var recorded, identified, verified []string
	withheld := false
	for i := range d.Values {
		v := &d.Values[i]
		var role people.Role
		switch v.Meaning {
		case layout.Recorder:
			role = people.Recorder
		case layout.Determiner:
			role = people.Determiner
		case layout.Verifier:
			role = people.Verifier
		default:
			continue
		}
		r := in.memory.person(in.people, in.text(v), people.Options{Role: role, Self: in.project.Lists.Self})
		in.note(d, r.Verdict, v)
		recorded = append(recorded, r.RecordedBy...)
		identified = append(identified, r.IdentifiedBy...)
		verified = append(verified, r.VerifiedBy...)
		withheld = withheld || r.Withheld
		o.OccurrenceRemarks = joinRemarks(o.OccurrenceRemarks, r.Remarks)
	}
	o.RecordedBy, o.IdentifiedBy = joinNames(recorded), joinNames(identified)
	if len(verified) > 0 {
		o.VerificationStatus = "verified by " + joinNames(verified)
	}
	if withheld {
		o.InformationWithheld = privacy.PersonWithheld
	}
	if o.RecordedBy == "" && !withheld && !d.states("informationWithheld") && !(d.Empty && d.states("eventID")) {
		nobody := d.absent(layout.Recorder, false)
		if name, answered := in.instead(&nobody); answered {
			in.note(d, in.recorder(d, name), &nobody)
			return
		}
		if self := in.project.Lists.Self; self != "" && !d.sheet.stated {
			in.recorder(d, self)
			self = cmp.Or(d.o.RecordedBy, self)
			in.note(d, reading.QueryOf("recorder-missing", "Nobody is named as the recorder: "+self+" was taken, whose notebooks these are. If it was somebody else, say who.", self), &nobody)
			return
		}
		in.note(d, reading.QueryOf("recorder-missing", "Nobody is named as the recorder. Say who saw it, or write it on the row, above the list, or as self in the project file."), &nobody)
	}
}

// recorder makes somebody the recorder of a record that names none.
func (in *interpreter) recorder(d *draft, name string) reading.Verdict {
	r := in.memory.person(in.people, name, people.Options{Role: people.Recorder, Self: in.project.Lists.Self})
	d.o.RecordedBy = joinNames(r.RecordedBy)
	if r.Withheld {
		d.o.InformationWithheld = privacy.PersonWithheld
	}
	return r.Verdict
}

// joinNames joins names, each once, as Darwin Core recommends.
func joinNames(names []string) string {
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	var once []string
	for _, n := range names {
		found := false
		for _, o := range once {
			found = found || o == n
		}
		if !found {
			once = append(once, n)
		}
	}
	return people.Join(once)
}
