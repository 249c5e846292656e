package notebook

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestDelimited(t *testing.T) {
	for name, c := range map[string]struct {
		in   string
		want []string
		note string
	}{
		"commas":                 {"Date,Name,Count\n1/6/2014,Large Yellow Underwing,3\n", []string{"Date|Name|Count", "1/6/2014|Large Yellow Underwing|3"}, "commas"},
		"no end of last line":    {"a,b\n1,2", []string{"a|b", "1|2"}, ""},
		"tabs":                   {"a\tb, c\n1\t2, 3\n", []string{"a|b, c", "1|2, 3"}, "tabs"},
		"semicolons, decimals":   {"site;lat;long\nA;52,1;0,2\nB;52,3;0,4\n", []string{"site|lat|long", "A|52,1|0,2", "B|52,3|0,4"}, "semicolons"},
		"bars":                   {"a|b\n1|2\n", []string{"a|b", "1|2"}, "bars"},
		"one column":             {"Noctua pronuba\nApamea monoglypha\n", []string{"Noctua pronuba", "Apamea monoglypha"}, "nothing"},
		"CR LF":                  {"a,b\r\n1,2\r\n", []string{"a|b", "1|2"}, ""},
		"old Mac line ends":      {"a,b\r1,2\r3,4\r", []string{"a|b", "1|2", "3|4"}, ""},
		"mixed line ends":        {"a,b\r\n1,2\n3,4\r5,6\r\r\n7,8", []string{"a|b", "1|2", "3|4", "5|6", "7|8"}, ""},
		"blank lines kept":       {"a,b\n\n1,2\n\n\n", []string{"a|b", "", "1|2", "", ""}, ""},
		"blank lines kept, Mac":  {"a,b\r\r1,2\r", []string{"a|b", "", "1|2"}, ""},
		"ragged":                 {"a,b,c\n1\n1,2\n1,2,3,4\n", []string{"a|b|c", "1", "1|2", "1|2|3|4"}, ""},
		"title lines above":      {"Moths at Sallowmere\nsite: the hide\na;b;c\n1;2;3\n4;5;6\n", []string{"Moths at Sallowmere", "site: the hide", "a|b|c", "1|2|3", "4|5|6"}, "semicolons"},
		"quoted delimiter":       {"a,b\n\"x, y\",2\n", []string{"a|b", "x, y|2"}, ""},
		"quotes in quotes":       {"a,b\n\"the \"\"hide\"\"\",2\n", []string{"a|b", "the \"hide\"|2"}, ""},
		"quoted after space":     {"a, b, c\n1, \"x, y\", 3\n", []string{"a| b| c", "1|x, y| 3"}, ""},
		"newline in quotes":      {"a,b\n\"one\ntwo\",2\n3,4\n", []string{"a|b", "one\ntwo|2", "3|4"}, ""},
		"CR LF in quotes":        {"a,b\r\n\"one\r\ntwo\",2\r\n", []string{"a|b", "one\ntwo|2"}, ""},
		"inches":                 {"trap,n\n6\" tube,2\n8\" tube,3\n", []string{"trap|n", "6\" tube|2", "8\" tube|3"}, ""},
		"stray inside quoted":    {"a,b\n\"the \"big\" one\",2\n", []string{"a|b", "the \"big\" one|2"}, "double quote"},
		"text after quotes":      {"a,b\n\"big\" trap,2\n3,4\n", []string{"a|b", "big trap|2", "3|4"}, "double quote"},
		"unclosed":               {"a,b,c\n\"x,2,3\n4,5,6\n7,8,9\n", []string{"a|b|c", "\"x|2|3", "4|5|6", "7|8|9"}, "In row 2 a double quote is opened"},
		"unclosed, quote later":  {"a,b,c\n\"x,2,3\n4,\"y\",6\n7,8,9\n", []string{"a|b|c", "\"x|2|3", "4|y|6", "7|8|9"}, "In row 2"},
		"unclosed last field":    {"a,b,c,d\n1,2,3,\"x\n1,2,3,6\"\n7,8,9,0\n", []string{"a|b|c|d", "1|2|3|\"x", "1|2|3|6\"", "7|8|9|0"}, "In row 2"},
		"unclosed at the end":    {"a,b\n1,\"", []string{"a|b", "1|\""}, "ditto marks"},
		"only quotes":            {"\"\"\n", []string{""}, ""},
		"ditto marks":            {"date,site,name,n\n1/6/14,Hide,Noctua pronuba,3\n\",\",Apamea monoglypha,4\n\",\",Laothoe populi,1\n2/6/14,\",Noctua comes,1\n", []string{"date|site|name|n", "1/6/14|Hide|Noctua pronuba|3", "\"|\"|Apamea monoglypha|4", "\"|\"|Laothoe populi|1", "2/6/14|\"|Noctua comes|1"}, "ditto marks"},
		"ditto marks at the end": {"name\tsite\nNoctua pronuba\tHide\nNoctua comes\t\"\nNoctua fimbriata\t \" \n", []string{"name|site", "Noctua pronuba|Hide", "Noctua comes|\"", "Noctua fimbriata| \" "}, "ditto marks"},
		"ditto marks, quoted":    {"site,name\nHide,\"a, b\"\n\"\"\"\",c\n", []string{"site|name", "Hide|a, b", "\"|c"}, ""},
		"quoted comma first":     {"a,b\n1,\", x\"\n2,\",\"\n3,y\n", []string{"a|b", "1|, x", "2|,", "3|y"}, ""},
		"quoted line end first":  {"a,b,c\n1,\"\nx\",3\n2,\"\ny\",4\n", []string{"a|b|c", "1|\nx|3", "2|\ny|4"}, ""},
		"lined up":               {"Date      Name               n\n1/6/2014  Noctua pronuba     3\n2/6/2014  Apamea monoglypha  12\n", []string{"Date|Name|n", "1/6/2014|Noctua pronuba|3", "2/6/2014|Apamea monoglypha|12"}, "two or more spaces"},
		"lined up with gaps":     {"Date      Name               n\n1/6/2014  Noctua pronuba     3\n          Apamea monoglypha  12\n", []string{"Date      Name               n", "1/6/2014  Noctua pronuba     3", "          Apamea monoglypha  12"}, "lined up with spaces, unevenly"},
		"joined files":           {"a,b\n1,2\n\xef\xbb\xbf\"a\",b\n3,4\n", []string{"a|b", "1|2", "a|b", "3|4"}, ""},
		"mark and sep line":      {"\xef\xbb\xbfsep=;\r\na;b,c\r\n", []string{"a|b,c"}, ""},
		"sep line":               {"sep=;\na;b,c\n1;2,3\n", []string{"a|b,c", "1|2,3"}, "semicolons; the line itself"},
		"sep line, quoted":       {"\"sep=,\"\r\na,b\r\n", []string{"a|b"}, "commas"},
		"sep line, tab":          {"sep=\t\na\tb\n", []string{"a|b"}, "tabs"},
		"UTF-8 mark":             {"\xef\xbb\xbfa,b\né,2\n", []string{"a|b", "é|2"}, ""},
		"UTF-8":                  {"a,b\né ½ ’,2\n", []string{"a|b", "é ½ ’|2"}, "UTF-8"},
		"Windows-1252":           {"a,b\nM\xfcller\x92s \xbd,2\n", []string{"a|b", "Müller’s ½|2"}, "Windows-1252"},
		"Mac Roman":              {"a,b\rM\x9fller\xd5s caf\x8e,2\r", []string{"a|b", "Müller’s café|2"}, "Mac Roman"},
		"both":                   {"a,b\nM\xc3\xbcller,1\nM\xfcller,2\nM\xc3\xbcller,3\n", []string{"a|b", "Müller|1", "Müller|2", "Müller|3"}, "Most of it is UTF-8"},
		"UTF-16 LE mark":         {"\xff\xfea\x00,\x00\xe9\x00\n\x001\x00,\x002\x00", []string{"a|é", "1|2"}, ""},
		"UTF-16 BE mark":         {"\xfe\xff\x00a\x00,\x00\xe9\x00\n\x001\x00,\x002", []string{"a|é", "1|2"}, ""},
		"UTF-16 LE":              {"a\x00,\x00\xe9\x00\n\x001\x00,\x002\x00", []string{"a|é", "1|2"}, "UTF-16"},
		"UTF-16 BE":              {"\x00a\x00,\x00\xe9\x00\n\x001\x00,\x002", []string{"a|é", "1|2"}, "UTF-16"},
		"UTF-16 tabs CR LF":      {"\xff\xfea\x00\t\x00b\x00\r\x00\n\x001\x00\t\x002\x00\r\x00\n\x00", []string{"a|b", "1|2"}, "tabs"},
	} {
		t.Run(name, func(t *testing.T) {
			rows, notes := readText(t, c.in, Options{})
			assert.Equal(t, c.want, rows)
			if c.note != "" {
				assert.Contains(t, joined(notes), c.note)
			}
			if c.note == "" || c.note == "commas" || c.note == "tabs" {
				assert.NotContains(t, joined(notes), "double quote")
			}
		})
	}
}

