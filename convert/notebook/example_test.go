package notebook_test

import (
	"context"
	"fmt"
	"log"
	"os"
	"path/filepath"
	"strings"

	"fieldfare/convert/notebook"
)

// A page typed by hand: semicolons, a decimal comma, a ditto mark and an
// accent in Windows-1252.
func ExampleOpen() {
	dir, err := os.MkdirTemp("", "example")
	if err != nil {
		log.Fatal(err)
	}
	defer os.RemoveAll(dir)
	path := filepath.Join(dir, "garden.csv")
	page := "date;site;name;temp\n1/6/2014;Caf\xe9 wall;Noctua pronuba;12,5\n\";\";Apamea monoglypha;12,5\n"
	if err := os.WriteFile(path, []byte(page), 0o600); err != nil {
		log.Fatal(err)
	}

	book, err := notebook.Open(context.Background(), path, notebook.Options{})
	if err != nil {
		log.Fatal(err)
	}
	defer book.Close()
	for _, sheet := range book.Sheets() {
		err := sheet.Walk(func(row *notebook.Row) error {
			var cells []string
			for i, c := range row.Cells {
				cells = append(cells, notebook.Ref{Col: i + 1, Row: row.Number}.String()+"="+c.Text)
			}
			fmt.Println(strings.Join(cells, " "))
			return nil
		})
		if err != nil {
			log.Fatal(err)
		}
	}
	for _, note := range book.Notes() {
		fmt.Println(note)
	}
	// Output:
	// A1=date B1=site C1=name D1=temp
	// A2=1/6/2014 B2=Café wall C2=Noctua pronuba D2=12,5
	// A3=" B3=" C3=Apamea monoglypha D3=12,5
	// It is not UTF-8; its letters beyond plain ASCII were read as Windows-1252.
	// Values were taken as separated by semicolons, and the text as Windows-1252.
	// Double quotes that stand alone in their place were read as ditto marks.
}

func ExampleProblem() {
	_, err := notebook.Open(context.Background(), "no such page.xlsx", notebook.Options{})
	fmt.Println(err)
	// Output: no such page.xlsx: there is no such file. Check the spelling and the folder.
}

func ExampleColumnName() {
	fmt.Println(notebook.ColumnName(1), notebook.ColumnName(27), notebook.ColumnName(16384))
	fmt.Println(notebook.Ref{Col: 2, Row: 7})
	// Output:
	// A AA XFD
	// B7
}
