package layout

import "strings"

// part says which part of a joined value a column holds.
type part uint8

const (
	whole part = iota
	partDay
	partMonth
	partYear
	partWeekday
	partEasting
	partNorthing
	partLetters
	partFigures
	partGenus
	partEpithet
	partSubspecies
)

var partNames = map[part]string{partDay: "day", partMonth: "month", partYear: "year", partWeekday: "weekday",
	partEasting: "easting", partNorthing: "northing", partLetters: "grid letters", partFigures: "grid figures",
	partGenus: "genus", partEpithet: "species", partSubspecies: "subspecies"}

// sense is one thing that a heading may mean.
type sense struct {
	meaning    Meaning
	part       part
	sex, stage string
	term       string // of a Term
	// leave is why a column of this sense is Ignored.
	leave string
	// labelled: its text says nothing without its heading.
	labelled bool
}

// What an ignored column is.
const (
	leaveRowNumber  = "row number"
	leaveTotal      = "total"
	leaveCumulative = "running total"
	leaveWeekday    = "weekday"
	leaveContact    = "how to reach somebody"
	leaveTyped      = "when or by whom it was typed in"
)

// vocabulary holds the words that recorders write above their columns, in the
// normal form of normHeading, each with its senses, likeliest first (common
// practice, no source). A word with several senses is settled by what stands
// below it.
var vocabulary = buildVocabulary()

