package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
	"hoopwright/layout/stock"
)

// sawing is the person at the saw's side: what is said aloud, the sticks that stay whole, how one is cut, the hold of the ridge, each pattern of cuts drawn
// once.
func (b *binder) sawing() []block.Block {
	list := patterns(b.plan.Cuts.Bars)
	if len(list) == 0 {
		return b.wholeSticks()
	}
	return slices.Concat(b.sawAloud(list), b.wholeSticks(), b.eachStick(list), b.ridgeHold(), b.drawnCuts(list), []block.Block{
		{Name: "stop and ask", Gap: 2, Body: block.Words{Text: "Cut short: write its length on it, new stick, tell. Never heat, stretch or splice pipe."}}})
}

// sawAloud is what is said before the saw starts.
func (b *binder) sawAloud(list []pattern) []block.Block {
	lines := []string{"Eye protection on everyone near. Nobody under 16 saws.", "Clamp the stick on trestles, hands a forearm from the blade. Mask, ears covered.", "Outdoors over the tarp: bin the dust."}
	if slices.ContainsFunc(list, func(p pattern) bool { return p.bars[0].Steel() }) {
		lines = append(lines, "Steel: gloves on, sparks away from pipe and people. Cut ends are hot.")
	}
	columns := block.Columns{Gap: 3, Cols: []block.Column{{Share: 1, Blocks: []block.Block{{Body: block.Words{Text: "Say aloud: " + strings.Join(lines, " ")}}}},
		{Width: 38, Blocks: []block.Block{{Body: block.Blanks{{Word: "Heard by"}}}}}}}
	return []block.Block{{Name: "said aloud", Body: block.Framed{Blocks: []block.Block{{Body: columns}}}}}
}

