package draw

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/power"
)

// Where a row's parts stand, from the left, and how high it is at the least.
const (
	placeLeft                = paper.TickBoxSide + 2.4
	treeLeft    paper.Length = 32.6 // the outlet's own line
	treeStep    paper.Length = 5.4  // from a line to the next one in
	plugHigh    paper.Length = 7.7  // a row
	nodeHigh    paper.Length = 6.2  // the box of a cord, a three-way, a string
	limitGap    paper.Length = 3    // from what is drawn to the limit
	stringGap   paper.Length = 0.3  // of line at each side of a plug between strings
	againLead   paper.Length = 2.5  // of lines that come down from the words over them
	headName    paper.Length = 26   // room of an outlet's name
	headWords   paper.Length = 38   // where what is said of it begins
	detailLines paper.Length = 4.6  // of what a place's name does not say
)

func trunk(depth int) paper.Length { return treeLeft + treeStep*paper.Length(depth) }

// node is where a row's thing begins: behind its plug.
func (r plugRow) node() paper.Length { return trunk(r.depth()) + matedLong + 0.4 }

// Height implements block.Body.
func (c Circuits) Height(width paper.Length) paper.Length {
	h := paper.Length(0)
	for i := range c.rows {
		h += c.high(&c.rows[i], width)
	}
	return h
}

// Split implements the blocks' splitting: between rows, never behind a head; a line at the foot says that the outlet goes on, and its name is repeated on the next side with
// the way to its first row.
func (c Circuits) Split(width, height paper.Length) (first, rest block.Body, ok bool) {
	n := 0
	for h := plugHigh; n < len(c.rows); n++ { // with the line that says it goes on
		if h += c.high(&c.rows[n], width); h > height {
			break
		}
	}
	for n > 0 && n < len(c.rows) && c.rows[n-1].kind.head() {
		n--
	}
	if n < 2 || n >= len(c.rows) {
		return nil, nil, false
	}
	set, more := slices.Clone(c.rows[:n]), c.rows[n:]
	if next := more[0]; !next.kind.head() && next.outlet.Name != "" {
		set = append(set, plugRow{kind: onRow, outlet: next.outlet, path: next.path})
		more = append([]plugRow{{kind: againRow, outlet: next.outlet, path: next.path, pass: next.pass}}, more...)
	}
	return Circuits{c.plan, set, c.runName}, Circuits{c.plan, more, c.runName}, true
}

// Draw implements block.Body.
func (c Circuits) Draw(page *paper.Page, box paper.Rect) []string {
	y := box.Y
	for i := range c.rows {
		h := c.high(&c.rows[i], box.W)
		c.draw(page, paper.Rect{X: box.X, Y: y, W: box.W, H: h}, c.rows[i])
		y += h
	}
	return nil
}

// high is the height of a row.
func (c Circuits) high(r *plugRow, width paper.Length) paper.Length {
	if r.wide != width {
		r.wide, r.tall = width, c.measured(*r, width)
	}
	return r.tall
}

func (c Circuits) measured(r plugRow, width paper.Length) paper.Length {
	switch r.kind {
	case outletRow, darkRow:
		name := outletName.Leading() * paper.Length(len(outletName.Wrap(headline(r), headName)))
		return max(name, c.said(r).Height(width-headWords)) + 5
	case againRow:
		return plugHigh + againLead
	case onRow:
		return plugHigh
	}
	_, detail := placeWords(r.at)
	lines := paper.Length(len(paper.Floor.Wrap(detail, treeLeft-placeLeft-1)))
	if detail == "" {
		lines = 0
	}
	h := max(plugHigh, paper.Cell.Leading()+lines*detailLines+0.6)
	if r.kind == runRow {
		_, below := c.strings(r, width)
		return max(h, plugHigh+below)
	}
	return max(h, c.words(r).Height(c.wordsRoom(r, width))+2.4)
}

// outletName is the lettering of an outlet's name.
var outletName = paper.Heading.Sized(13)

func headline(r plugRow) string {
	if r.kind == darkRow {
		return "Fed by nothing"
	}
	return r.outlet.Name
}

