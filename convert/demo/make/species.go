package main

// species is one kind on the demonstration list: its names, the months in
// which it flies (from memory, for the demonstration only) and the most that
// come to one night or walk.
type species struct {
	scientific, vernacular string
	from, to, most         int
}

func (s species) flies(month int) bool { return s.from <= month && month <= s.to }

var lightTrap = []species{
	{"Orthosia gothica", "Hebrew Character", 3, 5, 9},
	{"Orthosia cerasi", "Common Quaker", 3, 4, 14},
	{"Orthosia incerta", "Clouded Drab", 3, 5, 6},
	{"Orthosia cruda", "Small Quaker", 3, 4, 8},
	{"Selenia dentaria", "Early Thorn", 4, 5, 3},
	{"Xanthorhoe fluctuata", "Garden Carpet", 5, 9, 3},
	{"Opisthograptis luteolata", "Brimstone Moth", 5, 9, 4},
	{"Spilosoma lubricipeda", "White Ermine", 5, 6, 6},
	{"Spilosoma lutea", "Buff Ermine", 5, 7, 5},
	{"Laothoe populi", "Poplar Hawk-moth", 5, 7, 3},
	{"Deilephila elpenor", "Elephant Hawk-moth", 6, 7, 5},
	{"Phalera bucephala", "Buff-tip", 6, 7, 5},
	{"Agrotis exclamationis", "Heart and Dart", 5, 7, 30},
	{"Agrotis puta", "Shuttle-shaped Dart", 5, 9, 8},
	{"Ochropleura plecta", "Flame Shoulder", 5, 9, 6},
	{"Lacanobia oleracea", "Bright-line Brown-eye", 6, 7, 4},
	{"Abrostola tripartita", "Spectacle", 6, 8, 2},
	{"Apamea monoglypha", "Dark Arches", 6, 8, 18},
	{"Idaea aversata", "Riband Wave", 6, 8, 5},
	{"Campaea margaritaria", "Light Emerald", 6, 8, 2},
	{"Ourapteryx sambucaria", "Swallow-tailed Moth", 7, 7, 3},
	{"Euthrix potatoria", "Drinker", 7, 8, 5},
	{"Noctua pronuba", "Large Yellow Underwing", 6, 9, 40},
	{"Noctua comes", "Lesser Yellow Underwing", 7, 9, 8},
	{"Mythimna pallens", "Common Wainscot", 6, 9, 6},
	{"Mythimna impura", "Smoky Wainscot", 7, 8, 7},
	{"Cosmia trapezina", "Dun-bar", 7, 8, 5},
	{"Crocallis elinguaria", "Scalloped Oak", 7, 8, 3},
	{"Xestia c-nigrum", "Setaceous Hebrew Character", 8, 10, 25},
	{"Xestia xanthographa", "Square-spot Rustic", 8, 9, 16},
	{"Peribatodes rhomboidaria", "Willow Beauty", 7, 8, 4},
	{"Hydraecia micacea", "Rosy Rustic", 8, 10, 3},
	{"Ennomos alniaria", "Canary-shouldered Thorn", 8, 9, 3},
	{"Omphaloscelis lunosa", "Lunar Underwing", 9, 10, 20},
	{"Phlogophora meticulosa", "Angle Shades", 5, 10, 3},
	{"Autographa gamma", "Silver Y", 6, 9, 5},
	{"Allophyes oxyacanthae", "Green-brindled Crescent", 10, 10, 4},
}

var butterflies = []species{
	{"Gonepteryx rhamni", "Brimstone", 4, 8, 6},
	{"Anthocharis cardamines", "Orange-tip", 4, 6, 8},
	{"Pararge aegeria", "Speckled Wood", 4, 9, 9},
	{"Pieris napi", "Green-veined White", 4, 9, 12},
	{"Aglais io", "Peacock", 4, 9, 7},
	{"Maniola jurtina", "Meadow Brown", 6, 8, 40},
	{"Aphantopus hyperantus", "Ringlet", 6, 7, 25},
	{"Vanessa atalanta", "Red Admiral", 6, 9, 4},
}
