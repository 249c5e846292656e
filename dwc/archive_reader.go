package dwc

import (
	"io"
	"path"
	"strings"
)

// Archive is an open Darwin Core Archive.
type Archive struct {
	// Core is the core table, Extensions are the others.
	Core       *DataTable
	Extensions []*DataTable
	// Notes are what was read although it is not as it should be. Notes on
	// single rows are with the rows.
	Notes []Note

	source   source
	limits   Limits
	metadata string // the name of the metadata document; "" where none
}

// OpenArchive opens a Darwin Core Archive as the Darwin Core text guide
// (https://dwc.tdwg.org/text/) has it: a zip or a folder with a descriptor,
// meta.xml, at its top or within one folder; a zip or a folder of one text
// file with term names in its first line, and no descriptor; or such a file by
// itself. It reads the descriptor and the beginning of each table, and refuses
// what goes beyond the limits; no limits are the usual ones.
//
// What is not as it should be, and yet cannot be misunderstood, is read and
// noted: term IRIs and file names in another letter case, or rows that are too
// short. The error is a *ReadError that says where and what to do.
func OpenArchive(name string, limits ...Limits) (*Archive, error) {
	var l Limits
	if len(limits) > 0 {
		l = limits[0]
	}
	l = l.withDefaults()
	s, err := openSource(name, l)
	if err != nil {
		return nil, err
	}
	a := &Archive{source: s, limits: l}
	if err := a.open(name); err != nil {
		s.close()
		return nil, err
	}
	return a, nil
}

func (a *Archive) open(name string) error {
	meta, ok, several := findMeta(a.source)
	if several {
		return unreadable(name, 0, "There are several archives in here, each with a meta.xml. Give one of them.")
	}
	if !ok {
		return a.openSimple(name)
	}
	m := &metaReader{source: a.source, name: meta, folder: path.Dir(meta), limits: a.limits}
	tables, metadata, err := m.read()
	if err != nil {
		return err
	}
	a.Notes = m.notes
	for i, t := range tables {
		d := &DataTable{tableMeta: t, archive: a, core: i == 0}
		if err := d.inspect(); err != nil {
			return err
		}
		if i == 0 {
			a.Core = d
		} else {
			a.Extensions = append(a.Extensions, d)
		}
	}
	a.findMetadata(m, metadata)
	return nil
}

// findMetadata settles which document is the metadata.
func (a *Archive) findMetadata(m *metaReader, stated string) {
	location := stated
	if location == "" {
		location = emlFile
	}
	found, _, ok := find(a.source, m.folder, location)
	if ok {
		a.metadata = found
	} else if strings.Contains(stated, "://") {
		a.Notes = append(a.Notes, Note{File: m.name, Message: "The metadata is at " + stated + " and was not fetched."})
	} else if stated != "" {
		a.Notes = append(a.Notes, Note{File: m.name, Message: "The metadata document “" + stated + "” is not in the archive."})
	}
}

// Close lets go of the archive's files.
func (a *Archive) Close() error { return a.source.close() }

// Tables returns the core and the extensions.
func (a *Archive) Tables() []*DataTable {
	return append([]*DataTable{a.Core}, a.Extensions...)
}

// Table returns the first table of a row type, or nil.
func (a *Archive) Table(rowType string) *DataTable {
	for _, t := range a.Tables() {
		if t.rowType == rowType {
			return t
		}
	}
	return nil
}

// Metadata reads the dataset's metadata. It returns nil where the archive has
// none, and an error where it is no Ecological Metadata Language.
func (a *Archive) Metadata() (*Dataset, error) {
	if a.metadata == "" {
		return nil, nil
	}
	root, err := readXML(a.source, a.metadata, a.limits)
	if err != nil {
		return nil, err
	}
	return datasetFromXML(a.metadata, root)
}

// ReadEML reads an Ecological Metadata Language document of any version that
// has a dataset. What a Dataset has no room for is left out: addresses,
// e-mail and telephone numbers among it, on purpose.
func ReadEML(r io.Reader) (*Dataset, error) {
	limits := Limits{}.withDefaults()
	data, err := io.ReadAll(io.LimitReader(r, int64(limits.XMLBytes)+1))
	if err != nil {
		return nil, &ReadError{File: emlFile, Message: "The document could not be read.", Cause: err}
	}
	if len(data) > limits.XMLBytes {
		return nil, unreadable(emlFile, 0, "The document is larger than %s, which no such document needs.", size(int64(limits.XMLBytes)))
	}
	root, err := parseXML(emlFile, data, limits)
	if err != nil {
		return nil, err
	}
	return datasetFromXML(emlFile, root)
}
