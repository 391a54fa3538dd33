package packet

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout"
	"hoopwright/layout/catalog"
	"hoopwright/layout/crew"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
	"hoopwright/layout/stock"
)

// sawing writes the side of the person at the saw: what is said aloud, the sticks that stay whole, how one is cut, the hold of the ridge, each pattern of cuts
// drawn once.
type sawing struct {
	plan  *layout.Plan
	units measure.System
	width paper.Length // of a side
	list  []pattern
	lists string // where the lines' lengths stand from here, for they are told where line is bought
}

func (s sawing) blocks() []block.Block {
	if len(s.list) == 0 {
		if list := s.wholeSticks(s.naming(), s.lines()); len(list) > 0 || s.lines() == "" {
			return list
		}
		return []block.Block{{Name: "lines", Body: block.Step{Text: strings.TrimSpace(s.lines())}}}
	}
	return slices.Concat(s.aloud(), s.wholeSticks(fmt.Sprintf("Then steps 1, %d.", lastCutStep), ""), s.eachStick(), s.ridgeHold(), s.drawnCuts())
}

// aloud is what is said before the saw starts.
func (s sawing) aloud() []block.Block {
	steel := slices.ContainsFunc(s.list, func(p pattern) bool { return p.bars[0].Steel() })
	lines := []string{"Eye protection on everyone near. Nobody under 16 saws.", "Clamp the stick on trestles, hands a forearm from the blade. Mask, ears covered.", "Outdoors over the tarp: bin the dust. Never heat or stretch pipe."}
	if steel {
		lines = append(lines, "Steel: gloves on, sparks away from pipe and people. Cut ends are hot.")
	}
	return []block.Block{saidBeside(heardAndAsk(s.plan.Spec), strings.Join(lines, " "))}
}

// lines has guys, crown lines and brace lines cut; how many and how long stands where they are bought, of what the shed has here.
func (s sawing) lines() string {
	cut, then := linesCut(s.plan), ""
	if cut == nil {
		return ""
	}
	var listed, own []string
	for _, i := range s.plan.Shopping {
		switch {
		case len(i.Ropes) == 0:
		case i.Buy > 0:
			listed = append(listed, ropesCut(i)...)
		default:
			own = append(own, ropes(i.Ropes, s.units))
		}
	}
	if listed != nil {
		own = append([]string{strings.Join(listed, ", ") + " as " + s.lists}, own...)
	}
	if ribboned := slices.DeleteFunc(slices.Clone(cut), func(words string) bool { return words != guysCut && words != bracesCut }); len(ribboned) > 0 {
		then = "; ribbon " + say.And(ribboned)
	}
	return " Legs done: cut " + strings.Join(own, ", ") + then + "."
}

const (
	guysCut   = "guys"
	bracesCut = "brace lines"
)

// linesCut names what is cut from line and webbing.
func linesCut(p *layout.Plan) (cut []string) {
	for _, i := range p.Shopping {
		cut = append(cut, ropesCut(i)...)
	}
	return cut
}

// ropesCut names what is cut from one coil.
func ropesCut(i stock.Item) (cut []string) {
	for _, r := range i.Ropes {
		if words := [...]string{stock.GuyRope: guysCut, stock.CrownRope: say.Agree(r.Count, crownLine, crownLine+"s"), stock.DownRope: "tie-downs", stock.BraceRope: bracesCut}[r.Kind]; !slices.Contains(cut, words) {
			cut = append(cut, words)
		}
	}
	return cut
}

// cutsLines are the names of the blocks that may have lines cut, the last of them on the leaf does.
var cutsLines = []string{"lines", "whole sticks", "each stick"}

// wholeSticks lists the sticks that need no cut, a line for each length, what is done with them then, and with the last of them all.
func (s sawing) wholeSticks(then, last string) []block.Block {
	u := s.units
	var list []block.Block
	lots := wholeLots(s.plan.Cuts.Loose())
	for i, lot := range lots {
		var pieces []stock.Piece
		for _, bar := range lot {
			pieces = append(pieces, bar.Pieces...)
		}
		size, limit := u.Cut(lot[0].Stock), plusMinus(practice.AsSold(u), u)
		if i == len(lots)-1 {
			then += last
		}
		list = append(list, block.Block{Name: "whole sticks", Gap: 1.5, Body: block.Step{Text: fmt.Sprintf("Whole: %s of %s (%s), each %s, %s. Longer: trim. Shorter: the spare; none: ask. %s",
			say.Count(len(lot), barNoun(lot[0])), lot[0].Item, kindsOf(pieces), block.Figure(size), limit, then)},
			Facts: []block.Fact{{What: "stick used whole, " + lot[0].Item, Value: lot[0].Item + " " + size}, {What: "limit of a stick used whole", Value: limit}}})
	}
	return list
}

