package notebook

import (
	"bufio"
	"context"
	"encoding/json"
	"errors"
	"io"
	"os"
	"slices"
	"strconv"
)

// openGeoJSON opens a FeatureCollection (RFC 7946): each feature is a row,
// its properties the cells. Where the properties do not say where a feature
// is, its point does.
func openGeoJSON(ctx context.Context, src *source, _ Options) (*Book, error) {
	s := &geoSheet{src: src, ctx: ctx}
	known := map[string]bool{}
	points, other := false, false
	err := s.features(func(f *feature) error {
		for h := range f.Properties {
			if !known[h] {
				known[h] = true
				s.heads = append(s.heads, h)
			}
		}
		_, _, isPoint := f.point()
		points = points || isPoint
		other = other || !isPoint && f.Geometry != nil
		return nil
	})
	if err != nil {
		return nil, err
	}
	slices.Sort(s.heads)
	s.points = points && !slices.Contains(s.heads, "decimalLatitude")
	if s.points {
		s.heads = append(s.heads, "decimalLatitude", "decimalLongitude")
	}
	b := &Book{}
	if other && !slices.Contains(s.heads, "footprintWKT") {
		b.addNote("Some features are lines or areas; where they lie was not read.")
	}
	b.add(s, len(s.heads) > 0)
	if err := b.notEmpty(); err != nil {
		return nil, err
	}
	return b, nil
}

// feature is one feature of a collection.
type feature struct {
	Type     string
	Geometry *struct {
		Type        string
		Coordinates json.RawMessage
	}
	Properties map[string]any
}

// point returns the coordinates of a feature that is a point, as written.
func (f *feature) point() (lat, lon string, ok bool) {
	if f.Geometry == nil || f.Geometry.Type != "Point" {
		return "", "", false
	}
	var at []json.Number
	if json.Unmarshal(f.Geometry.Coordinates, &at) != nil || len(at) < 2 {
		return "", "", false
	}
	return at[1].String(), at[0].String(), true
}

// geoSheet is the one page of a collection.
type geoSheet struct {
	src    *source
	ctx    context.Context
	heads  []string
	points bool // the last two columns are those of the points
}

func (s *geoSheet) File() string         { return s.src.path }
func (s *geoSheet) Name() string         { return "" }
func (s *geoSheet) Hidden() bool         { return false }
func (s *geoSheet) HiddenColumns() []int { return nil }

// Walk yields the names of the properties as row 1, then a row a feature.
func (s *geoSheet) Walk(fn func(*Row) error) error {
	row := Row{Number: 1}
	for _, h := range s.heads {
		row.Cells = append(row.Cells, textCell(h))
	}
	if err := fn(&row); err != nil {
		return err
	}
	var stopped error
	err := s.features(func(f *feature) error {
		row.Number++
		row.Cells = row.Cells[:0]
		lat, lon, _ := f.point()
		for i, h := range s.heads {
			switch {
			case s.points && i == len(s.heads)-2:
				row.Cells = append(row.Cells, textCell(lat))
			case s.points && i == len(s.heads)-1:
				row.Cells = append(row.Cells, textCell(lon))
			default:
				row.Cells = append(row.Cells, textCell(propertyText(f.Properties[h])))
			}
		}
		stopped = fn(&row)
		return stopped
	})
	return s.src.ended("", stopped, err)
}

// propertyText is a property as text.
func propertyText(v any) string {
	switch v := v.(type) {
	case nil:
		return ""
	case string:
		return validText([]byte(v))
	case json.Number:
		return v.String()
	case bool:
		return strconv.FormatBool(v)
	}
	b, err := json.Marshal(v)
	if err != nil {
		return ""
	}
	return string(b)
}

// features yields the features of the collection one by one.
func (s *geoSheet) features(fn func(*feature) error) error {
	file, err := os.Open(s.src.real)
	if err != nil {
		return err
	}
	defer file.Close()
	in := bufio.NewReader(&contextReader{s.ctx, file})
	if mark, err := in.Peek(3); err == nil && string(mark) == "\xef\xbb\xbf" {
		if _, err := in.Discard(3); err != nil {
			return err
		}
	}
	d := json.NewDecoder(in)
	d.UseNumber()
	if t, err := d.Token(); err != nil || t != json.Delim('{') {
		return s.src.refuse(kindJSON)
	}
	found := false
	for d.More() {
		key, err := d.Token()
		if err != nil {
			return s.broken(err)
		}
		if key != "features" {
			var skip json.RawMessage
			if err := d.Decode(&skip); err != nil {
				return s.broken(err)
			}
			continue
		}
		if t, err := d.Token(); err != nil || t != json.Delim('[') {
			return s.src.refuse(kindJSON)
		}
		found = true
		for d.More() {
			var f feature
			if err := d.Decode(&f); err != nil {
				return s.broken(err)
			}
			if err := fn(&f); err != nil {
				return err
			}
		}
		if _, err := d.Token(); err != nil {
			return s.broken(err)
		}
	}
	if _, err := d.Token(); err != nil {
		return s.broken(err)
	}
	if !found {
		return s.src.refuse(kindJSON)
	}
	return nil
}

// broken is the trouble of JSON that cannot be read on.
func (s *geoSheet) broken(err error) error {
	var syntax *json.SyntaxError
	var kind *json.UnmarshalTypeError
	if errors.As(err, &syntax) || errors.As(err, &kind) || errors.Is(err, io.ErrUnexpectedEOF) || errors.Is(err, io.EOF) {
		return &Problem{Found: "it is GeoJSON that breaks off or is damaged", Advice: "Save it again, or go back to the notebook that it was made from", Cause: err}
	}
	return err
}
