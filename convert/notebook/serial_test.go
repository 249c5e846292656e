package notebook

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

func TestClassOf(t *testing.T) {
	for code, want := range map[string]formatClass{
		"": plainFormat, "General": plainFormat, "GENERAL": plainFormat, "0": plainFormat, "0.00": plainFormat, "#,##0.00": plainFormat,
		"@": plainFormat, "0.00E+00": plainFormat, "0%": plainFormat, "000000": plainFormat, `0" moths"`: plainFormat, `\d0`: plainFormat,
		`"yes";"no"`: plainFormat, "[Red]0;[Yellow]-0": plainFormat, `_-* #,##0.00_-;-* #,##0.00_-`: plainFormat, `General" m"`: plainFormat,
		"[$£-809]#,##0": plainFormat, "[<1]0.0;0": plainFormat, "# ?/?": plainFormat, "0;0;yyyy": plainFormat, `0.0"°C"`: plainFormat, "_d0": plainFormat,
		"dd/mm/yyyy": dateFormat, "d-mmm": dateFormat, "mmm-yy": dateFormat, "m/d": dateFormat, "mm": dateFormat, "yyyy": dateFormat,
		"[$-F800]dddd\\,\\ mmmm\\ dd\\,\\ yyyy": dateFormat, "[$-809]d mmmm yyyy;@": dateFormat, "dd/mm/yyyy hh:mm": dateFormat,
		"hh:mm dd/mm/yyyy": dateFormat, "mmm hh:mm": dateFormat, `yyyy"年"m"月"d"日"`: dateFormat, "[Black]DD.MM.YYYY": dateFormat, "yyyy-mm-ddThh:mm:ss": dateFormat,
		"hh:mm": timeFormat, "h:mm AM/PM": timeFormat, "h AM/PM": timeFormat, "AM/PM h:mm": timeFormat, "h:mm a/p": timeFormat, "mm:ss": timeFormat, "mm:ss.0": timeFormat,
		"[$-F400]h:mm:ss\\ AM/PM": timeFormat, "hh:mm;@": timeFormat, `h"h"mm`: timeFormat,
		"[h]:mm": elapsedFormat, "[hh]:mm:ss": elapsedFormat, "[mm]:ss": elapsedFormat, "[s]": elapsedFormat,
	} {
		assert.Equal(t, want, classOf(code), code)
	}
}

// The worked dates of ECMA-376 part 1, section 18.17.4.1, from memory: in the
// 1900 system 1 is 1 January 1900 and 2958465 31 December 9999, in the 1904
// system 0 is 1 January 1904 and 2957003 31 December 9999.
func TestISOOfSerial(t *testing.T) {
	for _, c := range []struct {
		v        float64
		date1904 bool
		want     string
	}{
		{1, false, "1900-01-01"}, {59, false, "1900-02-28"}, {60, false, ""}, {61, false, "1900-03-01"}, {2958465, false, "9999-12-31"}, {2958466, false, ""},
		{0, true, "1904-01-01"}, {2957003, true, "9999-12-31"}, {2957004, true, ""}, {1, true, "1904-01-02"},
		{-1, false, ""}, {0, false, ""}, {0.5, false, "12:00:00"}, {0.999999, false, "1900-01-01"},
		{44359.9479166667, false, "2021-06-12T22:45:00"}, {44359.999999, false, "2021-06-13"}, {44359.0000001, false, "2021-06-12"},
	} {
		got, ok := isoOfSerial(c.v, c.date1904, false)
		assert.Equal(t, c.want, got, c.v)
		assert.Equal(t, c.want != "", ok)
	}
}

// Excelize's own conversion is an independent reckoning of the same days.
func TestISOOfSerialAgainstExcelize(t *testing.T) {
	for v := 61; v < 80_000; v += 7 {
		for _, date1904 := range []bool{false, true} {
			want, err := excelize.ExcelDateToTime(float64(v)+0.25, date1904)
			require.NoError(t, err)
			got, ok := isoOfSerial(float64(v)+0.25, date1904, false)
			require.True(t, ok)
			require.Equal(t, want.Format(time.DateOnly)+"T06:00:00", got)
		}
	}
}