// wholeLots gathers the bars that need no cut by material and length.
func wholeLots(bars []stock.Bar) [][]stock.Bar {
	var list [][]stock.Bar
	for _, bar := range bars {
		if !bar.Whole() {
			continue
		}
		k := slices.IndexFunc(list, func(lot []stock.Bar) bool { return lot[0].Stock == bar.Stock && lot[0].Item == bar.Item })
		if k < 0 {
			k, list = len(list), append(list, nil)
		}
		list[k] = append(list[k], bar)
	}
	return list
}

func plusMinus(l measure.Length, u measure.System) string { return "±\u00a0" + u.Cut(l) }

// kindsOf names pieces by their kinds and places: "leg L1 to L6, R1 to R6".
func kindsOf(pieces []stock.Piece) string {
	var words []string
	for _, g := range alike(pieces) {
		words = append(words, g.sort.Noun()+" "+places(g.pieces))
	}
	return strings.Join(words, "; ")
}

// eachStick is how one stick is cut, beside a picture of the mark and the blade.
func (s sawing) eachStick() []block.Block {
	u, kerf, trim, socket := s.units, s.plan.Spec.Stock.Kerf, s.plan.Spec.Stock.Trim, s.plan.Spec.Arch.Pipe.Socket
	first := "Squarest end left. Put aside what is cracked, crushed, another size."
	if trim > 0 {
		first += fmt.Sprintf(" The first mark, %s, trims that end: cut left of it, there only.", u.Cut(trim))
	}
	limit := plusMinus(u.Grid(), u)
	steps := [lastCutStep]string{
		first,
		s.whatToMark(),
		"Cut right of the mark: it stays on the piece.",
		s.measuring(limit),
		"Scrape off every burr, inside too. " + s.naming() + " Done: tick." + s.lines(),
	}
	var blocks []block.Block
	for i, text := range steps {
		blocks = append(blocks, block.Block{Name: "each stick", Gap: 0.3, Body: block.Step{Number: i + 1, Text: text, NoTick: true}})
	}
	picture := draw.SawCut{OD: s.pipeOf(s.list[0].bars[0].Item), Kerf: kerf}
	const gap paper.Length = 4
	beside := 1
	for beside < len(blocks) && block.Height(blocks[:beside], s.width-draw.SawCutWidth-gap) < picture.Height() {
		beside++
	}
	columns := block.Columns{Gap: gap, Cols: []block.Column{{Share: 1, Blocks: blocks[:beside]}, {Width: draw.SawCutWidth, Blocks: []block.Block{{Name: "mark and blade", Body: block.Picture{Least: picture.Height(), Paint: picture.Draw}}}}}}
	full := append([]block.Block{{Name: "each stick", Body: columns}}, blocks[beside:]...)
	one := func(blocks []block.Block) block.Body {
		return block.Columns{Cols: []block.Column{{Share: 1, Blocks: blocks}}}
	}
	facts := []block.Fact{{What: "limit of a cut", Value: limit}, {What: "blade's width", Value: u.Cut(kerf)}, {What: "trim", Value: u.Cut(trim)}}
	if s.penned() {
		facts = append(facts, block.Fact{What: "socket depth of a leg", Value: u.Cut(socket)})
	}
	return []block.Block{{Name: "each stick", Rank: block.Should, Gap: 2, Body: one(full), Short: one(slices.Clone(blocks)), Facts: facts}}
}

// lastCutStep is the step at which a stick is named.
const lastCutStep = 5

// whatToMark says what is marked at once, every figure over a stick, and what one by one: ridge pieces, where the first may change the others.
func (s sawing) whatToMark() string {
	running, fresh := false, false
	for _, p := range s.list {
		n := s.fresh(p)
		fresh = fresh || n > 0
		running = running || n < len(p.bars[0].Pieces)
	}
	several := s.several()
	var words []string
	if running {
		words = append(words, "Hook one tape on the left end, once: mark every figure over the stick.")
	}
	switch kerf := s.plan.Spec.Stock.Kerf; {
	case several && kerf > 0:
		words = append(words, fmt.Sprintf("They count the blade, %s.", s.units.Cut(kerf)))
	case several:
		words = append(words, "They allow nothing for the blade.")
	}
	if fresh {
		words = append(words, "Ridge: one piece at a time, from the new end.")
	}
	return strings.Join(words, " ")
}

// several reports whether any stick has a mark that counts the blade: one behind the first.
func (s sawing) several() bool {
	return slices.ContainsFunc(s.list, func(p pattern) bool { return s.fresh(p)+1 < len(p.bars[0].Pieces) })
}

// measuring says which pieces show whether tape and blade are as the marks take them: a blade of another width shows from the second on.
func (s sawing) measuring(limit string) string {
	which, off := "first piece", "the blade’s side"
	if s.several() {
		which, off = "first two pieces of a stick", "the blade’s side, its width"
	}
	return fmt.Sprintf("Measure the %s: %s. Off: check the tape’s hook, %s. Short: aside, take the spare; none left: ask.", which, block.Figure(limit), off)
}

