package notebook

import "bytes"

// fileKind is what a file's first bytes show it to be.
type fileKind uint8

const (
	kindText fileKind = iota
	kindZip
	kindOLE
	kindXLS
	kindXLSB
	kindNumbers
	kindPDF
	kindPicture
	kindArchive
	kindRichText
	kindWebPage
	kindOldXML
	kindFODS
	kindXML
	kindJSON
)

func recognise(head []byte) fileKind {
	for _, m := range [...]struct {
		mark string
		kind fileKind
	}{
		{"PK\x03\x04", kindZip}, {"PK\x05\x06", kindZip},
		{"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1", kindOLE},
		{"\x09\x00\x04\x00", kindXLS}, {"\x09\x02\x06\x00", kindXLS}, {"\x09\x04\x06\x00", kindXLS}, {"\x09\x08\x10\x00", kindXLS}, {"\x09\x08\x08\x00", kindXLS},
		{"%PDF-", kindPDF}, {`{\rtf`, kindRichText},
		{"\x89PNG", kindPicture}, {"\xff\xd8\xff", kindPicture}, {"GIF8", kindPicture}, {"II*\x00", kindPicture}, {"MM\x00*", kindPicture},
		{"\x1f\x8b", kindArchive}, {"7z\xbc\xaf\x27\x1c", kindArchive}, {"Rar!", kindArchive}, {"BZh", kindArchive}, {"\xfd7zXZ", kindArchive},
	} {
		if bytes.HasPrefix(head, []byte(m.mark)) {
			return m.kind
		}
	}
	// Nothing but the beginning is looked at: a cell may say anything.
	start := bytes.ToLower(bytes.TrimLeft(bytes.TrimPrefix(head, []byte("\xef\xbb\xbf")), " \t\r\n"))
	switch {
	case bytes.HasPrefix(start, []byte("<?xml")) && bytes.Contains(start, []byte("urn:schemas-microsoft-com:office:spreadsheet")):
		return kindOldXML
	case bytes.HasPrefix(start, []byte("<?xml")) && bytes.Contains(start, []byte("urn:oasis:names:tc:opendocument")):
		return kindFODS
	case bytes.HasPrefix(start, []byte("<?xml")) && bytes.Contains(start, []byte("<html")),
		bytes.HasPrefix(start, []byte("<!doctype html")), bytes.HasPrefix(start, []byte("<html")), bytes.HasPrefix(start, []byte("<table")):
		return kindWebPage
	case bytes.HasPrefix(start, []byte("<?xml")), bytes.HasPrefix(start, []byte("<gpx")), bytes.HasPrefix(start, []byte("<kml")):
		return kindXML
	case bytes.HasPrefix(start, []byte("{\"")), bytes.HasPrefix(start, []byte("[{")), bytes.HasPrefix(start, []byte("{\n")), bytes.HasPrefix(start, []byte("{\r")):
		return kindJSON
	}
	return kindText
}

// refuse says why a file of the kind is not read and how to save it so that
// it can be.
func (s *source) refuse(kind fileKind) error {
	const saveAs = "Open it in a spreadsheet program and save it as .xlsx"
	p := &Problem{Advice: saveAs}
	switch kind {
	case kindOLE:
		p.Found = "it is an old office document, but no workbook"
		p.Advice = "If it is a letter with a table, copy the table into a spreadsheet and save that as .xlsx"
	case kindXLS:
		p.Found = "it is a workbook in the .xls format of Excel 4 or before, which is not read"
	case kindXLSB:
		p.Found = "it is a binary workbook (.xlsb), which is not read"
	case kindNumbers:
		p.Found = "it is a Numbers document, which is not read"
		p.Advice = "Open it in Numbers and choose File, Export To, Excel, which makes an .xlsx"
	case kindPDF:
		p.Found = "it is a PDF page, not a notebook"
		p.Advice = "Ask for the spreadsheet that the PDF was made from"
	case kindPicture:
		p.Found = "it is a picture, not a notebook"
		p.Advice = "Type the records into a spreadsheet"
	case kindArchive:
		p.Found = "it is a compressed archive"
		p.Advice = "Unpack it and give the notebooks inside"
	case kindRichText:
		p.Found = "it is a word-processor document, not a notebook"
		p.Advice = "Copy its table into a spreadsheet and save that as .xlsx"
	case kindWebPage:
		p.Found = "it is a web page without a table, whatever its name ends in"
	case kindXML, kindJSON:
		p.Found = "it is a file for programs (XML or JSON), not a notebook"
		p.Advice = "Open it in the program that made it and save it as a spreadsheet or CSV"
	case kindOldXML:
		p.Found = "it is a workbook in the XML format of 2003, which is not read"
	}
	return p
}
