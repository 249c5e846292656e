package gridref

// Protocol returns words for Darwin Core's georeferenceProtocol that say how
// the reading became a point with an uncertainty.
func (r Reading) Protocol() string {
	const method = "point-radius method (Wieczorek et al. 2004; Chapman and Wieczorek 2020)"
	switch {
	case r.osgb36:
		return "latitude and longitude on OSGB36 as written, moved to ETRS89 by OSTN15"
	case r.Geographic() && r.Stated > 0:
		return "latitude and longitude as written, uncertainty as stated beside them"
	case r.Geographic():
		return "latitude and longitude as written; uncertainty from the figures given, " + method
	}
	s := "centre of the grid square, radius to its farthest corner; " + method
	switch r.Square.Transformation() {
	case OSTN15:
		s += "; OSGB36 to ETRS89 by OSTN15"
	case HelmertOSGB36:
		s += "; OSGB36 to WGS84 by the Helmert transformation EPSG:1314"
	case HelmertIrish:
		s += "; TM75 to WGS84 by the Helmert transformation EPSG:1954"
	}
	return s
}

// SRS returns the EPSG code of what was written, for Darwin Core's
// verbatimSRS: the grid's, or for latitude and longitude EPSG:4326, and
// EPSG:4277 where they were on OSGB36.
func (r Reading) SRS() string {
	if r.osgb36 {
		return "EPSG:4277"
	}
	if r.Geographic() {
		return "EPSG:4326"
	}
	return r.Square.Grid.SRS()
}

// CoordinateSystem returns words for Darwin Core's verbatimCoordinateSystem.
func (r Reading) CoordinateSystem() string {
	if r.Geographic() {
		return "latitude and longitude"
	}
	return r.Square.Grid.CoordinateSystem()
}
