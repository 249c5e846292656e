package convert

import (
	"time"

	"fieldfare/validate/bdq"
)

// newStandard starts the report of the Biodiversity Data Quality tests on the
// records as they leave; nil where the job does not ask for it.
func newStandard(job Job) (*bdq.Report, error) {
	if !job.Standard {
		return nil, nil
	}
	today := time.Date(job.Today.Year, time.Month(job.Today.Month), job.Today.Day, 0, 0, 0, 0, time.UTC)
	suite, err := bdq.New(bdq.Settings{Today: today})
	if err != nil {
		return nil, err
	}
	return suite.NewReport(), nil
}
