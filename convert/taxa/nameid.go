package taxa

import (
	"regexp"

	"github.com/google/uuid"
)

// nameSpace is the name space of the ids of names, itself a name-based UUID.
var nameSpace = uuid.NewSHA1(uuid.NameSpaceURL, []byte("fieldfare#name"))

// wholeID is an identifier that says whose it is: a URN, a URI, or
// scope:value, as the standard's test of scientificNameID takes them.
var wholeID = regexp.MustCompile(`^(urn:[A-Za-z0-9][A-Za-z0-9-]{0,30}[A-Za-z0-9]:\S+|https?://[^\s/]+/\S+|[A-Za-z0-9][A-Za-z0-9_.+-]*:[^\s:/]\S*)$`)

// NamedID is the scientificNameID of the taxon's accepted name: as the list
// states it; else the list's taxonID, where that says whose it is
// ("starter:apamea-crenata"); else a name-based UUID (RFC 9562, version 5) of
// the name with its author, which is the same on every list.
func (t *Taxon) NamedID() string {
	switch {
	case t.NameID != "":
		return t.NameID
	case wholeID.MatchString(t.ID):
		return t.ID
	}
	return uuid.NewSHA1(nameSpace, []byte(t.FullName())).URN()
}
