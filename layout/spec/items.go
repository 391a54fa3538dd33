package spec

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/layout/catalog"
)

// measuring says how much of an item there is: so many pieces of one length, or a count.
type measuring int

const (
	unmeasured measuring = iota // nothing known by that name
	byLength
	byCount
)

// steel is the word before a bar's size in its canonical name.
const steel = "steel bar "

// bushing is the word before the pipe of the socket and the pipe that goes into it: bushing pvc sch40 3/4 in to pvc sch40 1/2 in.
const bushing = "bushing "

// Fittings are sold for one pipe, and a bushing for two; the other sundries go by their names alone.
var (
	fittings = []string{"tee ", "cross ", "coupling "}
	sundries = []string{"stake cap", "zip ties 100", "cord cover", "three-way tap", "plug cover", "socket cover", "timer for outdoors", "portable GFCI", "outdoor plug box", "battery lantern", "low-voltage supply", "marking paint", "marking flag", "lath", "flagging tape", "guy line",
		"line tightener", "hose clamp", "webbing", "write-on tags 100", "stainless screw 1/2 in", "solvent cement and primer"}
)

// item is the rule of a thing that stores sell, in its canonical spelling.
var item = ruled(says("anything that is sold: pipe, bar, cord, string, fitting or sundry of the catalog"), func(f field) (string, bool) {
	text, ok := f.text(longestText)
	if !ok {
		return "", false
	}
	name, as := f.findItem(text)
	if as == unmeasured {
		f.unknownName("item", text, f.itemNames(), "")
	}
	return name, as != unmeasured
})

// findItem looks a name up among everything that is sold: the spec's own strings and pipes first, then the catalog, then fittings and
// sundries.
func (r *reader) findItem(text string) (string, measuring) {
	if slices.Contains(r.ownPipes(), text) {
		return text, byLength
	}
	if slices.Contains(sundries, text) || r.ownString(text) != nil {
		return text, byCount
	}
	if p, ok := catalog.FindPipe(text); ok {
		return p.Name, byLength
	}
	if b, ok := catalog.FindBar(text); ok {
		return steel + b.Name, byLength
	}
	if c, ok := catalog.FindCord(text); ok {
		return c.Name, byLength
	}
	for _, c := range r.spec.Power.Inline {
		if name := c.Name(); name == text {
			return name, byCount
		}
	}
	for _, fitting := range fittings {
		pipe, found := strings.CutPrefix(text, fitting)
		if !found {
			continue
		}
		if name, ok := r.findPipe(pipe); ok {
			return fitting + name, byCount
		}
	}
	if outer, inner, found := strings.Cut(strings.TrimPrefix(text, bushing), " to "); found && strings.HasPrefix(text, bushing) {
		if a, ok := r.findPipe(outer); ok {
			if b, ok := r.findPipe(inner); ok && a != b {
				return bushing + a + " to " + b, byCount
			}
		}
	}
	if s, ok := catalog.FindString(text); ok {
		return s.Name, byCount
	}
	return "", unmeasured
}

func (r *reader) findPipe(text string) (string, bool) {
	if slices.Contains(r.ownPipes(), text) {
		return text, true
	}
	p, ok := catalog.FindPipe(text)
	return p.Name, ok
}

func (r *reader) ownPipes() []string {
	pipes := []catalog.Pipe{r.spec.Arch.Pipe, r.spec.Ridge.Pipe}
	for _, e := range r.spec.Except {
		pipes = append(pipes, e.Arch.Pipe)
	}
	var own []string
	for _, p := range pipes {
		if p.Source == ownSource {
			own = append(own, p.Name)
		}
	}
	return own
}

func (r *reader) itemNames() []string {
	pipes := append(r.ownPipes(), PipeNames()...)
	all := append(slices.Clone(pipes), r.stringNames()...)
	for _, b := range barNames() {
		all = append(all, steel+b)
	}
	all = append(all, cordNames()...)
	all = append(all, sundries...)
	for _, fitting := range fittings {
		for _, p := range pipes {
			all = append(all, fitting+p)
		}
	}
	return all
}

// readStock reads what stores sell and the shed holds.
func (r *reader) readStock(top mapping) {
	m, _ := top.section("stock")
	s := &r.spec.Stock
	m.all(s)
	s.Sell = listOf(m, "sell", func(item mapping, x *Sale) bool {
		item.checkLength(x.Item)
		return true
	})
	s.Own = listOf(m, "own", func(item mapping, x *Owned) bool {
		item.checkLength(x.Item)
		if f, given := item.value("dead"); given && x.Dead > x.Count {
			f.failWith(fmt.Sprintf("dead: %d", x.Count), "is more than the %d there are; count has all, the dead ones too", x.Count)
		}
		return true
	})
}

// checkLength checks that what is cut or laid has a length, and that what is counted has none.
func (m mapping) checkLength(item string) {
	_, as := m.findItem(item)
	f, given := m.value("length")
	switch {
	case as == byLength && !m.has("length"):
		m.missing("length", "; pipe, bar and cord are sold by the length")
	case as == byCount && given:
		f.failWith("{item: zip ties 100, price: 3}", "belongs to pipe, bar and cord; other things are counted")
	}
}
