package layout

import (
	"strings"

	"fieldfare/convert/reading"
)

// squareAndFigures finds two columns of references that make one: the square
// in one, “TL48”, and the figures alone in the other, “453812”.
func (b *block) squareAndFigures() (square, figures *column) {
	for i := range b.cols {
		c := &b.cols[i]
		if !c.used() || c.master != i || c.meaning != GridRef || c.part != whole || c.fixed || c.stats.n == 0 {
			continue
		}
		switch {
		case c.stats.share(lookGrid) >= 0.8 && c.stats.figures() <= 4 && square == nil:
			square = c
		case c.stats.share(lookGrid) == 0 && (c.stats.refFigures() >= 0.8 || c.stats.tetrads()) && figures == nil:
			figures = c
		}
	}
	if square == nil || figures == nil {
		return nil, nil
	}
	return square, figures
}

// tetrads reports whether all cells are letters of tetrads, A to Z without O.
func (s *stats) tetrads() bool {
	for t := range s.distinct {
		if len(t) != 1 || t[0] < 'A' || t[0] > 'Z' || t[0] == 'O' {
			return false
		}
	}
	return s.n > 0
}

// figuresInSquare writes figures with the letters of their square, and holds
// them where they lie outside it.
func figuresInSquare(square, figures string) (string, reading.Verdict) {
	bare := strings.ReplaceAll(square, " ", "")
	letters := 0
	for letters < len(bare) && isLetter(bare[letters]) {
		letters++
	}
	in := bare[letters:]
	half, k := len(figures)/2, len(in)/2
	if letters > 0 && allDigits(in) && len(in)%2 == 0 && len(figures)%2 == 0 && k <= half &&
		strings.HasPrefix(figures[:half], in[:k]) && strings.HasPrefix(figures[half:], in[k:]) {
		return bare[:letters] + figures, reading.Verdict{}
	}
	return square + " " + figures, reading.HeldOf("square-and-figures-differ",
		"The figures “"+figures+"” do not lie in the square “"+square+"”. Please write the whole reference.")
}
