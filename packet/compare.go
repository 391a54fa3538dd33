package packet

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"

	"hoopwright/layout"
	"hoopwright/layout/arch"
	"hoopwright/layout/ground"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
	"hoopwright/layout/stock"
)

// Comparison is what another spec makes of a tunnel that was built: the figures that changed, and what to buy because of it.
type Comparison struct {
	Figures []Change `json:"figures"`
	Buy     []Buying `json:"buy"`
	New     []string `json:"new_findings"`  // codes that the old plan did not have
	Gone    []string `json:"gone_findings"` // and that it alone had
}

// Change is a figure as it was and as it is, in the packet's units. One that is there on one side only is "–" on the other.
type Change struct {
	What    string
	Was, Is string
	unit    string // of the figure as a number: mm, W, A, m/s; empty for a count or a factor
	was, is number
}

// number is a figure as a number, where it is one.
type number struct {
	value float64
	is    bool
}

// MarshalJSON writes figures as numbers, lengths in millimetres, and words as words; null where a side has none.
func (c Change) MarshalJSON() ([]byte, error) {
	side := func(n number, text string) any {
		switch {
		case n.is:
			return math.Round(n.value*1e6)/1e6 + 0
		case text == absent:
			return nil
		}
		return text
	}
	return json.Marshal(struct {
		What string `json:"what"`
		Unit string `json:"unit"`
		Was  any    `json:"was"`
		Is   any    `json:"is"`
	}{c.What, c.unit, side(c.was, c.Was), side(c.is, c.Is)})
}

// compared is one figure of a plan: as it is printed, and as a number where it is one.
type compared struct {
	name, text, unit string
	number           number
}

func counted(name string, n int) compared {
	return compared{name, fmt.Sprint(n), "", number{float64(n), true}}
}

func lengthOf(name, text string, l measure.Length) compared {
	return compared{name, text, "mm", number{float64(l), true}}
}

// change sets two figures beside each other; one that is missing has no name.
func change(was, is compared) Change {
	c := Change{What: was.name, Was: was.text, Is: is.text, unit: was.unit, was: was.number, is: is.number}
	if was.name == "" {
		c.What, c.Was, c.unit = is.name, absent, is.unit
	}
	if is.name == "" {
		c.Is = absent
	}
	return c
}

// Buying is what to buy of an item when everything of the old tunnel is kept, and how many of it the new one needs.
type Buying struct {
	Item string `json:"item"`
	Need int    `json:"need"`
	Buy  int    `json:"buy"`
}

const absent = "–"

// Compare sets a plan against the one that was built before. Both must be in the same units. What to buy is found by solving the new spec with all
// that the old tunnel is made of in the shed: pieces at the length they were cut to, offcuts, strings, cords, fittings.
func Compare(was, is *layout.Plan) Comparison {
	c := Comparison{Figures: []Change{}, Buy: []Buying{}, New: []string{}, Gone: []string{}}
	before, after := figuresOf(was), figuresOf(is)
	for _, f := range before {
		if now := named(after, f.name); now.text != f.text {
			c.Figures = append(c.Figures, change(f, now))
		}
	}
	for _, f := range after {
		if named(before, f.name).name == "" {
			c.Figures = append(c.Figures, change(compared{}, f))
		}
	}
	c.Figures = append(c.Figures, archChanges(was, is)...)
	c.Figures = append(c.Figures, stakeChanges(was, is)...)
	c.Figures = append(c.Figures, ridgeChanges(was, is)...)
	reused := *is.Spec
	reused.Stock.Own = keptFrom(was, is.Spec)
	spare := map[string]int{} // whole sticks and bars that are spares again
	for _, it := range was.Shopping {
		if it.Unit == stock.StickOf || it.Unit == stock.BarOf {
			spare[it.Item] = it.Spare
		}
	}
	for _, it := range layout.Solve(&reused).Shopping {
		if buy := it.Buy - min(it.Spare, spare[it.Item]); buy > 0 {
			c.Buy = append(c.Buy, Buying{it.Item, it.Need, buy})
		}
	}
	c.New, c.Gone = codesBeyond(is, was), codesBeyond(was, is)
	return c
}

