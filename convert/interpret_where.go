package convert

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"fieldfare/convert/layout"
	"fieldfare/convert/notebook"
	"fieldfare/convert/places"
	"fieldfare/convert/privacy"
	"fieldfare/convert/reading"
	"fieldfare/gridref"
)

// where reads the place: its name, its reference or coordinates, and what the
// places list knows of it.
func (in *interpreter) where(d *draft) {
	o := &d.o
	site, named := d.Get(layout.Site)
	var known places.Reading
	if !named {
		gap := d.absent(layout.Site, d.sheet.hasPlace)
		site = &gap
	}
	_, told := in.instead(site)
	if named || told {
		known = in.site(d, site)
		if known.Place != nil { // private, mapped or not
			d.facts.Blur = max(d.facts.Blur, in.privacy.place(known.Place))
		}
		for _, p := range known.Possible {
			d.facts.Blur = max(d.facts.Blur, in.privacy.place(p))
		}
	}
	in.areas(d)
	r, v, ok := in.reference(d, known)
	if !ok && d.refHeld {
		return
	}
	if !ok && told && d.read.place.value == nil {
		// The answer about a place may say where it is.
		if where, err := gridref.Parse(in.text(site)); err == nil {
			r, ok = where, true
		}
	}
	if ok && v == nil {
		// by the answer
	} else if !ok && known.Placed {
		r, ok = known.Where, true
		o.GeoreferenceSources = "places list"
		o.GeoreferenceRemarks = "the reference is that of the named place"
	} else if ok && known.Placed {
		in.agree(d, known, r, site, v)
	}
	if !ok {
		if d.states("dataGeneralizations") {
			return // whoever handed the record in took its place out, and says so
		}
		if !named && !told {
			in.note(d, reading.HeldOf("place-missing", "There is neither a place nor a grid reference. Give at least one of them, such as “Long Drove, TL 462 879”."), site)
		} else {
			in.note(d, reading.QueryOf("place-not-mapped", "The place has a name but no grid reference, so the record cannot be put on a map. Answer with its reference, or add the place to the places list."), site)
		}
		return
	}
	in.place(d, r)
	d.facts.AtSea = atSea(r)
	in.inAreas(d, r, v)
	in.private(d, known, r)
}

// reference reads the grid reference, or latitude and longitude, whichever
// the draft has, and keeps it as written. Known is the named site.
func (in *interpreter) reference(d *draft, known places.Reading) (r gridref.Reading, v *layout.Value, ok bool) {
	o := &d.o
	v, found := d.Get(layout.GridRef)
	lat, hasLat := d.Get(layout.Latitude)
	lon, hasLon := d.Get(layout.Longitude)
	switch {
	case found:
		o.VerbatimCoordinates = verbatim(v)
		d.read.place.value = v
		var verdict reading.Verdict
		r, verdict = in.memory.reference(v.Text, v.Kind == notebook.Number)
		verdict, asked := in.nearSite(d, verdict, v, known)
		if text, answered := in.insteadAt(d, v, asked); answered {
			r, verdict = in.memory.reference(text, false)
		}
		in.note(d, verdict, asked)
		if verdict.State == reading.Held {
			d.refHeld = true
			return r, v, false
		}
		return r, v, true
	case hasLat && hasLon:
		o.VerbatimLatitude, o.VerbatimLongitude = verbatim(lat), verbatim(lon)
		both := joined(", ", lat, lon)
		both.Meaning = layout.GridRef
		d.read.place.value = &both
		r, err := gridref.ParseLatLon(full(lat.Text, lat), full(lon.Text, lon))
		verdict, asked := in.nearSite(d, verdictOf(r, err), &both, known)
		if text, answered := in.insteadAt(d, &both, asked); answered {
			r, err = gridref.Parse(text)
			verdict = verdictOf(r, err)
		}
		in.note(d, verdict, asked, lon)
		if verdict.State == reading.Held {
			d.refHeld = true
			return r, &both, false
		}
		if u, found := d.Get(layout.Uncertainty); found {
			in.uncertainty(d, &r, u)
		}
		return r, &both, true
	case hasLat || hasLon:
		v := lat
		if hasLon {
			v = lon
		}
		in.noteRecord(d, reading.QueryOf("half-missing", "Of latitude and longitude only one is there. Give both."), v.Text, v)
	}
	return r, nil, false
}

// atSite is a reference beside the name of a place, where they are doubtful
// only together.
func (d *draft) atSite(v *layout.Value) *layout.Value {
	at := *v
	at.Text = verbatim(v) + " at " + d.o.Locality
	return &at
}

// full returns the digits that the cell holds where it shows fewer.
func full(text string, v *layout.Value) string {
	if v.Kind == notebook.Number && v.Raw != "" && text == v.Text {
		return v.Raw
	}
	return text
}

