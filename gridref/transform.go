package gridref

import "math"

// The projections: EPSG:19916 (British National Grid, on both ellipsoids),
// EPSG:19972 (Irish Grid) and EPSG:16000 (UTM, northern,
// central meridian left at zero).
var (
	britishOnETRS = newMercator(grs80, 49, -2, 0.9996012717, 400_000, -100_000)
	britishOnAiry = newMercator(airy, 49, -2, 0.9996012717, 400_000, -100_000)
	irishOnAiry   = newMercator(airyModified, 53.5, -8, 1.000035, 200_000, 250_000)
	utm           = newMercator(wgs84, 0, 0, 0.9996, 500_000, 0)

	// EPSG:1314, OSGB36 to WGS 84 (6), and EPSG:1954, TM75 to WGS 84 (2).
	osgbToWGS84  = newHelmert(446.448, -125.157, 542.06, 0.15, 0.247, 0.842, -20.489)
	irishToWGS84 = newHelmert(482.5, -130.6, 564.6, -1.042, -0.214, -0.631, 8.15)
)

// Transformation says how positions were moved between a grid and WGS84.
type Transformation uint8

// The transformations.
const (
	// NoDatumChange: the grid is on WGS84 itself.
	NoDatumChange Transformation = iota
	// OSTN15: the definitive shifts, within their cover.
	OSTN15
	// HelmertOSGB36: EPSG:1314, outside the cover of OSTN15.
	HelmertOSGB36
	// HelmertIrish: EPSG:1954.
	HelmertIrish
)

// String returns the transformation's name.
func (t Transformation) String() string {
	switch t {
	case OSTN15:
		return "OSTN15"
	case HelmertOSGB36:
		return "Helmert transformation EPSG:1314"
	case HelmertIrish:
		return "Helmert transformation EPSG:1954"
	}
	return "none"
}

// Accuracy returns the metres that the transformation itself may be wrong by,
// with the difference between ETRS89 and WGS84 where it ends in ETRS89.
//
// OSTN15 agrees with the old triangulation to 0.1 m (Ordnance Survey, "A guide
// to coordinate systems in Great Britain"). ETRS89 is fixed to the European
// plate, which moves by 2.5 cm a year, so it parted from WGS84 by 1 m in the
// forty years from 1989. The guide gives the Helmert transformation 5 m on
// land; at the rim of OSTN15, where it begins to be used, the two differ by up
// to 7 m, and 10 m are allowed. EPSG:1954 has 1 m.
func (t Transformation) Accuracy() float64 {
	const etrs89ToWGS84 = 1
	switch t {
	case OSTN15:
		return 0.1 + etrs89ToWGS84
	case HelmertOSGB36:
		return 10
	case HelmertIrish:
		return 1 + etrs89ToWGS84
	}
	return 0
}

// stretch bounds how much longer a distance can be on the WGS84 ellipsoid than
// on the grid's own, as a fraction. The OSTN15 shifts differ by at most 249 mm
// from one kilometre to the next in each of the four ways, which adds up to
// 0.476 m per kilometre; the Helmert transformations change scale and height.
func (t Transformation) stretch() float64 {
	switch t {
	case OSTN15:
		return 476e-6
	case HelmertOSGB36, HelmertIrish:
		return 60e-6
	}
	return 0
}

// geographic returns latitude and longitude on WGS84 in degrees.
func (p Plane) geographic() (lat, lon float64, via Transformation) {
	switch p.Grid {
	case British:
		if e, n, ok := fromBritish(p.Easting, p.Northing); ok {
			lat, lon = etrsDegrees(e, n)
			return lat, lon, OSTN15
		}
		lat, lon = britishOnAiry.unproject(p.Easting, p.Northing)
		lat, lon = degrees(osgbToWGS84.frame(airy, wgs84, lat, lon))
		return lat, lon, HelmertOSGB36
	case Irish:
		lat, lon = irishOnAiry.unproject(p.Easting, p.Northing)
		lat, lon = degrees(irishToWGS84.frame(airyModified, wgs84, lat, lon))
		return lat, lon, HelmertIrish
	case PolarNorth, PolarSouth:
		lat, lon = degrees(polarUnproject(p.Easting, p.Northing, p.Grid.South()))
		return lat, lon, NoDatumChange
	}
	north := p.Northing
	if p.Grid.South() {
		north -= falseSouth
	}
	lat, lon = degrees(utm.unproject(p.Easting, north))
	return lat, wrap(lon + centralMeridian(p.Grid)), NoDatumChange
}

// plane is the reverse of geographic.
func (g Grid) plane(lat, lon float64) Plane {
	rLat, rLon := radians(lat, lon)
	p := Plane{Grid: g}
	switch g {
	case British:
		e, n, ok := toBritish(etrsPlane(rLat, rLon))
		if !ok {
			rLat, rLon = osgbToWGS84.unframe(airy, wgs84, rLat, rLon)
			e, n = britishOnAiry.project(rLat, rLon)
		}
		p.Easting, p.Northing = e, n
	case Irish:
		rLat, rLon = irishToWGS84.unframe(airyModified, wgs84, rLat, rLon)
		p.Easting, p.Northing = irishOnAiry.project(rLat, rLon)
	case PolarNorth, PolarSouth:
		p.Easting, p.Northing = polarProject(rLat, rLon, g.South())
	default:
		p.Easting, p.Northing = utm.project(rLat, wrap(lon-centralMeridian(g))*degree)
		if g.South() {
			p.Northing += falseSouth
		}
	}
	return p
}

// leastScale returns a lower bound of the grid's scale over a strip.
func (g Grid) leastScale(west, east float64) float64 {
	switch g {
	case British:
		return britishOnAiry.leastScale(west, east)
	case Irish:
		return irishOnAiry.leastScale(west, east)
	case PolarNorth, PolarSouth:
		return polarScale
	}
	return utm.leastScale(west, east)
}

// centralMeridian returns a UTM grid's central meridian in degrees.
func centralMeridian(g Grid) float64 { return float64(6*g.Zone() - 183) }

// wrap brings a longitude in degrees into -180 to 180.
func wrap(lon float64) float64 {
	if lon >= -180 && lon <= 180 {
		return lon
	}
	return lon - 360*math.Floor((lon+180)/360)
}
