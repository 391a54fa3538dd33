package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout"
	"hoopwright/layout/arch"
	"hoopwright/layout/crew"
	"hoopwright/layout/ground"
	"hoopwright/layout/lights"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
)

// atCrowns says who works at the crowns.
func (r raising) atCrowns() string {
	if r.climbs {
		return "Ladder up, Crown at its foot"
	}
	return "Ladder, from the ground"
}

// stepOf writes a task that has no picture, when all arches stand; it is empty for those that have one.
func (r raising) stepOf(t crew.Task) block.Step {
	switch t.Action {
	case crew.ScrewSockets:
		return block.Step{Text: "One screw through every socket, from the outside, " + r.atCrowns() + ".", Then: "A point stands out inside: file it flush."}
	case crew.SightAlong:
		return r.sight()
	case crew.HangDrops:
		if !r.hangs() { // else in a picture, after the rows
			return block.Step{Text: r.dropWords(t), Then: takeUp}
		}
	case crew.TryOpening:
		if !r.hangs() {
			return block.Step{Text: walkThrough(), Then: hangsIn}
		}
	}
	return block.Step{}
}

// sight has the whole looked along and the caps counted. Guys are straight and no more: between stake and ridge a leg of 1/2 in pipe bows some 6 mm a newton (a propped cantilever), and a
// guy so taut that a push of 1 to 5 N moves it an inch pulls it by 17 to 85 N.
func (r raising) sight() block.Step {
	text, off, held := "Nothing leans.", "It leans: stop, ask.", heldBy(r.Plan)
	if slices.Contains(standsOn(r.Plan), "base") {
		text = "Each leg tied down through its bags’ handles. " + text
	}
	if held.guys {
		clear := "off pipe, wire"
		if len(arch.Passes(r.Plan.Spec, r.Plan.Arches)) > 0 {
			clear = "outside legs passed"
		}
		text += fmt.Sprintf(" Take guys up %s: straight, no leg bows.", clear)
		switch off = "Leans: slacken there, take up opposite."; {
		case r.onLine(): // which is what an end arch has opposite its guys
			off = "Leans: slacken there, take up opposite, guy or crown line."
		case guysOneWay(r.Plan):
			off = "Leans to its guys: slacken; away: take up."
		}
	}
	if r.tiesBay() {
		off = "Bay 1 untied last. " + off
	}
	return block.Step{Text: text + " Count caps, " + block.Figure("sign") + ".", Then: off + " Cap missing: find where."}
}

// guysOneWay reports whether all guys run toward the same end of the walk, so that none takes up what another gives.
func guysOneWay(p *layout.Plan) bool {
	var runs [2]bool // toward the entrance, toward the exit
	for _, s := range p.Stakes {
		if s.Kind() == ground.OfGuy {
			entrance := s.Way == ground.Toward || s.Way == ground.OneWay && s.Arch == 1
			runs[map[bool]int{true: 0, false: 1}[entrance]] = true
		}
	}
	return runs[0] != runs[1]
}

// uses reports whether the second arch is joined with a thing.
func (r raising) uses(thing crew.Thing) bool {
	t, _ := r.tasks.first(crew.SpringRidge, 0)
	return slices.ContainsFunc(t.Uses, func(n crew.Need) bool { return n.Thing == thing })
}

// tiesBay reports whether the first two arches are tied to each other's feet till all hold, and lined whether a line is knotted along the crowns.
func (r raising) tiesBay() bool { return r.uses(crew.StringLine) }
func (r raising) lined() bool   { return used(r.Plan, crew.CrownLine) > 0 }

// onLine reports whether the line along the crowns is all that joins the arches: what holds one hands its neighbours no push.
func (r raising) onLine() bool { return r.lined() && len(r.Plan.Ridge) == 0 }

// hangs reports whether what hangs on the arches that stand is told in pictures: rows are, and what comes after them.
func (r raising) hangs() bool { return len(r.Plan.Lights.Rows) > 0 }

// takeUp is what is done where a drop hangs too low.
const takeUp = "If not: take up slack with a tie at the pipe."

// dropWords has the drops of a task hung.
func (r raising) dropWords(t crew.Task) string {
	return fmt.Sprintf("Drops, listed below: %s. No end lower than %s above ground.", r.atCrowns(), block.Figure(r.u.Inches(figureOf(t, crew.LowestDrop).Length)))
}

// hanging are the pictures of what is hung when all arches stand, and of the walk through.
func (r raising) hanging() []panel {
	var list []panel
	if t, ok := r.tasks.first(crew.HangRows, 0); ok {
		list = append(list, r.rows(t))
	}
	if t, ok := r.tasks.first(crew.HangDrops, 0); ok {
		list = append(list, panel{action: crew.HangDrops, large: true, do: r.dropWords(t), off: takeUp, paint: func(page *paper.Page, room paper.Rect) {
			r.Dropped(page, room, r.climbs, r.Plan.Lights.Drops[0].On.Kind != lights.Ridge)
		}})
	}
	if _, ok := r.tasks.first(crew.TryOpening, 0); ok {
		list = append(list, panel{action: crew.TryOpening, large: true, do: walkThrough(), hold: true, off: hangsIn, paint: r.WalkedThrough})
	}
	return list
}

