package dwc

import "strings"

// license is one of the three licences that biological records usually bear.
// Names and identifiers are those of the SPDX licence list
// (https://spdx.org/licenses/), URLs those of Creative Commons' legal codes.
type license struct {
	url, name, spdx string
	// path is what the URL has after the host.
	path string
	// short are forms people write, in lower case without spaces, hyphens,
	// underscores and full stops.
	short []string
}

var licenses = []license{
	{
		url:  "http://creativecommons.org/publicdomain/zero/1.0/legalcode",
		name: "Creative Commons Zero v1.0 Universal", spdx: "CC0-1.0",
		path:  "publicdomain/zero/1.0",
		short: []string{"cc0", "cc010", "cczero", "creativecommonszero", "publicdomain"},
	},
	{
		url:  "http://creativecommons.org/licenses/by/4.0/legalcode",
		name: "Creative Commons Attribution 4.0 International", spdx: "CC-BY-4.0",
		path:  "licenses/by/4.0",
		short: []string{"ccby", "ccby40", "creativecommonsattribution"},
	},
	{
		url:  "http://creativecommons.org/licenses/by-nc/4.0/legalcode",
		name: "Creative Commons Attribution Non Commercial 4.0 International", spdx: "CC-BY-NC-4.0",
		path:  "licenses/by-nc/4.0",
		short: []string{"ccbync", "ccbync40", "creativecommonsattributionnoncommercial"},
	},
}

// LicenseURL returns the URL of one of the three usual licences, as the term
// license holds it, from that URL in any of its forms or from its short name:
// "CC0", "CC BY 4.0", "cc-by-nc". Without a version, the present one is meant:
// 1.0 of CC0, 4.0 of the others.
func LicenseURL(nameOrURL string) (url string, ok bool) {
	if l := licenseFor(nameOrURL); l != nil {
		return l.url, true
	}
	return "", false
}

func licenseFor(nameOrURL string) *license {
	folded := foldIRI(nameOrURL)
	path, isURL := strings.CutPrefix(strings.TrimPrefix(folded, "www."), "creativecommons.org/")
	if isURL {
		path, _, _ = strings.Cut(path, "#")
		path = strings.TrimSuffix(path, "/")
		for _, last := range []string{"/legalcode", "/deed", "/legalcode.en", "/deed.en", "/legalcode.txt"} {
			path = strings.TrimSuffix(path, last)
		}
	}
	short := strings.NewReplacer(" ", "", "-", "", "_", "", ".", "").Replace(folded)
	short = strings.TrimSuffix(strings.TrimSuffix(short, "universal"), "international")
	for i := range licenses {
		l := &licenses[i]
		if isURL && path == l.path {
			return l
		}
		for _, s := range l.short {
			if !isURL && short == s {
				return l
			}
		}
	}
	return nil
}
