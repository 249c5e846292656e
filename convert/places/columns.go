package places

// Columns says where a places list keeps what, counted from 0; -1 where there
// is no such column.
type Columns struct {
	Name, Other, Reference, ViceCounty, County, Private, BlurTo int
}

// FindColumns finds the columns by their headings. Without a name column the
// list cannot be used.
func FindColumns(header []string) Columns {
	c := Columns{-1, -1, -1, -1, -1, -1, -1}
	for i, h := range header {
		var to *int
		switch fold(h) {
		case "name", "site", "place", "sitename", "placename", "locality", "location":
			to = &c.Name
		case "other", "othernames", "othername", "otherspellings", "otherspelling", "alsowritten", "alsoknownas", "aliases", "alias", "spellings", "variants", "formername", "formernames":
			to = &c.Other
		case "reference", "gridreference", "gridref", "mapref", "mapreference", "gr", "ngr", "osgridref", "osgridreference", "square", "nationalgridreference", "osgr", "osref":
			to = &c.Reference
		case "vicecounty", "vc", "vicecounties", "vcno", "vcnumber", "vicecountynumber", "watsonianvicecounty":
			to = &c.ViceCounty
		case "county", "admincounty", "administrativecounty":
			to = &c.County
		case "private", "confidential", "sensitive", "hide", "hidden", "secret", "withhold", "blur":
			to = &c.Private
		case "blurto", "squaremetres", "blurtometres", "blurmetres", "showas", "blursquare", "showasmetres":
			to = &c.BlurTo
		default:
			continue
		}
		if *to < 0 {
			*to = i
		}
	}
	return c
}
