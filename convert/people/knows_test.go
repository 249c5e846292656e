package people_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"fieldfare/convert/people"
)

func TestKnows(t *testing.T) {
	list, problems := people.NewList([]people.Person{{Name: "Ines Calloway", Initials: []string{"IC"}}, {Name: "Tom Achterberg"}})
	assert.Empty(t, problems)
	for text, want := range map[string]bool{
		"Ines Calloway": true, "T. Achterberg": true, "Ines Calloway and Tom Achterberg": true, "Tom Achterberg & I. Calloway": true,
		"Ines Calloway and Maud Pettifer": false, "IC": false, "Calloway": false, "Calloway Wood": false, "Long Drove": false, "": false,
	} {
		assert.Equal(t, want, list.Knows(text), text)
	}
	assert.False(t, (*people.List)(nil).Knows("Ines Calloway"))
}
