// The ways to feed one wall from an outlet: its stops parted into lines, each laid.

package power

import (
	"slices"

	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// line is one line of cord from an outlet's socket along a wall: its stops in the order that it comes to them, and how it is laid.
type line struct {
	side  spec.Side
	stops []stop
	laid  begun
	amps  measure.Current
	up    bool // its last cord leads right up to the one riser that is wanted there
}

// course is one way to feed all of a wall from an outlet: by lines of their own sockets.
type course struct {
	lines []line
	mark  mark // lines and risers
}

// mostCuts is up to how many stops a wall's line is also cut in two anywhere, each part led to from the outlet.
const mostCuts = 12

// courses lists the ways to feed a wall's stops: from one end to the other, from the other end, from the nearest foot both ways; on a short wall, in two lines cut anywhere, either laid from either end;
// and, where the volts ask for more lines, with the far half or quarters on lines of their own. Each line carries no more than its cord may.
func (f *feeding) courses(k int, side spec.Side, stops []stop, by *liner, more bool) []course {
	if len(stops) == 0 {
		return []course{{}}
	}
	risers := riserMark(stops, by)
	back := slices.Clone(stops)
	slices.Reverse(back)
	orders := [][][]stop{{stops}, {back}}
	near := f.sources[k].ways[side].arch
	at := slices.IndexFunc(stops, func(s stop) bool { return s.arch >= near })
	if at < 0 {
		at = len(stops)
	}
	ahead, behind := stops[at:], back[len(stops)-at:]
	if len(ahead) > 0 && len(behind) > 0 {
		orders = append(orders, [][]stop{ahead, behind})
	}
	if f.sources[k].outlet.Sockets > 1 && len(stops) <= mostCuts {
		for at := 1; at < len(stops); at++ {
			orders = append(orders, [][]stop{stops[:at], stops[at:]})
		}
		orders = append(orders, risersApart(stops)...)
	}
	if more {
		orders = append(orders, halves(ahead, behind)...)
	}
	var out []course
	for i, order := range orders {
		either := i > 1 && !more // of the first two, each is the other's reverse; where volts ask for more, the order stays
		c := f.course(k, side, order, by, risers, either, plainSocket)
		out = append(out, c)
		if c.tapped() { // where the outlet's socket holds a three-way for several lines, this one takes none there
			out = append(out, f.course(k, side, order, by, risers, either, tappedSocket))
		}
	}
	return out
}

// tapped reports whether some line begins with a three-way right in the outlet.
func (c course) tapped() bool {
	return slices.ContainsFunc(c.lines, func(l line) bool {
		first := l.laid.from.known[l.laid.kind].move // comes to the first call, by a cord or without
		return !first.plain && first.inline == 0 && l.laid.at(l.laid.from.next, first.to).move.tap
	})
}

// course lays lines past stops in an order, or each in its reverse where that is better, from a three-way shared in the outlet's socket or without: its kind of socket.
func (f *feeding) course(k int, side spec.Side, order [][]stop, by *liner, risers mark, either bool, kind int16) course {
	c := course{mark: risers, lines: make([]line, 0, len(order))}
	for _, one := range order {
		for _, part := range f.within(one, f.sources[k].most) {
			l, m := f.line(k, side, part, by, kind)
			if either && len(part) > 1 {
				f.turned = append(f.turned[:0], part...)
				slices.Reverse(f.turned)
				if o, less := f.line(k, side, f.turned, by, kind); less.better(m) {
					l, m = o, less
					l.stops = slices.Clone(f.turned)
				}
			}
			if m != none {
				c.add(l, m)
				continue
			}
			for _, single := range singles(part) {
				c.add(f.line(k, side, single, by, kind))
			}
		}
	}
	return c
}

func (c *course) add(l line, m mark) {
	c.lines = append(c.lines, l)
	c.mark = c.mark.plus(m)
}

// singles gives every want a line of its own.
func singles(stops []stop) [][]stop {
	var out [][]stop
	for _, s := range stops {
		for _, w := range s.wants {
			out = append(out, []stop{{arch: s.arch, wants: []want{w}, lift: s.lift}})
		}
	}
	return out
}

// halves cuts each direction of at least four stops in two, the far half fed apart; then in four.
func halves(ways ...[]stop) [][][]stop {
	var out [][][]stop
	for _, parts := range []int{2, 4} {
		var order [][]stop
		cut := false
		for _, w := range ways {
			n := len(w)
			if n < 2*parts {
				if n > 0 {
					order = append(order, w)
				}
				continue
			}
			cut = true
			for i := range parts {
				order = append(order, w[n*i/parts:n*(i+1)/parts])
			}
		}
		if cut {
			out = append(out, order)
		}
	}
	return out
}

// within cuts stops, in the order of a line, into as many lines as their currents need.
func (f *feeding) within(stops []stop, most measure.Current) [][]stop {
	var out [][]stop
	var sum measure.Current
	for _, s := range stops {
		for _, w := range s.wants {
			sum += w.amps
		}
	}
	if sum <= most+hair {
		return [][]stop{stops}
	}
	for _, s := range stops {
		for _, w := range s.wants {
			if len(out) == 0 || sum+w.amps > most+hair {
				out = append(out, nil)
				sum = 0
			}
			last := &out[len(out)-1]
			if n := len(*last); n == 0 || (*last)[n-1].arch != s.arch {
				*last = append(*last, stop{arch: s.arch, lift: s.lift})
			}
			n := len(*last) - 1
			(*last)[n].wants = append((*last)[n].wants, w)
			sum += w.amps
		}
	}
	return out
}

// line lays one line past stops.
func (f *feeding) line(k int, side spec.Side, stops []stop, by *liner, kind int16) (line, mark) {
	way := f.sources[k].ways[side]
	l := line{side: side, stops: stops}
	calls := f.calls[:0]
	for i, s := range stops {
		c := call{wants: len(s.wants)}
		if i == 0 {
			c.gap, c.over = f.site.toFoot(way, side, s.arch)+s.lift, way.over+f.site.crosses(side, way.arch, s.arch)
		} else {
			c.gap, c.over = f.site.runs(side, stops[i-1].arch, s.arch)+stops[i-1].lift+s.lift, f.site.crosses(side, stops[i-1].arch, s.arch)
		}
		calls = append(calls, c)
		for _, w := range s.wants {
			l.amps += w.amps
		}
	}
	f.calls = calls
	m, laid := by.lineUp(calls, kind)
	l.laid = laid
	end := stops[len(stops)-1]
	if w := end.wants[0]; len(end.wants) == 1 && w.riser != nil {
		calls[len(calls)-1].gap += w.riser.spot.climb
		calls[len(calls)-1].up = true
		right, up := by.lineUp(calls, kind)
		if right != none {
			right = right.minus(by.over(w.riser.spot.climb).mark)
		}
		if right.better(m) {
			m, l.laid, l.up = right, up, true
		}
	}
	return l, m
}

// risersApart gives each riser in turn a line of its own.
func risersApart(stops []stop) (orders [][][]stop) {
	for i, s := range stops {
		for n, w := range s.wants {
			if w.riser == nil {
				continue
			}
			rest, own := slices.Clone(stops), s
			rest[i].wants, own.wants = slices.Delete(slices.Clone(s.wants), n, n+1), []want{w}
			if rest = slices.DeleteFunc(rest, func(s stop) bool { return len(s.wants) == 0 }); len(rest) > 0 {
				orders = append(orders, [][]stop{rest, {own}})
			}
		}
	}
	return orders
}

// linerOf returns what lays lines of one kind of cord, the same for all lines: from choice to choice most end alike.
func (f *feeding) linerOf(c cordKind) *liner {
	l := f.site.liners[c.cord.Name]
	if l == nil {
		l = newLiner(tools{cordKind: c, fans: f.fans, tap: f.prices.tap, price: f.prices.cord(c.cord), past: f.site.past})
		f.site.liners[c.cord.Name] = l
	}
	return l
}
