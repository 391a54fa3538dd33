package place

import (
	"fmt"
	"math"

	"hoopwright/draw/paper"
)

// demoPage is an invented sheet with everything the package draws.
func demoPage() *paper.Page {
	page := sheet()
	page.Name, page.Title = "demo", "Everything once"
	b := NewBoard(page, live)
	pt := func(x, y paper.Length) paper.Point { return paper.Point{X: x, Y: y} }

	// A little plan: two rows of stakes, their names, running distances, a diagonal.
	for i := range 5 {
		y := 120 - paper.Length(i)*16
		for side, x := range []paper.Length{60, 95} {
			b.Stroke(paper.Circle(pt(x, y), 1), paper.Thick)
			b.Mark(pt(x, y), 1.4)
			_ = side
		}
	}
	b.Line(pt(60, 120), pt(95, 56), paper.Tied)
	b.Line(pt(55, 125), pt(110, 50), paper.Hidden)
	b.Along(pt(55, 125), pt(110, 50), "water line", paper.Floor)
	var stops []Stop
	for i := range 5 {
		stops = append(stops, Stop{Along: 4 + paper.Length(i)*8, Text: fmt.Sprintf("%d′-%d 1/2″", 4*i+1, i)})
	}
	b.Running(Running{Origin: pt(60, 52), Offset: 2, Stops: stops, Lettering: paper.DimSmall})
	for i := range 5 {
		y := 120 - paper.Length(i)*16
		b.Label(Label{At: pt(60, y), Text: fmt.Sprintf("L%d", i+1), Lettering: paper.StakeName, Clear: 1.4, Toward: pt(1, 0)})
		b.Label(Label{At: pt(95, y), Text: fmt.Sprintf("R%d", i+1), Lettering: paper.StakeName, Clear: 1.4, Toward: pt(1, 0)})
	}
	b.Dimension(Dimension{From: pt(60, 120), To: pt(95, 120), Offset: -12, Text: "7′-6″", Lettering: paper.Dimension})
	b.WalkArrow(pt(77, 150), pt(77, 135.5))
	b.North(pt(190, 36), math.Pi/2+0.4)

	// Dimensions of every kind.
	b.Stroke(paper.Box(paper.Rect{X: 130, Y: 60, W: 40, H: 25}), paper.Thick)
	b.Dimension(Dimension{From: pt(130, 60), To: pt(170, 60), Offset: 8, Text: "10′-3 5/8″", Lettering: paper.DimSmall})
	b.Dimension(Dimension{From: pt(170, 85), To: pt(170, 60), Offset: -8, Text: "6′-1″", Lettering: paper.DimSmall, Ends: Arrows})
	b.Dimension(Dimension{From: pt(130, 85), To: pt(134, 85), Offset: -7, Text: "12 1/2 in", Lettering: paper.DimSmall, Ends: Arrows})
	b.Dimension(Dimension{From: pt(130, 60), To: pt(170, 85), Offset: -48, Text: "6′-1″", Lettering: paper.DimSmall})
	b.Stroke(paper.Circle(pt(150, 125), 18), paper.Thick)
	b.CentreMark(pt(150, 125), 18)
	b.Label(Label{At: pt(150-18, 125), Text: "pull here\nfirst", Lettering: paper.Body, Toward: pt(-1, 1), Leader: Arrow, Pointed: true})
	hatched := paper.Polygon(pt(30, 160), pt(80, 158), pt(84, 180), pt(50, 184), pt(30, 178))
	b.Stroke(hatched, paper.Thin)
	b.Text(pt(55, 172), paper.AtMiddle, "brick path", paper.Strong)
	b.Hatch(hatched, math.Pi/4, 3)
	b.Ground(pt(95, 170), pt(195, 170))
	b.BreakLine(pt(100, 180), pt(190, 180))
	GroundBar(page, pt(20, 190), 80, paper.ImperialScales[7], 304.8, "ft")

	table := Table{Columns: []Column{
		{Head: "Stake", Lettering: paper.Cell},
		{Head: "From zero", Lettering: paper.Cell, Align: paper.AtRight},
		{Head: "Done", Tick: true, Align: paper.AtMiddle},
		{Head: "As measured", Width: 30},
		{Head: "What to look for"},
	}}
	rows := []Row{{Heading: "Left row: ribbon, one"}, {Cells: []string{"L1", "1′-0 1/2″"}}, {Cells: []string{"L2", "5′-6″", "", "", "The bar must stand plumb both ways before the last three blows."}},
		{Cells: []string{"2 stakes", "6′-6 1/2″", "–"}, Total: true}}
	table.Draw(page, paper.Rect{X: 20, Y: 217, W: 183, H: 60}, rows)
	return page
}
