package gridref_test

import (
	"errors"
	"fmt"

	"fieldfare/gridref"
)

func ExampleParse() {
	r, err := gridref.Parse("TL 483 812")
	if err != nil {
		fmt.Println(err)
		return
	}
	p := r.Square.Point()
	fmt.Printf("%s: %.7f, %.7f within %.1f m\n", r.Square, p.Lat, p.Lon, p.Uncertainty)
	// Output: TL483812: 52.4091617, 0.1795509 within 71.9 m
}

func ExampleParse_query() {
	r, _ := gridref.Parse("TLO512")
	fmt.Println(r.Square, r.Doubt.Code)
	fmt.Println(r.Doubt.Message)
	// Output:
	// TL0512 letter-for-figure
	// “TLO512” has a letter where a figure belongs, or the reverse (O and 0, I, l and 1, S and 5). It was read as TL0512; please confirm it.
}

func ExampleParse_fault() {
	_, err := gridref.Parse("TL 45 812")
	var fault *gridref.Fault
	if errors.As(err, &fault) {
		fmt.Println(fault.Message)
		fmt.Println(fault.Suggestions)
	}
	// Output:
	// “TL 45 812” splits its figures as 45 and 812; the easting and the northing must have the same number. A zero may have been lost.
	// [TL045812 TL450812]
}

func ExamplePoint_Smallest() {
	p := gridref.Point{Lat: 52.4091617, Lon: 0.1795509, Uncertainty: 500}
	s, _ := p.Smallest(p.Serving())
	fmt.Println(s)
	// Output: TL4881
}

func ExampleSquare_Tetrad() {
	r, _ := gridref.Parse("TL 483 812")
	tetrad, _ := r.Square.Tetrad()
	hectad, _ := r.Square.Hectad()
	fmt.Println(tetrad, hectad)
	// Output: TL48V TL48
}

func ExampleSquare_WKT() {
	r, _ := gridref.Parse("TL4881")
	fmt.Println(r.Square.WKT())
	// Output: POLYGON ((0.1742990 52.4070105, 0.1889880 52.4067393, 0.1894329 52.4157229, 0.1747408 52.4159942, 0.1742990 52.4070105))
}

func ExampleParseNumber() {
	r, _ := gridref.ParseNumber("TL 45 812")
	fmt.Println(r.Square, r.Doubt.Code)
	// Output: TL045812 spreadsheet-damage
}

func ExampleParseLatLon() {
	r, err := gridref.ParseLatLon("52° 24.55' N", "0° 10.77' W")
	if err != nil {
		fmt.Println(err)
		return
	}
	p := r.Centre()
	fmt.Printf("%.6f, %.6f within %.1f m\n", p.Lat, p.Lon, p.Uncertainty)
	// Output: 52.409167, -0.179500 within 21.8 m
}

func ExampleParseEastingNorthing() {
	r, err := gridref.ParseEastingNorthing("E 545312", "N 281245")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(r.Square)
	// Output: TL4531281245
}

func ExampleSquare_Coarsen() {
	r, _ := gridref.Parse("TL 483 812")
	blurred, err := r.Square.Coarsen(10_000)
	fmt.Println(blurred, err)
	// Output: TL48 <nil>
}

func ExampleSquare_Coarsen_nesting() {
	r, _ := gridref.Parse("TL48M")
	_, err := r.Square.Coarsen(5000)
	if errors.Is(err, gridref.ErrNesting) {
		fmt.Println(err)
	}
	// Output: the square lies across several squares of that size
}

func ExamplePlane_Square() {
	p := gridref.Plane{Grid: gridref.British, Easting: 548_999.9, Northing: 281_999.9}
	s, err := p.Square(1000)
	fmt.Println(s, err)
	// Output: TL4881 <nil>
}

func ExamplePoint_Serving() {
	for _, p := range []gridref.Point{{Lat: 52.41, Lon: 0.18}, {Lat: 53.35, Lon: -6.26}, {Lat: 49.45, Lon: -2.55}, {Lat: 48.86, Lon: 2.35}} {
		fmt.Println(p.Serving())
	}
	// Output:
	// British
	// Irish
	// Channel Islands
	// UTM 31N
}
