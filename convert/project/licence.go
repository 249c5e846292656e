package project

import (
	"fmt"
	"strings"
)

// The three licences in usual use for biological records, by the addresses
// that Creative Commons gives them (https://creativecommons.org/licenses/).
const (
	CC0    = "http://creativecommons.org/publicdomain/zero/1.0/legalcode"
	CCBY   = "http://creativecommons.org/licenses/by/4.0/legalcode"
	CCBYNC = "http://creativecommons.org/licenses/by-nc/4.0/legalcode"
)

// LicenceURL returns the licence as an address; empty where none is stated.
func (d Dataset) LicenceURL() (string, error) {
	folded := strings.NewReplacer("-", "", " ", "", "_", "", ".", "").Replace(strings.ToLower(d.Licence))
	switch folded {
	case "":
		return "", nil
	case "cc0", "cc010":
		return CC0, nil
	case "ccby", "ccby40":
		return CCBY, nil
	case "ccbync", "ccbync40":
		return CCBYNC, nil
	}
	if strings.HasPrefix(d.Licence, "http://") || strings.HasPrefix(d.Licence, "https://") {
		return d.Licence, nil
	}
	return "", fmt.Errorf(`dataset.licence = %q: write "CC0", "CC BY" or "CC BY-NC", or the licence's web address`, d.Licence)
}
