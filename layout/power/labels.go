package power

import (
	"slices"

	"hoopwright/layout/finding"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
)

// overloadSays tells of strings that draw more than their own supply, or the plug that their label speaks of, gives.
func (f *feeding) overloadSays() {
	var done []string
	for _, l := range f.labels {
		bound := breaks(behind([]lights.String{{Label: l, Watts: l.Watts}}, 1))
		if bound.Kind == NoLimit || slices.Contains(done, l.Name) {
			continue
		}
		done = append(done, l.Name)
		key := "lights.strings." + l.Name
		have, most, what := measure.Watts(measure.Power(bound.Have)), measure.Watts(measure.Power(bound.Of)), "its plug carries"
		switch bound.Kind {
		case SupplyWatts:
			what = "its supply gives"
		case FuseAmps:
			have, most, what = measure.Amps(measure.Current(bound.Have)), measure.Amps(measure.Current(bound.Of)), "the fuse in its plug carries"
		}
		level := finding.LookAt
		if f.in.Spec.Given(key+".most watts") || f.in.Spec.Given(key+".supply") || f.in.Spec.Given(key+".fuse") {
			level = finding.MustFix
		}
		f.say(level, "string-over-limit", key, "One %s draws %s, more than the %s that %s. Read its label again, or take another string.",
			l.Name, have, most, what)
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
