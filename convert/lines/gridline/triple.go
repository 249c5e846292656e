package gridline

import (
	"strconv"
	"strings"

	"fieldfare/gridref"
)

// uncertainty takes the third field, metres, off a line of latitude,
// longitude and uncertainty; 0 where there is none.
func (o Options) uncertainty(line string) (place string, metres float64, err error) {
	if !o.ToGridref {
		return line, 0, nil
	}
	for _, comma := range []string{",", ";", "\t"} {
		if strings.Count(line, comma) != 2 {
			continue
		}
		last := strings.LastIndex(line, comma)
		text := strings.TrimSpace(line[last+len(comma):])
		place = line[:last]
		if text == "" {
			return place, 0, nil
		}
		text = strings.TrimSpace(strings.TrimSuffix(text, "m"))
		metres, convErr := strconv.ParseFloat(text, 64)
		if convErr != nil {
			return line, 0, nil
		}
		if !(metres > 0 && metres < 1e8) {
			return "", 0, &gridref.Fault{Code: gridref.OutOfRange, Message: "“" + text + "” is no uncertainty: it must be more than 0 metres."}
		}
		return place, metres, nil
	}
	return line, 0, nil
}
