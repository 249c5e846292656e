package project

import (
	"fmt"
	"reflect"
	"strings"

	"github.com/agnivade/levenshtein"
)

// spelling says what to do about a setting that there is not: to write the one
// of its part that it is nearest to, or to put it under the part that has it.
func spelling(key []string) string {
	last := key[len(key)-1]
	part := settingsOf(reflect.TypeFor[Project](), key[:len(key)-1])
	best, like := 3, ""
	for _, name := range part {
		if n := levenshtein.ComputeDistance(strings.ToLower(last), name); n < best {
			best, like = n, name
		}
	}
	if like != "" {
		return fmt.Sprintf("There is %q; write that, or remove the line", like)
	}
	if len(key) == 1 {
		for _, name := range part {
			for _, inner := range settingsOf(reflect.TypeFor[Project](), []string{name}) {
				if inner == last {
					return fmt.Sprintf("It belongs below a line [%s]", name)
				}
			}
		}
	}
	return "Check its spelling, or remove the line"
}

// settingsOf are the names of the settings below a part of the project file.
func settingsOf(t reflect.Type, part []string) []string {
	for t.Kind() == reflect.Pointer || t.Kind() == reflect.Slice {
		t = t.Elem()
	}
	if t.Kind() != reflect.Struct {
		return nil
	}
	var names []string
	for i := range t.NumField() {
		f := t.Field(i)
		name, _, _ := strings.Cut(f.Tag.Get("toml"), ",")
		if name == "" || name == "-" {
			continue
		}
		if len(part) > 0 && name == part[0] {
			return settingsOf(f.Type, part[1:])
		}
		names = append(names, name)
	}
	if len(part) > 0 {
		return nil
	}
	return names
}