func verdictOf(r gridref.Reading, err error) reading.Verdict {
	if err != nil {
		if fault, ok := err.(*gridref.Fault); ok {
			return reading.HeldOf(fault.Code, fault.Message, fault.Suggestions...)
		}
		return reading.HeldOf("not-a-reference", err.Error())
	}
	if r.Doubt.Code != "" {
		candidate := r.Square.String()
		if r.Geographic() {
			candidate = fmt.Sprintf("%.5f, %.5f", r.Place.Lat, r.Place.Lon)
		}
		return reading.QueryOf(r.Doubt.Code, r.Doubt.Message, candidate)
	}
	return reading.Verdict{}
}

// uncertainty takes a stated radius in metres.
func (in *interpreter) uncertainty(d *draft, r *gridref.Reading, v *layout.Value) {
	text := strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(in.text(v)), "m"))
	metres, err := strconv.ParseFloat(text, 64)
	if err != nil || metres <= 0 || math.IsInf(metres, 0) {
		in.note(d, reading.QueryOf("uncertainty-unread", "“"+v.Text+"” is no number of metres above 0. The uncertainty is worked out from the figures of the coordinates instead."), v)
		return
	}
	r.Place.Uncertainty = metres
}

// place fills the terms of the location from what was read.
func (in *interpreter) place(d *draft, r gridref.Reading) {
	o := &d.o
	var g ground
	p := r.Place
	if !r.Geographic() {
		g = in.memory.square(r.Square)
		p = g.point
		p.Uncertainty = max(p.Uncertainty, r.Stated)
		o.DecimalLatitude, o.DecimalLongitude = g.lat, g.lon
	} else {
		o.DecimalLatitude, o.DecimalLongitude = privacy.Degrees(p.Lat), privacy.Degrees(p.Lon)
	}
	o.GeodeticDatum = "EPSG:4326"
	o.CoordinateUncertainty = strconv.FormatFloat(math.Ceil(p.Uncertainty), 'f', -1, 64)
	o.GeoreferenceProtocol = r.Protocol()
	o.VerbatimCoordSystem, o.VerbatimSRS = r.CoordinateSystem(), r.SRS()
	f := &d.facts
	f.Placed, f.Latitude, f.Longitude, f.Radius = true, p.Lat, p.Lon, float32(p.Uncertainty)
	if r.Geographic() {
		o.CoordinatePrecision = precision(o.VerbatimLatitude, o.VerbatimLongitude)
		in.country(o, &r)
		return
	}
	f.SquareSize, f.Reference = r.Square.Size, g.reference
	o.FootprintWKT, o.FootprintSRS = g.footprint, "EPSG:4326"
	if o.VerbatimCoordinates == "" {
		o.VerbatimCoordinates = g.reference
	}
	in.country(o, &r)
}

// precision is the last decimal of coordinates given as decimal degrees;
// empty where they are not, since a precision would be made up.
func precision(lat, lon string) string {
	a, okA := decimals(lat)
	b, okB := decimals(lon)
	if !okA || !okB {
		return ""
	}
	n := max(a, b)
	if n == 0 {
		return "1"
	}
	return "0." + strings.Repeat("0", n-1) + "1"
}

func decimals(s string) (int, bool) {
	s = strings.TrimSpace(s)
	if _, err := strconv.ParseFloat(s, 64); err != nil {
		return 0, false
	}
	_, fraction, _ := strings.Cut(s, ".")
	return min(len(fraction), 9), true
}

// areas reads county, vice-county and country.
func (in *interpreter) areas(d *draft) {
	o := &d.o
	county, stated := d.Get(layout.County)
	if stated {
		o.County = in.text(county)
	}
	if v, found := d.Get(layout.ViceCounty); found {
		if !stated {
			o.County = viceCounty(in.text(v))
		} else {
			o.HigherGeography = viceCounty(in.text(v))
		}
	}
	if v, found := d.Get(layout.Country); found {
		text := in.text(v)
		if len(text) == 2 {
			o.CountryCode = strings.ToUpper(text)
		} else {
			o.Country = text
		}
	}
	if v, found := d.Get(layout.Elevation); found {
		o.VerbatimElevation = v.Text
		in.elevation(d, v)
	}
}

// viceCounty writes a bare number out, so that it can be told for what it is.
func viceCounty(text string) string {
	for i := range len(text) {
		if text[i] < '0' || text[i] > '9' {
			return text
		}
	}
	return "vice-county " + text
}

// elevation fills the metres where the text is a plain number of them.
func (in *interpreter) elevation(d *draft, v *layout.Value) {
	text := strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(in.text(v)), "m"))
	if _, err := strconv.ParseFloat(text, 64); err == nil && !strings.Contains(strings.ToLower(v.Heading), "f") {
		d.o.MinimumElevation, d.o.MaximumElevation = text, text
	}
}
