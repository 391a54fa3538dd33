// One line of cord past calls, laid with the fewest pieces by a dynamic program.

package power

import (
	"math"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
)

// lineUp lays a line past all calls and returns its mark and its deeds in order; none, where there is neither a three-way nor a cord with several
// sockets and more is wanted than one cord's end gives.
func lineUp(calls []call, t tools) (mark, []deed) {
	l := &liner{calls: calls, tools: t, kinds: inlineSocket}
	for _, c := range calls {
		l.most = max(l.most, c.wants)
	}
	for _, c := range t.inline {
		l.base = append(l.base, l.kinds)
		l.kinds += c.Sockets
	}
	l.known = make([]found, len(calls)*(l.most+1)*l.kinds)
	l.past = make([]plainLaid, len(calls))
	for q, c := range calls {
		l.plain = append(l.plain, t.over(c.gap))
		if q > 1 {
			l.past[q] = t.over(c.gap + calls[q-1].gap)
		}
	}
	l.plain = append(l.plain, t.over(0))
	best, first := l.onward(state{call: -1}, false)
	start := state{0, int16(calls[0].wants), plainSocket}
	if t.shared {
		start.kind = tappedSocket
	}
	if calls[0].gap <= practice.HandReach && !calls[0].up {
		if m := l.best(start); !best.better(m) {
			best, first = m, move{to: start}
		}
	}
	if best == none {
		return none, nil
	}
	return best, l.deeds(first)
}

// over lays plain cords over a gap.
func (t tools) over(gap measure.Length) plainLaid {
	one := plainLaid{lay: lay(t.cord, gap)}
	one.mark = mark{pieces: int32(len(one.lay)), low: int32(len(one.lay))}
	for _, c := range one.lay {
		one.mark.cents += t.price(c)
	}
	return one
}

// deeds follows the best moves from the first on.
func (l *liner) deeds(m move) []deed {
	var out []deed
	at := state{call: -1}
	for {
		d := deed{serves: int(m.serves), tap: m.tap, spare: int(m.spare), next: int(m.next), call: int(at.call)}
		if m.plain || m.inline > 0 || at.call < 0 {
			d.call = int(m.to.call)
		}
		if m.plain {
			d.cords = l.plainTo(at, m.to).lay
		}
		if m.leaf {
			d.leaf = l.plain[at.call+1].lay
		}
		if m.inline > 0 {
			d.inline, d.skip = &l.tools.inline[m.inline-1], int(m.skip)
		}
		out = append(out, d)
		if m.end {
			return out
		}
		at = m.to
		m = l.known[l.index(at)].move
	}
}

// plainTo returns the plain cords from a state's call to another's: the same, the next, or the one after.
func (l *liner) plainTo(from, to state) plainLaid {
	switch to.call - from.call {
	case 0:
		return l.plain[len(l.calls)]
	case 1:
		return l.plain[to.call]
	}
	return l.past[to.call]
}

func (l *liner) index(s state) int {
	return (int(s.call)*(l.most+1)+int(s.wants))*l.kinds + int(s.kind)
}

// best returns the best mark from a state on.
func (l *liner) best(s state) mark {
	f := &l.known[l.index(s)]
	if !f.done {
		f.done = true // no state leads back to itself
		var c choice
		if s.kind >= inlineSocket {
			c = l.inline(s)
		} else {
			c = l.free(s)
		}
		f.mark, f.move = c.mark, c.move
	}
	return f.mark
}

// choice is the best of what was tried.
type choice struct {
	mark mark
	move move
}

// try takes a move where it is better: what it costs itself, and what comes after.
func (c *choice) try(l *liner, own mark, m move) {
	if !m.end {
		rest := l.best(m.to)
		if rest == none {
			return
		}
		own = own.plus(rest)
	}
	if own.better(c.mark) {
		c.mark, c.move = own, m
	}
}

// last reports whether nothing is left to serve after a call.
func (l *liner) last(call int16) bool { return int(call) == len(l.calls)-1 }

// tap is the mark of a three-way: each of its sockets has a plug or a cover.
func (l *liner) tap() mark { return mark{pieces: 1, low: int32(1 + l.tools.fans), cents: l.tools.tap} }

