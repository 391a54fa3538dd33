package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/layout/crew"
)

// bundle is what one crew is handed: its sheets, and of the build steps the phases that are its own.
type bundle struct {
	crew   string
	sheets []string
	phases []crew.Phase
}

// bundles are the crews that sheets are bundled for.
var bundles = []bundle{
	{"marking", []string{"stakes"}, nil},
	{"driving", []string{"stakes"}, nil},
	{"cutting", []string{"safety", "stock", "steps"}, []crew.Phase{crew.Cutting}},
	{"wrapping", []string{"safety", "lights", "steps"}, []crew.Phase{crew.Wrapping}},
	{"raising", []string{"safety", "raise", "steps"}, []crew.Phase{crew.Raising}},
	{"hanging", []string{"safety", "lights", "steps"}, []crew.Phase{crew.Hanging}},
	{"power", []string{"safety", "circuit", "steps"}, []crew.Phase{crew.Powering}},
	{"buying", []string{"stock"}, nil},
	{"watching", []string{"nights"}, nil},
	{"takedown", []string{"takedown"}, nil},
}

// Crews returns the words that name the crews a packet can be bundled for.
func Crews() []string {
	var words []string
	for _, c := range bundles {
		words = append(words, c.crew)
	}
	return words
}

// bundled returns the sheets and phases of some crews.
func bundled(crews []string) (sheets []string, phases []crew.Phase, err error) {
	for _, word := range crews {
		i := slices.IndexFunc(bundles, func(c bundle) bool { return c.crew == word })
		if i < 0 {
			return nil, nil, fmt.Errorf("no crew %q; the crews are %s", word, strings.Join(Crews(), ", "))
		}
		sheets = append(sheets, bundles[i].sheets...)
		phases = append(phases, bundles[i].phases...)
	}
	return sheets, phases, nil
}
