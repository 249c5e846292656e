package bdq_test

import (
	"fmt"
	"time"

	"fieldfare/dwc"
	"fieldfare/validate/bdq"
)

func ExampleSuite_Run() {
	suite, err := bdq.New(bdq.Settings{Today: time.Date(2026, time.June, 30, 0, 0, 0, 0, time.UTC)})
	if err != nil {
		fmt.Println(err)
		return
	}
	record := bdq.Map{"eventDate": "14/6/2024", "day": "31", "month": "6"}
	for _, test := range []string{"VALIDATION_EVENTDATE_STANDARD", "AMENDMENT_EVENTDATE_STANDARDIZED", "VALIDATION_DAY_INRANGE"} {
		response, _ := suite.Run(test, record)
		fmt.Println(response.Status, response.ResultText())
		fmt.Println("  ", response.Comment())
	}
	// Output:
	// RUN_HAS_RESULT NOT_COMPLIANT
	//    dwc:eventDate "14/6/2024" is not an ISO 8601 date
	// AMENDED {"dwc:eventDate":"2024-06-14"}
	//    dwc:eventDate "14/6/2024" can be read as one date
	// RUN_HAS_RESULT NOT_COMPLIANT
	//    dwc:day "31" is not a day of the month
}

// A parameter takes the place of the standard's default.
func ExampleNew_parameters() {
	for _, latest := range []string{"", "2020-12-31"} {
		suite, err := bdq.New(bdq.Settings{
			Today:      time.Date(2026, time.June, 30, 0, 0, 0, 0, time.UTC),
			Parameters: map[string]string{"bdqval:latestValidDate": latest},
		})
		if err != nil {
			fmt.Println(err)
			return
		}
		response, _ := suite.Run("VALIDATION_EVENTDATE_INRANGE", bdq.Map{"eventDate": "2024-06-14"})
		fmt.Println(response.Result)
	}
	// Output:
	// COMPLIANT
	// NOT_COMPLIANT
}

// A report counts the answers over the records of a submission.
func ExampleReport() {
	suite, err := bdq.New(bdq.Settings{Today: time.Date(2026, time.June, 30, 0, 0, 0, 0, time.UTC)})
	if err != nil {
		fmt.Println(err)
		return
	}
	report := suite.NewReport()
	for _, date := range []string{"2024-06-14", "2024-06-15", "15/6/2024"} {
		report.Observe(&dwc.Occurrence{EventDate: date, Locality: "Sallowmere Reserve"})
	}
	for _, row := range report.Rows() {
		if row.Test.Label == "VALIDATION_EVENTDATE_STANDARD" {
			fmt.Println(row.Counts.Compliant, "compliant,", row.Counts.NotCompliant, "not compliant")
		}
	}
	// Output:
	// 2 compliant, 1 not compliant
}
