package gridref

import "math"

// sines is a sum of c[j] sin(2(j+1)z), j from 0 to 3, written as sin(2z) times
// a polynomial in cos(2z), which has a shorter chain of steps than Clenshaw's
// rule.
type sines [4]float64

func newSines(c0, c1, c2, c3 float64) sines {
	return sines{c0 - c2, 2*c1 - 4*c3, 4 * c2, 8 * c3}
}

// real sums for a real angle by the sine and cosine of twice the angle.
func (p *sines) real(sin2, cos2 float64) float64 {
	return sin2 * (p[0] + p[1]*cos2 + cos2*cos2*(p[2]+p[3]*cos2))
}

// sum sums for xi + i eta and returns the real and imaginary parts. The
// arguments are the sines and cosines of twice the angles.
func (p *sines) sum(sin2, cos2, sinh2, cosh2 float64) (re, im float64) {
	wr, wi := cos2*cosh2, -sin2*sinh2
	vr, vi := wr*wr-wi*wi, 2*wr*wi
	hr, hi := p[2]+p[3]*wr, p[3]*wi
	qr, qi := p[0]+p[1]*wr+(vr*hr-vi*hi), p[1]*wi+(vr*hi+vi*hr)
	sr, si := sin2*cosh2, cos2*sinh2
	return sr*qr - si*qi, sr*qi + si*qr
}

// The functions below are Taylor series, good to a part in 10^15 where
// the argument is as small as they say.

// smallSincos is for angles below 0.005.
func smallSincos(x float64) (sin, cos float64) {
	x2 := x * x
	return x * (1 - x2*(1./6-x2*(1./120))), 1 - x2*(1./2-x2*(1./24))
}

// smallSinhCosh is for arguments below 0.005.
func smallSinhCosh(x float64) (sinh, cosh float64) {
	x2 := x * x
	return x * (1 + x2*(1./6+x2*(1./120))), 1 + x2*(1./2+x2*(1./24))
}

// smallAsin is for arguments below 0.02.
func smallAsin(x float64) float64 {
	x2 := x * x
	return x * (1 + x2*(1./6+x2*(3./40+x2*(15./336))))
}

// smallAtan is for arguments below 0.12.
func smallAtan(x float64) float64 { return x * oddInverses(-x*x) }

// smallAtanh is for arguments below 0.12.
func smallAtanh(x float64) float64 { return x * oddInverses(x*x) }

// oddInverses is 1 + y/3 + y^2/5 and so on to y^7/15.
func oddInverses(y float64) float64 {
	y2 := y * y
	return 1 + y*(1./3) + y2*(1./5+y*(1./7)) + y2*y2*(1./9+y*(1./11)+y2*(1./13+y*(1./15)))
}

// sinhCosh returns both hyperbolic functions of any argument.
func sinhCosh(x float64) (sinh, cosh float64) {
	if x2 := x * x; x2 < 0.03 {
		return x * (1 + x2*(1./6)*(1+x2*(1./20)*(1+x2*(1./42)*(1+x2*(1./72)*(1+x2*(1./110)))))),
			1 + x2*(1./2)*(1+x2*(1./12)*(1+x2*(1./30)*(1+x2*(1./56)*(1+x2*(1./90)))))
	}
	ex := math.Exp(x)
	return 0.5 * (ex - 1/ex), 0.5 * (ex + 1/ex)
}
