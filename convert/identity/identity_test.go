package identity_test

import (
	"strings"
	"testing"

	"fieldfare/convert/identity"

	"github.com/google/uuid"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestIDs(t *testing.T) {
	m := identity.NewMaker("")
	a := identity.Content([]string{"12/6/21", "Heart and Dart", "3"})
	b := identity.Content([]string{"12/6/21", "Heart and Dart3", ""})
	ids := map[string]bool{}
	for _, id := range []string{m.ID(a, 1), m.ID(a, 2), m.ID(a, 11), m.ID(b, 1), identity.NewMaker("other").ID(a, 1)} {
		// RFC 9562: version 5, variant 10.
		u, err := uuid.Parse(id)
		require.NoError(t, err)
		assert.EqualValues(t, 5, u.Version())
		assert.Equal(t, uuid.RFC4122, u.Variant())
		assert.False(t, ids[id], "ids never repeat")
		ids[id] = true
	}
	assert.Equal(t, m.ID(a, 1), identity.NewMaker("").ID(a, 1))
}

// The reference library google/uuid makes the same ids of the same names.
func TestIDsAreThoseOfTheLibrary(t *testing.T) {
	space := uuid.NewSHA1(uuid.NameSpaceURL, []byte("fieldfare"))
	parts := []string{"", "12/6/21", strings.Repeat("long ", 400)}
	content := identity.Content(parts)
	assert.Equal(t, uuid.NewSHA1(space, []byte("0:7:12/6/212000:"+parts[2])), uuid.UUID(content))
	dataset := uuid.NewSHA1(space, []byte("moths"))
	m := identity.NewMaker("moths")
	assert.Equal(t, uuid.NewSHA1(dataset, content[:]).URN(), m.ID(content, 1))
	assert.Equal(t, uuid.NewSHA1(dataset, append(content[:], "#12"...)).URN(), m.ID(content, 12))
}
