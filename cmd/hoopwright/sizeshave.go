package main

import (
	"cmp"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"text/tabwriter"

	"hoopwright/layout"
	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// ownShed stands in --have for the shed that the spec has.
const ownShed = "stock.own"

// shedful is one thing of the shed: so many sticks of a length, or so many strings of a name.
type shedful struct {
	count  int
	length measure.Length // of a stick; 0 for strings
	what   string         // the length or the name, as written
}

// shed is what a builder has, and the tunnels that it makes.
type shed struct {
	have []shedful
	made []tunnel // the longest first
	best tunnel   // the longest, or that of the legs that were asked for
}

type tunnel struct {
	row
	legs   string // as --sticks takes them
	arches int
}

// shedfuls reads entries such as "40 x 10 ft, 24 x mini led 100 warm".
func shedfuls(text string) (list []shedful, err error) {
	for entry := range strings.SplitSeq(text, ",") {
		count, what, ok := strings.Cut(strings.ReplaceAll(entry, "×", "x"), "x")
		h := shedful{what: strings.TrimSpace(what)}
		if h.count, err = strconv.Atoi(strings.TrimSpace(count)); !ok || err != nil || h.count < 1 || h.what == "" {
			return nil, badWish("stock.own", "%q is not a count, an x and a length or a string's name", strings.TrimSpace(entry))
		}
		if length, err := measure.ParseLength(h.what); err == nil {
			h.length = length
		}
		list = append(list, h)
	}
	return list, nil
}

// ownOf is the spec's own shed: its sticks of a pipe, and what is counted.
func ownOf(s *spec.Spec, pipe string) (list []shedful, err error) {
	for _, o := range s.Stock.Own {
		switch {
		case o.Good() < 1 || o.Length > 0 && o.Item != pipe:
		case o.Length > 0:
			list = append(list, shedful{o.Good(), o.Length, s.Units.Written(o.Length)})
		default:
			list = append(list, shedful{o.Good(), 0, o.Item})
		}
	}
	if !slices.ContainsFunc(list, isStick) {
		return nil, badWish(ownShed, "the spec owns no stick of %s under stock.own", pipe)
	}
	return list, nil
}

func isStick(h shedful) bool { return h.length > 0 }

// owned is the shed as the spec has it, the sticks of the pipe named.
func owned(list []shedful, pipe string) []any {
	var own []any
	for _, h := range list {
		thing := map[string]any{"item": h.what, "count": h.count}
		if h.length > 0 {
			thing = map[string]any{"item": pipe, "length": h.what, "count": h.count}
		}
		own = append(own, thing)
	}
	return own
}

// suffices reports whether a plan takes no more sticks than there are, and no more strings of the names that there are any of. Spares are not counted.
func suffices(p *layout.Plan, list []shedful) bool {
	for _, g := range goodsOf(p) {
		named := slices.ContainsFunc(list, func(h shedful) bool { return h.length == 0 && strings.EqualFold(h.what, g.Item.Item) })
		if (g.stick || named) && g.Need-g.Spare > g.Own {
			return false
		}
	}
	return true
}

// legsOf lists the legs that may be tried of sticks, as --sticks takes them: whole feet or 300 mm, put together from the longest sticks there are and a rest that is worth joining on.
func legsOf(list []shedful, u measure.System) (legs []string) {
	step := measure.By(u, measure.Foot, 300*measure.Millimetre)
	stick := step * measure.Length(int(slices.MaxFunc(list, func(a, b shedful) int { return cmp.Compare(a.length, b.length) }).length/step*(1+1e-9)))
	for leg := 6 * step; stick > 0 && leg <= 16*step; leg += step {
		var pieces []string
		rest := leg
		for ; rest > stick*(1+1e-9); rest -= stick {
			pieces = append(pieces, u.Written(stick))
		}
		one := strings.Join(append(pieces, u.Written(rest)), " + ")
		legs = append(legs, one+", "+one)
	}
	return legs
}

// fromShed asks for the longest tunnel that the shed gives: of the legs that are asked for, or of those of the spec, or of every kind that may be made of its sticks.
func (w sizeWish) fromShed(s streams) (ask, error) {
	pipe := cmp.Or(w.pipe, w.base.Arch.Pipe.Name)
	list, err := shedfuls(w.have)
	switch {
	case w.have == ownShed && !w.named:
		return ask{}, badCall("sizes: --have %s is the shed of a spec, and none is named; as in hoopwright sizes %s --have %s", ownShed, ownSpec, ownShed)
	case w.have == ownShed:
		list, err = ownOf(w.base, pipe)
	}
	if err != nil {
		return ask{}, err
	}
	w.own = owned(list, pipe)
	found := shed{have: list}
	legs := []string{w.sticks}
	if w.sticks == "" && slices.ContainsFunc(list, isStick) {
		legs = legsOf(list, w.base.Units)
	}
	if w.sticks == "" && w.named {
		legs = append(legs, "")
	}
	made, errs := make([]tunnel, len(legs)), make([]error, len(legs))
	sideBySide(s, "solving", "kinds of leg", len(legs), func(i int) { made[i], errs[i] = w.longestOf(legs[i], list) })
	var wrong error
	for i, t := range made {
		asked := w.sticks != "" || w.named && legs[i] == ""
		switch {
		case errs[i] != nil:
			wrong = cmp.Or(wrong, errs[i])
		case t.arches == 0:
		case asked:
			found.best, found.made = t, append(found.made, t)
		case t.Buildable() && t.Opens:
			found.made = append(found.made, t)
		}
	}
	slices.SortStableFunc(found.made, tunnel.before)
	found.made = slices.CompactFunc(found.made, func(a, b tunnel) bool {
		return a.arches == b.arches && slices.EqualFunc(a.kind.Left, b.kind.Left, same)
	})
	if len(found.made) > 0 && w.sticks == "" && !w.named {
		found.best = found.made[0]
	}
	switch {
	case found.best.arches > 0:
	case wrong != nil:
		return ask{}, wrong
	default:
		return ask{}, badCall("sizes: --have: %s do not make two arches; give more, or shorter legs with --sticks", found.words())
	}
	w.sticks, w.arches = found.best.legs, strconv.Itoa(found.best.arches)
	a, err := w.wanted()
	a.shed, a.buys = &found, false
	return a, err
}

// before orders tunnels: the longest first, of equals what stands without more ado, then the fewest pieces in a leg, then the taller.
func (t tunnel) before(other tunnel) int {
	return cmp.Or(cmp.Compare(other.arches, t.arches), cmp.Compare(t.Standing, other.Standing), cmp.Compare(len(t.kind.Left), len(other.kind.Left)), cmp.Compare(other.Crown, t.Crown))
}

// higher orders tunnels by their crowns, those that sway sideways before all others.
func (t tunnel) higher(other tunnel) int {
	sways := func(t tunnel) int { return map[bool]int{true: 1}[t.Standing >= arch.Sways] }
	return cmp.Or(cmp.Compare(sways(other), sways(t)), cmp.Compare(t.Crown, other.Crown))
}

func (s *shed) words() string {
	var have []string
	for _, h := range s.have {
		have = append(have, fmt.Sprintf("%d x %s", h.count, h.what))
	}
	return strings.Join(have, ", ")
}

// longestOf is the longest tunnel of some legs, of no arches where the shed does not give two. It looks up or down in growing steps from the number that the sticks are long enough for.
func (w sizeWish) longestOf(legs string, list []shedful) (t tunnel, err error) {
	w.sticks, t.legs = legs, legs
	best, none := 1, spec.MostArches+1
	for n, step := 2, 0; none-best > 1; step = max(2*step, 1) {
		w.arches = strconv.Itoa(n)
		a, err := w.wanted()
		if err != nil {
			return t, err
		}
		if step == 0 {
			n = guess(a.spec, list)
			continue
		}
		a.spec.Settle() // nothing is chosen for one number of arches
		next := n - step
		if plan := layout.Solve(a.spec); suffices(plan, list) {
			best, next, t.arches, t.plan = n, n+step, n, plan
		} else {
			none = n
		}
		if n = next; n <= best || n >= none {
			n = (best + none) / 2
		}
	}
	if t.plan != nil {
		t.kind = usualKind(t.plan)
		t.Size = t.plan.Sizes(t.kind, []measure.Length{cmp.Or(w.from, t.kind.Span)})[0]
	}
	return t, nil
}

// guess is about how many arches of a spec the sticks are long enough for.
func guess(s *spec.Spec, list []shedful) int {
	var have, each measure.Length
	for _, h := range list {
		have += measure.Length(h.count) * h.length
	}
	for _, piece := range slices.Concat(s.Arch.Left, s.Arch.Right) {
		each += piece
	}
	if s.Ridge.Present {
		each += s.Tunnel.Spacing
	}
	return max(2, min(int(have/max(each, measure.Foot)), spec.MostArches))
}

func (t tunnel) left(list []shedful) string {
	var left []string
	for _, l := range t.plan.Stock.Keep {
		left = append(left, fmt.Sprintf("%d of %s", l.Count, t.plan.Spec.Units.Tape(l.Length)))
	}
	for _, h := range list {
		for _, g := range goodsOf(t.plan) {
			if spare := h.count - (g.Need - g.Spare); h.length == 0 && spare > 0 && strings.EqualFold(h.what, g.Item.Item) {
				left = append(left, fmt.Sprintf("%d %s", spare, g.Item.Item))
			}
		}
	}
	return strings.Join(left, ", ")
}

// table prints the tunnels that the shed makes, the longest first, and what each leaves of it.
func (s *shed) table(w io.Writer, u measure.System) error {
	text := fmt.Sprintf("%s make at most %d arches %s apart, %s long.", s.words(), s.best.arches, u.Tape(s.best.plan.Spec.Tunnel.Spacing), u.Tape(s.best.plan.Spec.Tunnel.Length))
	if left := s.best.left(s.have); left != "" {
		text += " Left: " + left + "."
	}
	fmt.Fprintf(w, "%s\n\n", text)
	if len(s.made) > 1 {
		tallest := slices.MaxFunc(s.made, tunnel.higher)
		t := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
		fmt.Fprintln(t, "legs\tarches\tlong\tspan\tcrown\tstands\tleft")
		for _, m := range s.made {
			mark := ""
			switch m.legs {
			case s.made[0].legs:
				mark = " longest"
			case tallest.legs:
				mark = " tallest"
			}
			fmt.Fprintf(t, "%s\t%d\t%s\t%s\t%s\t%s\t%s\n", leg(u, m.kind.Left)+mark, m.arches, u.Tape(m.plan.Spec.Tunnel.Length), u.Tape(m.Span), u.Tape(m.Crown), m.Standing, m.left(s.have))
		}
		if err := t.Flush(); err != nil {
			return err
		}
		fmt.Fprintln(w)
	}
	return nil
}
