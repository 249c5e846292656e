package convert

import (
	"fmt"
	"path/filepath"
	"strings"

	"fieldfare/convert/report"
)

// mainCauses and mainNotes are how many causes and notes the closing screen
// names.
const mainCauses, mainNotes = 5, 6

// Closing is the screen that a run ends with: what was read, what can be
// handed in, what stands in the way and what to do next.
func (r *Result) Closing() string {
	var b strings.Builder
	s := &r.Summary
	fmt.Fprintf(&b, "Read %s in %s.\n\n", count(s.Read, "row"), count(len(s.Files), "notebook"))
	for _, line := range []struct {
		n     int
		state string
		means string
	}{
		{s.Fair, "fair", "can be handed in as read"},
		{s.Query, "query", "handed in, but somebody should look"},
		{s.Held, "held", "not handed in until you answer"},
		{s.Skipped, "skipped", "no records: " + mostly(s.Skips)},
	} {
		fmt.Fprintf(&b, "  %8d  %-8s %s\n", line.n, line.state, line.means)
	}
	fmt.Fprintf(&b, "\n%s to hand in", count(s.Occurrences, "occurrence"))
	if s.Events > 0 {
		fmt.Fprintf(&b, ", in %s", count(s.Events, "event"))
	}
	b.WriteString(".\n")
	if s.Withdrawn != nil {
		fmt.Fprintf(&b, "These are new or changed since %s. Of its records %s; %s lists them. Keep %[1]s for the next comparison.\n", r.Against, isGone(*s.Withdrawn), WithdrawnFile)
	}
	if s.VisitsLeft > 0 {
		fmt.Fprintf(&b, "%s with nothing found left out: an archive of occurrences has no place for them. With shape = \"event\" under [dataset] in the project file they are handed in.\n", count(s.VisitsLeft, "visit"))
	}
	if r.Asking > 0 {
		b.WriteString("\nWhat matters most:\n")
		causes := r.causes
		for i := range causes {
			if i == mainCauses {
				fmt.Fprintf(&b, "  and %s.\n", count(len(causes)-i, "more cause"))
				break
			}
			c := &causes[i]
			fmt.Fprintf(&b, "  %-6s %s: %s\n", c.state, count(c.records, "record"), c.words())
		}
		fmt.Fprintf(&b, "All in all %s, one answer each.\n", count(r.Asking, "question"))
	}
	if n := len(s.Dataset.Missing); n > 0 && s.Occurrences > 0 {
		missing := strings.Join(s.Dataset.Missing[:min(n, mainCauses)], "; ")
		if n > mainCauses {
			missing += fmt.Sprintf("; and %s (all are in %s)", count(n-mainCauses, "more thing"), SummaryFile)
		}
		fmt.Fprintf(&b, "\nBefore the archive is complete, its description needs: %s. They go under [dataset] in the project file.\n", missing)
	}
	for i, caution := range r.Cautions {
		if i == 0 {
			b.WriteString("\nBefore you pass it on:\n")
		}
		fmt.Fprintf(&b, "  %s\n", caution)
	}
	if len(r.Notes) > 0 {
		b.WriteString("\nPlease note:\n")
		for i, note := range r.Notes {
			if i == mainNotes && len(r.Notes) > mainNotes+1 {
				fmt.Fprintf(&b, "  And %s%s.\n", count(len(r.Notes)-i, "more note"), r.whereNotesAre())
				break
			}
			fmt.Fprintf(&b, "  %s\n", note)
		}
	}
	if r.Out != "" {
		fmt.Fprintf(&b, "\nThe outputs are in %s.\n", r.Out)
		if r.Exact != "" {
			fmt.Fprintf(&b, "\nTAKE CARE: “%s” holds every place exactly as recorded.\nGive it to the person who is entitled to it and to nobody else; %s is the one to hand in.\n", r.Exact, SubmissionFile)
		}
		if r.Asking > 0 {
			fmt.Fprintf(&b, "Next: open %s, fill in your answers, and run the same again with\n  --answers %q\n", QueriesFile, filepath.Join(r.Out, QueriesFile))
		}
	}
	return b.String()
}

// isGone says how many records are no longer there.
func isGone(n int) string {
	if n == 1 {
		return "1 is no longer there"
	}
	return fmt.Sprintf("%d are no longer there", n)
}

// whereNotesAre says where all notes are to be found.
func (r *Result) whereNotesAre() string {
	if r.Out == "" {
		return ""
	}
	return ", all on the first page of " + QueriesFile
}

// startPage is the first page of the queries workbook. It ends with what was
// noticed about the files.
func (r *Result) startPage(aboutFiles []string) []string {
	s := &r.Summary
	lines := []string{
		"Questions about your notebooks",
		fmt.Sprintf("Fieldfare read %s in %s: %d fair, %d query, %d held, %d skipped.", count(s.Read, "row"), count(len(s.Files), "notebook"), s.Fair, s.Query, s.Held, s.Skipped),
		"Fair: can be handed in as read. Query: handed in, but somebody should look. Held: not handed in until you answer. Skipped: no record (a title, a total, a blank).",
		"",
		"What to do: on the page Questions, write into the column “Your answer”, or choose from its list:",
		"  yes – the suggestion is right;",
		"  what should be read instead, in your own words (a name, a date, a count, a grid reference);",
		"  keep – it is right as it stands, do not ask again;",
		"  leave out – these rows are no records to hand in.",
		"Questions about “record” or “cell” concern a row as a whole; they take keep or leave out. To change such a row, correct the notebook.",
		"One answer serves every row that says the same. An empty answer leaves the question open; held ones come first, those that free most records at the top.",
		"Then save the workbook and run the same again (with --answers and the name of this file, or simply into the same folder). Your answers are remembered.",
		"",
		"Other pages: “Rows concerned” has every row that a question is about, whole; “Skipped” has every row that is no record, and why.",
		"",
		"This workbook is for you: it holds your rows as they stand, sites and names included. Do not pass it on.",
	}
	for i, note := range r.Notes {
		if i == 0 {
			lines = append(lines, "", "Please note:")
		}
		lines = append(lines, "  "+note)
	}
	if len(aboutFiles) > 0 {
		lines = append(lines, "", "What was noticed about the files themselves:")
	}
	for _, note := range aboutFiles {
		lines = append(lines, "  "+note)
	}
	if r.Asking == 0 {
		lines = append(lines, "", "There is nothing to answer.")
	}
	return lines
}

func count(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", n, word)
}

// mostly names the three commonest reasons.
func mostly(reasons map[string]int) string {
	keys := commonest(reasons, func(s string) string { return s })
	if len(keys) == 0 {
		return "none"
	}
	if len(keys) > 3 {
		keys = append(keys[:3:3], "…")
	}
	return strings.Join(keys, ", ")
}

func firstSentence(q *report.Question) string {
	message := q.Message
	if i := strings.Index(message, ". "); i > 0 {
		message = message[:i+1]
	}
	if q.Written != "" && !strings.Contains(message, q.Written) {
		message = "“" + q.Written + "”: " + message
	}
	return message
}
