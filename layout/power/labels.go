package power

import (
	"slices"

	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
)

// overloadSays tells of strings that draw more than their own supply, or the plug that their label speaks of, gives.
func (f *feeding) overloadSays() {
	var done []string
	for _, l := range f.labels {
		most := limitOf(l).watts
		if most == 0 || l.Watts <= most+hair || slices.Contains(done, l.Name) {
			continue
		}
		done = append(done, l.Name)
		key, what := "lights.strings."+l.Name, "its plug carries"
		if l.Supply != nil {
			what = "its supply gives"
		}
		level := finding.LookAt
		if f.in.Spec.Given(key+".most watts") || f.in.Spec.Given(key+".supply") {
			level = finding.MustFix
		}
		f.say(level, "string-over-limit", key, "One %s draws %s, more than the %s that %s. Read its label again, or take another string.",
			l.Name, measure.Watts(l.Watts), measure.Watts(most), what)
	}
}

// chainSays tells of chains longer than the label is known to allow.
func (f *feeding) chainSays() {
	longest := -1
	for i, c := range f.chains {
		if f.labels[i].MostChain == 0 && len(c.Strings) > 1 && (longest < 0 || len(c.Strings) > len(f.chains[longest].Strings)) {
			longest = i
		}
	}
	if longest >= 0 {
		c := f.chains[longest]
		f.say(finding.Note, "chain-limit-unknown", "lights.strings", "Up to %s of %s hang end to end (run %s), and how many its label allows is not known here. Read the label before plugging them together; the label wins.",
			say.Count(len(c.Strings), "string"), c.Kind, c.Name)
	}
}
