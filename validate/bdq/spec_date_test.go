package bdq_test

import (
	"testing"

	"fieldfare/validate/bdq"
)

func TestDateSpecifications(t *testing.T) {
	event := func(status bdq.Status, result, clause, date string, rest ...string) specCase {
		c := specCase{clause: clause, status: status, result: result, terms: bdq.Map{"eventDate": date}}
		for i := 0; i < len(rest); i += 2 {
			c.terms[rest[i]] = rest[i+1]
		}
		return c
	}
	runSpec(t, map[string][]specCase{
		"VALIDATION_EVENTDATE_STANDARD": {
			one("eventDate", "2023-02-29", has, no, "29 Feb in a non-leap year"),
			one("eventDate", "2024-02-29", has, yes, "29 Feb in a leap year"),
			one("eventDate", "1981-01/1981-12", has, yes, "an interval"),
			one("eventDate", "1999-11-01/1999-11-31", has, no, "no 31 November"),
			one("eventDate", " 1999-11-01", has, no, "not as ISO 8601 writes it"),
		},
		"VALIDATION_EVENTDATE_INRANGE": {
			one("eventDate", "1582-11-15", has, yes, "inclusive"),
			one("eventDate", "1582-11", has, no, "the range must be entirely within"),
			one("eventDate", "1582", has, no, "the range must be entirely within"),
			one("eventDate", "2026", has, yes, "to the end of the current year"),
			one("eventDate", "2026-12-31/2027-01-01", has, no, "the range must be entirely within"),
			{"parameters", bdq.Map{"eventDate": "1999-05"}, has, no, map[string]string{"bdqval:earliestValidDate": "2000", "bdqval:latestValidDate": "2010-06"}},
			{"parameters", bdq.Map{"eventDate": "2000/2010-06-30"}, has, yes, map[string]string{"bdqval:earliestValidDate": "2000", "bdqval:latestValidDate": "2010-06"}},
		},
		"VALIDATION_DATEIDENTIFIED_STANDARD": {
			one("dateIdentified", "2021-06-03/2021-06-05", has, yes, "an interval"),
			one("dateIdentified", "3 June 2021", has, no, "not ISO 8601"),
		},
		"VALIDATION_DATEIDENTIFIED_INRANGE": {
			one("dateIdentified", "1753-01-01", has, yes, "inclusive"),
			one("dateIdentified", "1752-12-31", has, no, "before Linnaeus"),
			one("dateIdentified", "2026-06-30", has, yes, "to the current day"),
			one("dateIdentified", "2026-07-01", has, no, "not yet come"),
			event(has, yes, "overlaps", "1963-03-08/1963-03-20", "dateIdentified", "1963-03-10"),
			event(has, yes, "overlaps", "1963-03-08", "dateIdentified", "1963"),
			event(has, no, "earlier", "1963-03-08", "dateIdentified", "1963-02"),
			event(has, no, "earlier on the day", "1963-03-08T14:07", "dateIdentified", "1963-03-08T13:00"),
			event(has, yes, "the same hour", "1963-03-08T14:07", "dateIdentified", "1963-03-08T14"),
			event(has, yes, "the same time in another zone", "1963-03-08T14:07-0600", "dateIdentified", "1963-03-08T20:07Z"),
			event(has, yes, "the same day, with a zone on one side only", "1963-03-08T23:00-06:00", "dateIdentified", "1963-03-08"),
			event(unmet, "", "eventDate is no ISO 8601 date", "8 March 1963", "dateIdentified", "1963-03-08"),
			{"includeEventDate=false", bdq.Map{"dateIdentified": "1963-03-08", "eventDate": "8 March"}, has, yes, map[string]string{"bdqval:includeEventDate": "false"}},
			{"includeEventDate=false", bdq.Map{"dateIdentified": "1963-03-08", "eventDate": "1964"}, has, yes, map[string]string{"bdqval:includeEventDate": "false"}},
		},
		"VALIDATION_YEAR_INRANGE": {
			one("year", "1582", has, yes, "inclusive"),
			one("year", "1581", has, no, "out of range"),
			one("year", "2026", has, yes, "the current year"),
			one("year", "2027", has, no, "next year is not valid now"),
			one("year", "1999.5", unmet, "", "not an integer"),
			{"a parameter", bdq.Map{"year": "1899"}, has, no, map[string]string{"bdqval:earliestValidDate": "1900"}},
		},
		"VALIDATION_MONTH_STANDARD": {
			one("month", "12", has, yes, "inclusive"),
			one("month", "01", has, yes, "interpretable as an integer"),
			one("month", "0", has, no, "out of range"),
			one("month", "October", has, no, "not an integer"),
			one("month", "1.5", has, no, "not an integer"),
		},
		"VALIDATION_DAY_STANDARD": {
			one("day", "31", has, yes, "inclusive"),
			one("day", "0", has, no, "out of range"),
			one("day", "3rd", has, no, "not an integer"),
		},
		"VALIDATION_DAY_INRANGE": {
			{"(2) 30 in a month of 30 days", bdq.Map{"day": "30", "month": "4"}, has, yes, nil},
			{"31 in a month of 30 days", bdq.Map{"day": "31", "month": "4"}, has, no, nil},
			{"(3) 31 in a month of 31 days", bdq.Map{"day": "31", "month": "12"}, has, yes, nil},
			{"29 without a month", bdq.Map{"day": "29"}, unmet, "", nil},
			{"29 in month 13", bdq.Map{"day": "29", "month": "13"}, unmet, "", nil},
			{"28 in month 13", bdq.Map{"day": "28", "month": "13"}, has, yes, nil},
			{"29 February without a year", bdq.Map{"day": "29", "month": "2"}, unmet, "", nil},
			{"29 February in a year that is none", bdq.Map{"day": "29", "month": "2", "year": "96"}, unmet, "", nil},
			{"29 February 2000", bdq.Map{"day": "29", "month": "2", "year": "2000"}, has, yes, nil},
			{"31 February without a year", bdq.Map{"day": "31", "month": "2"}, has, no, nil},
			{"32", bdq.Map{"day": "32"}, has, no, nil},
			{"0", bdq.Map{"day": "0"}, has, no, nil},
		},
		"VALIDATION_STARTDAYOFYEAR_INRANGE": {
			one("startDayOfYear", "365", has, yes, "inclusive"),
			one("startDayOfYear", "0", has, no, "out of range"),
			one("startDayOfYear", "367", has, no, "out of range"),
			one("startDayOfYear", "366", unmet, "", "eventDate is empty"),
			event(has, yes, "a leap year", "2020", "startDayOfYear", "366"),
			event(has, no, "no leap year", "2021", "startDayOfYear", "366"),
			event(has, yes, "the start year of a range", "2020/2021", "startDayOfYear", "366"),
			event(unmet, "", "no year to be found", "x", "startDayOfYear", "366"),
		},
		"VALIDATION_ENDDAYOFYEAR_INRANGE": {
			event(has, no, "the end year of a range", "2020/2021", "endDayOfYear", "366"),
			event(has, yes, "the end year of a range", "2019/2020", "endDayOfYear", "366"),
		},
		"AMENDMENT_DAY_STANDARDIZED": {
			one("day", "3rd", bdq.Amended, `{"dwc:day":"3"}`, "3rd as 3"),
			one("day", "12th", bdq.Amended, `{"dwc:day":"12"}`, "12th as 12"),
			one("day", " 5", bdq.Amended, `{"dwc:day":"5"}`, "unambiguous"),
			one("day", "5th Friday", none, "", "ambiguous"),
			one("day", "xv", none, "", "Roman numerals are not standard"),
			one("day", "3th", none, "", "no ordinal"),
			one("day", "32", none, "", "no day"),
			one("day", "31", none, "", "valid already"),
		},
		"AMENDMENT_MONTH_STANDARDIZED": {
			one("month", "Sept.", bdq.Amended, `{"dwc:month":"9"}`, "abbreviations"),
			one("month", "OCTOBER", bdq.Amended, `{"dwc:month":"10"}`, "names"),
			one("month", "août", bdq.Amended, `{"dwc:month":"8"}`, "names"),
			one("month", "viii", bdq.Amended, `{"dwc:month":"8"}`, "Roman numerals"),
			one("month", "XIII", none, "", "Roman numerals in the range I to XII"),
			one("month", "13", none, "", "no month"),
			one("month", "Ju", none, "", "June or July"),
			one("month", "05", none, "", "an integer already"),
			one("month", "May-June", none, "", "two months"),
		},
		"AMENDMENT_EVENTDATE_STANDARDIZED": {
			one("eventDate", "2021_10_28", bdq.Amended, `{"dwc:eventDate":"2021-10-28"}`, "unambiguous"),
			one("eventDate", "28 October 2021", bdq.Amended, `{"dwc:eventDate":"2021-10-28"}`, "unambiguous"),
			one("eventDate", "Nov 1999", bdq.Amended, `{"dwc:eventDate":"1999-11"}`, "1999-11 instead of its days"),
			one("eventDate", "10/28/2021", bdq.Amended, `{"dwc:eventDate":"2021-10-28"}`, "no month 28"),
			one("eventDate", "10/11/2021", none, "", "ambiguous"),
			one("eventDate", "28/10/21", none, "", "ambiguous"),
			one("eventDate", "2021-02-30", none, "", "no such day"),
			one("eventDate", "1999-11", none, "", "valid already"),
			one("eventDate", "2021-10-28 14:05", bdq.Amended, `{"dwc:eventDate":"2021-10-28T14:05"}`, "unambiguous"),
		},
		"AMENDMENT_EVENTDATE_FROM_VERBATIM": {
			one("verbatimEventDate", "1980-08-09", bdq.FilledIn, `{"dwc:eventDate":"1980-08-09"}`, "an ISO 8601 date"),
			one("verbatimEventDate", "Jan. 1980", bdq.FilledIn, `{"dwc:eventDate":"1980-01"}`, "the original precision"),
			one("verbatimEventDate", "5-7 May 1999", bdq.FilledIn, `{"dwc:eventDate":"1999-05-05/1999-05-07"}`, "a range"),
			one("verbatimEventDate", "30 Apr - 2 May 1999", bdq.FilledIn, `{"dwc:eventDate":"1999-04-30/1999-05-02"}`, "a range"),
			one("verbatimEventDate", "December 1998 to January 1999", bdq.FilledIn, `{"dwc:eventDate":"1998-12/1999-01"}`, "a range"),
			one("verbatimEventDate", "1998-99", none, "", "a range or a month"),
			one("verbatimEventDate", "May", none, "", "no year"),
			one("verbatimEventDate", "7-5 May 1999", none, "", "ends before it begins"),
			one("verbatimEventDate", "before 1932", none, "", "open"),
		},
		"AMENDMENT_EVENTDATE_FROM_YEARMONTHDAY": {
			{"all", bdq.Map{"year": "2024", "month": "02", "day": "9"}, bdq.FilledIn, `{"dwc:eventDate":"2024-02-09"}`, nil},
			{"the month is not interpretable", bdq.Map{"year": "2024", "month": "?", "day": "9"}, bdq.FilledIn, `{"dwc:eventDate":"2024"}`, nil},
			{"the day is not interpretable", bdq.Map{"year": "2024", "month": "2", "day": "?"}, bdq.FilledIn, `{"dwc:eventDate":"2024-02"}`, nil},
			{"no such month", bdq.Map{"year": "2024", "month": "13"}, none, "", nil},
			{"the year is no integer", bdq.Map{"year": "202x", "month": "2"}, unmet, "", nil},
			{"a year of two digits", bdq.Map{"year": "24", "month": "2"}, none, "", nil},
			{"stated already", bdq.Map{"eventDate": "?", "year": "2024"}, unmet, "", nil},
		},
		"AMENDMENT_EVENTDATE_FROM_YEARSTARTDAYOFYEARENDDAYOFYEAR": {
			{"in a leap year", bdq.Map{"year": "2020", "startDayOfYear": "60", "endDayOfYear": "366"}, bdq.FilledIn, `{"dwc:eventDate":"2020-02-29/2020-12-31"}`, nil},
			{"366 in another year", bdq.Map{"year": "2021", "startDayOfYear": "60", "endDayOfYear": "366"}, none, "", nil},
			{"start must be less than end", bdq.Map{"year": "2021", "startDayOfYear": "60", "endDayOfYear": "60"}, none, "", nil},
			{"not interpretable", bdq.Map{"year": "2021", "startDayOfYear": "x", "endDayOfYear": "60"}, none, "", nil},
			{"the end is empty", bdq.Map{"year": "2021", "startDayOfYear": "5"}, unmet, "", nil},
		},
		"AMENDMENT_EVENT_FROM_EVENTDATE": {
			event(bdq.FilledIn, `{"dwc:year":"2021","dwc:month":"10","dwc:day":"28","dwc:startDayOfYear":"301","dwc:endDayOfYear":"301"}`, "all", "2021-10-28T14:07"),
			event(bdq.FilledIn, `{"dwc:year":"2021"}`, "(3) within a year", "2021-01/2021-12"),
			event(bdq.FilledIn, `{"dwc:startDayOfYear":"365","dwc:endDayOfYear":"2"}`, "(4) over a year's end", "2021-12-31/2022-01-02"),
			event(bdq.FilledIn, `{"dwc:month":"2","dwc:startDayOfYear":"32","dwc:endDayOfYear":"59"}`, "(2) within a month", "2021-02-01/2021-02-28", "year", "2021"),
			event(none, "", "nothing finer", "2021/2022"),
			event(none, "", "only empty terms change", "2021-10-28", "year", "1", "month", "1", "day", "1", "startDayOfYear", "1", "endDayOfYear", "1"),
			event(unmet, "", "no ISO 8601 date", "28.10.2021"),
		},
		"VALIDATION_EVENT_CONSISTENT": {
			event(has, yes, "(2) as numbers", "2021-09-08", "month", "09", "day", "8"),
			event(has, no, "(3) not within a day", "2021-09-08/2021-09-09", "day", "8"),
			event(has, no, "(3) coarser than a day", "2021-09", "day", "1"),
			event(has, no, "(2) coarser than a month", "2021", "month", "1"),
			event(has, yes, "(4) (5) over a year's end", "1981-12-30/1982-01-03", "startDayOfYear", "364", "endDayOfYear", "3"),
			event(has, yes, "(2) within a month", "1981-02-01/1981-02-28", "month", "2"),
			event(has, no, "(1) not the year", "1981", "year", "81"),
			event(has, no, "no precision", "in May", "year", "1981"),
		},
		"MEASURE_EVENTDATE_DURATIONINSECONDS": {
			one("eventDate", "2008", has, "31622400", "leap days are included"),
			one("eventDate", "2007-02", has, "2419200", "28 days"),
			one("eventDate", "2007-02-01/2007-02-03", has, "259200", "three days"),
			one("eventDate", "2007-02-01T10:00Z/2007-02-01T12:30Z", has, "9000", "two and a half hours"),
			one("eventDate", "2007-02-01T10:00+01:00/2007-02-01T10:00Z", has, "3600", "in two zones"),
			one("eventDate", "2007-02-01/P1W", has, "691200", "a start and a duration, both end days included"),
		},
	})
}

