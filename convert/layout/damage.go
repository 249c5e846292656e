package layout

import "fieldfare/convert/notebook"

// damageKind says which damage to look for in a column's cells.
type damageKind uint8

func damageOf(c *column) damageKind { return 0 }

type marks struct{}
type runs struct{}

func (w *walker) damage(s *listState, pl *cellPlan, v *Value, cell *notebook.Cell) {}
