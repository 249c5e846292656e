package project

import (
	"errors"
	"fmt"
	"reflect"
	"regexp"
	"strings"
	"sync"

	"fieldfare/dwc"

	"github.com/go-playground/validator/v10"
)

// check finds the first setting whose value is none of those allowed: in the
// order of Project, as the settings' tags have it.
func (p *Project) check() error {
	var faults validator.ValidationErrors
	if errors.As(rules().Struct(p), &faults) {
		return &Error{File: p.Path, Problem: problem(faults[0])}
	}
	if err := p.checkEntries(); err != nil {
		return err
	}
	if _, err := p.Dataset.LicenceURL(); err != nil {
		return &Error{File: p.Path, Problem: err.Error()}
	}
	return nil
}

// rules is the validator of the settings. It knows the rules of Darwin Core's
// terms as well, since what the project file says of the dataset fills some.
var rules = sync.OnceValue(func() *validator.Validate {
	v := validator.New(validator.WithRequiredStructEnabled())
	v.RegisterTagNameFunc(func(f reflect.StructField) string { return f.Tag.Get("toml") })
	// What EML 2.2.0 takes for a date of publication.
	v.RegisterAlias("day_or_year", "datetime=2006-01-02|datetime=2006")
	v.RegisterAlias("four_digits", "gte=1000,lte=9999")
	orcid := func(f validator.FieldLevel) bool { return isORCID(f.Field().String()) }
	if err := errors.Join(dwc.RegisterRules(v), v.RegisterValidation("orcid", orcid)); err != nil {
		panic("project: " + err.Error()) // a name of a rule that validator/v10 does not take
	}
	return v
})

// remedies say for each rule what to write instead.
var remedies = map[string]string{
	"gte":            "write a number above 0, or remove the line for the usual one",
	"four_digits":    "write a year of four digits",
	"day_or_year":    "write the day as year-month-day, such as 2024-03-01, or the year",
	"country_alpha2": "write the two capital letters that ISO 3166-1 has for the country, such as GB or IE",
	"language_tag":   `write the code of the language, such as "en"`,
	"orcid":          "write the sixteen figures as ORCID gives them, such as 0000-0002-1825-0097; if these look right, one of them is not",
	"required":       "this must be said",
}

// problem says which setting is wrong and what to write.
func problem(f validator.FieldError) string {
	_, setting, _ := strings.Cut(f.Namespace(), ".") // after "Project"
	about := ""
	if m := oneOfSeveral.FindStringSubmatch(setting); m != nil {
		number := 0
		fmt.Sscan(m[2], &number)
		about, setting = fmt.Sprintf("[[%s]] number %d: ", m[1], number+1), m[3]
	}
	remedy := remedies[f.Tag()]
	if f.Tag() == "oneof" {
		remedy = "write one of " + strings.ReplaceAll(f.Param(), "'", `"`)
	}
	written := f.Value()
	if text, ok := written.(string); ok {
		written = fmt.Sprintf("%q", text)
	}
	return fmt.Sprintf("%s%s = %v: %s", about, setting, written, remedy)
}

// oneOfSeveral is a setting of a part that the file may have several of:
// privacy.taxon[0].name.
var oneOfSeveral = regexp.MustCompile(`^(.*)\[(\d+)\]\.(.*)$`)

// isORCID tells whether a text is a person's identifier, alone or as a web
// address: four times four figures, of which the last is a check on the others
// after ISO 7064, MOD 11-2 ("Structure of the ORCID Identifier", ORCID).
func isORCID(text string) bool {
	m := orcid.FindStringSubmatch(text)
	if m == nil {
		return false
	}
	sum := 0
	figures := strings.ReplaceAll(m[1], "-", "")
	for _, c := range figures[:15] {
		sum = (sum + int(c-'0')) * 2
	}
	check := (12 - sum%11) % 11
	return figures[15] == "0123456789X"[check]
}

var orcid = regexp.MustCompile(`^(?:https?://orcid\.org/)?(\d{4}-\d{4}-\d{4}-\d{3}[\dX])$`)
