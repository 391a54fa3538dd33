package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout"
	"hoopwright/layout/arch"
	"hoopwright/layout/crew"
	"hoopwright/layout/ground"
	"hoopwright/layout/lights"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
	"hoopwright/layout/weather"
)

// order is the order of the work: pictures, steps in words, pictures of what is hung, all numbered on.
type order struct {
	panels, hung []panel
	after        []block.Step
	step         map[crew.Action]int // the first number that tells an action
}

// inOrder gathers and numbers all that is told.
func (r raising) inOrder() order {
	o, number := order{panels: r.pictures(), step: map[crew.Action]int{}}, 0
	next := func(a crew.Action) int {
		number++
		if o.step[a] == 0 {
			o.step[a] = number
		}
		return number
	}
	for i := range o.panels {
		o.panels[i].number = next(o.panels[i].action)
	}
	for _, t := range r.tasks {
		if step := r.stepOf(t); step.Text != "" {
			step.Number, step.Hold = next(t.Action), t.Hold
			o.after = append(o.after, step)
		}
	}
	if r.hangs() {
		o.hung = r.hanging()
	}
	for i := range o.hung {
		o.hung[i].number = next(o.hung[i].action)
	}
	return o
}

// back is the order of the work: what is said aloud, what more is told, the pictures, then what comes when all arches stand.
func (r raising) back(more []block.Block) []block.Block {
	list := slices.Concat([]block.Block{r.startAfter(), r.aloud()}, more, panelRows(r.panels))
	for _, step := range r.after {
		short := step
		short.Then = ""
		list = append(list, block.Block{Name: fmt.Sprintf("step %d", step.Number), Gap: 1.2, Rank: block.Should, Body: step, Short: short})
	}
	return list
}

// whatHangs are the pictures of what is hung, with the tables of rows and drops.
func (r raising) whatHangs() []block.Block {
	list := slices.Concat(panelRows(r.hung), r.rowTable(), r.dropTable())
	if long, facts := leftOver(r.Plan, func(s lights.String) bool { return !s.Run.Wound() }); long != "" {
		list = append(list, block.Block{Name: "left over", Gap: 2, Body: block.Words{Text: long}, Facts: facts})
	}
	return list
}

// startAfter are the signatures without which nothing begins.
func (r raising) startAfter() block.Block {
	blanks := block.Blanks{{Word: fmt.Sprintf("Start arches signed: leaf %d, %s", leafNumber("stakes"), strings.ToLower(groundOf(r.Plan).leaf))}}
	if r.Wrapped { // ridge pieces are wound later, most of them
		standing := slices.DeleteFunc(wrapped(r.Plan), func(noun string) bool { return noun == ridgePieces })
		blanks = append(blanks, block.Blank{Word: fmt.Sprintf("leaf %d, %s", leafNumber("lights"), say.And(standing))})
	}
	return block.Block{Name: "start", Body: blanks}
}

type raisingTasks []crew.Task

// raisingTasksOf lists the tasks of raising and hanging.
func raisingTasksOf(plan *layout.Plan) raisingTasks {
	return slices.DeleteFunc(slices.Clone(plan.Crew.Tasks), func(t crew.Task) bool {
		return t.Phase != crew.Raising && t.Phase != crew.Hanging
	})
}

// first returns the first task of an action, that of one arch if its number is not 0.
func (l raisingTasks) first(action crew.Action, number int) (crew.Task, bool) {
	for _, t := range l {
		if t.Action == action && (number == 0 || slices.Contains(t.Of.Arches, number)) {
			return t, true
		}
	}
	return crew.Task{}, false
}

// wanted lists the figures of a kind.
func (l raisingTasks) wanted(what crew.Wanted) (list []crew.Figure) {
	for _, t := range l {
		for _, f := range t.Want {
			if f.What == what {
				list = append(list, f)
			}
		}
	}
	return list
}