// free goes on from a free socket of a cord's end or of a three-way.
func (l *liner) free(s state) choice {
	c := choice{mark: none}
	if s.wants == 1 && l.last(s.call) && s.kind != passedSocket {
		c.try(l, mark{low: 1}, move{serves: 1, end: true})
	}
	if s.kind == passedSocket {
		c.mark, c.move = l.onward(s, false)
		return c
	}
	if s.kind == plainSocket && s.wants > 0 && l.tools.fans > 0 {
		l.taps(&c, s, 0)
	}
	if m, on := l.onward(s, s.kind == plainSocket); m.better(c.mark) {
		c = choice{m, on}
	}
	return c
}

// taps tries a three-way in a free socket: one that ends the line, and one whose last socket goes on.
func (l *liner) taps(c *choice, s state, spare int) {
	fans := int16(l.tools.fans)
	own := l.tap().plus(mark{low: int32(spare)})
	if s.wants <= fans && l.last(s.call) {
		c.try(l, own, move{serves: s.wants, tap: true, spare: int16(spare), end: true})
	}
	n := min(s.wants, fans-1)
	own.low-- // its last socket is counted by what goes in
	m := move{serves: n, tap: true, spare: int16(spare), to: state{s.call, s.wants - n, tappedSocket}}
	c.try(l, own, m)
	if s.wants > fans-2 || int(s.call)+2 >= len(l.calls) || l.calls[s.call+1].wants != 1 {
		return
	}
	leaf := l.plain[s.call+1].mark // one cord to the next call alone, and the line passes on to the one after
	leaf.over = int32(l.calls[s.call+1].over) * l.tools.past
	m.leaf, m.to.kind = true, passedSocket
	c.try(l, own.plus(leaf), m)
}

// onward lays the next cord from a call, or from the outlet before the first one: to the same call where some of it is left, else to the next. A plain
// socket needs no other at the same place.
func (l *liner) onward(s state, plain bool) (mark, move) {
	c := choice{mark: none}
	to, gap, over := state{s.call, s.wants, plainSocket}, measure.Length(0), 0
	if s.wants == 0 {
		if l.last(s.call) {
			return c.mark, c.move
		}
		at := s.call + 1
		if s.kind == passedSocket {
			gap, over = l.calls[at].gap, l.calls[at].over
			at++
		}
		next := l.calls[at]
		to, gap, over = state{at, int16(next.wants), plainSocket}, gap+next.gap, over+next.over
	}
	if s.wants == 0 || !plain {
		own := l.plainTo(s, to).mark
		own.over = int32(over) * l.tools.past
		c.try(l, own, move{plain: true, to: to})
	}
	for i, in := range l.tools.inline {
		skip, ok := skipped(in, gap)
		if !ok || l.calls[to.call].up || skip > 0 && over > 0 { // no free socket hangs over a way
			continue
		}
		to.kind = int16(l.base[i] + in.Sockets - 1 - skip)
		c.try(l, mark{over: int32(over) * l.tools.past, pieces: 1, low: int32(1 + skip), cents: l.tools.prices[i]}, move{inline: int8(i + 1), skip: int16(skip), to: to})
	}
	return c.mark, c.move
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
func (l *liner) inline(s state) choice {
	c := choice{mark: none}
	_, left := l.cordOf(s.kind)
	if s.wants == 0 { // a new cord goes on from here; what is left on this one stays free
		c.try(l, mark{low: int32(left)}, move{spare: int16(left), to: state{s.call, 0, plainSocket}})
		return c
	}
	if left == 0 {
		c.try(l, mark{}, move{to: state{s.call, s.wants, plainSocket}})
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
	if rest == 0 && l.last(s.call) {
		m.next, m.spare, m.end = 0, int16(left), true
		own.low += int32(left)
		c.try(l, own, m)
		return
	}
	if left == 0 {
		return
	}
	m.to = state{s.call, rest, s.kind - 1} // the next socket at the same foot, for what is left there or for a new cord
	c.try(l, own, m)
	if rest > 0 {
		return
	}
	next := l.calls[s.call+1]
	if steps := stepsOver(in.Apart, next.gap); steps <= left && next.over == 0 && !next.up { // no free socket hangs over a way
		m.next, m.to = int16(steps), state{s.call + 1, int16(next.wants), s.kind - int16(steps)}
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
