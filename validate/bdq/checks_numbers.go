package bdq

// inRange is COMPLIANT where the term's value is a number within limits.
func inRange(term string, limits func(p *parameters) (low, high float64)) check {
	return orEmpty(term, func(_ *record, p *parameters, value string) Response {
		n, ok := number(value)
		if !ok {
			return unmet("is not a number")
		}
		low, high := limits(p)
		return verdict(n >= low && n <= high, "is in range", "is out of range")
	})
}

// depthInRange asks besides that the number be zero or more.
func depthInRange(term string) check {
	within := inRange(term, func(p *parameters) (float64, float64) { return p.depthFrom, p.depthTo })
	return func(r *record, p *parameters) Response {
		if n, ok := number(r.get(term)); ok && n < 0 {
			return unmet("is less than zero").of(term, r.get(term))
		}
		return within(r, p)
	}
}

func elevationInRange(term string) check {
	return inRange(term, func(p *parameters) (float64, float64) { return p.elevationFrom, p.elevationTo })
}

func degreesInRange(term string, limit float64) check {
	return inRange(term, func(*parameters) (float64, float64) { return -limit, limit })
}

func uncertaintyInRange() check {
	return orEmpty("dwc:coordinateUncertaintyInMeters", func(_ *record, _ *parameters, value string) Response {
		n, ok := number(value)
		return verdict(ok && n >= 1 && n <= halfEquator, "is in range", "is not a number from 1 to 20037509")
	})
}

// lessThan is COMPLIANT where the lower term's number is not above the upper's.
func lessThan(lower, upper string, belowZero bool) check {
	return func(r *record, _ *parameters) Response {
		var n [2]float64
		for i, term := range [...]string{lower, upper} {
			value := r.get(term)
			if isEmpty(value) {
				return unmet("is empty").of(term, "")
			}
			var ok bool
			if n[i], ok = number(value); !ok {
				return unmet("is not a number").of(term, value)
			}
			if n[i] < 0 && !belowZero {
				return unmet("is less than zero").of(term, value)
			}
		}
		return verdict(n[0] <= n[1], "is not above "+upper, "is above "+upper).of(lower, r.get(lower))
	}
}

func coordinatesNotZero(r *record, _ *parameters) Response {
	zero := true
	for _, term := range [...]string{"dwc:decimalLatitude", "dwc:decimalLongitude"} {
		value := r.get(term)
		if isEmpty(value) {
			return unmet("is empty").of(term, "")
		}
		n, ok := number(value)
		if !ok {
			return unmet("is not a number").of(term, value)
		}
		zero = zero && n == 0
	}
	return verdict(!zero, "latitude and longitude are not both zero", "latitude and longitude are both zero")
}

// verticalFromVerbatim proposes a lower and an upper value in metres from what
// was written.
func verticalFromVerbatim(lower, upper, verbatim string, belowZero bool) check {
	return func(r *record, _ *parameters) Response {
		for _, term := range [...]string{lower, upper} {
			if value := r.get(term); !isEmpty(value) {
				return unmet("is stated already").of(term, value)
			}
		}
		value := r.get(verbatim)
		if isEmpty(value) {
			return unmet("is empty").of(verbatim, "")
		}
		low, high, ok := interpretVertical(value, belowZero)
		if !ok {
			return notAmended("cannot be read as one value or one range with its unit").of(verbatim, value)
		}
		return filledIn("was read, in metres", Change{lower, low}, Change{upper, high}).of(verbatim, value)
	}
}

// occurrenceStatusAssumed fills in the default where nothing speaks of presence
// or absence. The standard's text ends the test with prerequisites not met
// where a status is stated; its cases (LineNumber 572 and 574) say not amended,
// and they are followed.
func occurrenceStatusAssumed(r *record, p *parameters) Response {
	const status = "dwc:occurrenceStatus"
	for _, term := range [...]string{status, "dwc:individualCount", "dwc:organismQuantity"} {
		if value := r.get(term); !isEmpty(value) {
			return notAmended("is stated").of(term, value)
		}
	}
	return filledIn("is not stated; the default is proposed", Change{status, p.occurrenceStatus}).of(status, "")
}