// wholeSticks lists the sticks that need no cut, a line for each length.
func (b *binder) wholeSticks() []block.Block {
	u := b.spec.Units
	then := fmt.Sprintf("Then step %d.", lastCutStep)
	if len(patterns(b.plan.Cuts.Bars)) == 0 {
		then = b.naming()
	}
	var list []block.Block
	for _, lot := range wholeLots(b.plan.Cuts.Bars) {
		var pieces []stock.Piece
		for _, bar := range lot {
			pieces = append(pieces, bar.Pieces...)
		}
		size, limit := u.Cut(lot[0].Stock), plusMinus(practice.AsSold(u), u)
		list = append(list, block.Block{Name: "whole sticks", Gap: 1.5, Body: block.Step{Text: fmt.Sprintf("No cut: %s of %s: %s. Each %s, %s. Long: trim. Short: take another. %s",
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
func (b *binder) eachStick(list []pattern) []block.Block {
	u, kerf := b.spec.Units, b.spec.Stock.Kerf
	first := "Better end left. Put aside what is cracked, crushed, another size."
	if trim := b.spec.Stock.Trim; trim > 0 {
		first += fmt.Sprintf(" The first mark, %s, trims that end: cut left of it, there only.", u.Cut(trim))
	}
	counts := "Figures allow nothing for the blade."
	if kerf > 0 {
		counts = fmt.Sprintf("Figures count the blade, %s.", u.Cut(kerf))
	}
	limit := plusMinus(u.Grid(), u)
	steps := [lastCutStep]string{
		first,
		"Hook one tape on the left end, once. " + b.whatToMark(list) + " " + counts,
		"Cut right of the mark: it stays on the piece.",
		fmt.Sprintf("Measure the first: %s. Not within: mark one by one.", block.Figure(limit)),
		"Scrape off every burr, inside too. " + b.naming() + " Tick the stick.",
	}
	var blocks []block.Block
	for i, s := range steps {
		blocks = append(blocks, block.Block{Name: "each stick", Gap: 0.3, Body: block.Step{Number: i + 1, Text: s, NoTick: true}})
	}
	pipe := b.pipeOf(list[0].bars[0].Item)
	picture := draw.SawCut{OD: pipe, Kerf: kerf}
	columns := block.Columns{Gap: 4, Cols: []block.Column{{Share: 1, Blocks: blocks}, {Width: draw.SawCutWidth, Blocks: []block.Block{{Name: "mark and blade", Body: block.Picture{Least: picture.Height(), Paint: picture.Draw}}}}}}
	return []block.Block{{Name: "each stick", Rank: block.Should, Gap: 2, Body: columns, Short: block.Words{Text: strings.Join(steps[:], " ")}, Facts: []block.Fact{{What: "limit of a cut", Value: limit}, {What: "blade's width", Value: u.Cut(kerf)}, {What: "trim", Value: u.Cut(b.spec.Stock.Trim)},
		{What: "socket depth of a leg", Value: u.Cut(b.spec.Arch.Pipe.Socket)}}}}
}

// lastCutStep is the step at which a stick is named.
const lastCutStep = 5

// whatToMark says which figures are marked at once: those of ridge pieces that wait may change.
func (b *binder) whatToMark(list []pattern) string {
	if _, others, ok := trialPiece(b.plan.Cuts.Bars); !ok || others == 0 {
		return "Mark every figure."
	}
	const late = "after the hold, one at a time, from the fresh end."
	for _, p := range list {
		if slices.ContainsFunc(p.bars[0].Pieces, func(piece stock.Piece) bool { return !piece.ID.Ridge() }) {
			return "Mark all but the ridge: that " + late
		}
	}
	return "Mark the ridge " + late
}

// naming says what is written on a stick: its name, which way it points, and how far it goes into a fitting.
func (b *binder) naming() string {
	u := b.spec.Units
	words := "Name both ends" + b.arrows() + "."
	if depth := b.spec.Arch.Pipe.Socket; depth > 0 {
		words += fmt.Sprintf(" Line %s from each end for a fitting", u.Cut(depth))
		if r := b.spec.Ridge; r.Present && u.Cut(r.Pipe.Socket) != u.Cut(depth) {
			words += fmt.Sprintf(", %s on the ridge", u.Cut(r.Pipe.Socket))
		}
		words += "."
	}
	return words
}

// arrows says which way a name points, on what has an end that counts.
func (b *binder) arrows() string {
	for _, g := range alike(b.plan.Stock.Pieces) {
		if g.sort.Part.IsLeg() && !g.sort.Steel {
			return ", legs with an arrow to the crown"
		}
	}
	return ""
}

// pipeOf returns the outside diameter of a material.
func (b *binder) pipeOf(item string) measure.Length {
	if b.spec.Ridge.Present && item == b.spec.Ridge.Pipe.Name {
		return b.spec.Ridge.Pipe.OD
	}
	return b.spec.Arch.Pipe.OD
}

// ridgeHold is the trial of the first ridge piece, which the others wait for.
func (b *binder) ridgeHold() []block.Block {
	trial, others, ok := trialPiece(b.plan.Cuts.Bars)
	if !ok {
		return nil
	}
	u := b.spec.Units
	cut, limit := u.Cut(trial.Length), plusMinus(u.Grid(), u)
	title := "HOLD: legs first, then ridge 1 alone; the others wait"
	rest := "Too wide: all others shorter by as much. Too near: longer" + b.longest() + "."
	sign := []block.Blank{{Word: "All other ridge pieces: + / −"}, {Word: "Signed"}}
	if others == 0 {
		title = "HOLD: legs first, then ridge 1"
		rest, sign = "Too wide: trim it by as much. Too near: cut a longer one.", []block.Blank{{Word: "Signed"}}
	}
	beside := func(step block.Step, word string) block.Block {
		return block.Block{Gap: 0.5, Body: block.Columns{Gap: 3, Cols: []block.Column{{Share: 1, Blocks: []block.Block{{Body: step}}}, {Width: 40, Blocks: []block.Block{{Body: block.Blanks{{Word: word}}}}}}}}
	}
	inside := []block.Block{
		{Body: block.Words{Text: title, Lettering: paper.Strong}},
		beside(block.Step{Text: fmt.Sprintf("Cut ridge 1 to %s, %s.", block.Figure(cut), limit)}, "as cut"),
		beside(block.Step{Text: fmt.Sprintf("The raising crew tries it in bay 1 (leaf %d). ", leafNumber("raise")) + rest}, "off by"),
		{Body: block.Blanks(sign)},
	}
	return []block.Block{{Name: "hold of the first ridge piece", Gap: 2.5, Body: block.Framed{Blocks: inside}, Facts: []block.Fact{
		{What: "ridge piece, bay 1", Value: cut}, {What: "limit of the first ridge piece", Value: limit}, {What: "how much longer ridge pieces may be", Value: b.longest()}}}}
}

// longest says by how much a ridge piece may be cut longer before its stick no longer gives it.
func (b *binder) longest() string {
	grid := b.spec.Units.Grid()
	room := measure.Length(int(b.plan.Cuts.RidgeRoom()/grid)) * grid
	if room <= 0 {
		return ": ask, the sticks give no more"
	}
	return ", up to " + b.spec.Units.Cut(room) + "; more: ask"
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

// drawnCuts draws every pattern of cuts, material by material, to one scale each.
func (b *binder) drawnCuts(list []pattern) []block.Block {
	u := b.spec.Units
	_, others, _ := trialPiece(b.plan.Cuts.Bars)
	var blocks []block.Block
	for i, p := range list {
		item := p.bars[0].Item
		scale := draw.StickScale(draw.Scales(u), barsOf(list, item), b.bodyWidth())
		useful := b.plan.Cuts.Useful(item)
		if i == 0 || item != list[i-1].bars[0].Item {
			heading := block.Heading(fmt.Sprintf("%s (1:%g)", item, scale.Ratio))
			heading.Facts = []block.Fact{{What: "scale of the cuts, " + item, Value: heading.Name}}
			blocks = append(blocks, heading)
		}
		blocks = append(blocks, block.Block{Name: fmt.Sprintf("cut %d", p.number), Gap: 1.4, Body: b.cutPicture(p, scale, useful, others > 0), Facts: p.facts(u, p.bars[0].Offcut >= useful)})
	}
	return blocks
}

// barsOf picks a bar of each pattern of a material.
func barsOf(list []pattern, item string) []stock.Bar {
	var bars []stock.Bar
	for _, p := range list {
		if p.bars[0].Item == item {
			bars = append(bars, p.bars[0])
		}
	}
	return bars
}
