package layout

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// givenNames are given names that are common in Britain and Ireland (from
// memory, no source). They tell “Bea Wenlock” in a title from the name of a
// place. Those that are plants, animals or months as well are left out: Heather,
// Robin, May.
var givenNames = wordSet("aaron abigail adam adrian agnes aidan alan alastair albert alec alex alexander alexandra alfie alfred alice alison alistair allan allen alma amanda amber amelia amy andrea andrew andy angela " +
	"angus anita ann anna anne annette annie anthony antonia archie arnold arthur ashley audrey ava barbara barney barry bea beatrice becky belinda ben benedict benjamin bernard bert beryl beth bethan betty beverley " +
	"bob brenda brendan brian bridget bronwen bruce bryan callum cameron carl carol caroline carolyn catherine cathy cecil celia charles charlie charlotte cheryl chloe chris christina christine christopher ciaran claire " +
	"clare claude clive colin connor constance craig cyril daniel danny daphne darren dave david dawn dean deborah debbie deirdre denis dennis derek desmond diana diane dick dominic don donald donna doreen doris dorothy " +
	"doug douglas duncan dylan eddie edgar edith edmund edna edward edwin eileen elaine eleanor elizabeth ella ellen ellie elsie emily emma emrys enid eric erica ernest esme ethel euan eva evan eve evelyn ewan fay felicity " +
	"felix fergus finlay fiona florence frances francis frank fred freda frederick freya gareth gary gavin gemma geoff geoffrey george georgina gerald geraldine gerard gill gillian gina gladys glenys glyn gordon grace " +
	"graeme graham grant greg gregory gwen guy hannah harold harriet harry harvey helen henry hilary hilda howard hugh hugo huw ian ida imogen ines ingrid irene isabel isla isobel ivan ivor jackie jacob jacqueline jake " +
	"james jamie jan jane janet janice jason jean jeff jeffrey jen jennifer jenny jeremy jess jessica jill jim jo joan joanna joanne joe joel john johnny jonathan jonny jordan joseph joshua joy joyce jude judith judy julia " +
	"julian julie juliet justin karen karl kate katherine kathleen kathryn kathy katie katrina kay keith kelly ken kenneth kevin kieran kim kirsty kit kyle lana laura lauren laurence lawrence leah len leo leonard lesley " +
	"leslie lewis liam linda lionel lisa liz lizzie lloyd lois lorna lorraine louis louisa louise lucas lucy luke lydia lyn lynda lynn lynne mabel maggie maisie malcolm marcus margaret maria marian marie marilyn marion " +
	"marjorie mark marlene martha mary mat matilda matt matthew maud maureen maurice mavis max megan mel melanie melissa mervyn mia michael michelle mick mike mildred miles millie miranda miriam moira molly monica morag " +
	"mungo muriel nadia nancy naomi natalie natasha neil nell nellie niall nicholas nick nicola nicole nigel nina noah noel nora norma norman nuala oliver olivia oscar owen pam pamela pat patricia patrick paul paula pauline " +
	"peggy penelope penny percy pete peter petra phil philip philippa phoebe phyllis piers polly priscilla prue rachel ralph ray raymond rebecca reg reginald rhian rhona rhys richard rita rob robert roberta roderick rodney " +
	"roger roland ron ronald rory rosalind rosie ross rowena roy ruby rupert russell ruth ryan sally sam samantha samuel sandra sara sarah scott sean sebastian sharon sheila shirley sian sidney silvia simon siobhan sonia " +
	"sophia sophie stan stanley stella stephanie stephen steve steven stewart stuart sue susan susanna suzanne sybil sylvia tamsin tara ted terence teresa terry thelma theo theresa thomas tim timothy tina tobias toby todd " +
	"tom tony tracey trevor tristan ursula valerie vanessa vera verity veronica vic vicky victor victoria vincent virginia vivien wallace walter wanda wendy wilf wilfred will william winifred yasmin yvonne zara zoe")

