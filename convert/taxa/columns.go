package taxa

import (
	"strings"
	"unicode"
)

// field is what a column of a list means.
type field uint8

const (
	noField field = iota
	fID
	fNameID
	fName // scientific name, with or without authorship
	fAuthor
	fYear
	fRank
	fVernacular
	fNumber
	fAcceptedID
	fAccepted // the accepted name, as text
	fStatus
	fParentID
	fParent
	fSynonyms
	fKingdom
	fPhylum
	fClass
	fOrder
	fSuperfamily
	fFamily
	fSubfamily
	fTribe
	fGenus
	fSubgenus
	fEpithet
	fInfra
	fCode
	fGroup
	fMonths
	fFirstMonth
	fLastMonth
	fEggMonths
	fLarvaMonths
	fPupaMonths
	fMost // the highest count to be expected
	fSensitive
	fNeeds
	fNeedsNote
	fNeedsSpecimen
	fSpecies // "Species": an epithet beside a genus column, else a name
	fNameAny // "Name": the scientific name unless another column is it
	fieldCount
)

// headings are the words for each meaning, in the folded form of headingKey.
var headings = map[field][]string{
	fID:            {"taxonid", "id", "taxonkey", "nameid", "taxonconceptid", "uuid", "guid", "key", "identifier", "taxonidentifier"},
	fNameID:        {"scientificnameid"},
	fName:          {"scientificname", "taxon", "taxonname", "latinname", "latin", "binomial", "binomialname", "canonicalname", "scientific", "speciesname", "fullname", "scientificnamewithoutauthorship", "botanicalname", "zoologicalname", "systematicname", "taxa", "linnaeanname", "nominalname", "recommendedscientificname"},
	fNameAny:       {"name", "names", "listname"},
	fSpecies:       {"species", "sp"},
	fAuthor:        {"scientificnameauthorship", "authorship", "author", "authors", "authority", "authorities", "authorandyear", "authoranddate", "authoryear", "nameauthor", "describer", "authorsanddate", "authoritydate"},
	fYear:          {"year", "namepublishedinyear", "dateofname", "authoryearonly", "yeardescribed"},
	fRank:          {"taxonrank", "rank", "level", "taxonlevel"},
	fVernacular:    {"vernacularname", "vernacularnames", "vernacular", "vernaculars", "englishname", "englishnames", "english", "commonname", "commonnames", "common", "popularname", "localname", "nameenglish", "englishvernacular", "preferredcommonname", "vernacularnameenglish", "commonnameenglish", "everydayname", "englishcommonname", "otherenglishnames", "otherenglishname", "othervernacularnames", "othervernacularname", "othercommonnames", "othercommonname", "alternativeenglishname", "alternativeenglishnames", "alternativecommonname", "alternativevernacularname"},
	fNumber:        {"no", "number", "checklistnumber", "checklistno", "checklistcode", "listnumber", "listno", "speciesnumber", "speciesno", "taxonnumber", "taxonno", "num", "nr", "code", "speciescode", "taxoncode", "shortcode", "ref", "refno", "cataloguenumber", "catalogno", "lognumber", "logno", "codenumber", "codeno"},
	fAcceptedID:    {"acceptednameusageid", "acceptedid", "acceptedtaxonid", "acceptednameid", "acceptedkey", "validid", "synonymofid", "currentid", "preferredid", "acceptednameusagekey", "acceptedtaxonkey"},
	fAccepted:      {"acceptednameusage", "acceptedname", "synonymof", "validname", "currentname", "preferredname", "acceptedscientificname", "acceptedtaxon", "recommendedname", "nowknownas", "nowcalled", "see", "useinstead", "correctname", "currentscientificname", "seeunder", "referto", "issynonymof", "synof", "accepted", "nownamed", "now"},
	fStatus:        {"taxonomicstatus", "status", "namestatus", "usage", "taxonstatus", "nametype"},
	fParentID:      {"parentnameusageid", "parentid", "parenttaxonid", "parentkey", "highertaxonid"},
	fParent:        {"parentnameusage", "parent", "parentname", "parenttaxon", "partofaggregate", "aggregate", "agg", "aggregatename", "memberof", "partof"},
	fSynonyms:      {"synonyms", "synonym", "oldnames", "oldname", "formernames", "formername", "othernames", "othername", "alsoknownas", "alternativenames", "alternativename", "previousnames", "previousname", "aka", "formerly", "othersci", "otherscientificnames", "oldlatinname", "oldlatinnames", "synonymy", "latinsynonyms", "scientificsynonyms"},
	fKingdom:       {"kingdom"},
	fPhylum:        {"phylum", "division"},
	fClass:         {"class"},
	fOrder:         {"order", "ordername", "taxonorder"},
	fSuperfamily:   {"superfamily"},
	fFamily:        {"family", "familyname"},
	fSubfamily:     {"subfamily"},
	fTribe:         {"tribe"},
	fGenus:         {"genus", "genusname", "genericname", "generic"},
	fSubgenus:      {"subgenus", "infragenericepithet"},
	fEpithet:       {"specificepithet", "epithet", "speciesepithet", "trivialname", "specificname", "specific"},
	fInfra:         {"infraspecificepithet", "subspecies", "infraspecies", "subspecificepithet", "ssp", "race"},
	fCode:          {"nomenclaturalcode", "nomencode", "codeofnomenclature"},
	fGroup:         {"group", "taxongroup", "groupname", "taxonomicgroup", "informalgroup", "majorgroup", "category", "speciesgroup"},
	fMonths:        {"flightmonths", "flight", "flightperiod", "months", "season", "flies", "onthewing", "flighttime", "flightseason", "adultmonths", "adults", "adultflight", "seasonmonths", "monthsofflight", "whenseen", "flyingtime", "flighttimes", "adultperiod", "phenology", "month", "expectedmonths", "flightmonth"},
	fFirstMonth:    {"firstmonth", "flightstart", "startmonth", "frommonth", "flightfrom", "earliestmonth", "seasonstart", "monthfrom", "fliesfrom"},
	fLastMonth:     {"lastmonth", "flightend", "endmonth", "tomonth", "flightto", "latestmonth", "seasonend", "monthto", "fliesto", "fliesuntil"},
	fEggMonths:     {"eggs", "egg", "ova", "ovum", "eggmonths", "eggsmonths", "ovamonths", "monthsofeggs", "eggseason", "eggperiod"},
	fLarvaMonths:   {"larvae", "larva", "larval", "larvalmonths", "larvamonths", "larvaemonths", "monthsoflarvae", "larvalseason", "larvalperiod", "caterpillar", "caterpillars", "caterpillarmonths", "caterpillarseason", "feedingmonths", "minemonths", "mines"},
	fPupaMonths:    {"pupae", "pupa", "pupal", "pupalmonths", "pupamonths", "pupaemonths", "monthsofpupae", "pupalseason", "pupalperiod"},
	fMost:          {"maximumcount", "maxcount", "highestcount", "largestcount", "mostexpected", "maximumexpected", "maxexpected", "expectedmaximum", "usualmaximum", "countmaximum", "countlimit", "mostcounted"},
	fSensitive:     {"sensitive", "sensitiveto", "sensitivity", "blur", "blurto", "showto", "sensitivesquare", "sensitiveresolution", "sensitivesquaresize", "squaresize", "sensitivem", "sensitivetom", "sensitivemetres", "generaliseto", "generalise", "maximumresolution", "finestsquare", "publicresolution", "sensitivespecies", "confidential", "blursize", "publishedresolution"},
	fNeeds:         {"needs", "evidence", "evidenceneeded", "requires", "proof", "needed", "evidencerequired", "requirement", "requirements", "verification", "acceptedwith", "identificationrequirements", "toaccept", "proofneeded"},
	fNeedsNote:     {"needsnote", "needsnotes", "noteneeded", "needsdescription", "descriptionneeded", "descriptionrequired", "needsanote", "noterequired"},
	fNeedsSpecimen: {"needsspecimen", "specimenneeded", "specimenrequired", "needsvoucher", "voucherneeded", "voucherrequired", "dissect", "dissection", "needsaspecimen", "specimen", "voucher", "gendet", "dissectionneeded", "dissectionrequired", "needsdissection"},
}

