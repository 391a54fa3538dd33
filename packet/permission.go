package packet

import (
	"fmt"
	"strings"
	"time"

	"hoopwright/draw"
	"hoopwright/draw/place"
	"hoopwright/layout/crew"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
)

// permission is the sheet for whoever must agree: the owner of the ground, the authority, the insurer. It states what is asked for and leaves the
// answer to them.

func (b *binder) permissionRows(footprint draw.Footprint) []place.Row {
	u := b.spec.Units
	var rows []place.Row
	add := func(what, text string) {
		if text != "" {
			rows = append(rows, place.Row{Cells: []string{what, text}})
		}
	}
	add("Where", b.spec.Site.Address)
	add("Ground it takes", fmt.Sprintf("%s by %s over all, guy stakes included; %s, %s high at most", u.Room(footprint.Width), u.Room(footprint.Length), b.archCount(), u.Tape(b.highest())))
	var kinds []string
	for _, k := range stakeKinds(b.plan) {
		if k.noun == "stake" {
			kinds = append(kinds, fmt.Sprintf("%d %ss", k.count, k.what))
		}
	}
	if len(kinds) > 0 {
		add("Stakes in the ground", fmt.Sprintf("%s, steel, %s deep at most; capped while bare; located lines marked before any is driven", strings.Join(kinds, " and "), u.Inches(b.deepest())))
	}
	d := b.spec.Dates
	mark, _ := crew.MarkOn(b.spec, drives(b.plan))
	add("Days", dateWords([]string{"marked", "built", "open from", "last evening", "taken down by"}, []time.Time{mark, d.Build, d.Open, d.Close, d.Down}))
	add("People inside", fmt.Sprintf("%d at most; the fire authority's figure wins. Inside width %s at head height, one way through", b.plan.MostInside(), b.narrowest()))
	if amps, circuits := b.lightAmps(); circuits > 0 {
		const named = 3 // circuits that are named; of more the fullest alone
		var names []string
		fullest, share := "", -1.0
		for _, c := range b.plan.Circuits {
			if c.Lights <= 0 {
				continue
			}
			name := fmt.Sprintf("%s %s of %s allowed", c.Name, measure.Amps(c.Amps), measure.Amps(c.Allowed))
			names = append(names, name)
			if now := float64(c.Amps / c.Allowed); now > share {
				fullest, share = name, now
			}
		}
		if len(names) > named {
			names = []string{fmt.Sprintf("%d circuits, the fullest is %s", len(names), fullest)}
		}
		add("Electricity", fmt.Sprintf("%s of lights in all, %s: %s. Only outlets with %s", measure.Amps(amps), measure.Watts(b.plan.Power.Watts), strings.Join(names, "; "), withArticle(device(b.plan))))
	}
	closed := ""
	for _, g := range b.gusts() {
		closed += g.sentence() + " "
	}
	add("Closed at", closed+fmt.Sprintf("Thunder, until %d minutes after the last. Ice or snow on it.", practice.ThunderMinutes))
	add("After it", "every stake counted out of the ground, holes filled, ground left as it was")
	return rows
}

// dateWords joins the days that are given.
func dateWords(names []string, days []time.Time) string {
	var list []string
	for i, d := range days {
		if !d.IsZero() {
			list = append(list, names[i]+" "+d.Format("2 Jan 2006"))
		}
	}
	if list == nil {
		return "from ______________ to ______________"
	}
	return strings.Join(list, ", ")
}

// archCount says how many arches there are.
func (b *binder) archCount() string {
	if n := len(b.plan.Arches); n > 1 {
		return fmt.Sprintf("%d arches", n)
	}
	return "1 arch"
}

// deepest is how deep the deepest stake goes.
func (b *binder) deepest() measure.Length {
	deep := measure.Length(0)
	for _, s := range b.plan.Stakes {
		deep = max(deep, s.Depth)
	}
	return deep
}

// narrowest is the least clear width at head height.
func (b *binder) narrowest() string {
	if len(b.plan.Kinds) == 0 {
		return "not known"
	}
	width := b.plan.Kinds[0].HeadWidth
	for _, k := range b.plan.Kinds {
		width = min(width, k.HeadWidth)
	}
	return b.spec.Units.Tape(width)
}

func (b *binder) highest() measure.Length {
	top := measure.Length(0)
	for _, k := range b.plan.Kinds {
		top = max(top, k.Crown)
	}
	return top
}
