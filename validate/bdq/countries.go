package bdq

import (
	"strings"
	"sync"
)

// countryList knows the alpha-2 codes of ISO 3166-1, with XZ for the high seas
// and ZZ for unknown, and what else stands for each: its alpha-3 code and its
// names. A name that means two countries ("Congo", "Korea") stands for none.
type countryList struct {
	codes map[string]bool
	means map[string]string
}

var countries = sync.OnceValue(func() *countryList {
	c := &countryList{codes: map[string]bool{}, means: map[string]string{}}
	for _, row := range list("countries.tsv") {
		c.codes[row[0]] = true
		c.mean(row[0], row[0])
		c.mean(row[1], row[0])
		for name := range strings.SplitSeq(row[2], "|") {
			c.mean(name, row[0])
		}
	}
	return c
})

func (c *countryList) mean(text, code string) {
	k := key(text)
	if other, taken := c.means[k]; taken && other != code {
		code = ""
	}
	if k != "" {
		c.means[k] = code
	}
}

func (c *countryList) interpret(s string) (string, bool) {
	code := c.means[key(s)]
	return code, code != ""
}