var fieldOfHeading = func() map[string]field {
	m := make(map[string]field)
	for f, words := range headings {
		for _, w := range words {
			m[w] = f
		}
	}
	return m
}()

// headingKey folds a heading: letters only, in lower case, without the
// address that a term's full name begins with, units and remarks in brackets.
func headingKey(s string) string {
	if i := strings.LastIndexAny(s, "/#:"); i >= 0 && strings.Contains(s[:i+1], ":") {
		s = s[i+1:]
	}
	if i := strings.IndexAny(s, "(["); i > 0 {
		s = s[:i]
	}
	var b strings.Builder
	for _, r := range strings.ToLower(s) {
		if unicode.IsLetter(r) {
			b.WriteRune(r)
		} else if r == '#' && b.Len() == 0 {
			b.WriteString("no")
		}
	}
	return b.String()
}

// columns says what each column of a list means; months holds the columns
// that are one month each.
type columns struct {
	of     []field
	months map[int]int
	names  int // column of the scientific name, or -1 where genus and epithet make it
}

// recognise reads a row as headings. known is the number of columns with a
// meaning; ok is true where they are enough for a list: something names the
// taxon.
func recognise(row []string) (c columns, known int, ok bool) {
	c = columns{of: make([]field, len(row)), months: map[int]int{}, names: -1}
	has := map[field]int{}
	monthColumns := map[int]int{}
	for i, h := range row {
		k := headingKey(h)
		if k == "" {
			if strings.TrimSpace(h) == "#" {
				k = "no"
			} else {
				continue
			}
		}
		f := fieldOfHeading[k]
		if f == noField && len(k) <= 9 {
			if m := monthOf(k); m > 0 && len(k) >= 3 {
				monthColumns[i] = m
				continue
			}
		}
		if f == noField {
			f = headingByWords(h)
		}
		if f == noField {
			continue
		}
		if _, twice := has[f]; twice && f != fVernacular && f != fSynonyms {
			continue
		}
		has[f] = i
		c.of[i] = f
		known++
	}
	if len(monthColumns) == 12 {
		c.months = monthColumns
		known += 12
	}
	ok = c.settleNames(has)
	return c, known, ok
}