// fresh is how many pieces at a pattern's right end are measured from the fresh end: those of the ridge, where others wait for the first.
func (s sawing) fresh(p pattern) (n int) {
	if _, others, _ := trialPiece(s.plan.Cuts.Bars); others == 0 {
		return 0
	}
	for _, piece := range p.bars[0].Pieces {
		if piece.ID.Ridge() {
			n++
		}
	}
	return n
}

// naming says what is written on a stick: its name, which way it points, and how far it goes into a fitting.
func (s sawing) naming() string {
	u, plan := s.units, s.plan.Spec
	words := "Write its name at both ends"
	loose := func(is func(stock.PieceID) bool) bool {
		return slices.ContainsFunc(s.plan.Cuts.Loose(), func(b stock.Bar) bool {
			return slices.ContainsFunc(b.Pieces, func(p stock.Piece) bool { return !p.ID.Steel && !p.ID.Brace && is(p.ID) })
		})
	}
	legs, whole := loose(func(id stock.PieceID) bool { return id.Part.IsLeg() }), loose(func(id stock.PieceID) bool { return id.Part.Kind == lights.Arch })
	if legs {
		words += ", on legs an arrow to the crown"
	}
	if whole { // both its ends are feet
		words += ", L or R at an arch’s feet"
	}
	words += "."
	if depth := plan.Arch.Pipe.Socket; depth > 0 && s.penned() {
		words += fmt.Sprintf(" Pen line %s from each end", u.Cut(depth))
		if legs || whole {
			words += map[bool]string{true: " but a leg’s foot", false: " but feet"}[legs]
			if slices.ContainsFunc(s.plan.Stock.Pieces, func(p stock.Piece) bool { return p.ID.Brace }) {
				words += " or a brace"
			}
		}
		if r := plan.Ridge; r.Present && u.Cut(r.Pipe.Socket) != u.Cut(depth) {
			words += fmt.Sprintf(", %s on the ridge", u.Cut(r.Pipe.Socket))
		}
		words += "."
	}
	return words + s.joining()
}

// penned reports whether any stick goes into a fitting, to a pen line: one that is bent over whole does not.
func (s sawing) penned() bool {
	return slices.ContainsFunc(s.plan.Stock.Pieces, func(p stock.Piece) bool {
		return !p.ID.Steel && !p.ID.Brace && (p.ID.Part.Kind != lights.Arch || p.ID.Of > 1)
	})
}

// joining says how legs of several sticks are put together.
func (s sawing) joining() string {
	if !slices.ContainsFunc(s.plan.Crew.Tasks, func(t crew.Task) bool { return t.Action == crew.JoinSticks }) {
		return ""
	}
	each, held := map[bool]string{true: "leg", false: "arch"}[crowned(s.plan)], ""
	if sets := cemented(s.plan); sets > 0 {
		return fmt.Sprintf(" Outdoors prime, cement each %s’s sticks into their couplings: a quarter turn to pen lines, hold %d seconds, lay down. Bend none for %s.",
			each, practice.CementHold, block.Figure(fmt.Sprintf("%d minutes", sets)))
	}
	if s.plan.Spec.Arch.Joints == spec.Pinned {
		held = ", a screw in each socket, filed flush inside"
	}
	return " Mallet each " + each + "’s sticks into their couplings, to pen lines" + held + "."
}

// pipeOf returns the outside diameter of a material.
func (s sawing) pipeOf(item string) measure.Length {
	if r := s.plan.Spec.Ridge; r.Present && item == r.Pipe.Name {
		return r.Pipe.OD
	}
	return s.plan.Spec.Arch.Pipe.OD
}

