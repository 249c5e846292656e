package report

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// The forms are those of RFC 8089, appendix E.2 and E.3.
func TestWhole(t *testing.T) {
	for path, address := range map[string]string{
		"C:/Moths/Tinker's Row 2021.xlsx": "file:///C:/Moths/Tinker%27s%20Row%202021.xlsx",
		"D:/été #2/100%.csv":              "file:///D:/%C3%A9t%C3%A9%20%232/100%25.csv",
		"/home/ines/walks.csv":            "file:///home/ines/walks.csv",
		"//server/share/walks.csv":        "file://server/share/walks.csv",
	} {
		assert.Equal(t, address, whole(path))
	}
}

func TestTarget(t *testing.T) {
	for _, c := range []struct {
		folder string
		at     Place
		says   string
	}{
		{"/a/out", Place{"/a/Tinker's Row été.xlsx", "Garden 2021", "B7, C8"}, "../Tinker%27s%20Row%20%C3%A9t%C3%A9.xlsx#%27Garden%202021%27%21B7"},
		{"/a/out", Place{"/a/walks.csv", "", "B7"}, "../walks.csv"},
		{"/a/out", Place{"/a/book.xlsx", "Tom's", ""}, "../book.xlsx#%27Tom%27%27s%27%21A1"},
	} {
		address, ok := target(c.folder, c.at)
		assert.True(t, ok)
		assert.Equal(t, c.says, address)
	}
	_, ok := target("/a/out", Place{"-", "", "B7"})
	assert.False(t, ok, "what came in by a pipe cannot be opened")
}
