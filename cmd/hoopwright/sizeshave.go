package main

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"hoopwright/layout"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// shedful is one entry of --have: so many sticks of a length, or so many strings of a name.
type shedful struct {
	count  int
	length measure.Length // of a stick; 0 for strings
	what   string         // the length or the name, as written
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

// most names the length that there are most sticks of; "" where there are none.
func most(list []shedful) string {
	sticks := slices.DeleteFunc(slices.Clone(list), func(h shedful) bool { return h.length == 0 })
	if len(sticks) == 0 {
		return ""
	}
	return slices.MaxFunc(sticks, func(a, b shedful) int { return a.count - b.count }).what
}

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

// longest returns the most arches that a shed gives, of specs that at makes by their number, and the plan of them; 0 where it does not give two.
func longest(at func(arches int) (*spec.Spec, error), list []shedful) (int, *layout.Plan, error) {
	best, none := 0, spec.MostArches+1
	var plan *layout.Plan
	for n := 2; none-best > 1; {
		s, err := at(n)
		if err != nil {
			return 0, nil, err
		}
		s.Settle() // nothing is chosen for one number of arches
		if p := layout.Solve(s); suffices(p, list) {
			best, plan = n, p
			n = min(2*n, (best+none)/2)
		} else {
			none = n
			n = (best + none) / 2
		}
		if n < 2 {
			break
		}
	}
	return best, plan, nil
}

// haveWords says what the shed makes, and what is left of it.
func haveWords(list []shedful, p *layout.Plan) string {
	u := p.Spec.Units
	var have, left []string
	for _, h := range list {
		have = append(have, fmt.Sprintf("%d x %s", h.count, h.what))
	}
	for _, l := range p.Stock.Keep {
		left = append(left, fmt.Sprintf("%d of %s", l.Count, u.Tape(l.Length)))
	}
	for _, h := range list {
		for _, g := range goodsOf(p) {
			if spare := h.count - (g.Need - g.Spare); h.length == 0 && spare > 0 && strings.EqualFold(h.what, g.Item.Item) {
				left = append(left, fmt.Sprintf("%d %s", spare, g.Item.Item))
			}
		}
	}
	text := fmt.Sprintf("%s make at most %d arches %s apart, %s long.", strings.Join(have, ", "), len(p.Arches), u.Tape(p.Spec.Tunnel.Spacing), u.Tape(p.Spec.Tunnel.Length))
	if len(left) > 0 {
		text += " Left: " + strings.Join(left, ", ") + "."
	}
	return text
}

// fromShed asks for the longest tunnel that the shed gives. Without a spec or sticks a leg is a stick of the length that there are most of.
func (w sizeWish) fromShed(base *spec.Spec, operand string, from, to measure.Length) (ask, error) {
	list, err := shedfuls(w.have)
	if err != nil {
		return ask{}, err
	}
	if stick := most(list); w.sticks == "" && operand == "" && stick != "" {
		w.sticks = stick + ", " + stick
	}
	w.own = owned(list, cmp.Or(w.pipe, base.Arch.Pipe.Name))
	var a ask
	at := func(n int) (*spec.Spec, error) {
		w.arches = strconv.Itoa(n)
		var err error
		a, err = w.wanted(base, operand, from, to)
		return a.spec, err
	}
	n, plan, err := longest(at, list)
	switch {
	case err != nil:
		return ask{}, err
	case n == 0:
		return ask{}, badCall("sizes: --have: %s do not make two arches; give more, or shorter legs with --sticks", w.have)
	}
	_, err = at(n)
	a.made, a.have, a.buys = plan, list, false
	return a, err
}