func TestTaxonSpecifications(t *testing.T) {
	id := func(value, result, clause string) specCase {
		return one("scientificNameID", value, has, result, clause)
	}
	name := func(result, scientificName, generic, specific, infraspecific string) specCase {
		return specCase{terms: bdq.Map{"scientificName": scientificName, "genericName": generic, "specificEpithet": specific,
			"infraspecificEpithet": infraspecific}, status: has, result: result, clause: "consistent with the values that are not empty"}
	}
	runSpec(t, map[string][]specCase{
		"VALIDATION_SCIENTIFICNAMEID_COMPLETE": {
			id("urn:lsid:ipni.org:names:30000959-2:1.1.2.1", yes, "(1) an LSID with a revision"),
			id("urn:lsid:ipni.org:names", no, "(1) an LSID without an object"),
			id("urn:lsid:ipni.org:names:", no, "(1) an LSID with an empty object"),
			id("URN:LSID:ipni.org:names:77145066-1", yes, "(1) letter case of the scheme (RFC 8141)"),
			id("urn:uuid:8fa58e08-08de-4ac1-b69c-1235340b7001", yes, "(2) a URN"),
			id("urn:uuid:", no, "(2) no NSS"),
			id("urn:uuid", no, "(2) no NSS"),
			id("8fa58e08-08de-4ac1-b69c-1235340b7001", no, "no scope"),
			id("gbif:2435099", yes, "(3) scope:value, as in the notes"),
			id("gbif:", no, "(3) no value"),
			id(":2435099", no, "(3) no scope"),
			id("doi:10.15468/39omei", yes, "(3) scope:value"),
			id("2435099", no, "no scope"),
			id("https://www.gbif.org/species/2435099", yes, "(4) host and path"),
			id("https://www.gbif.org/", no, `(4) a path of "/" only`),
			id("https://www.gbif.org", no, "(4) no path"),
			id("https:///species", no, "(4) no host"),
			id("http://www.gbif.org/species/2 3", no, "(4) white space in a URI"),
			id("see note: 14", no, "white space"),
		},
		"VALIDATION_POLYNOMIAL_CONSISTENT": {
			name(yes, "Noctua pronuba (Linnaeus, 1758)", "Noctua", "pronuba", ""),
			name(no, "Noctua pronuba (Linnaeus, 1758)", "Noctua", "pronuba", "pronuba"),
			name(no, "Noctua pronuba (Linnaeus, 1758)", "Agrotis", "", ""),
			name(no, "Noctua", "", "pronuba", ""),
			name(yes, "Noctua", "Noctua", "", ""),
			name(yes, "Hakea decurrens R.Br. subsp. physocarpa W.R.Barker", "Hakea", "decurrens", "physocarpa"),
			name(yes, "Rosa canina L. var. canina f. alba", "Rosa", "canina", "alba"),
			name(yes, "Aus bus Smith f. f. albus", "Aus", "bus", "albus"),
			name(yes, "Aus bus Smith f.", "Aus", "bus", ""),
			name(no, "Aus bus Smith ex Jones", "Aus", "bus", "ex"),
			name(yes, "Lasius (Chthonolasius) umbratus", "Lasius", "umbratus", ""),
			name(yes, "Salix × rubens", "Salix", "rubens", ""),
			name(yes, "× Sorbaronia fallax", "Sorbaronia", "fallax", ""),
			name(yes, "Apamea cf. remissa", "Apamea", "remissa", ""),
			name(yes, "Coenonympha tullia davus (Fabricius, 1777)", "Coenonympha", "tullia", "davus"),
			name(yes, "Polygonia c-album", "Polygonia", "c-album", ""),
			{"all of the three are empty", bdq.Map{"scientificName": "Noctua pronuba", "genus": "Noctua"}, unmet, "", nil},
			{"the name is empty", bdq.Map{"genericName": "Noctua"}, unmet, "", nil},
		},
		"VALIDATION_TAXON_NOTEMPTY": {
			{"any of the terms", bdq.Map{"vernacularName": "wainscot"}, has, yes, nil},
			{"any of the terms", bdq.Map{"cultivarEpithet": "Alba"}, has, yes, nil},
			{"none of the terms", bdq.Map{"taxonRank": "species"}, has, no, nil},
		},
		"VALIDATION_LOCATION_NOTEMPTY": {
			{"elevation and depth alone do not locate", bdq.Map{"minimumElevationInMeters": "3", "verbatimDepth": "4 m"}, has, no, nil},
			{"any of the terms", bdq.Map{"verbatimLocality": "Tinker's Row"}, has, yes, nil},
		},
		"VALIDATION_EVENTTEMPORAL_NOTEMPTY": {
			{"eventTime and eventID are not included", bdq.Map{"eventTime": "14:07", "eventID": "7"}, has, no, nil},
			{"any of the terms", bdq.Map{"endDayOfYear": "366"}, has, yes, nil},
		},
	})
}
