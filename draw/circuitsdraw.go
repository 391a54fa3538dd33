package draw

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/power"
	"hoopwright/layout/stock"
)

// Where a row's parts stand, from the left, and how high it is at the least.
const (
	placeLeft                = paper.TickBoxSide + 2.4
	treeLeft    paper.Length = 32.6 // the outlet's own line
	treeStep    paper.Length = 5    // from a line to the next one in
	plugHigh    paper.Length = 6.9  // a row
	plugClose   paper.Length = 6.7  // a row where room is short
	nodeHigh    paper.Length = 5.7  // the box of a cord, a three-way, a string
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
		h += c.height(&c.rows[i], width)
	}
	return h
}

// Split implements the blocks' splitting: between rows, never behind a head; a line at the foot says that the outlet goes on, and its name is repeated on the next side with
// the way to its first row.
func (c Circuits) Split(width, height paper.Length) (first, more block.Body, ok bool) {
	n := 0
	for h := c.high; n < len(c.rows); n++ { // with the line that says it goes on
		if h += c.height(&c.rows[n], width); h > height {
			break
		}
	}
	for n > 0 && n < len(c.rows) && c.rows[n-1].kind.head() {
		n--
	}
	if n < 2 || n >= len(c.rows) {
		return nil, nil, false
	}
	set, left := slices.Clone(c.rows[:n]), c.rows[n:]
	if next := left[0]; !next.kind.head() && next.outlet.Name != "" {
		set = append(set, plugRow{kind: onRow, outlet: next.outlet})
		left = append([]plugRow{{kind: againRow, outlet: next.outlet, path: next.path, pass: next.pass}}, left...)
	}
	rest := c
	c.rows, rest.rows = set, left
	return c, rest, true
}

// Tight implements the blocks' setting more closely.
func (c Circuits) Tight(block.Tightness) block.Body {
	c.high = plugClose
	return c
}

// Draw implements block.Body.
func (c Circuits) Draw(page *paper.Page, box paper.Rect) []string {
	y := box.Y
	for i, r := range c.rows {
		h := c.height(&c.rows[i], box.W)
		c.draw(page, paper.Rect{X: box.X, Y: y, W: box.W, H: h}, r)
		y += h
	}
	return nil
}

func (c Circuits) height(r *plugRow, width paper.Length) paper.Length {
	if at := [2]paper.Length{width, c.high}; r.asked != at {
		r.asked, r.tall = at, c.measured(*r, width)
	}
	return r.tall
}

