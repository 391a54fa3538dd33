// Lines of cord past calls, each laid with the fewest pieces by a dynamic program.

package power

import (
	"math"
	"slices"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
)

// newLiner readies the laying of lines by some tools.
func newLiner(t tools) *liner {
	l := &liner{tools: t, kinds: inlineSocket, places: map[ahead]*place{}, plain: map[measure.Length]plainLaid{}}
	for _, c := range t.inline {
		l.base = append(l.base, l.kinds)
		l.kinds += c.Sockets
	}
	return l
}

// lineUp lays a line past all calls, from a kind of socket in the outlet, and returns its mark; none, where there is neither a three-way nor a cord with several
// sockets and more is wanted than one cord's end gives.
func (l *liner) lineUp(calls []call, kind int16) (mark, begun) {
	var at *place
	var before call // with the way from the place to the next
	for _, c := range slices.Backward(calls) {
		at = l.place(at, before.gap, ahead{over: int32(before.over), wants: int16(c.wants), up: int16(b2i(c.up))})
		before = c
	}
	at = l.place(at, before.gap, ahead{over: int32(before.over)})
	f := &at.known[kind]
	if !f.done {
		c := l.onward(at, state{}, false)
		if start := (state{at.next.wants, kind}); at.gap <= practice.HandReach && at.next.up == 0 {
			if m := l.best(at.next, start); !c.mark.better(m) {
				c.mark, c.move = m, move{to: start, step: 1}
			}
		}
		*f = found{c.mark, c.move, true}
	}
	return f.mark, begun{l, at, kind}
}

// place returns what is known of what lies ahead, the next place so far on.
func (l *liner) place(next *place, gap measure.Length, a ahead) *place {
	a.next, a.gap = next, math.Float64bits(float64(gap))
	p, ok := l.places[a]
	if !ok {
		n := (int(a.wants) + 1) * l.kinds
		if a.wants == 0 {
			n = passedSocket
		}
		p = &place{ahead: a, gap: gap, plain: l.over(gap), known: make([]found, n)}
		l.places[a] = p
	}
	return p
}

// over lays plain cords over a gap as it was laid before, if it was.
func (l *liner) over(gap measure.Length) plainLaid {
	one, ok := l.plain[gap]
	if ok {
		return one
	}
	one.lay = lay(l.tools.cord, gap)
	one.mark = mark{pieces: int32(len(one.lay)), low: int32(len(one.lay))}
	for _, c := range one.lay {
		one.mark.cents += l.tools.price(c)
	}
	l.plain[gap] = one
	return one
}

// deeds follows the best moves from the first on.
func (b begun) deeds() []deed {
	var out []deed
	m, at, call := b.from.known[b.kind].move, b.from, -1
	for {
		d := deed{serves: int(m.serves), tap: m.tap, spare: int(m.spare), next: int(m.next), call: call}
		if m.plain || m.inline > 0 || call < 0 {
			d.call += int(m.step)
		}
		if m.plain {
			d.cords = b.plainTo(at, m.step).lay
		}
		if m.leaf {
			d.leaf = at.plain.lay
		}
		if m.inline > 0 {
			d.inline, d.skip = &b.tools.inline[m.inline-1], int(m.skip)
		}
		out = append(out, d)
		if m.end {
			return out
		}
		at, call = at.on(m.step), call+int(m.step)
		m = b.at(at, m.to).move
	}
}

// plainTo returns the plain cords from a place to the same, the next, or the one after.
func (l *liner) plainTo(p *place, step int8) plainLaid {
	switch step {
	case 0:
		return l.over(0)
	case 1:
		return p.plain
	}
	return l.over(p.gap + p.next.gap)
}

// at returns what is known of a state.
func (l *liner) at(p *place, s state) *found { return &p.known[int(s.wants)*l.kinds+int(s.kind)] }

// best returns the best mark from a state on.
func (l *liner) best(p *place, s state) mark {
	f := l.at(p, s)
	if !f.done {
		f.done = true // no state leads back to itself
		var c choice
		if s.kind >= inlineSocket {
			c = l.inline(p, s)
		} else {
			c = l.free(p, s)
		}
		f.mark, f.move = c.mark, c.move
	}
	return f.mark
}

// choice is the best of what was tried at a place.
type choice struct {
	at   *place
	mark mark
	move move
}

// try takes a move where it is better: what it costs itself, and what comes after.
func (c *choice) try(l *liner, own mark, m move) {
	if !m.end {
		rest := l.best(c.at.on(m.step), m.to)
		if rest == none {
			return
		}
		own = own.plus(rest)
	}
	if own.better(c.mark) {
		c.mark, c.move = own, m
	}
}

// tap is the mark of a three-way: each of its sockets has a plug or a cover.
func (l *liner) tap() mark { return mark{pieces: 1, low: int32(1 + l.tools.fans), cents: l.tools.tap} }

// free goes on from a free socket of a cord's end or of a three-way.
func (l *liner) free(p *place, s state) choice {
	c := choice{at: p, mark: none}
	if s.wants == 1 && p.next == nil && s.kind != passedSocket {
		c.try(l, mark{low: 1}, move{serves: 1, end: true})
	}
	if s.kind == passedSocket {
		return l.onward(p, s, false)
	}
	if s.kind == plainSocket && s.wants > 0 && l.tools.fans > 0 {
		l.taps(&c, s, 0)
	}
	if on := l.onward(p, s, s.kind == plainSocket); on.mark.better(c.mark) {
		return on
	}
	return c
}