// draw draws one row in its box.
func (c Circuits) draw(page *paper.Page, box paper.Rect, r plugRow) {
	b := place.NewBoard(page, box)
	if r.kind.head() {
		c.head(b, box, r)
		return
	}
	mid := paper.Point{X: box.X, Y: box.Y + plugHigh/2}
	at := func(x, dy paper.Length) paper.Point { return mid.Add(paper.Point{X: x, Y: dy}) }
	page.TickBox(at(0.35, -paper.TickBoxSide/2))
	name, detail := placeWords(r.at)
	if r.named != "" {
		name = r.named
	}
	b.Text(at(placeLeft, 1.8), paper.AtLeft, name, paper.Cell)
	if detail != "" {
		block.Words{Text: detail, Lettering: paper.Floor}.Draw(page, paper.Rect{X: box.X + placeLeft, Y: mid.Y + 3, W: treeLeft - placeLeft - 1})
	}
	for level, on := range r.pass {
		if on {
			page.Line(paper.Point{X: box.X + trunk(level), Y: box.Y}, paper.Point{X: box.X + trunk(level), Y: box.Bottom()}, paper.Thick)
		}
	}
	x := trunk(r.depth())
	if r.outlet.Name == "" { // nothing feeds it
		Prongs(b, at(x+matedLong, 0), paper.Point{X: -1})
	} else {
		to := mid.Y
		if !r.last {
			to = box.Bottom()
		}
		page.Line(paper.Point{X: box.X + x, Y: box.Y}, paper.Point{X: box.X + x, Y: to}, paper.Thick)
		Mated(b, at(x, 0), paper.Point{X: 1})
	}
	if r.leads {
		from := paper.Point{X: box.X + trunk(r.depth()+1), Y: mid.Y + nodeHigh/2}
		page.Line(from, paper.Point{X: from.X, Y: box.Bottom()}, paper.Thick)
	}
	if r.kind == runRow {
		c.drawStrings(b, box, r)
		return
	}
	b.Page.Line(at(x+matedLong-0.3, 0), at(r.node(), 0), paper.Thick)
	wide := nodeWidth(r)
	outlinedBox(b, paper.Rect{X: box.X + r.node(), Y: mid.Y - nodeHigh/2, W: wide, H: nodeHigh}, paper.Thick)
	centredText(b, at(r.node()+wide/2, 0), r.name(), paper.CellSmall)
	words := c.words(r)
	words.Draw(page, paper.Rect{X: box.X + r.node() + wide + 2, Y: mid.Y + 1.6 - words.Rise(c.wordsRoom(r, box.W)), W: c.wordsRoom(r, box.W)})
	b.Text(at(box.W, 1.5), paper.AtRight, LimitWords(r.limit()), paper.Floor)
}

func nodeWidth(r plugRow) paper.Length { return max(9, paper.CellSmall.Width(r.name())+2.6) }

// limit is what comes nearest to binding at a row's plug.
func (r plugRow) limit() power.Limit {
	switch r.kind {
	case cordRow:
		return r.most
	case runRow:
		return r.run.Limit
	}
	return power.Limit{}
}

// wordsRoom is how wide the words on a cord or a three-way may be.
func (c Circuits) wordsRoom(r plugRow, width paper.Length) paper.Length {
	room := width - r.node() - nodeWidth(r) - 2
	if limit := LimitWords(r.limit()); limit != "" {
		room -= paper.Floor.Width(limit) + limitGap
	}
	return room
}

// words says which cord to take and where it goes, or what else is plugged in.
func (c Circuits) words(r plugRow) block.Words {
	switch r.kind {
	case tapRow:
		words := "three-way"
		if r.tap.Open > 0 {
			words += fmt.Sprintf(", %d open", r.tap.Open)
		}
		return block.Words{Text: words}
	case supplyRow:
		return block.Words{Text: "low-voltage supply, boxed dry"}
	}
	text := block.Figure(StockWords([]measure.Length{r.cord.Length}, c.plan.Spec.Units))
	if c.gauges() > 1 {
		text += " " + strings.ReplaceAll(r.cord.Kind, "mm2", "mm²")
	}
	if r.cord.Over {
		text += ", over the way"
	}
	return block.Words{Text: text + c.reach(r.cord)}
}

// reach says where a cord's sockets are: of several each in its order, those open that nothing is plugged into.
func (c Circuits) reach(cord power.Cord) string {
	if len(cord.Places) == 0 {
		return ", to the next cord"
	}
	if cord.Sockets == 1 {
		name, detail := placeWords(cord.Places[0].At)
		if detail != "" {
			name += ", " + detail
		}
		return ", to " + name
	}
	k := slices.IndexFunc(c.plan.Power.Feeders, func(f power.Feeder) bool { return f.Name == cord.Feeder })
	var sockets []string
	open := func(n int) { sockets = append(sockets, slices.Repeat([]string{"open"}, n)...) }
	for _, i := range cord.Joints {
		j := c.plan.Power.Feeders[k].Joints[i]
		open(j.Skips)
		sockets = append(sockets, PlaceName(j.End.At))
		open(j.Spare)
	}
	return fmt.Sprintf(", %d sockets: %s", cord.Sockets, strings.Join(sockets, ", "))
}

