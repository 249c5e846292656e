package main_test

import (
	"archive/zip"
	"encoding/csv"
	"encoding/json"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"strings"
	"testing"
	"unicode"

	"fieldfare/testdata/need"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
	"golang.org/x/net/html"
)

// attacks are texts that become something else where they are not kept as text:
// formulas of a workbook (the beginnings that the OWASP page on CSV injection
// names), markup and script, escapes of a workbook's own (ECMA-376,
// 22.9.2.19), sequences of a terminal (ECMA-48), and marks that turn the
// direction of writing (Unicode Standard Annex 9). Each has zz in it.
var attacks = []string{
	`=HYPERLINK("http://zz.invalid","zz")`, `+zz`, `-2+3+cmd|' /C zz'!A0`, `@SUM(zz)`, "\t=zz", "=zz\n+zz",
	`<script>zz()</script>`, `"><img src=x onerror=zz()>`, `' onmouseover='zz()`, `</title></style></script></svg><zz>`, `]]><zz/>`, `<!--zz`, `-->zz`, `&zz;&#x3c;zz&gt;`, `javascript:zz()`, `{{zz}}`, `%22><zz`, `\u003czz`,
	`_x003D_zz`, `_x0000_zz`, "zz\u202egnp.exe", "\u2066zz\u2069", "\x1b]0;zz\x07", "\x1b[2Jzz", "\u009b31mzz", "zz\x00\x08\x0b\x7f", "\u2028zz", "\ufffe\uffffzz",
}

// hostileDesk is a folder with everything that Fieldfare reads, each text in it
// an attack. Attacks are dealt out in turn.
type hostileDesk struct {
	t      *testing.T
	folder string
	next   int
}

func (d *hostileDesk) attack() string {
	d.next++
	return attacks[d.next%len(attacks)]
}

// fileName is an attack as far as a file can be named so.
func (d *hostileDesk) fileName(ext string) string {
	return strings.NewReplacer("/", "_", "\x00", "").Replace(d.attack()) + ext
}

func (d *hostileDesk) write(name, text string) string {
	path := filepath.Join(d.folder, name)
	require.NoError(d.t, os.WriteFile(path, []byte(text), 0o644))
	return path
}

func (d *hostileDesk) table(rows ...[]string) string {
	var b strings.Builder
	w := csv.NewWriter(&b)
	require.NoError(d.t, w.WriteAll(rows))
	return b.String()
}

// notebooks writes lists of rows that leave and rows that are held, as text and
// as workbooks with hostile names of sheets.
func (d *hostileDesk) notebooks() (paths []string) {
	for range 6 {
		rows := [][]string{{"Date", "Species", "Count", "Site", "Grid ref", "Recorder", "Method", "Remarks", "Habitat", d.attack(), "Length (" + d.attack() + ")"}}
		for i := range attacks {
			date, species, ref := fmt.Sprintf("%d/6/2021", i%28+1), []string{"Heart and Dart", "Flame", "Buff-tip"}[i%3], fmt.Sprintf("TL45%d88", i%10)
			switch i % 6 {
			case 3:
				species = d.attack()
			case 4:
				date = d.attack()
			case 5:
				ref = d.attack()
			}
			rows = append(rows, []string{date, species, "3", d.attack(), ref, d.attack(), d.attack(), d.attack(), d.attack(), d.attack(), d.attack()})
		}
		paths = append(paths, d.write(d.fileName(".csv"), d.table(rows...)))
		paths = append(paths, d.book(rows))
	}
	return paths
}

