package project

import (
	"fmt"
	"strings"

	"fieldfare/dwc"
)

// LicenceURL returns the licence as an address; empty where none is stated.
func (d Dataset) LicenceURL() (string, error) {
	if url, ok := dwc.LicenseURL(d.Licence); ok {
		return url, nil
	}
	if d.Licence == "" || strings.HasPrefix(d.Licence, "http://") || strings.HasPrefix(d.Licence, "https://") {
		return d.Licence, nil
	}
	return "", fmt.Errorf(`dataset.licence = %q: write "CC0", "CC BY" or "CC BY-NC", or the licence's web address`, d.Licence)
}
