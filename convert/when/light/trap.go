package light

import (
	"fmt"
	"time"

	"fieldfare/convert/reading"
	"fieldfare/convert/when"
)

// Trap asks about the time at which a light trap is said to have been lit,
// where that was in daylight. A trap is usually lit about half an hour after
// dark (common practice, no source). The time is "22:45"; notebooks do not say
// whether their clocks kept summer time, so it is only asked about where it
// was between sunrise and sunset by Greenwich time and by summer time, one
// hour ahead, alike. Any other time, and one that is not a time, gives the
// zero verdict.
func Trap(latitude, longitude float64, d when.Date, hhmm string) reading.Verdict {
	at, err := time.Parse("15:04", hhmm)
	if err != nil {
		return reading.Verdict{}
	}
	day := Of(latitude, longitude, d)
	if day.Sunset.IsZero() || day.Sunrise.IsZero() {
		return reading.Verdict{}
	}
	utc := time.Unix(int64(d.Days())*86400, 0).UTC().Add(time.Duration(at.Hour())*time.Hour + time.Duration(at.Minute())*time.Minute)
	for _, t := range [...]time.Time{utc, utc.Add(-time.Hour)} {
		if !t.After(day.Sunrise) || !t.Before(day.Sunset) {
			return reading.Verdict{}
		}
	}
	return reading.QueryOf("trap-in-daylight", fmt.Sprintf(
		"The light trap is said to have been lit at %s on %s, but the sun set at %s (Greenwich time; %s in summer time). Check the time and the day.",
		hhmm, d.Words(), day.Sunset.Format("15:04"), day.Sunset.Add(time.Hour).Format("15:04")))
}