var noSheetName = strings.NewReplacer("[", "", "]", "", ":", "", "*", "", "?", "", "/", "", `\`, "", "'", "", "\x00", "", "\x08", "", "\x0b", "", "\x1b", "", "\x07", "", "\ufffe", "", "\uffff", "")

func (d *hostileDesk) book(rows [][]string) string {
	f := excelize.NewFile()
	defer f.Close()
	name := []rune(noSheetName.Replace(d.attack()))
	require.NoError(d.t, f.SetSheetName("Sheet1", string(name[:min(len(name), 31)])))
	for i, row := range rows {
		require.NoError(d.t, f.SetSheetRow(f.GetSheetName(0), fmt.Sprintf("A%d", i+1), &row))
	}
	path := filepath.Join(d.folder, d.fileName(".xlsx"))
	out, err := os.Create(path)
	require.NoError(d.t, err)
	defer out.Close()
	require.NoError(d.t, f.Write(out))
	return path
}

// settings writes the lists and the project file.
func (d *hostileDesk) settings() {
	d.write("places.csv", d.table([]string{"Name", "Other names", "Grid ref", "County"}, []string{d.attack(), d.attack(), "TL4588", d.attack()}, []string{d.attack(), d.attack(), "TL45", d.attack()}))
	d.write("people.csv", d.table([]string{"Name", "Initials", "Other names"}, []string{d.attack(), "QQ", d.attack()}))
	d.write("taxa.csv", d.table([]string{"Scientific name", "Author", "Vernacular name", "Family", "Order"},
		[]string{"Agrotis exclamationis", d.attack(), "Heart and Dart", d.attack(), d.attack()}, []string{"Axylia putris", "L.", "Flame", d.attack(), ""}, []string{"Phalera bucephala", d.attack(), "Buff-tip", "", d.attack()}))
	area := `{"type":"Feature","properties":{"name":` + quoted(d.attack()) + `},"geometry":{"type":"Polygon","coordinates":[[[0,52],[1,52],[1,53],[0,53],[0,52]]]}}`
	d.write("area.json", area)
	toml := "[dataset]\n"
	for _, setting := range []string{"title", "abstract", "rights", "institution", "collection", "methods", "citation"} {
		toml += setting + " = " + quoted(d.attack()) + "\n"
	}
	toml += "licence = \"CC0\"\nkeywords = [" + quoted(d.attack()) + "]\n"
	for range len(attacks) {
		toml += "[[dataset.creator]]\ngiven = " + quoted(d.attack()) + "\nsurname = " + quoted(d.attack()) + "\norganisation = " + quoted(d.attack()) + "\nposition = " + quoted(d.attack()) + "\nurl = " + quoted(d.attack()) + "\n"
	}
	toml += "[lists]\ntaxa = [\"taxa.csv\"]\nplaces = \"places.csv\"\npeople = \"people.csv\"\n[[lists.area]]\nname = " + quoted(d.attack()) + "\nfile = \"area.json\"\n"
	toml += "[asks]\nscheme = " + quoted(d.attack()) + "\n"
	d.write("fieldfare.toml", toml)
}

// quoted is a text as a string of TOML or of JSON, which are alike so far.
func quoted(text string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, c := range text {
		switch {
		case c == '"' || c == '\\':
			b.WriteString(`\` + string(c))
		case c < ' ' || c == 0x7f:
			fmt.Fprintf(&b, `\u%04x`, c)
		default:
			b.WriteRune(c)
		}
	}
	return b.String() + `"`
}

// TestHostileTexts puts attacks into every field that reaches an output and
// looks for them in all outputs: everywhere they are still text.
func TestHostileTexts(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("few of these names can be given to a file")
	}
	turns := 2
	if testing.Short() {
		turns = 1
	}
	for turn := range turns {
		d := &hostileDesk{t: t, folder: t.TempDir(), next: turn * 7}
		d.settings()
		paths := d.notebooks()
		out := filepath.Join(d.folder, "out")
		args := append([]string{"convert", "--format", "csv,xlsx,geojson", "--out", out}, paths...)
		r := fieldfare(t, "", args...)
		require.Zero(t, r.status, r.err)
		for _, name := range []string{"queries.xlsx", "records.xlsx"} {
			path := filepath.Join(out, name)
			assert.Contains(t, noFormulas(t, path), "zz")
			for part, text := range partsOf(t, path) {
				if strings.HasSuffix(part, ".xml") || strings.HasSuffix(part, ".rels") {
					wellFormed(t, name+" "+part, text)
				}
			}
		}
		for part, text := range partsOf(t, filepath.Join(out, "submission.zip")) {
			if strings.HasSuffix(part, ".xml") {
				wellFormed(t, part, text)
			}
		}
		for _, name := range []string{"summary.json", "records.geojson"} {
			data, err := os.ReadFile(filepath.Join(out, name))
			require.NoError(t, err)
			assert.True(t, json.Valid(data), name)
		}
		page, err := os.ReadFile(filepath.Join(out, "report.html"))
		require.NoError(t, err)
		plainPage(t, string(page))
		onTerminal(t, args)
		onTerminal(t, append([]string{"check", "--show-reading", "--standard"}, paths...))
		onTerminal(t, append([]string{"explain", "date"}, printable(attacks)...))
		onTerminal(t, append([]string{"explain", "name"}, printable(attacks)...))
		onTerminal(t, append([]string{"gridref"}, printable(attacks)...))
		onTerminal(t, append([]string{"check"}, printable(attacks)...))
		onTerminal(t, []string{"compare", filepath.Join(out, "submission.zip"), other(t, d)})
	}
}