func (c Circuits) measured(r plugRow, width paper.Length) paper.Length {
	switch r.kind {
	case outletRow, darkRow:
		name := outletName.Leading() * paper.Length(len(outletName.Wrap(headline(r), headName)))
		return max(name, c.said(r).Height(width-headWords)) + c.high - 2
	case againRow, farRow:
		return c.high + againLead
	case onRow:
		return c.high
	}
	_, detail := placeWords(r.at)
	lines := paper.Length(len(paper.Floor.Wrap(detail, treeLeft-placeLeft-1)))
	if detail == "" {
		lines = 0
	}
	h := max(c.high, lines*detailLines+6)
	if r.kind == runRow {
		_, below := c.strings(r, width)
		return max(h, c.high+below)
	}
	return max(h, c.words(r).Height(r.wordsRoom(width))+c.high-6)
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
	mid := paper.Point{X: box.X, Y: box.Y + c.high/2}
	at := func(x, dy paper.Length) paper.Point { return mid.Add(paper.Point{X: x, Y: dy}) }
	page.TickBox(at(0.35, -paper.TickBoxSide/2))
	name, detail := placeWords(r.at)
	if r.named != "" {
		name = r.named
	}
	as := paper.Cell
	for as.Size > paper.Floor.Size && as.Width(name) > treeLeft-placeLeft-1 {
		as.Size--
	}
	b.Text(at(placeLeft, 1.8), paper.AtLeft, name, as)
	if detail != "" {
		block.Words{Text: detail, Lettering: paper.Floor}.Draw(page, paper.Rect{X: box.X + placeLeft, Y: mid.Y + 3, W: treeLeft - placeLeft - 1})
	}
	trunks(page, box, r.pass, box.Y)
	x := trunk(r.depth())
	if r.outlet.Name == "" { // nothing feeds it
		Prongs(b, at(x+matedLong, 0), paper.Point{X: -1})
	} else {
		to := mid.Y
		if !r.last {
			to = box.Bottom()
		}
		page.Line(paper.Point{X: box.X + x, Y: box.Y}, paper.Point{X: box.X + x, Y: to}, paper.Thick)
		mated(b, at(x, 0), paper.Point{X: 1})
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
	words, room := c.words(r), r.wordsRoom(box.W)
	words.Draw(page, paper.Rect{X: box.X + r.node() + wide + 2, Y: mid.Y + 1.6 - words.Rise(room), W: room})
}

func nodeWidth(r plugRow) paper.Length { return max(9, paper.CellSmall.Width(r.name())+2.6) }

// wordsRoom is how wide the words on a cord or a three-way may be.
func (r plugRow) wordsRoom(width paper.Length) paper.Length {
	return width - r.node() - nodeWidth(r) - 2
}

// words says which cord to take and where it goes, or what else is plugged in, and that what comes behind it stands elsewhere.
func (c Circuits) words(r plugRow) block.Words {
	text := c.thing(r)
	if r.far {
		text += "; goes on further down"
	}
	return block.Words{Text: text}
}

func (c Circuits) thing(r plugRow) string {
	switch r.kind {
	case tapRow:
		return "three-way" + r.openWords()
	case supplyRow:
		return "low-voltage supply" + r.openWords()
	}
	text := block.Figure(stock.Sold(r.cord.Length, c.plan.Spec.Units))
	if slices.ContainsFunc(c.plan.Power.Cords, func(other power.Cord) bool { return other.Kind != r.cord.Kind }) {
		text += " " + strings.ReplaceAll(r.cord.Kind, "mm2", "mm²")
	}
	switch {
	case r.cord.Over && c.plan.Spec.Site.Cords.Cover():
		text += ", under a cover"
	case r.cord.Over && len(r.cord.Places) == 0: // which of the cords in line goes over is not known
		text += ", overhead"
	case r.cord.Over:
		end := r.cord.Places[0].At
		if text += overWords(r.cord.Passes); r.cord.Sockets == 1 && end.Spot == lights.AtFoot && end.Part == r.cord.Passes[len(r.cord.Passes)-1][1] {
			return text // it ends at the leg that it comes down
		}
	}
	return text + c.reach(r.cord)
}

// openWords say how many of a thing's sockets stay open, empty where none does.
func (r plugRow) openWords() string {
	if r.open == 0 {
		return ""
	}
	return fmt.Sprintf(", %d %s", r.open, block.Figure("open"))
}

// overWords name what a cord goes up, along and down over ways.
func overWords(passes [][2]lights.Part) (text string) {
	for _, p := range passes {
		up, down, along := p[0], p[1], fmt.Sprintf("arch %d", p[0].Number)
		if up.Number != down.Number {
			along = fmt.Sprintf("ridge %d", min(up.Number, down.Number))
		}
		text += fmt.Sprintf(", up %s%d, along %s, down %s%d", up.Letter(), up.Number, along, down.Letter(), down.Number)
	}
	return text
}

// reach says where a cord's sockets are: of several each, in its order.
func (c Circuits) reach(cord power.Cord) string {
	if len(cord.Places) == 0 {
		return ", to the next cord"
	}
	k := slices.IndexFunc(c.plan.Power.Feeders, func(f power.Feeder) bool { return f.Name == cord.Feeder })
	if cord.Sockets == 1 {
		name, detail := placeWords(cord.Places[0].At)
		return ", " + upWords(c.plan.Power.Feeders[k].Joints[cord.Joints[0]]) + "to " + listed(name, detail)
	}
	const open = "open"
	var sockets []string
	for _, i := range cord.Joints {
		j := c.plan.Power.Feeders[k].Joints[i]
		sockets = slices.Concat(sockets, slices.Repeat([]string{open}, j.Skips), []string{PlaceName(j.End.At)}, slices.Repeat([]string{open}, j.Spare))
	}
	for i, at := range sockets {
		if i < len(sockets)-1 {
			sockets[i] += ","
		}
		if at == open {
			sockets[i] = block.Figure(sockets[i])
		}
	}
	return fmt.Sprintf(", %d sockets: %s", cord.Sockets, strings.Join(sockets, " "))
}

// upWords name the leg that a cord goes up to a place whose own name does not say it.
func upWords(j power.Joint) string {
	at := j.End.At
	if at.Spot != lights.AtCrown && at.Part.Kind != lights.Ridge && at.Part.Kind != lights.Arch {
		return ""
	}
	return fmt.Sprintf("up %s%d ", j.Wall.Letter(), j.Arch)
}

// placeWords names a place as one finds it: by its leg, its crown, its row, and what that does not say.
func placeWords(p lights.Place) (name, detail string) {
	name, row, detail := placeParts(p)
	return name, listed(row, detail)
}

// listed has a comma between words where there are both.
func listed(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + ", " + b
}

// placeParts are a place's name, its row where it is on one, and what neither says.
func placeParts(p lights.Place) (name, row, detail string) {
	switch p.Spot {
	case lights.AtFoot:
		return fmt.Sprint(p.Part.Letter(), p.Part.Number), "", ""
	case lights.AtCrown, lights.Nowhere:
		return p.String(), "", ""
	case lights.AtOutlet:
		return "outlet", "", ""
	case lights.AtArch:
		wall, _ := p.Part.Wall()
		return fmt.Sprint(wall.Letter(), p.Arch), fmt.Sprintf("row %d", p.Part.Number), ""
	case lights.InBay:
		wall, _ := p.Part.Wall()
		if !p.MidBay() { // tied to that leg
			return fmt.Sprint(wall.Letter(), p.Arch), fmt.Sprintf("row %d", p.Part.Number), ""
		}
		return fmt.Sprintf("bay %d", p.Bay), fmt.Sprintf("row %d", p.Part.Number), fmt.Sprintf("%s from %s%d", p.Words.Ground(p.Tape), wall.Letter(), p.Arch)
	case lights.Climbing:
		wall, _ := p.Part.Wall()
		return fmt.Sprint(wall.Letter(), p.Arch), "", p.Words.Ground(p.Tape) + " up"
	}
	tape := p.Words.Ground(p.Tape)
	switch {
	case p.Part.IsLeg():
		return fmt.Sprint(p.Part.Letter(), p.Part.Number), "", tape + " up"
	case p.Part.Kind == lights.Arch:
		return fmt.Sprintf("arch %d", p.Part.Number), "", fmt.Sprintf("%s of pipe from L%[2]d", tape, p.Part.Number)
	case p.Part.Kind == lights.Ridge:
		return p.Part.String(), "", fmt.Sprintf("%s from crown %d", tape, p.Part.Number)
	}
	return p.Part.String(), "", p.Within()
}

// PlaceName is how a place is called on the diagram: L3, crown 3, bay 2.
func PlaceName(p lights.Place) string {
	name, _ := placeWords(p)
	return name
}

// LimitWords says how much of a limit is taken up; empty for what has none.
func LimitWords(l power.Limit) string {
	amps := func(v float64) string { return measure.Amps(measure.Current(v)) }
	watts := func(v float64) string { return measure.Watts(measure.Power(v)) }
	switch l.Kind {
	case power.LabelCount, power.Together:
		return fmt.Sprintf("%.0f of %.0f strings", l.Have, l.Of)
	case power.LabelWatts, power.SupplyWatts:
		return watts(l.Have) + " of " + watts(l.Of)
	case power.CordAmps, power.BreakerAmps, power.TimerAmps, power.FuseAmps:
		return amps(l.Have) + " of " + amps(l.Of)
	case power.VoltsLost:
		return measure.Percent(measure.Share(l.Have)) + " of " + measure.Percent(measure.Share(l.Of)) + " lost"
	}
	return ""
}