// taps tries a three-way in a free socket: one that ends the line, and one whose last socket goes on.
func (l *liner) taps(c *choice, s state, spare int) {
	fans := int16(l.tools.fans)
	own := l.tap().plus(mark{low: int32(spare)})
	if s.wants <= fans && c.at.next == nil {
		c.try(l, own, move{serves: s.wants, tap: true, spare: int16(spare), end: true})
	}
	n := min(s.wants, fans-1)
	own.low-- // its last socket is counted by what goes in
	m := move{serves: n, tap: true, spare: int16(spare), to: state{s.wants - n, tappedSocket}}
	c.try(l, own, m)
	if s.wants > fans-2 || c.at.next == nil || c.at.next.next == nil || c.at.next.wants != 1 {
		return
	}
	leaf := c.at.plain.mark // one cord to the next call alone, and the line passes on to the one after
	leaf.over = c.at.over * l.tools.past
	m.leaf, m.to.kind = true, passedSocket
	c.try(l, own.plus(leaf), m)
}

// onward lays the next cord from a place: to the same place where some of it is left, else to the next. A plain socket needs no other at the same place.
func (l *liner) onward(p *place, s state, plain bool) choice {
	c := choice{at: p, mark: none}
	m, gap, over := move{to: state{s.wants, plainSocket}}, measure.Length(0), int32(0)
	if s.wants == 0 {
		if p.next == nil {
			return c
		}
		gap, over, m.step = p.gap, p.over, 1
		if s.kind == passedSocket {
			gap, over, m.step = gap+p.next.gap, over+p.next.over, 2
		}
		m.to.wants = p.on(m.step).wants
	}
	if s.wants == 0 || !plain {
		own := l.plainTo(p, m.step).mark
		own.over = over * l.tools.past
		c.try(l, own, move{plain: true, to: m.to, step: m.step})
	}
	for i, in := range l.tools.inline {
		skip, ok := skipped(in, gap)
		if !ok || p.on(m.step).up > 0 || skip > 0 && over > 0 { // no free socket hangs over a way
			continue
		}
		m.inline, m.skip, m.to.kind = int8(i+1), int16(skip), int16(l.base[i]+in.Sockets-1-skip)
		c.try(l, mark{over: over * l.tools.past, pieces: 1, low: int32(1 + skip), cents: l.tools.prices[i]}, m)
	}
	return c
}

// cordOf returns the cord of an in-line state and how many sockets it has left.
func (l *liner) cordOf(kind int16) (*catalog.Inline, int) {
	for i := len(l.base) - 1; i >= 0; i-- {
		if int(kind) >= l.base[i] {
			return &l.tools.inline[i], int(kind) - l.base[i]
		}
	}
	return nil, 0
}

// inline goes on from a free socket of a cord with several: it serves one want, or by a three-way some; then the next socket, at the same
// foot or farther on, or a new cord from this one.
func (l *liner) inline(p *place, s state) choice {
	c := choice{at: p, mark: none}
	_, left := l.cordOf(s.kind)
	if s.wants == 0 { // a new cord goes on from here; what is left on this one stays free
		c.try(l, mark{low: int32(left)}, move{spare: int16(left), to: state{0, plainSocket}})
		return c
	}
	if left == 0 {
		c.try(l, mark{}, move{to: state{s.wants, plainSocket}})
	}
	l.along(&c, s, 1, mark{low: 1}, false)
	if fans := int16(l.tools.fans); fans > 0 {
		l.along(&c, s, min(s.wants, fans), l.tap(), true)
		l.taps(&c, s, left)
	}
	return c
}

// along serves wants at a socket and goes on along the same cord, or ends.
func (l *liner) along(c *choice, s state, serves int16, own mark, tap bool) {
	in, left := l.cordOf(s.kind)
	m := move{serves: serves, tap: tap, next: 1}
	rest := s.wants - serves
	next := c.at.next
	if rest == 0 && next == nil {
		m.next, m.spare, m.end = 0, int16(left), true
		own.low += int32(left)
		c.try(l, own, m)
		return
	}
	if left == 0 {
		return
	}
	m.to = state{rest, s.kind - 1} // the next socket at the same foot, for what is left there or for a new cord
	c.try(l, own, m)
	if rest > 0 {
		return
	}
	if steps := stepsOver(in.Apart, c.at.gap); steps <= left && c.at.over == 0 && next.up == 0 { // no free socket hangs over a way
		m.next, m.step, m.to = int16(steps), 1, state{next.wants, s.kind - int16(steps)}
		own.low += int32(steps - 1)
		c.try(l, own, m)
	}
}

// skipped returns how many sockets of a cord lie free on the way before the first that comes over a gap, not ok where none does.
func skipped(in catalog.Inline, gap measure.Length) (n int, ok bool) {
	need := gap + 2*practice.EndSlack - dust
	for n < in.Sockets && in.Lead()+measure.Length(n)*in.Apart < need {
		n++
	}
	return n, n < in.Sockets
}

// stepsOver returns how many sockets along a cord one is that reaches over a gap.
func stepsOver(apart, gap measure.Length) int {
	if apart <= 0 {
		return math.MaxInt32
	}
	return max(1, int(math.Ceil(float64((gap+practice.SocketSlack)/apart)*(1-1e-9))))
}