// isFullName reports whether a text is a given name and a surname, as they
// stand in titles: "Bea Wenlock", "Ines M. Calloway".
func isFullName(s string) bool {
	words := strings.Fields(s)
	if len(words) < 2 || len(words) > 4 || !givenNames[strings.ToLower(words[0])] || looksPlace(s) || isGroupName(s) {
		return false
	}
	for _, w := range words {
		r, size := utf8.DecodeRuneInString(w)
		if !unicode.IsUpper(r) || strings.ContainsAny(w, "0123456789:=?!,;/") || strings.HasSuffix(w, "'s") || strings.HasSuffix(w, "’s") || titleWords[strings.ToLower(w)] || size == 0 {
			return false
		}
	}
	return len(strings.Trim(words[len(words)-1], ".")) > 2
}

// givenName: a given name alone, or with a surname or its letter.
func givenName(s string) bool {
	return givenNames[strings.ToLower(s)] || isFullName(s) || givenNames[strings.ToLower(firstWord(s))] && len(s)-len(firstWord(s)) <= 3
}

// isNamed reports whether a part of a title names people and nothing else: "T.
// Achterberg & B. Wenlock", "Ines Calloway and Tom Achterberg".
func isNamed(p *page, part string) bool {
	for who := range strings.FieldsFuncSeq(strings.ReplaceAll(part, " and ", " & "), func(r rune) bool { return r == '&' || r == '+' || r == '/' }) {
		who = withoutHonorific(trim(who))
		initial := len(who) > 3 && (who[1] == '.' || who[1] == ' ') // MV Trap is nobody
		if !(initial && isInitialSurname(who) && !looksPlace(who) || isFullName(who) || who != "" && p.eyes.probe.KnownPerson(who)) {
			return false
		}
	}
	return trim(part) != ""
}

// trailingPerson finds the person a line ends in, behind something else:
// "Sallowmere Reserve Bea Wenlock", "Sluice Cottage T. Achterberg".
func trailingPerson(p *page, text string) string {
	text = trim(strings.Trim(text, " ,;"))
	words := strings.Fields(text)
	for n := min(4, len(words)-1); n >= 2; n-- {
		tail := words[len(words)-n:]
		who := strings.Join(tail, " ")
		if tail[0][0] < 'A' || tail[0][0] > 'Z' || !isNamed(p, who) {
			continue
		}
		bare := withoutHonorific(who)
		if isFullName(bare) || strings.Contains(firstWord(bare), ".") || strings.ContainsAny(who, "&") || p.eyes.probe.KnownPerson(who) {
			return who
		}
	}
	return ""
}

// notInitials stand in brackets as often as initials do.
var notInitials = wordSet("MV UV LED NNR SSSI LNR SAC SPA OS UK GB NE NW SE SW VC NR CP ST TL TF TM TG TQ BST GMT UTC AM PM HQ NT YES NO II III IV VI VII IX CFL HPL NA ID GPS USA EU")

// initialsIn finds initials that stand alone between brackets or dashes of a
// title: "Long Drove (TA)".
func initialsIn(text string) string {
	for _, part := range titleParts(text) {
		if part = trim(part); len(part) >= 2 && len(part) <= 6 && isInitials(part) && !notInitials[strings.ReplaceAll(part, ".", "")] && strings.Contains(text, "("+part+")") {
			return part
		}
	}
	return ""
}

// initialsBesideDay finds initials that stand as a part of their own in a line
// that names a day: "Long Drove, 14.7.18, NF, 26C", "2 July 2019 NF".
func initialsBesideDay(text string) string {
	day, raw := dateInTitle(text)
	if day == "" {
		return ""
	}
	rest := strings.Replace(text, raw, "\n", 1)
	parts := titleParts(rest)
	for _, part := range append(parts, strings.Split(rest, "\n")...) {
		if part = trim(strings.Trim(part, " ,;-–")); len(part) >= 2 && len(part) <= 4 && allCapitals(part) && !notInitials[part] {
			return part
		}
	}
	return ""
}

func allCapitals(s string) bool {
	for i := 0; i < len(s); i++ {
		if s[i] < 'A' || s[i] > 'Z' {
			return false
		}
	}
	return s != ""
}