func buildVocabulary() map[string][]sense {
	v := map[string][]sense{}
	add := func(s sense, phrases string) {
		for p := range strings.SplitSeq(phrases, ";") {
			if p = normHeading(p); p != "" {
				v[p] = append(v[p], s)
			}
		}
	}
	m := func(meaning Meaning, phrases string) { add(sense{meaning: meaning}, phrases) }

	m(Date, "date; when; night; noc; nocte; night of; date of record; date recorded; date seen; date caught; date of visit; visit date; "+
		"trap date; trap night; date trapped; record date; date of observation; observation date; sighting date; survey date; "+
		"visit; event date; start date; date start; date from; from date; date begin; date set; evening; date of night; dates; datum; dato; day and month; "+
		"date collected; collection date; night beginning; night starting; date noc; dt; dmy; sample date; sampling date; date and time; date time; "+
		"seen on; recorded on; date of sighting; from; first date; first seen; first recorded; earliest date; date found; day date; evening of; morning of; date trap set; date out; nights; dates seen; calendar date; when seen")
	m(EndDate, "to; end date; date end; date to; to date; date until; until; date ended; finish date; date finish; last date; last seen; last recorded; latest date; date emptied; emptied; date in; night ending")
	add(sense{meaning: Date, part: partDay}, "day; dd; dy; day of month; day no; d")
	add(sense{meaning: Date, part: partMonth}, "mo; mnth; month; mm; mon; mth; mnth; month no")
	add(sense{meaning: Date, part: partYear}, "year; yyyy; yr; yy; year of record; recording year; season")
	add(sense{meaning: Ignored, part: partWeekday, leave: leaveWeekday}, "weekday; day of week; day of the week; dow; day name")
	m(Time, "time; start time; time start; time on; lights on; light on; lit; time lit; hour; time seen; time from; clock time; hours gmt; bst; gmt; time bst; time gmt; switch on; event time; from time; time of day; on; start; started; begin; time start")
	m(Date, "start; started; begin; on")
	m(EndTime, "end time; time end; time off; lights off; light off; time to; finish time; switch off; to time; off; end; finish; finished; ended")
	m(EndDate, "end; finish; finished; ended; off")

	m(Taxon, "species; taxon; name; moth; what; species name; taxon name; name of species; name of moth; moth name; moth species; organism; "+
		"butterfly; insect; animal; plant; sp; spp; what seen; seen; caught; recorded species; species recorded; species seen; species caught; identification; id; "+
		"preferred name; recommended name; recorded name; name used; species or taxon; species taxon; bird; beetle; creature; moths; "+
		"names; what was it; bug; bee; fly; dragonfly; mammal; fungus; flower; wildlife; what caught; visitor; flower visitor; visiting insect; what did you see; prey; gall; miner; plants seen; birds seen; determination; name in notebook; verbatim name; taxa; name of insect; subject; scientific and common name; record; find")
	m(Scientific, "scientific name; latin; latin name; scientific; binomial; scientific species name; sci name; binomial name; latin binomial; latin species; "+
		"species latin; species scientific; systematic name; taxon latin; scient name; zoological name; botanical name; name latin; name scientific; lat name; linnaean name; scientific taxon name")
	m(Vernacular, "vernacular; vernacular name; common name; english; english name; common; popular name; species english; species common; everyday name; name english; name common; "+
		"local name; moth english; vernac; common english name; species vernacular; eng name; vern; vern name; vernaculars")
	m(Authorship, "authority; author; authorship; describer; author and year; authority and year; named by; authorities")
	add(sense{meaning: Taxon, part: partGenus}, "genus; generic name; genus name")
	add(sense{meaning: Taxon, part: partEpithet}, "epithet; specific epithet; specific name; species epithet")
	add(sense{meaning: Taxon, part: partSubspecies}, "subspecies; ssp; subsp; infraspecific epithet; race; form")
	m(TaxonNumber, "code; species code; species no; species number; checklist no; checklist number; log number; log no; list number; list no; number in list; taxon code; "+
		"taxon id; taxon no; taxon number; check list no; code no; code number; moth number; moth no; moth code; checklist code; bf; bf no; bf number; abh; abh no; abh number; abh code; "+
		"b and f; b and f no; b and f number; bradley number; bradley no; catalogue number; catalogue no; taxon key; list code; sp code; sp no; national code; cl no")
	m(Group, "family; order; taxon group; group; species group; class; family name; super family; superfamily; subfamily; kind; taxonomic group; type of animal; type of insect; macro micro; macro or micro")

	m(Count, "no; qty; quantity; number; count; abundance; tot; how many; number seen; number caught; no seen; no caught; number of; no of; individuals; "+
		"no of moths; number of moths; number of individuals; no of individuals; counts; numbers; nos; amount; n; num; nr; total; total no; total number; total count; individual count; "+
		"quantity seen; no recorded; number recorded; specimens; no of specimens; tally; catch; no counted; max count; tot no; count of moths; no trapped; hm; no present; total seen; total caught; abund; seen or count; number counted; "+
		"no individuals; number individuals; qty seen; moth count; species count; count total; how many seen; population; size of population; estimate; estimated number; max; maximum; seen; caught; trapped; counted; recorded; #; in trap; found; record; records; moths; butterflies; birds; stage no; stage number; stage and number; number and stage; no and stage; stage count; count and stage; no stage; dafor; dafor scale; dafor score; dafor code; acfor; sacfor; abundance code; abundance class; abundance score")
	add(sense{meaning: Count, sex: "unknown"}, "unknown; unsexed; not sexed; sex unknown; sex not known; unknown sex; sex unk; unsexed adults")
	stages := []struct{ stage, words string }{
		{"adult", "adults; adult; imago; imagines; imagos; ad; ads; no adults; adult count"},
		{"larva", "la; larvae; larva; caterpillars; caterpillar; larval; lar; larvae count; no larvae; no of larvae; larv; larvas; caterpillars seen"},
		{"pupa", "pupae; pupa; pupal; chrysalis; cocoons"},
		{"egg", "eggs; egg; ova; ovum; egg batches"},
		{"mine", "mines; mine; leaf mines; leafmines; vacated mines"},
		{"case", "larval cases"},
		{"juvenile", "juveniles; juvenile; juv; juvs; imm; immatures; immature; young"},
		{"nymph", "nymphs; nymph"},
		{"exuvia", "exuviae; exuvia; ex"},
		{"queen", "queens; queen"},
		{"worker", "workers; worker"},
		{"drone", "drones; drone"},
	}
	for _, s := range stages {
		add(sense{meaning: Count, stage: s.stage}, s.words)
	}
	add(sense{meaning: Count, sex: "male"}, "m; male; males; ♂; ♂♂; mm; no males; no of males; male count; males count; number of males; count male; count males; mle; no m")
	add(sense{meaning: Count, sex: "female"}, "f; female; females; ♀; ♀♀; ff; fem; fems; no females; no of females; female count; females count; number of females; count female; count females; no f")
	add(sense{meaning: Ignored, leave: leaveTotal}, "total; tot; totals; sum; row total; grand total; total for year; year total; season total; season; overall total; overall; annual total; all; total all nights; subtotal; sub total; mean; average; avg; total for season; total to date; ytd; max; maximum; no of nights; nights seen; no of records; number of records; total moths; month total; monthly total; total moths caught; total individuals; total of all; all nights; all dates; all visits")
	add(sense{meaning: Ignored, leave: leaveCumulative}, "cumulative; cumulative total; running total; cum; cum total; cumul; accumulated; total so far; cumulative count; running; year to date; to date; running count; cumulative sum")
	add(sense{meaning: Ignored, leave: leaveTotal}, "no of species; number of species; species total; total species; no species; species count; no spp; new species; total no of species; cumulative species")
	add(sense{meaning: Ignored, leave: leaveRowNumber}, "no; row; row no; row number; line; line no; number; #; entry; entry no; item; item no; serial; serial no; sl no; sr no; ref; seq; sequence; s no; record no; record number; n; index; page; page no; page number; ser no; nr; id; records; line number; rec no; rec; record")
	add(sense{meaning: RecordID}, "record id; occurrence id; record no; record number; record ref; record reference; record key; unique id; unique record id; id; observation id; my ref; record code; id no; id number; reference; unique reference; unique ref; uid; guid; uuid; recordid; sighting id; ref no; ref; reference number; reference no; own ref; rec id; our ref")
	m(Sex, "sex; m f; gender; sexes; male female; m or f; sex m f; ♂ ♀; ♂♀; male or female; sx")
	m(Stage, "stage; life stage; lifestage; form; development stage; developmental stage; stage of life; age; larva or adult; adult or larva; larval stage; life cycle stage; adult larva; instar; stages; age class; stg; life form")
	for _, s := range stages {
		add(sense{meaning: Stage}, s.words)
	}
	m(Status, "status; occurrence status; present; presence; present absent; presence absence; p a; record status; zero abundance; absent; seen y n; seen or not")

	add(sense{meaning: Term, term: "caste"}, "caste; castes; queen or worker; queen worker male")
	add(sense{meaning: Term, term: "identificationVerificationStatus"}, "record status; verification status; status of record")

	m(Recorder, "recorder; obs; observer; by; who; leg; coll; recorder name; recorders; recorded by; name of recorder; recorder s; observers; collector; seen by; found by; caught by; "+
		"legit; collected by; observer name; name of observer; rec by; rec; recdr; recorder initials; initials; observed by; noted by; trapped by; trapper; recording; person; people; surveyor; submitted by; "+
		"contributor; spotter; who saw it; who by; recorder name s; finder; recorder 1; recorder 2; recorder 3; second recorder; other recorders; other recorder; co recorder; additional recorder; additional recorders; joint recorder; assistant; main recorder; counted by; emptied by; team; our names; by whom; sightings by; taken by; with; name; walker; walkers; counter; counters; surveyors; trappers; surveyed by; compiler; finders; leader; leaders; led by; ringer; ringers; dippers; dipper; present; those present; licensed checker; checkers; sorted by; sorter; operated by; operator; run by; trap run by; volunteers; volunteer; netter; attendees; who was there; ringed by; walked by; visitors; your name; reporter; reported by; informant; naturalist; botanist; botanists; photographer")
	m(Determiner, "det; det by; determiner; determined by; identified by; identifier; id by; determinator; determinavit; d by; id d by; named by; determiner name; det name; ident by; ident; identification by; who identified; detd; det d; gen det by; dissected by; name of determiner; determiner s")
	m(Verifier, "verifier; verified by; conf; confirmed by; conf by; checked by; verif; ver; ver by; validated by; verification; checker; cr; confirmed; verified; accepted by; conf by vcr; seen by vcr; agreed by; validator")

	m(Site, "site; locality; place; location; where; site name; loc; loc name; location name; locality name; trap site; name of site; place name; trap location; town; village; parish; trap; recording site; area; "+
		"name of place; station; reserve; site or place; nearest town; nearest place; found at; address; where seen; site details; location details; locality details; where found; venue; sites; site location; site locality; "+
		"garden; where caught; trap position; trap name; place found; seen at; vicinity; spot; town village; town or village; town or parish; survey site; site description; wood; locn; localty; locus; habitat patch; location of trap; recording place; compartment; sub site; subsite; name of locality; general locality; named place; named location; transect; section; pond; ditch; lake; river; stream; watercourse; water course; waterbody; water body; field; building")
	m(GridRef, "grid ref; gr; ngr; os ref; map ref; grid; square; 1km; grid reference; gridref; os grid ref; osgr; os grid; os; map reference; national grid; national grid ref; national grid reference; grid sq; grid square; "+
		"1km square; 1 km sq; km square; monad; hectad; tetrad; 10km square; 10km; 10 km; 10 km square; 1 km; 1 km square; 2km; 2km square; 100m; 6 fig; six fig; six figure; os grid reference; site grid ref; grid ref of site; reference grid; grid ref 6 fig; 8 fig; "+
		"coordinates; coords; coordinate; co ordinates; coord; square ref; location ref; 6 figure grid ref; 6 fig grid ref; 4 fig grid ref; 8 fig grid ref; sq; map sq; map square; km sq; position; location grid ref; locality grid ref; spatial reference; spatial ref; os map ref; os map reference; ordnance survey; ordnance survey ref; ordnance survey grid; lat long; lat lon; latitude longitude; "+
		"g ref; grd ref; gr ref; grid r; irish grid; irish grid ref; british grid; os sq; os square; nat grid; nat grid ref; full grid ref; gps; gps reading; gps ref; reference; ref; site ref; location reference; site reference; tl; tf; utm; mgrs")
	add(sense{meaning: GridRef, part: partEasting}, "easting; eastings; east; x; e; os east; os x; x coord; x coordinate; grid east; os easting; os eastings; easting m; grid e")
	add(sense{meaning: GridRef, part: partNorthing}, "northing; northings; north; y; n; os north; os y; y coord; y coordinate; grid north; os northing; os northings; northing m; grid n")
	add(sense{meaning: GridRef, part: partLetters}, "grid letters; letters; 100km square; 100 km square; 100km; 100 km; sheet; map sheet; sq letters; square letters; prefix; grid prefix; gr letters; os letters; grid ref letters; map letters; 100km sq; ngr letters; two letters; lettrs; 100km letters; gr prefix; grid sheet")
	add(sense{meaning: GridRef, part: partFigures}, "grid figures; figures; figs; grid numbers; grid digits; gr figures; grid no; grid number; os figures; numerals; digits; grid ref figures; grid ref numbers; map figures; ngr figures; gr numbers; gr no; figure; grid ref no; gr figs")
	m(Latitude, "latitude; lat; decimal latitude; lat wgs84; latitude wgs84; wgs84 lat; lat dd; dec lat; gps lat; gps latitude")
	m(Longitude, "longitude; long; lon; lng; decimal longitude; long wgs84; longitude wgs84; wgs84 long; lon dd; dec long; gps long; gps longitude; gps lon")
	m(Uncertainty, "uncertainty; accuracy; coordinate uncertainty; precision; gps accuracy; radius; accuracy m; error m; precision m; uncertainty m; error; coordinate accuracy; grid ref precision; gps error; gr precision")
	m(ViceCounty, "vc; vice county; vicecounty; watsonian vice county; vc no; vc number; vc name; v county; vice co; vcs; watsonian vc; vice county no; vice county number; vice county name; vice counties")
	m(County, "county; admin county; shire; district; county name; administrative county; county town; region; co; counties; unitary authority")
	m(Country, "country; nation; country code")
	m(Elevation, "altitude; elevation; alt; height; asl; height asl; alt m; altitude m; m asl; elev; height above sea level")
	m(Habitat, "habitat; biotope; habitat type; habitat notes; vegetation; hab; habitat description; surroundings; habitat details")
	m(Method, "method; how; trap; lamp; at light; mv; trap type; sampling method; recording method; light; light type; lamp type; sampling protocol; capture method; collecting method; collection method; type of trap; type of light; "+
		"method of capture; how seen; how caught; technique; method used; bulb; bulb type; survey method; survey type; trap method; source of light; light source; meth; trap used; traps; type of record; record method; method code; how found; how recorded; trap lamp; lamp trap; observation type; found by; field method; record type; trap and lamp; lamp and trap; watts; wattage; equipment; sampling technique; sample type; type of sample; sampling type; obs method; means; means of capture")
	m(Effort, "effort; hours run; no of traps; number of traps; sampling effort; duration; hours; trap hours; time spent; no traps; mins; minutes; hrs; trap effort; hrs run; number of nights; length of visit; trap nights; hours lit; search time; hours trapping; person hours; survey effort; visits")
	m(Weather, "weather; wind; cloud; cloud cover; rain; moon; moon phase; conditions; sky; humidity; weather conditions; wind direction; wind speed; moonlight; weather notes; wx; night conditions; wind force; weather and moon; wind and weather; precipitation; cloud pc; rainfall; moon and cloud; conditions overnight; overnight weather; overnight conditions; pressure")
	m(Temperature, "temperature; temp; min temp; max temp; minimum temp; maximum temp; min temperature; max temperature; minimum temperature; maximum temperature; overnight min; night min; temp min; temp max; °c; min °c; max °c; deg c; temp c; temp °c; "+
		"minimum; min; temp at dusk; dusk temp; air temp; air temperature; overnight temp; night temp; min c; max c; start temp; end temp; temp at start; temp at end; min night temp; lowest temp; temps; overnight low; t min; tmin; t max; tmax; temp f; °f; c")
	m(Measurement, "tandem; tandems; tandem pairs; ovipositing; ovip; ov; copulating; in copula; copula; co; mating pairs; emergents; em; emerging; tenerals; forewing length; forewing; wing length; wingspan; length; width; weight; body length; measurement; fw length; fw; wing; size; forewing mm; wing mm; length mm; weight g; wing span; shell height; shell width; breadth; mm; mass; girth; head width; total length; wt; body mass; tarsus; bill; bill length; tail; hind foot; ear; svl; snout vent length; fat; muscle; height; height cm; plant height; depth; depth cm; water depth; dbh; diameter; extent; extent m2; patch size; cover; percent cover; % cover; cover %; cover class; domin; domin score; domin value; braun blanquet; frequency; passes; no of passes; number of passes; bat passes; calls; no of calls; khz; peak khz; frequency khz; peak frequency; call frequency; distance; distance m; temperature of refuge; refuge temp; tin temp; ground temp; water temp; ph; conductivity; turbidity; sward height; shade; bare ground")
	m(Specimen, "specimen; voucher; dissection; dissection number; dissection no; gen det; specimen no; specimen number; voucher no; slide; slide no; genitalia slide; voucher specimen; specimen kept; retained; photo no; gen prep; prep no; genitalia; slide number; specimen retained; gen det no; photo; photos; photo taken; photograph; picture; image; images; dissected; voucher number; specimen taken; photographed; gen diss; pic; pics")
	m(Remarks, "unit; units; count unit; unit of count; counted as; comments; notes; remarks; details; comment; note; remark; other; other notes; other info; additional information; misc; observations; info; additional notes; further details; field notes; further information; notes and comments; "+
		"memo; observation; description; comments and notes; any other information; extra info; behaviour; activity; anything else; miscellaneous; other details; remarks and notes; record comment; sample comment; occurrence comment; extra; other comments; general notes; general comments; sighting notes; text; recorder notes; more; any notes; any comments; breeding; foodplant; food plant; host plant; host; plant; larval foodplant; flower visited; nectar source; nectaring on; feeding on; substrate; on plant; associated species; determiner notes; notes on identification; id notes; identification notes; importance; phenotype; alive dead; alive or dead; dead or alive; live or dead; live dead")
	add(sense{meaning: Remarks, labelled: true}, numberedThings+keptWithHeading)
	add(sense{meaning: Ignored, leave: leaveContact}, "email; e mail; email address; e mail address; mail; phone; phone no; phone number; telephone; telephone number; tel; tel no; mobile; mobile number; contact details; postcode; post code; home address; your email; your email address")
	add(sense{meaning: Ignored, leave: leaveTyped}, "timestamp; time stamp; date entered; date typed; entered on; date submitted; submitted on; submission date; entered by; typed by; date of entry; entry date; inputter; input by; data entry; last edited; edited; created; created at; updated at; start of form")
	m(Certainty, "certainty; confidence; certain; id certainty; how sure; sure; identification certainty; doubt; doubtful; query; qualifier; identification qualifier; cf; certainty of id; certain or not; id confidence; confidence in id; likelihood")
	m(Basis, "basis; basis of record; record basis")
	return v
}

// needsMore are headings of one word that say little by themselves: within a
// longer heading the other words count first.
var needsMore = wordSet("from to ex la co ov em mo unknown no number name code ref id total other record list type the n e x y m f d all on off with what seen by details count species moth moths info area section c mm caught trapped found recorded counted moths butterflies birds records")
