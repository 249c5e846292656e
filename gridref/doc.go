// Package gridref reads and writes grid references and turns them into
// geographic coordinates with an honest uncertainty, and back.
//
// # What it covers
//
// The British National Grid, the Irish Grid, the WA and WV squares of the
// Channel Islands, the Universal Transverse Mercator and Universal Polar
// Stereographic grids with the Military Grid Reference System on them, and
// latitude and longitude as people write them.
//
// [Parse] reads one value as written. A certain [Reading] has no Doubt; one that
// is likely but not certain carries a [Doubt]; what cannot be read is a
// [*Fault]. Each says in a sentence what was found and what would settle it.
// [ParseNumber], [ParseEastingNorthing] and [ParseLatLon] read values that were
// kept in separate columns.
//
// A [Square] is an area: its grid, its south-west corner in metres and its
// size. [Square.Point] gives its centre on WGS84 with the radius that
// reaches its farthest corner. [Point.Square] and [Point.Smallest] go back,
// always by truncation.
//
// Everything is a value; nothing is kept between calls, except that the
// OSTN15 shifts, which are embedded, are unpacked once on first use. There is
// no file and no network access.
//
// # Standards
//
//   - British National Grid: Ordnance Survey, "A guide to coordinate systems
//     in Great Britain"; EPSG:27700.
//   - OSTN15, the definitive transformation between ETRS89 and OSGB36:
//     Ordnance Survey, 2016; EPSG:7709. Copyright and licence are in
//     LICENCE-OSTN15.txt. Its ETRS89 plane is by Redfearn's series as the guide
//     prints it, to the sixth power of the longitude. Outside its cover the
//     seven-parameter transformation EPSG:1314 is used, and
//     Square.Transformation says so.
//   - Irish Grid: EPSG:29903 (TM75 / Irish Grid) with the transformation
//     EPSG:1954 to WGS84. The older EPSG:29902 (TM65) has the same projection
//     and the same published transformation.
//   - Transverse Mercator: L. Krüger, "Konforme Abbildung des Erdellipsoids in
//     der Ebene" (1912), in the form of C. F. F. Karney, "Transverse Mercator
//     with an accuracy of a few nanometers", Journal of Geodesy 85 (2011); also
//     IOGP Guidance Note 7-2, method 9807. The conformal latitude is by the
//     series of J. P. Snyder, "Map Projections: A Working Manual", USGS
//     Professional Paper 1395 (1987), equation 3-5, in the third flattening.
//   - Coordinate frame changes: IOGP Guidance Note 7-2, methods 9602
//     (geographic/geocentric) and 9606 (position vector).
//   - UTM, UPS and MGRS: NGA.SIG.0012_2.0.0_UTMUPS and NGA.STND.0037,
//     "Universal Grids and Grid Reference Systems".
//   - Uncertainty: the point-radius method, Wieczorek, Guo and Hijmans,
//     "The point-radius method for georeferencing locality descriptions",
//     International Journal of Geographical Information Science 18 (2004);
//     Chapman and Wieczorek, "Georeferencing Best Practices", GBIF (2020).
//   - Footprints: Well-Known Text, OGC 06-103r4, longitude before latitude.
//   - Tetrad letters (DINTY): common practice, no source.
package gridref
