package notebook

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// One or two stray double quotes in a page without any must not cost a row,
// nor change a cell that they are not in; the cells they are in keep them.
func TestStrayQuotes(t *testing.T) {
	words := []string{"Noctua pronuba", "Hide", "3", "1/6/2014", "", "TL453812", "worn", "m 3"}
	for seed := range uint64(600) {
		r := rand.New(rand.NewPCG(seed, 4))
		columns := 4 + r.IntN(5)
		var page [][]string
		for range 5 + r.IntN(20) {
			row := make([]string, columns)
			for i := range row {
				row[i] = words[r.IntN(len(words))]
				if len(page) == 0 {
					row[i] = fmt.Sprintf("h%d", i)
				}
			}
			if row[columns-1] == "" {
				row[columns-1] = "end"
			}
			page = append(page, row)
		}
		for range 1 + r.IntN(2) {
			row := page[1+r.IntN(len(page)-1)]
			if strings.Contains(strings.Join(row, ""), `"`) {
				continue // two in one row may be a pair of quotes
			}
			cell := &row[r.IntN(columns)]
			at := []int{0, len(*cell), r.IntN(len(*cell) + 1)}[r.IntN(3)]
			*cell = (*cell)[:at] + `"` + (*cell)[at:]
		}
		var b strings.Builder
		for _, row := range page {
			b.WriteString(strings.Join(row, ",") + "\n")
		}
		book := opened(t, write(t, "a.csv", b.String()), Options{})
		same(t, page, rowsOf(t, book.Sheets()[0]), fmt.Sprintf("seed %d:\n%s", seed, b.String()))
	}
}

// Where both readings are as likely, the row is marked.
func TestDoubtfulQuotes(t *testing.T) {
	rows := rowsOf(t, opened(t, write(t, "a.csv", "a,b,c\n\"1,2,3\n4\",5,6\n7,8,9\n"), Options{}).Sheets()[0])
	assert.Equal(t, []string{"a|b|c", "1,2,3\n4|5|6", "7|8|9"}, texts(rows))
	assert.Contains(t, rows[1].Repaired, "could be a row of its own")
}
