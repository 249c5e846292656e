package convert

import (
	"fieldfare/dwc"
	"fieldfare/gridref"
)

// countryNames are the names in English of the countries that the grids serve,
// by ISO 3166-1 alpha-2 code (names as in the Getty Thesaurus of Geographic
// Names, which Darwin Core recommends for country; from memory).
var countryNames = map[string]string{
	"GB": "United Kingdom", "IE": "Ireland", "IM": "Isle of Man", "JE": "Jersey", "GG": "Guernsey",
}

// country fills countryCode and country where the notebook does not state
// them: from the project file, else from the grid where it tells, for a point
// from the kilometre square that it lies in.
func (in *interpreter) country(o *dwc.Occurrence, r *gridref.Reading) {
	if o.CountryCode == "" && o.Country == "" {
		o.CountryCode = in.project.Dataset.Country
		if s := r.Square; o.CountryCode == "" {
			if r.Geographic() && r.Place.Uncertainty < 10_000 {
				s, _ = r.Place.Square(r.Place.Serving(), 1000)
			}
			o.CountryCode = countryOf(s)
		}
	}
	if o.Country == "" {
		o.Country = countryNames[o.CountryCode]
	}
}

// countryOf is the country of a square; empty where the grid does not tell.
// The British squares SC, and of NX the hectads 30 and 40, are the Isle of
// Man's, which is no part of the United Kingdom; Jersey lies south of 49.35
// degrees, and the rest of the Channel Islands north of it, in the bailiwick of
// Guernsey; east of Kent the grid runs on to the coast of France (from memory of
// the maps). The Irish Grid serves two countries.
func countryOf(s gridref.Square) string {
	const hectad = 10_000
	switch s.Grid {
	case gridref.British:
		east, north := s.Easting/hectad, s.Northing/hectad
		switch {
		case east >= 65 && north < 20: // the coast of France
			return ""
		case east/10 == 2 && north/10 == 4: // SC
			return "IM"
		case east/10 == 2 && north == 50 && (east == 23 || east == 24): // NX30, NX40
			if s.Size > hectad {
				return ""
			}
			return "IM"
		}
		return "GB"
	case gridref.ChannelIslands:
		if s.Size > hectad {
			return ""
		}
		if s.Point().Lat < 49.35 {
			return "JE"
		}
		return "GG"
	}
	return ""
}