func joined(notes []string) string {
	s := ""
	for _, n := range notes {
		s += n + "\n"
	}
	return s
}

func TestOverrides(t *testing.T) {
	rows, notes := readText(t, "a,b;c\n1,2;3\n", Options{Delimiter: "semicolon"})
	assert.Equal(t, []string{"a,b|c", "1,2|3"}, rows)
	assert.Empty(t, notes)
	rows, _ = readText(t, "a:b\n", Options{Delimiter: ":"})
	assert.Equal(t, []string{"a|b"}, rows)
	rows, _ = readText(t, "a,b\n", Options{Delimiter: "none"})
	assert.Equal(t, []string{"a,b"}, rows)
	rows, _ = readText(t, "a  b c\n", Options{Delimiter: "spaces"})
	assert.Equal(t, []string{"a|b c"}, rows)
	rows, _ = readText(t, "sep=;\na,b;c\n", Options{Delimiter: ","})
	assert.Equal(t, []string{"a|b;c"}, rows)
	for encoding, in := range map[string]string{
		"windows-1252": "\xe9", "ISO-8859-1": "\xe9", "Mac Roman": "\x8e", "utf-8": "é", "cp850": "\x82", "UTF-16LE": "\xe9\x00", "utf-16be": "\x00\xe9", "UTF-16": "\xfe\xff\x00\xe9",
	} {
		rows, _ := readText(t, in, Options{Encoding: encoding})
		assert.Equal(t, []string{"é"}, rows, encoding)
	}
	sentences(t, failure(t, write(t, "a.csv", "a"), Options{Delimiter: "§"}))
	p := failure(t, write(t, "a.csv", "a"), Options{Encoding: "martian"})
	assert.Contains(t, p.Error(), `the encoding "martian", which is not known`)
	sentences(t, p)
}
