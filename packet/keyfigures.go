package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw/paper"
	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
	"hoopwright/layout/stock"
)

// figure is a key figure with its label.
type figure struct{ label, value string }

const (
	leastFigureRow paper.Length = 6.2
	mostFigureRow  paper.Length = 8.2
)

// keyFigures sets the key figures one under the other, as many as fit, the most wanted first.
func (b *binder) keyFigures(page *paper.Page, box paper.Rect) {
	list := b.figures()
	row := min(mostFigureRow, max(leastFigureRow, box.H/paper.Length(len(list))))
	list = list[:min(len(list), int(box.H/row))]
	usual := paper.Cell
	if row < usual.Leading()+0.8 {
		usual = paper.CellSmall
	}
	y := box.Y
	for _, f := range list {
		base := y + (row+paper.Floor.Ascent())/2
		value, room := usual, box.W-3-paper.Floor.Width(f.label)
		if value.Width(f.value) > room {
			value = value.Sized(11)
		}
		page.Text(paper.Point{X: box.X, Y: base}, paper.AtLeft, f.label, paper.Floor)
		page.Text(paper.Point{X: box.Right(), Y: base}, paper.AtRight, clip(f.value, value, room), value)
		page.Line(paper.Point{X: box.X, Y: y + row}, paper.Point{X: box.Right(), Y: y + row}, paper.Thin)
		y += row
	}
}

// figures gathers what a reader wants to know of the tunnel at a glance.
func (b *binder) figures() []figure {
	p, u := b.plan, b.spec.Units
	t := b.spec.Tunnel
	list := []figure{{"Arches", fmt.Sprint(t.Arches)}}
	if t.Arches > 1 {
		list = append(list, figure{"Apart, middle to middle", u.Tape(t.Spacing)}, figure{"Length, first to last", u.Tape(t.Length)})
	}
	if len(p.Kinds) > 0 {
		list = append(list,
			figure{"Stake to stake, across", b.across(func(k *arch.Kind) measure.Length { return k.Span })},
			figure{"Crown, middle of pipe", b.across(func(k *arch.Kind) measure.Length { return k.Crown })},
			figure{"Headroom at the crown", b.across(func(k *arch.Kind) measure.Length { return k.Clear })},
			figure{"Inside width, " + u.Room(p.Kinds[0].HeadHeight) + " up", b.across(func(k *arch.Kind) measure.Length { return k.HeadWidth })},
			figure{"Nobody inside at gusts of", b.insideWords()})
	}
	if legs, guys := b.stakeCounts(); legs > 0 {
		value := fmt.Sprint(legs)
		if guys > 0 {
			value = fmt.Sprintf("%d, and %d for guys", legs, guys)
		}
		list = append(list, figure{"Stakes", value})
	}
	if sticks := b.sticksToBuy(); sticks != "" {
		list = append(list, figure{"Pipe to buy", sticks})
	}
	if n := len(p.Strings); n > 0 {
		list = append(list, figure{"Light strings", fmt.Sprintf("%d, using %s", n, measure.Watts(p.Power.Watts))})
	}
	if amps, circuits := b.lightAmps(); circuits > 0 {
		list = append(list, figure{"Current", measure.Amps(amps) + " on " + say.Count(circuits, "circuit")})
	}
	if g := p.Ground; max(g.SlopeAlong, g.SlopeAcross) > levelEnough {
		list = append(list, figure{"Slope, along; across", slope(g.SlopeAlong) + "; " + slope(g.SlopeAcross)})
	}
	people := fmt.Sprintf("%d and organiser", b.spec.Crew.Helpers)
	if b.spec.Crew.Helpers == 0 {
		people = "organiser alone"
	}
	return append(list, figure{"Helpers", people})
}

// levelEnough is the slope, 1 in 200, up to which ground counts as level.
const levelEnough = 1. / 200

// slope prints a slope as builders say it: 1 in 20.
func slope(rise float64) string {
	if rise < levelEnough {
		return "level"
	}
	return fmt.Sprintf("1 in %.0f", 1/rise)
}

// across prints a figure of every kind of arch: the least, and the greatest too where it differs by an inch or more.
func (b *binder) across(value func(*arch.Kind) measure.Length) string {
	least, most := value(b.plan.Kinds[0]), value(b.plan.Kinds[0])
	for _, k := range b.plan.Kinds[1:] {
		least, most = min(least, value(k)), max(most, value(k))
	}
	if most-least < measure.Inch {
		return b.spec.Units.Tape(least)
	}
	return b.spec.Units.Tape(least) + " to " + b.spec.Units.Tape(most)
}

// stakeCounts counts the stakes under legs and those for guys.
func (b *binder) stakeCounts() (legs, guys int) {
	for _, s := range b.plan.Stakes {
		if s.Guy {
			guys++
		} else {
			legs++
		}
	}
	return legs, guys
}

// sticksToBuy says how much pipe to buy, by stock length: "14 × 10 ft".
func (b *binder) sticksToBuy() string {
	var words []string
	for _, it := range b.plan.Shopping {
		if it.Unit == stock.StickOf && it.Buy > 0 {
			words = append(words, fmt.Sprintf("%d × %s", it.Buy, stock.Sold(it.Length, b.spec.Units)))
		}
	}
	return strings.Join(words, ", ")
}

// lightAmps adds up the lights' current over the circuits that carry any.
func (b *binder) lightAmps() (amps measure.Current, circuits int) {
	for _, c := range b.plan.Circuits {
		if c.Lights > 0 {
			amps += c.Lights
			circuits++
		}
	}
	return amps, circuits
}

// assumed names the defaults that matter on the ground, as "soil unknown"; the rebuild file has them all.
func (b *binder) assumed() []string {
	matter := []struct{ key, name string }{
		{"site.soil", "soil"}, {"arch.stake.bar", "stake"}, {"arch.stake.length", "stake length"}, {"arch.stake.depth", "stake depth"}, {"guys", "guys"},
		{"tunnel.opening.width", "clear width"}, {"tunnel.opening.height", "clear height"}, {"crew.helpers", "helpers"},
	}
	var words []string
	for _, m := range matter {
		if i := slices.IndexFunc(b.spec.Defaults, func(d spec.Default) bool { return d.Key == m.key }); i >= 0 {
			words = append(words, m.name+" "+b.spec.Defaults[i].Value)
		}
	}
	return words
}