// settleNames decides, of the columns that have been recognised, which names
// the taxa: a column headed "species" may hold names or epithets. It tells
// whether something does.
func (c *columns) settleNames(has map[field]int) bool {
	col := func(f field) int {
		if i, there := has[f]; there {
			return i
		}
		return -1
	}
	species, genus := col(fSpecies), col(fGenus)
	switch {
	case col(fName) >= 0:
		c.names = col(fName)
		if species >= 0 && genus >= 0 {
			c.of[species] = fEpithet
		} else if species >= 0 {
			c.of[species] = noField
		}
		if a := col(fNameAny); a >= 0 {
			c.of[a] = fVernacular
		}
	case species >= 0 && genus >= 0:
		c.of[species] = fEpithet
		if a := col(fNameAny); a >= 0 {
			c.of[a] = fVernacular
			if col(fVernacular) >= 0 {
				c.of[a] = noField
			}
		}
	case species >= 0:
		c.of[species] = fName
		c.names = species
		if a := col(fNameAny); a >= 0 {
			c.of[a] = fVernacular
		}
	case col(fNameAny) >= 0:
		c.names = col(fNameAny)
		c.of[c.names] = fName
	case col(fEpithet) >= 0 && genus >= 0:
	case col(fAccepted) >= 0:
		// "Accepted name" with no other name beside it is the name itself.
		c.names = col(fAccepted)
		c.of[c.names] = fName
	case col(fVernacular) >= 0 && genus >= 0:
	}
	return c.names >= 0 || genus >= 0 && (col(fEpithet) >= 0 || species >= 0)
}

// headingByWords finds the meaning of a heading of several words by the words
// that matter.
func headingByWords(h string) field {
	h = " " + strings.ToLower(strings.Join(strings.FieldsFunc(h, func(r rune) bool { return !unicode.IsLetter(r) }), " ")) + " "
	has := func(words ...string) bool {
		for _, w := range words {
			if !strings.Contains(h, " "+w+" ") {
				return false
			}
		}
		return true
	}
	switch {
	case has("foodplant"), has("food"), has("host"), has("plant"), has("plants"), has("foodplants"), has("on"):
		return noField
	case has("synonym", "of"), has("accepted", "name"), has("valid", "name"), has("current", "name"):
		return fAccepted
	case has("synonyms"), has("old", "name"), has("old", "names"), has("former", "name"):
		return fSynonyms
	case has("english"), has("vernacular"), has("common", "name"):
		return fVernacular
	case has("scientific", "name"), has("latin", "name"), has("latin"):
		return fName
	case has("larvae"), has("larva"), has("larval"), has("caterpillar"), has("caterpillars"):
		return fLarvaMonths
	case has("pupae"), has("pupa"), has("pupal"):
		return fPupaMonths
	case has("eggs"), has("ova"), has("egg", "months"):
		return fEggMonths
	case has("flight"), has("months"):
		return fMonths
	case has("sensitive"), has("blur"):
		return fSensitive
	case has("specimen"), has("voucher"), has("dissection"):
		return fNeedsSpecimen
	case has("evidence"), has("needs"):
		return fNeeds
	case has("checklist", "number"), has("checklist", "no"):
		return fNumber
	case has("authority"), has("author"):
		return fAuthor
	case has("taxon", "name"), has("species", "name"):
		return fName
	}
	return noField
}
