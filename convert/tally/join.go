package tally

import (
	"fmt"
	"strconv"

	"fieldfare/convert/reading"
)

// Column is one of several count cells of a record, with what its column's
// heading says. A column without a sex and a stage beside others that have
// one is the total of them.
type Column struct{ Text, Sex, Stage string }

// Join reads the count columns of one record (males, females, larvae, total)
// as one count. Blank columns and those in which nothing was seen say nothing
// beside others. A total that agrees with the sum of the others says nothing
// more; one that does not is a query: what a larger total has over goes out
// as individuals of which no more is said.
func Join(columns []Column, o Options) Reading {
	var (
		out, total Reading
		seen       bool
	)
	skipped := Reading{Verdict: reading.Verdict{State: reading.Skipped, Code: "blank", Message: "The counts are blank."}}
	for _, c := range columns {
		own := o
		own.Sex, own.Stage = c.Sex, c.Stage
		r := Read(c.Text, own)
		absent := len(r.Parts) == 1 && r.Parts[0].Absent
		switch {
		case r.State == reading.Skipped || absent:
			if r.Code != "blank" && !seen && skipped.Code == "blank" || absent && len(skipped.Parts) == 0 {
				skipped = r
			}
		case headingOf(c.Sex, c.Stage) == heading{} && c.Sex == "" && len(columns) > 1: // "unsexed" are no total
			total.Verdict = total.Verdict.And(r.Verdict)
			total.Parts = append(total.Parts, r.Parts...)
		default:
			seen = true
			out.Verdict = out.Verdict.And(r.Verdict)
			out.Parts = append(out.Parts, r.Parts...)
		}
	}
	switch {
	case out.State == reading.Held || total.State == reading.Held:
		return Reading{out.Verdict.And(total.Verdict), nil}
	case !seen && len(total.Parts) > 0:
		var added bool
		if total.Parts, added = merge(total.Parts, 0); added {
			total.Verdict = total.Verdict.And(reading.QueryOf("counts-added", "Several columns hold counts without saying of what; they were added up. Please check that none is the total of others."))
		}
		return total
	case !seen:
		if len(skipped.Parts) > 0 { // absent in every column, of whatever sex
			skipped.Parts[0].Sex, skipped.Parts[0].LifeStage = "", ""
		}
		return skipped
	}
	countedTwice(&out)
	if len(total.Parts) > 0 {
		reconcile(&out, total)
	}
	return out
}

// reconcile compares the columns with the total beside them.
func reconcile(out *Reading, total Reading) {
	sum, exact := out.Individuals()
	all, known := total.Individuals()
	switch {
	case !known && quantityless(total.Parts):
		return // a tick for the total
	case exact && known && sum == all:
		out.Verdict = out.Verdict.And(total.Verdict)
	case exact && known && all > sum:
		out.Verdict = out.Verdict.And(total.Verdict).And(reading.QueryOf("sum-disagrees",
			fmt.Sprintf("The total is %d, but the counts beside it add up to %d. The other %d went out without a sex or life stage; please check.", all, sum, all-sum),
			strconv.Itoa(all), strconv.Itoa(sum)))
		out.Parts = append(out.Parts, Part{IndividualCount: strconv.Itoa(all - sum)})
	case exact && known:
		out.Verdict = out.Verdict.And(total.Verdict).And(reading.QueryOf("sum-disagrees",
			fmt.Sprintf("The total is %d, but the counts beside it add up to %d. The counts beside it were used; please check.", all, sum),
			strconv.Itoa(sum), strconv.Itoa(all)))
	default:
		out.Verdict = out.Verdict.And(total.Verdict).And(reading.QueryOf("total-not-compared",
			"The total could not be compared with the counts beside it. The counts beside it were used; please check."))
		for _, p := range total.Parts {
			if written := p.OrganismQuantity + p.IndividualCount; written != "" {
				out.Parts[0].Remarks = appendRemark(out.Parts[0].Remarks, "total "+written)
			}
		}
	}
}

func appendRemark(a, b string) string {
	if a == "" {
		return b
	}
	return a + "; " + b
}

func quantityless(parts []Part) bool {
	for _, p := range parts {
		if p.IndividualCount != "" || p.OrganismQuantity != "" {
			return false
		}
	}
	return true
}

// countedTwice asks where a column for adults holds the sum of the columns
// for the sexes: the same animals may stand in both.
func countedTwice(r *Reading) {
	sexed, adults, at := 0, 0, -1
	for i, p := range r.Parts {
		n, ok := digits(p.IndividualCount)
		switch {
		case !ok:
		case p.Sex != "" && p.LifeStage == "":
			sexed += n
		case p.Sex == "" && p.LifeStage == "adult":
			adults, at = adults+n, i
		}
	}
	if at < 0 || sexed == 0 || sexed != adults {
		return
	}
	parts := r.Parts[:0]
	for _, p := range r.Parts {
		switch {
		case p.Sex == "" && p.LifeStage == "adult" && p.IndividualCount != "":
			continue
		case p.Sex != "" && p.LifeStage == "":
			p.LifeStage = "adult"
		}
		parts = append(parts, p)
	}
	r.Parts = parts
	r.Verdict = r.Verdict.And(reading.QueryOf("counted-twice",
		fmt.Sprintf("The adults are as many as the males and females together (%d), so they were taken to be the same ones. Please check.", sexed)))
}
