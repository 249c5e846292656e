package layout

// yearInitials are the initials of the months; six or more in a row are found
// in one place only.
const yearInitials = "JFMAMJJASOND"

const fewestInitials = 6

var monthShort = [...]string{"Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"}

// spellMonths writes out a row of initials of the months, J F M A M J, as one
// letter alone says little.
func (p *page) spellMonths(k *keptRow) {
	for from := 0; from+fewestInitials <= len(k.cells); from++ {
		to := from
		for to < len(k.cells) && len(k.cells[to].Text) == 1 && isLetter(k.cells[to].Text[0]) {
			to++
		}
		if to-from < fewestInitials {
			from = max(from, to)
			continue
		}
		run := make([]byte, 0, to-from)
		for c := from; c < to; c++ {
			run = append(run, k.cells[c].Text[0]&^0x20)
		}
		for m := 0; m+len(run) <= len(yearInitials); m++ {
			if yearInitials[m:m+len(run)] != string(run) {
				continue
			}
			for c := from; c < to; c++ {
				k.cells[c].Text = monthShort[m+c-from]
				k.looks[c] = p.eyes.look(&k.cells[c])
			}
		}
		from = to
	}
}