// gauges counts the kinds of cord.
func (c Circuits) gauges() int {
	kinds := map[string]bool{}
	for _, cord := range c.plan.Power.Cords {
		kinds[cord.Kind] = true
	}
	return len(kinds)
}

// placeWords names a place as one finds it: by its leg, its crown, its row, and what that does not say.
func placeWords(p lights.Place) (name, detail string) {
	switch p.Spot {
	case lights.AtFoot:
		return fmt.Sprint(p.Part.Letter(), p.Part.Number), ""
	case lights.AtCrown, lights.Nowhere:
		return p.String(), ""
	case lights.AtOutlet:
		return "outlet", ""
	case lights.AtArch:
		return fmt.Sprintf("arch %d", p.Arch), p.Part.String()
	case lights.InBay:
		return fmt.Sprintf("bay %d", p.Bay), fmt.Sprintf("%v, %s past arch %d", p.Part, p.Words.Ground(p.Tape), p.Arch)
	case lights.Climbing:
		wall, _ := p.Part.Wall()
		return fmt.Sprint(wall.Letter(), p.Arch), p.Words.Ground(p.Tape) + " up"
	}
	tape := p.Words.Ground(p.Tape)
	switch {
	case p.Part.IsLeg():
		return fmt.Sprint(p.Part.Letter(), p.Part.Number), tape + " up"
	case p.Part.Kind == lights.Arch:
		return fmt.Sprintf("L%d", p.Part.Number), tape + " along the pipe"
	case p.Part.Kind == lights.Ridge:
		return p.Part.String(), fmt.Sprintf("%s from crown %d", tape, p.Part.Number)
	}
	return p.Part.String(), p.Within()
}

// PlaceName is how a place is called on the diagram: L3, crown 3, row left 2.
func PlaceName(p lights.Place) string {
	name, _ := placeWords(p)
	return name
}

// CordLimit is what binds at a cord's plug: of the amps, no more is allowed than its breaker and its outlet's timers bear.
func CordLimit(plan *layout.Plan, cord power.Cord) power.Limit {
	l := cord.Limit
	if l.Kind != power.CordAmps {
		return l
	}
	bear := func(amps measure.Current) {
		if amps > 0 {
			l.Of = min(l.Of, float64(amps))
		}
	}
	for _, o := range plan.Spec.Site.Outlets {
		if o.Name != cord.Outlet {
			continue
		}
		bear(o.Timer)
		for _, c := range plan.Power.Circuits {
			if c.Name == o.Circuit {
				bear(c.Allowed)
			}
		}
	}
	for _, t := range plan.Power.Timers {
		if t.Outlet == cord.Outlet {
			bear(t.Size)
		}
	}
	return l
}

// LimitWords says how much of a limit is taken up; empty for what has none.
func LimitWords(l power.Limit) string {
	amps := func(v float64) string { return measure.Amps(measure.Current(v)) }
	watts := func(v float64) string { return measure.Watts(measure.Power(v)) }
	switch l.Kind {
	case power.LabelCount, power.Together:
		return fmt.Sprintf("%.0f/%.0f", l.Have, l.Of)
	case power.LabelWatts, power.SupplyWatts:
		return watts(l.Have) + " of " + watts(l.Of)
	case power.CordAmps, power.BreakerAmps, power.TimerAmps, power.FuseAmps:
		return amps(l.Have) + " of " + amps(l.Of)
	case power.VoltsLost:
		return measure.Percent(measure.Share(l.Have)) + " of " + measure.Percent(measure.Share(l.Of)) + " lost"
	}
	return ""
}

// StockWords says what cords to take for one line: 25 ft, or 100 + 50 ft.
func StockWords(cords []measure.Length, units measure.System) string {
	var words []string
	for _, l := range cords {
		words = append(words, fmt.Sprintf("%.0f", float64(l/measure.By(units, measure.Foot, measure.Metre))))
	}
	return strings.Join(words, " + ") + measure.By(units, " ft", " m")
}