// plugged gathers the arches at whose crowns legs are plugged together, or the bays whose ridge pieces are plugged to what is beside them; shut likewise those where sockets are
// covered that nothing is plugged into.
func (l raisingTasks) plugged(of func(crew.Figure) []int) []int { return l.at(crew.Plugged, of) }
func (l raisingTasks) shut(of func(crew.Figure) []int) []int    { return l.at(crew.EndsShut, of) }

func (l raisingTasks) at(what crew.Wanted, of func(crew.Figure) []int) (numbers []int) {
	for _, f := range l.wanted(what) {
		numbers = append(numbers, of(f)...)
	}
	return rising(numbers)
}

// archNumbers and bayNumbers are the arches and the bays of a figure.
func archNumbers(f crew.Figure) []int { return f.Arches }
func bayNumbers(f crew.Figure) []int  { return f.Bays }

// aloud is what is said before the first arch: three lines, and who heard them.
func (r raising) aloud() block.Block {
	t, _ := r.tasks.first(crew.CheckDay, 0)
	gust, cold := figureOf(t, crew.GustBelow).Gust, r.u.Temperature(figureOf(t, crew.WarmerThan).Cold)
	blows, facts := "any wind", []block.Fact{{What: "raising cold", Value: cold}}
	if w := r.Plan.Weather; len(w.Bears) == 0 || !w.Calm() {
		blows = fmt.Sprintf("gusts %s (%s)", block.Figure(r.u.Speed(gust)), signOf(weather.Gust{Forecast: gust}))
		facts = append(facts, block.Fact{What: "raising gust", Value: r.u.Speed(gust)})
	}
	off := ""
	if len(r.Plan.Strings) > 0 {
		off = ", outlets empty"
	}
	lines := []string{
		"A bent arch springs: nobody under it till both legs stand, no face near.",
		fmt.Sprintf("No raising: %s, %s or less, dusk.", blows, block.Figure(cold)),
		"Gloves, eye protection" + off + ". Stop, ask: crack, " + map[bool]string{true: "moving leg", false: "sliding base"}[drives(r.Plan)] + ".",
	}
	lines[1] += " " + r.midway()
	for _, f := range r.tasks.wanted(crew.KeepOverhead) {
		lines = append(lines, fmt.Sprintf("Live wire overhead (%s): pipe, ladder, people stay %s away%s.", r.Plan.Spec.Site.Overhead[f.Line].Name, block.Figure(r.u.Room(f.Length)), ownersYes(r.Plan, f.Line)))
	}
	list := saidAloud(r.Plan.Spec, lines, block.Blank{Word: "wind, cold signed"})
	list.Facts = facts
	return list
}

// midway is what is done where a stop comes with an arch half up. Thunder leaves no time for more; else what stands last is tied both ways, beyond it and back, for the night: its
// ridge piece is pushed in dry, and a crown line is not on yet.
func (r raising) midway() string {
	do := "Thunder: unbend, go in; other stops, lunch: finish"
	if len(r.stand) > 1 {
		do += fmt.Sprintf(", tie head-high both ways to %ss, builder’s line", strings.Join(standsOn(r.Plan), "s or "))
		if first := r.stand[0].Number; !firstHeld(r.Plan, first) {
			do += fmt.Sprintf("; arch %d alone: take it off", first)
		}
	}
	return do + "."
}

// saidAloud are lines that are said aloud before the work, over blanks of the whole width.
func saidAloud(s *spec.Spec, lines []string, more ...block.Blank) block.Block {
	var blocks []block.Block
	for _, l := range lines {
		blocks = append(blocks, block.Block{Body: block.Words{Text: l}})
	}
	return block.Block{Name: "said aloud", Gap: 1, Body: block.Framed{Blocks: append(blocks, block.Block{Body: append(heardAndAsk(s), more...)})}}
}

// heardAndAsk are whom it was said to and, where the spec does not say, whom to ask.
func heardAndAsk(s *spec.Spec) block.Blanks {
	blanks := block.Blanks{{Word: "Aloud to"}}
	if s.Crew.Ask == (spec.Person{}) {
		blanks = append(blanks, block.Blank{Word: "Ask, phone"})
	}
	return blanks
}

