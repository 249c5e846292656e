package layout

// numberedThings head columns that number or name a part of a survey: the box,
// the tin, the quadrat. What stands below them is no count and no place that
// could be found on a map, and is kept with its heading.
const numberedThings = "stop; box; box no; box number; nest box; nestbox; nest box no; bat box; box id; tin; tin no; tin number; tins; refuge; refuge no; refugium; refugium no; refuge number; mat; mat no; " +
	"quadrat; quadrat no; quadrat number; quad; quad no; quadrat id; plot no; plot number; plot id; point; point no; point number; survey point; count point; stop no; stop number; " +
	"ditch no; ditch number; pond no; pond number; pond id; tree no; tree number; tree id; tag; tag no; tag number; camera; camera no; camera id; camera trap; detector; detector no; detector id; " +
	"trap; trap point; pitfall; pitfall no; pitfall trap; sample; sample no; sample number; sample id; sample code; replicate; rep; rep no; run; run no; sweep no; net; net no; net number; round; " +
	"station no; station number; nest; nest no; nest number; nest id; roost; roost no; hole; burrow; set no; tube; tube no; pot; pot no; dish; vial; vial no; bag; bag no; file; file name; filename; recording no; sound file; visit no; visit number; survey no; transect no; transect number; leg no; sector; colony; colony no; stand no; site no; site number; site code; site id; location id; location code; bottle; bottle no; lure no; grid cell; cell; grid point; "

// keptWithHeading head columns whose words are kept in the remarks behind
// their heading.
const keptWithHeading = "evidence; field sign; field signs; sign; signs; sign type; type of sign; type of evidence; storage; stored; preservation; preserved; preserved in; mounted; outcome; fate; result; nest stage; " +
	"ring; ring no; ring number; ring nos; colour rings; colour ring; rings; new retrap; new or retrap; new recap; new recapture; recap; recapture; retrap; capture type; mark; marks; marked; marking; fur clip; chip; chip no; pit tag; condition; body condition; breeding condition; breeding status; breeding evidence; breeding code; brood patch; moult; " +
	"vacated tenanted; tenanted vacated; vacated; tenanted; occupied; occupancy; flight direction; direction of flight; heading; bearing; bait; lure; pheromone; lure type; action; action taken; management; treatment; mesh; mesh size; part; part of plant; plant part; position on plant; associated with; associated organism; associate; association; host species; tree species; " +
	"substratum; aspect; slope; soil; soil type; nest count; no of nests; clumps; spawn clumps; strings; clutch; clutch size; hatched; fledged; no fledged; no hatched; brood; brood size; ringed; first egg date; " +
	"sunshine; sun %; checked; m a; native status; origin; provenance; red list; designation; designations; rarity; new to site; new for site; new to square; first record; notable; determination method; keys used; key used; literature; colour; colour form; morph; wear; freshness"