// hangsIn is what is done where the sticks touch.
const hangsIn = "Lights: tie up. Pipe touches: ask."

// walkThrough says how the opening is tried: a stick across the top of another has its two upper corners.
func walkThrough() string {
	return "Opening sticks as a T, one upright, through every arch. Nothing touches: " + block.Figure("sign") + "."
}

// rows hangs the rows of all walls.
func (r raising) rows(t crew.Task) panel {
	hangs, tie, give := r.u.Inches(figureOf(t, crew.Sag).Length), r.u.Inches(practice.ClimbTie(r.u)), r.u.Inches(practice.RowGive(r.u))
	deep := block.Figure(hangs)
	if slices.ContainsFunc(remarksOf(r.Plan.Findings), remark.settlesSag) {
		deep += fmt.Sprintf(", or as leaf %d settles: ______", leafNumber("board"))
	}
	do := fmt.Sprintf("Rows: prongs first at From arch; at a row’s end up the leg, a tie every %s. Tie at each leg’s two-knot ribbons; mid bay hangs %s, no more. Sockets where leaf %d draws them, within %s a string, counted from the start; covered, turned down.",
		block.Figure(tie), deep, leafNumber("lights"), block.Figure(give))
	if r.endsInBay() {
		do += " Two ends in a bay, not joined: tied to each other."
	}
	if slices.ContainsFunc(t.Uses, func(n crew.Need) bool { return n.Thing == crew.Stepladder }) {
		do += " High ones: " + r.atCrowns() + "."
	}
	from, to := r.Plan.Lights.Paths[0].Ends(0)
	return panel{action: crew.HangRows, large: true, do: do + r.waysOut(), off: "Tight: let out slack, never stretch. Short of its last leg: back to the leg before, tied.",
		facts: []block.Fact{{What: "sag of a row in a bay", Value: hangs}, {What: "tie of a row up a leg", Value: tie}, {What: "how far a row’s socket may be off", Value: give}},
		paint: func(page *paper.Page, room paper.Rect) { r.Rows(page, room, from, to) }}
}

// endsInBay reports whether two strings of a row end in a bay, away from its legs, and are on different runs.
func (r raising) endsInBay() bool {
	joined := map[[2]string]bool{}
	for _, c := range r.Plan.Chains {
		for i := 1; i < len(c.Strings); i++ {
			joined[[2]string{c.Strings[i-1], c.Strings[i]}] = true
		}
	}
	for i, s := range r.Plan.Strings[1:] {
		one := r.Plan.Strings[i]
		if one.Run.IsRow() && s.Run.IsRow() && one.To.At.MidBay() && !joined[[2]string{one.Name, s.Name}] {
			return true
		}
	}
	return false
}

// rowTable lists the ways that strings take along the rows, with their names in the order they are hung.
func (r raising) rowTable() []block.Block {
	if len(r.Plan.Lights.Paths) == 0 {
		return nil
	}
	var rows []place.Row
	for _, p := range r.Plan.Lights.Paths {
		from, to := p.Ends(0)
		var way []string
		for i, n := range p.Rows {
			way = append(way, fmt.Sprintf("row %d to arch %d", n, [2]int{to, from}[i%2]))
		}
		var names []numbered
		for _, s := range r.Plan.Strings {
			if slices.Contains(p.Strings, s.Name) {
				names = append(names, numbered{"S", s.Number, ""})
			}
		}
		rows = append(rows, place.Row{Cells: []string{say.Capital(p.Wall.String()), fmt.Sprint(from), strings.Join(way, ", up, "), inRanges(names)}})
	}
	table := place.Table{Columns: []place.Column{{Head: "Wall", Width: 15}, {Head: "From arch", Lettering: paper.CellSmall, Width: 24}, {Head: "Rows, 1 the lowest"}, {Head: "Strings", Lettering: paper.CellSmall, Width: 30}}}
	return []block.Block{{Name: "ways of the rows", Gap: 1.5, Body: block.Table{Table: table, Rows: rows}}}
}

// waysOut says where no rows hang: between two ways of a wall.
func (r raising) waysOut() (words string) {
	paths := r.Plan.Lights.Paths
	for _, p := range paths {
		next := 0
		for _, o := range paths {
			if o.Wall == p.Wall && o.First > p.Last && (next == 0 || o.First < next) {
				next = o.First
			}
		}
		said := fmt.Sprintf(" %s, arch %d to %d: %s, a way out.", say.Capital(p.Wall.String()), p.Last, next, block.Figure("leave open"))
		if next > 0 && !strings.Contains(words, said) {
			words += said
		}
	}
	return words
}
