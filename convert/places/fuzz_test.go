package places_test

import (
	"strings"
	"testing"

	"fieldfare/convert/places"

	"github.com/stretchr/testify/assert"
)

// FuzzNewList: whatever a places list has in its columns, there is a list and a
// sentence for each entry that cannot be used; each name in it is found again.
func FuzzNewList(f *testing.F) {
	f.Add("Name,Other names,Grid ref,VC,County,Private,Show as", "Sallowmere Reserve", "Sallow Mere; The Mere", "TL4588")
	f.Add("Site;Site", "", "\x00|", "TL45 88 x")
	f.Add("private", "Tinker's Row", "Tinkers Row", "")
	f.Fuzz(func(t *testing.T, header, name, other, reference string) {
		c := places.FindColumns(strings.Split(header, ","))
		for _, at := range []int{c.Name, c.Other, c.Reference, c.ViceCounty, c.County, c.Private, c.BlurTo} {
			assert.Less(t, at, strings.Count(header, ",")+1)
		}
		l, problems := places.NewList([]places.Place{{Name: name, Other: strings.Split(other, ";"), Reference: reference}, {Name: other, Private: true}})
		for _, p := range problems {
			assert.NotEmpty(t, p)
		}
		for _, text := range []string{name, other, reference, header} {
			l.Find(text)
			l.Mentioned(text)
		}
	})
}
