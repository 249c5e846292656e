package validate

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestMonths(t *testing.T) {
	of := func(months ...int) (flight uint16) {
		for _, m := range months {
			flight |= 1 << (m - 1)
		}
		return flight
	}
	for flight, want := range map[uint16]string{
		of(5): "May", of(6, 7, 8): "June to August", of(6, 7, 8, 10): "June to August and October", of(11, 12, 1, 2): "November to February",
		of(1, 3, 12): "March and December to January", of(5, 7, 9): "May and July and September", of(1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12): "January to December", 0: "",
	} {
		assert.Equal(t, want, months(flight), "%012b", flight)
	}
}
