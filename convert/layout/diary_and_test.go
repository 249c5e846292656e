package layout

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestSpeciesJoinedByAnd(t *testing.T) {
	e := eyes{probe: plain{}, seen: map[string]look{}}
	for text, want := range map[string][]item{
		"Buff-tip 2 and Ghost Moth":         {{"Buff-tip", "2"}, {"Ghost Moth", ""}},
		"3 Heart and Dart and 2 Ghost Moth": {{"Heart and Dart", "3"}, {"Ghost Moth", "2"}},
		"Heart and Dart 4, Buff-tip 1":      {{"Heart and Dart", "4"}, {"Buff-tip", "1"}},
	} {
		items, rest := e.itemsIn(text)
		assert.Equal(t, want, items, text)
		assert.Empty(t, rest, text)
	}
}