// pictures are the panels in the order of the tasks.
func (r raising) pictures() []panel {
	first := r.stand[0]
	list := []panel{r.together(first), r.tiedFlat(), r.firstFoot(first), r.lastFoot(first), r.heldUp(first), r.measured(first)}
	stood := 0 // steps until an arch stands
	for _, p := range list[:4] {
		if p.do != "" {
			stood++
		}
	}
	if len(r.stand) > 1 {
		list = append(list, r.second(first, r.stand[1], stood))
	}
	if len(r.stand) > 2 {
		list = append(list, r.others())
	}
	return slices.DeleteFunc(list, func(p panel) bool { return p.do == "" })
}

// together joins a crown on the ground; nothing where an arch is of one stick.
func (r raising) together(a arch.Arch) panel {
	if _, ok := r.tasks.first(crew.JoinCrown, a.Number); !ok {
		return panel{}
	}
	do, off := "Mallet: legs to pen lines, no glue.", ""
	joined := slices.ContainsFunc(r.Plan.Crew.Tasks, func(t crew.Task) bool { return t.Action == crew.JoinForWrap })
	if joined { // its lights run over the crown
		do = "Comes wound: check the pen lines."
	}
	shut := len(r.tasks.shut(archNumbers)) > 0
	switch legs := r.tasks.plugged(archNumbers); {
	case joined && len(legs) == 0:
	case len(legs) == 0 && r.Wrapped:
		do += " Leave leg plugs loose" + map[bool]string{true: ", sockets covered"}[shut] + "."
	case len(legs) > 0:
		where := "Plug leg to leg"
		if len(legs) < len(r.stand) {
			where = say.Capital(say.Numbered("arch", legs)) + ": plug leg to leg"
		}
		if do += " " + where + ", cover, tie."; shut {
			do += " Cover open sockets."
		}
	}
	stub, last := "", len(r.stand)-1
	if len(r.Plan.Ridge) > 0 && last > 0 {
		stub = "ridge this way"
	}
	if stub != "" && last > 1 && !joined {
		do = fmt.Sprintf("Tees: arches %d, %d; crosses between. ", a.Number, r.stand[last].Number) + do
	}
	return panel{action: crew.JoinCrown, do: do, off: off, paint: func(page *paper.Page, room paper.Rect) { r.Together(page, room, stub) }}
}

// upright is what a leg of an arch goes over: a stake, or the bar of a weighted base.
func upright(k *arch.Kind) string {
	if k.Spec.Foot != nil {
		return "bar"
	}
	return "stake"
}

func (r raising) firstFoot(a arch.Arch) panel {
	leg := ground.Leg(r.ways.First(a.Number), a.Number)
	return panel{action: crew.SetFirst, do: fmt.Sprintf("Crown lifts from beside. Leg %s over its %s, cap to bucket as it comes.", block.Figure(leg.String()), upright(a.Kind)),
		off:   "Stuck: wipe, no hammer.",
		paint: func(page *paper.Page, room paper.Rect) { r.FirstFoot(page, room, a.Number) }}
}

func (r raising) lastFoot(a arch.Arch) panel {
	leg := ground.Leg(r.ways.First(a.Number).Other(), a.Number)
	return panel{action: crew.WalkLast, do: fmt.Sprintf("Crown uncaps %s from beside. Walk it over, slowly. Hold till both stand.", block.Figure(leg.String())),
		off:   "Crack: walk it back, ask.",
		paint: func(page *paper.Page, room paper.Rect) { r.LastFoot(page, room, a.Number) }}
}

// leans is what is done where an arch leans by itself.
func (r raising) leans() string {
	return "It leans: arch off, caps on, call " + groundOf(r.Plan).crew + "."
}