// ridgeHold is the trial of the first ridge piece, which the others wait for.
func (s sawing) ridgeHold() []block.Block {
	trial, others, ok := trialPiece(s.plan.Cuts.Bars)
	if !ok {
		return nil
	}
	u := s.units
	cut, limit := u.Cut(trial.Length), plusMinus(u.Grid(), u)
	title := fmt.Sprintf("HOLD: %ss 1, 2, then ridge 1", standsOn(s.plan)[0])
	rest := "Wider: all others that much shorter, ridge 1 too if they say. Narrower" + s.changed()
	if drives(s.plan) {
		rest += fmt.Sprintf(" Cut once stakes stand; arch moved (leaf %d): one beside longer, one shorter.", leafNumber("stakes"))
	}
	sign := []block.Blank{{Word: "Wider / narrower (ring) by"}, {Word: "anew: all others longer / shorter by"}, {Word: "Raising crew"}}
	if ridgeAlike(s.plan.Cuts.Bars, u) {
		sign[1].Word = "cut all others to"
	}
	if others > 0 {
		title += "; others wait"
	} else {
		rest, sign = "Wider than wanted: trim it by as much. Narrower: cut a longer one.", []block.Blank{sign[0], sign[2]}
	}
	first := block.Step{Text: fmt.Sprintf("Cut ridge 1 to %s, %s.", block.Figure(cut), limit)}
	tried := block.Step{Text: fmt.Sprintf("Raising crew measures crown 1 to 2 (leaf %d). ", leafNumber("raise")) + rest}
	inside := []block.Block{
		{Body: block.Words{Text: title, Lettering: paper.Strong}},
		{Gap: 0.5, Body: block.Columns{Gap: 3, Cols: []block.Column{{Share: 1, Blocks: []block.Block{{Body: first}}}, {Width: 40, Blocks: []block.Block{{Body: block.Blanks{{Word: "as cut"}}}}}}}},
		{Gap: 0.5, Body: tried},
		{Body: block.Blanks(sign)},
	}
	return []block.Block{{Name: holdName, Gap: 2.5, Body: block.Framed{Blocks: inside}, Facts: []block.Fact{
		{What: "ridge piece, bay 1", Value: cut}, {What: "limit of the first ridge piece", Value: limit}, {What: "how much other ridge pieces may be changed", Value: s.changed()}}}}
}

// changed says by how much ridge pieces may be cut longer or shorter: what stakes off their dots can make, longer no more than every stick gives.
func (s sawing) changed() string {
	grid, most := s.units.Grid(), practice.RidgeOff(s.units)
	longer := min(max(0, measure.Length(int(s.plan.Cuts.RidgeRoom()/grid))*grid), most)
	if longer == 0 {
		return fmt.Sprintf(", or over %s shorter: ask; the sticks give no more.", s.units.Cut(most))
	}
	return fmt.Sprintf(": longer. Over %s longer or %s shorter: ask.", s.units.Cut(longer), s.units.Cut(most))
}

// trialPiece returns the ridge piece that is tried first, and how many others wait for it.
func trialPiece(bars []stock.Bar) (trial stock.Piece, others int, ok bool) {
	for _, bar := range bars {
		for _, p := range bar.Pieces {
			switch {
			case p.ID.Trial():
				trial, ok = p, true
			case p.ID.Ridge():
				others++
			}
		}
	}
	return trial, others, ok
}

// ridgeAlike reports whether all ridge pieces are to be as long as the first, as lengths are printed.
func ridgeAlike(bars []stock.Bar, u measure.System) bool {
	trial, _, _ := trialPiece(bars)
	return !slices.ContainsFunc(bars, func(b stock.Bar) bool {
		return slices.ContainsFunc(b.Pieces, func(p stock.Piece) bool { return p.ID.Ridge() && u.Cut(p.Length) != u.Cut(trial.Length) })
	})
}

// byHand says how long bars take at a hacksaw, where nobody saws them for the buyer: it is on no day of the run sheet.
func byHand(bars []stock.Bar, u measure.System) string {
	of, ok := catalog.FindBar(bars[0].Item)
	if !ok {
		return " or before the building"
	}
	cuts := 0
	for _, b := range bars {
		cuts += b.Cuts(u)
	}
	long := say.Count(int(math.Ceil(practice.MinutesSawn(of.Diameter)*float64(cuts)/60)), "hour")
	return fmt.Sprintf(", or before the building by hand: %s", long)
}

// drawnCuts draws every pattern of cuts, material by material, to one scale each.
func (s sawing) drawnCuts() (blocks []block.Block) {
	_, others, _ := trialPiece(s.plan.Cuts.Bars)
	for i, p := range s.list {
		item := p.bars[0].Item
		sawn := slices.DeleteFunc(slices.Clone(s.plan.Cuts.Bars), func(b stock.Bar) bool { return b.Item != item || b.Whole() })
		scale := draw.StickScale(draw.Scales(s.units), sawn, s.width)
		if i == 0 || item != s.list[i-1].bars[0].Item {
			before := ""
			if p.bars[0].Steel() { // the first stake is driven before the pipe is cut
				before = ", yard-sawn" + byHand(sawn, s.units)
			}
			blocks = append(blocks, block.Heading(fmt.Sprintf("%s (1:%g)%s", item, scale.Ratio, before)))
		}
		c := newCutPicture(p, s.units, p.bars[0].Offcut >= s.plan.Cuts.Useful(item), others > 0)
		c.stick.Fresh, c.stick.Blank, c.scale = s.fresh(p), ridgeAlike(s.plan.Cuts.Bars, s.units), scale
		blocks = append(blocks, block.Block{Name: fmt.Sprintf("cut %d", p.number), Gap: 1.4, Body: c, Facts: p.facts(c)})
	}
	return blocks
}
