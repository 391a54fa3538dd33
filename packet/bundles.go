package packet

import (
	"fmt"
	"slices"
	"strings"
)

// bundle is what one crew is handed.
type bundle struct {
	crew   string
	sheets []string
}

// bundles are the crews that sheets are bundled for.
var bundles = []bundle{
	{"marking", []string{"stakes"}},
	{"driving", []string{"stakes"}},
	{"cutting", []string{"stock"}},
	{"wrapping", []string{"lights"}},
	{"raising", []string{"raise"}},
	{"hanging", []string{"raise"}},
	{"power", []string{"power"}},
	{"buying", []string{"stock"}},
	{"watching", []string{"nights"}},
	{"takedown", []string{"takedown"}},
}

// Crews returns the words that name the crews a packet can be bundled for.
func Crews() []string {
	var words []string
	for _, c := range bundles {
		words = append(words, c.crew)
	}
	return words
}

// bundled returns the sheets of some crews.
func bundled(crews []string) (sheets []string, err error) {
	for _, word := range crews {
		i := slices.IndexFunc(bundles, func(c bundle) bool { return c.crew == word })
		if i < 0 {
			return nil, fmt.Errorf("no crew %q; the crews are %s", word, strings.Join(Crews(), ", "))
		}
		sheets = append(sheets, bundles[i].sheets...)
	}
	return sheets, nil
}
