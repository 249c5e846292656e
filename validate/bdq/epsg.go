package bdq

import (
	"regexp"
	"strings"
	"sync"
)

// epsgList knows the codes of the EPSG Dataset that may stand in
// dwc:geodeticDatum: geographic 2D reference systems in degrees, datums and
// ellipsoids; and the code that each of their names stands for.
type epsgList struct {
	codes map[string]bool   // "EPSG:4326"
	named map[string]string // key of a name -> code; "" where it means several
}

var epsg = sync.OnceValue(func() *epsgList {
	e := &epsgList{codes: map[string]bool{}, named: map[string]string{}}
	rows := list("epsg.tsv")
	// A name means the reference system if there is one, otherwise the datum,
	// otherwise the ellipsoid, as the tests' notes ask.
	// Within a kind a name comes before an alias.
	for _, kind := range []string{"crs", "datum", "ellipsoid"} {
		for _, aliases := range []bool{false, true} {
			found := map[string]string{}
			for _, row := range rows {
				if row[0] != kind {
					continue
				}
				code := "EPSG:" + row[1]
				e.codes[code] = true
				names := strings.Split(row[3], "|")
				if row[2] == "deprecated" {
					continue
				}
				for i, name := range names {
					k := key(name)
					switch other, taken := found[k]; {
					case (i > 0) != aliases:
					case taken && other != code:
						found[k] = ""
					default:
						found[k] = code
					}
				}
			}
			for k, code := range found {
				if _, taken := e.named[k]; !taken {
					e.named[k] = code
				}
			}
		}
	}
	return e
})

const notRecorded = "not recorded"

// interpret finds the one code that a text means: a code in other writing, a
// bare number, or a name of the dataset.
func (e *epsgList) interpret(s string) (string, bool) {
	k := key(trim(s))
	number := strings.TrimPrefix(strings.TrimPrefix(k, "epsg"), "code")
	if code := "EPSG:" + number; isDigits(number) && e.codes[code] {
		return code, true
	}
	if other, ok := otherNames[k]; ok {
		k = other
	}
	if code := e.named[k]; code != "" {
		return code, true
	}
	// A name and its code together, as in "WGS84 (EPSG:4326)".
	if m := bracketed.FindStringSubmatch(s); m != nil {
		first, okFirst := e.interpret(m[1])
		second, okSecond := e.interpret(m[2])
		return first, okFirst && okSecond && first == second
	}
	return "", false
}

var bracketed = regexp.MustCompile(`^\s*([^()]+)\(([^()]+)\)\s*$`)

// otherNames are usual writings of names of the dataset, most with the year in
// its other length. Common practice, no source.
var otherNames = map[string]string{
	"wgs1984": "wgs84", "wgs1972": "wgs72", "nad1927": "nad27", "nad1983": "nad83", "ed1950": "ed50",
	"gda1994": "gda94", "agd1966": "agd66", "agd1984": "agd84", "etrs1989": "etrs89", "sad1969": "sad69",
	"northamericandatum1927": "nad27", "northamericandatum1983": "nad83", "worldgeodeticsystem1984": "wgs84",
	"europeandatum1950": "ed50", "european1950": "ed50", "ordnancesurveygreatbritain1936": "osgb36",
	"grs80": "grs1980", "dwgs1984": "wgs84", "gcswgs1984": "wgs84",
}

// geographic says whether the text is such a code, or the name of one.
func (e *epsgList) geographic(s string) bool {
	if e.codes[s] {
		return true
	}
	_, ok := e.interpret(s)
	return ok || strings.EqualFold(s, notRecorded)
}