// heldUp guys or braces the first arch, or has it held by a person.
func (r raising) heldUp(a arch.Arch) panel {
	p := panel{action: crew.StretchGuys, paint: func(page *paper.Page, room paper.Rect) { r.Held(page, room, a.Number) }}
	guys, guyed := r.tasks.first(crew.StretchGuys, a.Number)
	pegs, braced := r.tasks.first(crew.FixBraces, a.Number)
	switch {
	case guyed:
		p.do = "Guard holds it plumb. " + r.fixing(guys.Of.Stakes)
		if braced {
			p.do += " " + r.braceWords(pegs)
		}
	case braced:
		p.do = "Guard holds it plumb. " + r.braceWords(pegs)
	case r.onLine():
		p.do, p.off = fmt.Sprintf("Guard keeps both hands on arch %d until arch %d is knotted.", a.Number, r.stand[1].Number), r.leans()
	case len(r.stand) == 1 || len(r.Plan.Ridge) == 0:
		p.do, p.off = fmt.Sprintf("Guard holds arch %d %s while it is measured. Nothing else holds it.", a.Number, block.Figure("upright")), r.leans()
	case r.tiesBay():
		p.do, p.off = fmt.Sprintf("Guard keeps both hands on arch %d until arch %d is joined, tied.", a.Number, r.stand[1].Number), r.leans()
	default:
		p.do, p.off = fmt.Sprintf("Guard keeps both hands on arch %d until the %s is joined.", a.Number, block.Figure("last arch")), r.leans()
	}
	if braced && pegs.Of.Stakes[0].Steel() {
		p.off = say.Capital(braceEnds(r.Plan)) + " stay capped."
	}
	return p
}

// braceWords say how braces are fixed, and how high on the legs.
func (r raising) braceWords(t crew.Task) string {
	how, to := "Clamp a ribboned brace outside each leg%s, %s up, and clamp it to %s.", stakeNames(t.Of.Stakes)
	if r.Plan.Spec.Braces.Line {
		how = "Tie a ribboned line to each leg%s, %s up, clamp below the knot; buckle it to %s, in the wall."
	}
	switch end := t.Of.Stakes[0]; {
	case end.Base && end.Steel():
		to = "bars " + to
	case end.Base:
		to = "every bag’s handle at " + to
	}
	return fmt.Sprintf(how, r.underWire(), block.Figure(r.u.Inches(r.u.Taped(figureOf(t, crew.BraceMark).Length))), to)
}

// underWire says of what goes on a leg that lights cross its place.
func (r raising) underWire() string {
	if r.Wrapped {
		return ", in the bare gap, wire over it"
	}
	return ""
}

func (r raising) measured(a arch.Arch) panel {
	do := fmt.Sprintf("Measure arch %d, fill in front, %s.", a.Number, block.Figure("sign"))
	return panel{action: crew.MeasureArch, do: do, hold: true,
		paint: func(page *paper.Page, room paper.Rect) { r.Measured(page, room, a.Number, r.climbs) }}
}

// What is done where crowns are not as far apart as wanted: while other ridge pieces can still be cut to it, and after.
const (
	cutToIt     = "Long: push in. Still off: %sleaf %d."
	longOrShort = "Long: push in. Short: ask."
)

func (r raising) second(first, a arch.Arch, stood int) panel {
	joined := len(r.Plan.Ridge) > 0
	p := panel{action: crew.RaiseSame, paint: func(page *paper.Page, room paper.Rect) {
		r.Second(page, room, first.Number, a.Number, joined, r.climbs)
	}}
	if !joined {
		p.do = fmt.Sprintf("Arch %s: steps 1 to %d%s%s. Hold it until it stands plumb", block.Figure(fmt.Sprint(a.Number)), stood, r.ownOrder(first, a), r.ownFigures(a.Number))
		if p.off = r.leans(); r.lined() {
			p.do += fmt.Sprintf(", crown line knotted snug at both. Guard to arch %d", a.Number)
		}
		p.do += "."
		r.fixSecond(&p, a)
		return p
	}
	p.action, p.hold = crew.MeasureBay, true
	unwound := ""
	if r.prongsFrom() == crew.MeasureBay {
		unwound = "unwind ridge, "
	}
	prongs := ""
	if slices.ContainsFunc(r.Plan.Lights.Wraps, ofRidge) {
		prongs = " (prongs: overleaf)"
	}
	p.do = fmt.Sprintf("Arch %d: steps 1 to %d%s%s. Ridge 1%s into crown %s, then %d. Measure, %s", a.Number, stood, r.ownOrder(first, a), r.ownFigures(a.Number), prongs, block.Figure(fmt.Sprint(a.Number)), first.Number, block.Figure("sign"))
	if p.off = fmt.Sprintf(cutToIt, unwound, leafNumber("stock")); len(r.Plan.Ridge) > 1 {
		p.do += ", tell the cutting crew"
	}
	p.do += "."
	if r.lined() {
		p.do += " Crown line knotted at both."
	}
	if r.tiesBay() {
		p.do += " Builder’s line: each head-high to other’s feet."
	}
	r.fixSecond(&p, a)
	return p
}