// named returns the figure of that name, one without a name where the list lacks it.
func named(figures []compared, name string) compared {
	for _, f := range figures {
		if f.name == name {
			return f
		}
	}
	return compared{}
}

// figuresOf lists a plan's figures of the whole: name and value.
func figuresOf(p *layout.Plan) []compared {
	u, t := p.Spec.Units, p.Spec.Tunnel
	stakes := "stakes"
	if p.Spec.Arch.Foot != nil {
		stakes = "feet and tie weights"
	}
	list := []compared{
		{name: "title", text: p.Spec.Title}, counted("arches", t.Arches), lengthOf("spacing", u.Tape(t.Spacing), t.Spacing), lengthOf("length", u.Tape(t.Length), t.Length),
		lengthOf("opening's width", u.Room(t.OpeningWidth), t.OpeningWidth), lengthOf("opening's height", u.Room(t.OpeningHeight), t.OpeningHeight),
		{name: "pipe", text: p.Spec.Arch.Pipe.Name}, counted("people inside at most", p.MostInside()),
		counted(stakes, len(p.Stakes)), counted("ridge pieces", len(p.Ridge)), counted("strings", len(p.Strings)),
		{"watts", measure.Watts(p.Power.Watts), "W", number{float64(p.Power.Watts), true}}, counted("runs of strings", len(p.Chains)), counted("cords and three-ways", p.Power.Pieces()), counted("cords", len(p.Cords)),
	}
	for _, k := range stringKinds(p, func(lights.String) bool { return true }) {
		list = append(list, counted("strings "+k.item, k.count))
	}
	list = append(list, weatherFigures(p)...)
	list = append(append(list, moneyFigures(p)...), foundFigures(p)...)
	for _, c := range p.Circuits {
		list = append(list, compared{"circuit " + c.Name, fmt.Sprintf("%s of %s", measure.Amps(c.Amps), measure.Amps(c.Allowed)), "A", number{float64(c.Amps), true}})
	}
	return list
}

// archFigures are one arch's figures by their names.
func archFigures(k *arch.Kind, u measure.System) []compared {
	if k == nil {
		return nil
	}
	list := []compared{lengthOf("span", u.Tape(k.Span), k.Span), lengthOf("pipe, foot to foot", u.Tape(k.Length), k.Length), lengthOf("crown", u.Inches(k.Crown), k.Crown),
		lengthOf("clear", u.Inches(k.Clear), k.Clear), lengthOf("widest", u.Inches(k.Widest), k.Widest)}
	if s := k.Spec.Stake; s.Length > 0 {
		list = append(list, lengthOf("stake", u.Inches(s.Length), s.Length), lengthOf("stake's depth", u.Inches(s.Depth), s.Depth))
	}
	return list
}

// archChanges lists what changed of arches that both plans have, like changes of neighbours in one line.
func archChanges(was, is *layout.Plan) []Change {
	var list []numberedChange
	for i := range min(len(was.Arches), len(is.Arches)) {
		before := archFigures(was.Arches[i].Kind, was.Spec.Units)
		for _, f := range archFigures(is.Arches[i].Kind, is.Spec.Units) {
			if old := named(before, f.name); old.text != f.text {
				c := change(old, f)
				c.What += " of arch"
				list = append(list, numberedChange{c, is.Arches[i].Number})
			}
		}
	}
	return gathered(list)
}

// ridgeChanges lists the ridge pieces of both plans that are cut differently.
func ridgeChanges(was, is *layout.Plan) []Change {
	var list []numberedChange
	for i := range min(len(was.Ridge), len(is.Ridge)) {
		if a, b := was.Spec.Units.Cut(was.Ridge[i].Cut), is.Spec.Units.Cut(is.Ridge[i].Cut); a != b {
			list = append(list, numberedChange{change(lengthOf("ridge piece of bay", a, was.Ridge[i].Cut), lengthOf("ridge piece of bay", b, is.Ridge[i].Cut)), is.Ridge[i].Bay})
		}
	}
	return gathered(list)
}