// other is the submission of the same notebooks with other attacks.
func other(t *testing.T, d *hostileDesk) string {
	t.Helper()
	next := &hostileDesk{t: t, folder: t.TempDir(), next: d.next + 1}
	next.settings()
	out := filepath.Join(next.folder, "out")
	require.Zero(t, fieldfare(t, "", append([]string{"convert", "--out", out}, next.notebooks()...)...).status)
	return filepath.Join(out, "submission.zip")
}

// printable are the texts that can be given on a command line.
func printable(list []string) (given []string) {
	for _, text := range list {
		if !strings.Contains(text, "\x00") && !strings.HasPrefix(text, "-") {
			given = append(given, text)
		}
	}
	return given
}

func partsOf(t *testing.T, path string) map[string]string {
	t.Helper()
	z, err := zip.OpenReader(path)
	require.NoError(t, err)
	defer z.Close()
	parts := map[string]string{}
	for _, f := range z.File {
		r, err := f.Open()
		require.NoError(t, err)
		data, err := io.ReadAll(r)
		require.NoError(t, err)
		require.NoError(t, r.Close())
		parts[f.Name] = string(data)
	}
	return parts
}

// wellFormed requires a document of XML to be one, with no attack among the
// names of its elements and attributes and no link that leads out.
func wellFormed(t *testing.T, name, text string) {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(text))
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return
		}
		if !assert.NoError(t, err, name) {
			return
		}
		if e, is := token.(xml.StartElement); is {
			assert.NotContains(t, e.Name.Local, "zz", name)
			for _, a := range e.Attr {
				assert.NotContains(t, a.Name.Local, "zz", name)
				if e.Name.Local == "Relationship" && a.Name.Local == "Target" {
					assert.NotRegexp(t, `^(?i)[a-z]+:`, a.Value, name)
				}
			}
		}
	}
}

// plainPage requires that no attack is anything but text on a web page, or the
// value of an attribute that only holds text.
func plainPage(t *testing.T, page string) {
	t.Helper()
	assert.Contains(t, page, "zz")
	for _, c := range page {
		if c != '\n' && c != '\t' && (unicode.IsControl(c) || unicode.Is(unicode.Bidi_Control, c) || c == '\u2028') {
			t.Errorf("the page holds %q", c)
			break
		}
	}
	text := []string{"title", "aria-label", "content", "alt", "data-label", "value", "id", "class"}
	z := html.NewTokenizer(strings.NewReader(page))
	inside := ""
	for {
		switch z.Next() {
		case html.ErrorToken:
			return
		case html.StartTagToken, html.SelfClosingTagToken:
			token := z.Token()
			inside = token.Data
			assert.NotContains(t, []string{"img", "zz", "iframe", "object", "embed"}, token.Data)
			for _, a := range token.Attr {
				assert.False(t, strings.HasPrefix(a.Key, "on") || strings.Contains(a.Key, "zz"), "%s %s", token.Data, a.Key)
				if strings.Contains(a.Val, "zz") && !slices.Contains(text, a.Key) {
					t.Errorf("<%s %s=%q>", token.Data, a.Key, a.Val)
				}
			}
		case html.TextToken:
			if inside == "script" || inside == "style" {
				assert.NotContains(t, string(z.Text()), "zz", inside)
			}
		case html.EndTagToken:
			inside = ""
		}
	}
}

// ours are the sequences that the program itself sends to a terminal: colours
// (SGR), clearing the line and the progress bar's return to its beginning.
var ours = regexp.MustCompile(`\x1b\[[0-9;]*[mK]|\r`)

// onTerminal runs the program on a terminal, which script (util-linux) makes,
// and requires that nothing reaches it but text and the program's own sequences.
func onTerminal(t *testing.T, args []string) {
	t.Helper()
	script := need.Tool(t, "script", "install bsdutils")
	quotedArgs := []string{program}
	for _, a := range args {
		quotedArgs = append(quotedArgs, "'"+strings.ReplaceAll(a, "'", `'\''`)+"'")
	}
	shown, _ := exec.Command(script, "-qec", strings.Join(quotedArgs, " "), "/dev/null").CombinedOutput()
	require.Contains(t, string(shown), "zz", "%q", args[:min(3, len(args))])
	for _, c := range ours.ReplaceAllString(string(shown), "") {
		if c != '\n' && c != '\t' && (unicode.IsControl(c) || unicode.Is(unicode.Bidi_Control, c)) {
			t.Errorf("%q shows %q", args[0], c)
			return
		}
	}
}
