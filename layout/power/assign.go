package power

import "slices"

// assign shares the units out and builds the feeders. All fed comes before the walls apart. While some chain loses more than 5 % of
// its volts, of its own loss no more counted than ownMost, or hangs behind too many cords in line, and circuits are left, one more
// is taken up for its wall.
func (f *feeding) assign() {
	f.split = f.in.Spec.Power.Split
	f.sharing = f.sharer.share(f.split)
	if f.split && (!f.sharing.possible || f.sharing.missing > hair) {
		if one := f.sharer.share(false); one.missing < f.sharing.missing-hair {
			f.sharing, f.split = one, false
		} else {
			f.sharer.begin(true)
		}
	}
	f.plan.Fewest, f.plan.FewestProven = f.sharing.used, f.sharing.proven
	best := f.build(f.sharing, nearRun)
	for now, b := f.sharing, best; ; {
		chain, ok := b.trouble()
		if !ok {
			break
		}
		if now, ok = f.sharer.nearer(now, f.unitOf(chain)); !ok {
			break
		}
		if b = f.build(now, nearRun); b.better(best) && len(b.dry) <= len(best.dry) {
			f.sharing, best = now, b
		}
	}
	f.sharing, best = f.spare(f.sharing, best)
	if far := f.build(f.sharing, farRun); far.better(best) {
		best = far
	}
	f.plan.Feeders, f.dry = ownCords(best.feeders), best.dry
	f.stock(f.plan.Feeders)
	for _, d := range f.plan.Feeders {
		f.hang(d)
	}
	for i, of := range f.sharing.of {
		switch {
		case of >= 0:
		case slices.ContainsFunc(f.sharer.sources, func(s source) bool { return f.units[i].takes(s.volts) }):
			f.unfed = append(f.unfed, i)
		default:
			f.strange = append(f.strange, i)
		}
	}
}

// spare gives back each circuit that was taken up on the way to a better one and helps nobody now.
func (f *feeding) spare(s sharing, b built) (sharing, built) {
	for p := range s.chosen {
		for i := len(s.chosen[p]) - 1; i >= 0 && len(s.chosen[p]) > 1; i-- {
			fewer := f.sharer.fill(without(s.chosen, p, i))
			if fewer.missing > s.missing+hair {
				continue
			}
			fewer.possible = s.possible
			if less := f.build(fewer, nearRun); !b.better(less) && len(less.dry) <= len(b.dry) {
				s, b = fewer, less
			}
		}
	}
	return s, b
}

// unitOf returns the unit that a chain is in.
func (f *feeding) unitOf(chain int) int {
	return slices.IndexFunc(f.units, func(u unit) bool { return slices.Contains(u.chains, chain) })
}

// ownCords copies feeders as deep as their cords change hands: what is laid once is kept for other sharings.
func ownCords(feeders []Feeder) []Feeder {
	out := slices.Clone(feeders)
	for d := range out {
		out[d].Joints = slices.Clone(out[d].Joints)
		for i := range out[d].Joints {
			out[d].Joints[i].Cords = slices.Clone(out[d].Joints[i].Cords)
		}
	}
	return out
}
