package report

import (
	"encoding/json"
	"io"
)

// Counts are the accounts of rows: Read is the sum of the other four, always.
type Counts struct {
	Read    int `json:"rows_read"`
	Fair    int `json:"fair"`
	Query   int `json:"query"`
	Held    int `json:"held"`
	Skipped int `json:"skipped"`
}

// Add counts other's rows as well.
func (c *Counts) Add(other Counts) {
	c.Read += other.Read
	c.Fair += other.Fair
	c.Query += other.Query
	c.Held += other.Held
	c.Skipped += other.Skipped
}

// Balanced tells whether every row read is accounted for.
func (c Counts) Balanced() bool { return c.Read == c.Fair+c.Query+c.Held+c.Skipped }

// Cells are the accounts of cells that hold text.
type Cells struct {
	WithText int            `json:"with_text"`
	Used     int            `json:"used"`
	Left     map[string]int `json:"left,omitempty"` // by reason
}

// Summary is summary.json.
type Summary struct {
	Counts
	Occurrences int `json:"occurrences"` // handed in
	Events      int `json:"events"`
	HeldBack    int `json:"records_held_back"`
	// VisitsLeft counts the visits with nothing found for which an archive of
	// occurrences has no place.
	VisitsLeft int `json:"empty_visits_left_out,omitempty"`
	// Withdrawn counts the records of an earlier submission that are gone;
	// nil where there was none to compare with.
	Withdrawn *int           `json:"withdrawn,omitempty"`
	Files     []FileSummary  `json:"files"`
	Skips     map[string]int `json:"skipped_because,omitempty"`
	Checks    []CheckCount   `json:"checks"`
	Cells     Cells          `json:"cells"`
	Dataset   DatasetSummary `json:"dataset"`
	Asks      *Asked         `json:"asks,omitempty"`
	// Standard is the report of the Biodiversity Data Quality tests.
	Standard json.Marshaler  `json:"standard,omitempty"`
	Versions []ListVersion   `json:"versions"`
	Settings map[string]bool `json:"settings,omitempty"`
}

// FileSummary is one notebook's part of the accounts.
type FileSummary struct {
	File string `json:"file"`
	Counts
	Sheets []SheetSummary `json:"sheets"`
	Notes  []string       `json:"notes,omitempty"`
}

// SheetSummary is one sheet's part.
type SheetSummary struct {
	Sheet string `json:"sheet"`
	Counts
	Occurrences int    `json:"occurrences"`
	Cells       Cells  `json:"cells"`
	ReadAs      string `json:"read_as"`
}

// CheckCount says how often a check fired.
type CheckCount struct {
	Check   string `json:"check"`
	About   string `json:"about"`
	State   string `json:"state"`
	Records int    `json:"records"`
}

// DatasetSummary says whether the metadata are complete.
type DatasetSummary struct {
	Missing []string `json:"missing,omitempty"`
}

// ListVersion names a list or tool and the version used: for a list the
// SHA-256 of its content.
type ListVersion struct {
	Name    string `json:"name"`
	Version string `json:"version"`
}

// Write writes the summary as indented JSON.
func (s *Summary) Write(w io.Writer) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(s)
}

// Add counts other's cells as well.
func (c *Cells) Add(other Cells) {
	c.WithText += other.WithText
	c.Used += other.Used
	for reason, n := range other.Left {
		if c.Left == nil {
			c.Left = map[string]int{}
		}
		c.Left[reason] += n
	}
}