// numberedChange is a change of one arch or bay.
type numberedChange struct {
	Change
	number int
}

// gathered joins changes that differ in their number alone, and puts the numbers after what changed.
func gathered(list []numberedChange) []Change {
	var out []Change
	numbers := map[Change][]int{}
	for _, c := range list {
		if numbers[c.Change] == nil {
			out = append(out, c.Change)
		}
		numbers[c.Change] = append(numbers[c.Change], c.number)
	}
	for i, c := range out {
		out[i].What += " " + say.Numbers(numbers[c])
	}
	return out
}

// stakeChanges says how many stakes of both plans lie elsewhere, and the one that moved the most.
func stakeChanges(was, is *layout.Plan) []Change {
	const still = measure.Length(1) // under a millimetre nothing has moved
	moved, both := 0, 0
	farthest, most := "", still
	for _, s := range is.Stakes {
		i := slices.IndexFunc(was.Stakes, func(o ground.Stake) bool { return o.StakeID == s.StakeID })
		if i < 0 {
			continue
		}
		both++
		dx, dy := float64(s.X-was.Stakes[i].X), float64(s.Y-was.Stakes[i].Y)
		if d := measure.Length(math.Sqrt(dx*dx + dy*dy)); d > still {
			moved++
			if d > most {
				farthest, most = s.String(), d
			}
		}
	}
	if moved == 0 {
		return nil
	}
	return []Change{{What: "stakes that move", Was: absent, Is: fmt.Sprintf("%d of %d, %s the farthest: %s", moved, both, farthest, is.Spec.Units.Tape(most))}}
}

// keptFrom lists what is in the shed once the old tunnel is down: what it was made of, what it left unused, and what the new spec owns beside the
// old one's.
func keptFrom(was *layout.Plan, is *spec.Spec) []spec.Owned {
	var kept []spec.Owned
	add := func(item string, length measure.Length, count int) {
		if count > 0 {
			kept = append(kept, spec.Owned{Item: item, Length: length, Count: count})
		}
	}
	for _, it := range was.Shopping {
		if it.Unit != stock.StickOf && it.Unit != stock.BarOf {
			add(it.Item, 0, max(it.Need, it.Own))
		}
	}
	used := map[string]int{}
	for _, bar := range was.Cuts.Bars {
		if bar.Owned {
			used[fmt.Sprintf("%s %.2f", bar.Item, bar.Stock)]++
		}
		for _, p := range bar.Pieces {
			add(bar.Item, p.Length, 1)
		}
		if bar.Offcut >= was.Cuts.Useful(bar.Item) {
			add(bar.Item, bar.Offcut, 1)
		}
	}
	count := func(list []spec.Owned, o spec.Owned) (n int) {
		for _, other := range list {
			if other.Item == o.Item && other.Length == o.Length {
				n += other.Count
			}
		}
		return n
	}
	for _, o := range was.Spec.Stock.Own {
		if o.Length > 0 {
			add(o.Item, o.Length, o.Count-used[fmt.Sprintf("%s %.2f", o.Item, o.Length)])
		}
	}
	for _, o := range is.Stock.Own {
		add(o.Item, o.Length, o.Count-count(was.Spec.Stock.Own, o))
	}
	return kept
}

// codesBeyond lists the codes of a plan's findings that another lacks.
func codesBeyond(p, other *layout.Plan) []string {
	has := map[string]bool{}
	for _, f := range other.Findings {
		has[f.Code] = true
	}
	list := []string{}
	for _, f := range p.Findings {
		if !has[f.Code] {
			has[f.Code] = true
			list = append(list, f.Code)
		}
	}
	return list
}