// fixSecond says to which stakes what holds the second arch goes, or where it is told.
func (r raising) fixSecond(p *panel, a arch.Arch) {
	if many := r.fix(p, r.heldTo(a.Number)); many != "" {
		p.do += fmt.Sprintf(" Arch %d’s %s: overleaf.", a.Number, many)
	}
}

// ownOrder says of an arch that is raised by another's steps where its own feet go the other way round.
func (r raising) ownOrder(as, a arch.Arch) string {
	if r.ways.Unlike(as.Number, []arch.Arch{a}) == nil {
		return ""
	}
	return fmt.Sprintf(", %s first", block.Figure(ground.Leg(r.ways.First(a.Number), a.Number).String()))
}

// ownFigures are measured on those arches that are the first of another shape, as they stand.
func (r raising) ownFigures(numbers ...int) string {
	var own []int
	for _, s := range r.shapes[1:] {
		if n := s[0].Number; slices.Contains(numbers, n) {
			own = append(own, n)
		}
	}
	switch {
	case own == nil:
		return ""
	case len(numbers) == 1:
		return ", measure by the next sheet"
	}
	return fmt.Sprintf(", measure %s by the next sheet", say.Numbers(own))
}

// others stands the rest one by one.
func (r raising) others() panel {
	third, last := r.stand[2].Number, r.stand[len(r.stand)-1].Number
	joined, to := len(r.Plan.Ridge) > 0, min(r.stand[0].Number+3, last)
	p := panel{action: crew.RaiseRest, off: "It leans: do not go on.", paint: func(page *paper.Page, room paper.Rect) {
		r.Running(page, room, r.stand[0].Number, to, joined)
	}}
	p.do = fmt.Sprintf("%s %s as arch %d", say.Agree(last-third+1, "Arch", "Arches"), block.Figure(say.Numbers(say.From(third, last))), r.stand[1].Number) + r.ownFigures(say.From(third, last)...)
	if joined {
		p.do += ", ridge at hand: hold till joined"
		if r.lined() {
			p.do += ", knotted"
		}
	}
	p.do += "."
	t, _ := r.tasks.first(crew.RaiseRest, 0)
	var front []string
	if len(r.ways.Unlike(r.stand[0].Number, r.stand))+len(r.ways.Ask) > 0 {
		front = append(front, "feet’s order")
	}
	if r.prongsFrom() == crew.RaiseRest {
		front = append(front, "prongs")
	}
	if list := r.readings(); joined && len(list) > 1 {
		front = append(front, "measuring")
		p.off = longOrShort
	}
	if many := r.fix(&p, t.Of.Stakes); many != "" {
		front = append(front, many+" as each "+map[bool]string{true: "is joined", false: "stands"}[joined])
	}
	if len(front) > 0 {
		p.do += " Front: " + strings.Join(front, ", ") + "."
	}
	return p
}

// fix adds to a panel to which stakes guys and braces go; where that is too long for it, it returns what goes to them.
func (r raising) fix(p *panel, stakes []ground.Stake) (many string) {
	if len(stakes) > mostStakes {
		guys, pegs := fixed(stakes)
		return say.And(holders{len(guys) > 0, len(pegs) > 0}.pick("guys", "braces"))
	}
	p.do = strings.TrimSpace(p.do + " " + r.fixing(stakes))
	return ""
}
