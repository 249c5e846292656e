// Package identity gives records lasting ids. An id is derived from what was
// written alone, so it is the same in every run, wherever the row stands and
// whatever its file is called.
package identity

import (
	"crypto/sha1"
	"strconv"

	"github.com/google/uuid"
)

// namespace is the name space of all ids made here, itself a name-based UUID
// of the project's name (RFC 9562, section 5.5).
var namespace = uuid.NewSHA1(uuid.NameSpaceURL, []byte("fieldfare"))

// Maker derives the ids of one dataset.
type Maker struct{ space uuid.UUID }

// NewMaker returns the maker for a dataset; records of datasets with different
// ids never share an id. An empty dataset id is allowed.
func NewMaker(datasetID string) Maker {
	return Maker{uuid.NewSHA1(namespace, []byte(datasetID))}
}

// Content is the fingerprint of what was written: of the parts in their
// order, each with its length, so that no two lists of parts look alike.
func Content(parts []string) [16]byte {
	var stack [1024]byte
	b := Begin(stack[:0])
	for _, p := range parts {
		b = Append(b, p)
	}
	return Of(b)
}

// Begin, Append and Of do what Content does, piece by piece: Begin begins a
// list of parts in the memory of b, Append appends a part to a list, or to a
// piece of one, and Of is the fingerprint of the list.
func Begin(b []byte) []byte { return append(b[:0], namespace[:]...) }

// Append appends a part. See Begin.
func Append(b []byte, part string) []byte {
	if n := len(part); n < 10 {
		b = append(b, byte('0'+n), ':')
	} else {
		b = append(strconv.AppendInt(b, int64(n), 10), ':')
	}
	return append(b, part...)
}

// Of is the fingerprint of a list of parts. See Begin.
func Of(parts []byte) [16]byte { return named(parts) }

// named is the name-based UUID (RFC 9562, version 5) of a name space and the
// name after it. It is what uuid.NewSHA1 makes, without the memory that takes:
// a million records need several million of them.
func named(spaceAndName []byte) (id uuid.UUID) {
	sum := sha1.Sum(spaceAndName)
	copy(id[:], sum[:])
	id[6] = id[6]&0x0f | 5<<4
	id[8] = id[8]&0x3f | 0x80
	return id
}

// ID returns the id of the record with that content as a UUID URN (RFC 9562,
// version 5). Records that are alike to the letter are told apart by their
// ordinal, counted from 1.
func (m Maker) ID(content [16]byte, ordinal int) string {
	var stack [64]byte
	name := append(append(stack[:0], m.space[:]...), content[:]...)
	if ordinal > 1 {
		name = strconv.AppendInt(append(name, '#'), int64(ordinal), 10)
	}
	return named(name).URN()
}
