package draw

import (
	"math"
	"slices"
	"strings"
	"testing"

	"hoopwright/draw/paper"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
	"hoopwright/layout/stock"
)

const inch = measure.Inch

// upper and ridge name an upper stick of a left leg and a ridge piece.
func upper(arch int) stock.PieceID {
	return stock.PieceID{Part: lights.Leg(spec.Left, arch), Stick: 2, Of: 2}
}
func ridge(bay int) stock.PieceID {
	return stock.PieceID{Part: lights.Part{Kind: lights.Ridge, Number: bay}}
}

// bar is an invented stick of 120 in cut with a kerf of 1/8 in; marks by hand: 18, then 18 1/8 + 49 7/8 = 68, then 68 1/8 + 49 7/8 = 118; 120 − 118 1/8 = 1 7/8 is left.
func bar() stock.Bar {
	return stock.Bar{Item: "pvc", Stock: 120 * inch, Offcut: 1.875 * inch, Pieces: []stock.Piece{
		{ID: upper(46), Length: 18 * inch, Mark: 18 * inch},
		{ID: ridge(4), Length: 49.875 * inch, Mark: 68 * inch},
		{ID: ridge(5), Length: 49.875 * inch, Mark: 118 * inch},
	}}
}

var room = paper.Rect{X: 20, Y: 40, W: 188, H: 200}

// drawn draws a stick and returns the page.
func drawn(s Stick, scale paper.Scale) *paper.Page {
	page := &paper.Page{Size: paper.Rect{W: 215.9, H: 279.4}}
	s.Draw(page, room, scale)
	return page
}

// upright returns the x of every upright line of the pen.
func uprights(page *paper.Page, pen paper.Pen) []float64 {
	var list []float64
	for _, op := range page.Ops {
		if s, ok := op.(paper.Stroke); ok && s.Pen.Width == pen.Width && len(s.Path) == 2 && s.Path[0].To.X == s.Path[1].To.X {
			list = append(list, float64(s.Path[0].To.X))
		}
	}
	return list
}

func texts(page *paper.Page) []string {
	var list []string
	for _, op := range page.Ops {
		if t, ok := op.(paper.Text); ok {
			list = append(list, t.String)
		}
	}
	return list
}

// Saw marks lie where a ruler at 1:24 finds them, the bar is as long, its words are the running measures, the lengths and the names.
func TestStickIsTrueToScale(t *testing.T) {
	scale := paper.Scale{Ratio: 24}
	s := Stick{Bar: bar(), Units: measure.Imperial, Under: []Span{{1, "leg upper"}, {2, "ridge 4, 5"}}}
	page := drawn(s, scale)
	zero := 20 + 4.0
	got := uprights(page, paper.Emphasis)
	for i, in := range []float64{18, 68, 118} {
		if want := zero + in*25.4/24; i >= len(got) || math.Abs(got[i]-want) > 0.1 {
			t.Errorf("mark %d: %v, want %v mm", i, got, want)
		}
	}
	outline := page.Ops[slices.IndexFunc(page.Ops, func(op paper.Op) bool {
		s, ok := op.(paper.Stroke)
		return ok && s.Pen.Width == paper.Thick.Width
	})].(paper.Stroke).Path
	if w := float64(outline[1].To.X - outline[0].To.X); math.Abs(w-120*25.4/24) > 0.1 {
		t.Errorf("the bar is %v mm long, want %v", w, 120*25.4/24)
	}
	words := texts(page)
	for _, want := range []string{"0", "18", "68", "118 in", "49 7/8 in", "leg upper", "ridge 4, 5", "waste"} {
		if !slices.Contains(words, want) {
			t.Errorf("%q is not on the drawing: %q", want, words)
		}
	}
}

// A trimmed left end has its own mark and no zero; its waste is hatched from the end on.
func TestTrimmedEndIsMarked(t *testing.T) {
	b := stock.Bar{Stock: 120 * inch, Offcut: 70.875 * inch, Pieces: []stock.Piece{{ID: ridge(1), Length: 48 * inch, Mark: 49 * inch}}}
	page := drawn(Stick{Bar: b, Units: measure.Imperial, Keep: true, Under: []Span{{1, "ridge 1"}}}, paper.Scale{Ratio: 24})
	words := texts(page)
	if slices.Contains(words, "0") || !slices.Contains(words, "1") || !slices.Contains(words, "49 in") {
		t.Errorf("%q, want marks at 1 and 49 in", words)
	}
	if !slices.Contains(words, "keep") || !slices.Contains(words, "70 7/8 in") {
		t.Errorf("%q does not say what is kept", words)
	}
	if got := uprights(page, paper.Emphasis); len(got) != 2 || math.Abs(got[0]-24-25.4/24) > 0.1 {
		t.Errorf("marks at %v", got)
	}
}

// Many short pieces: every running measure is on the drawing once, none on another, none on the bar, and all of it within the height the stick says it takes.
func TestCrowdedStick(t *testing.T) {
	b := stock.Bar{Stock: 3000, Offcut: 87}
	for i := range 18 {
		b.Pieces = append(b.Pieces, stock.Piece{ID: upper(i + 1), Length: 155, Mark: measure.Length(i+1)*158 - 3})
	}
	scale := StickScale(paper.MetricScales, []stock.Bar{b}, room.W)
	s := Stick{Bar: b, Units: measure.Metric, Under: []Span{{1, "leg upper L1"}, {17, "17 × leg upper"}}}
	page := drawn(s, scale)
	words := strings.Join(texts(page), "|")
	for _, p := range b.Pieces {
		if want := measure.Metric.BareCut(p.Mark); strings.Count("|"+words+"|", "|"+want+"|")+strings.Count("|"+words+"|", "|"+want+" mm|") != 1 {
			t.Errorf("%q is not there once: %s", want, words)
		}
	}
	if !strings.Contains(words, "leg upper L1, 155 mm") {
		t.Errorf("no length at the piece too short to hold it: %s", words)
	}
	foot := room.Y + s.Height(scale, room.W)
	for _, op := range page.Ops {
		if x, ok := op.(paper.Text); ok {
			up, down := x.Lettering.Extent(x.String)
			if x.At.Y+down > foot+0.01 || x.At.Y-max(up, 0) < room.Y-0.01 && x.Angle == 0 {
				t.Errorf("%q at %v leaves %v to %v", x.String, x.At, room.Y, foot)
			}
		}
	}
}

// Figures that crowd are moved apart and led to, upright, clear of each other and no farther than they may; the words of short pieces beside a long one stand in one line.
func TestFiguresMovedApart(t *testing.T) {
	b := stock.Bar{Stock: 120 * inch, Offcut: 5 * inch}
	for i := range 4 {
		b.Pieces = append(b.Pieces, stock.Piece{ID: upper(i + 1), Length: 10 * inch, Mark: measure.Length(i+1) * 10.125 * inch})
	}
	b.Pieces = append(b.Pieces, stock.Piece{ID: ridge(1), Length: 74.5 * inch, Mark: 115 * inch})
	s := Stick{Bar: b, Units: measure.Imperial, Under: []Span{{4, "leg upper L1 to L40, R1 to R40 odd only"}, {1, "ridge 1"}}}
	scale := paper.Scale{Ratio: 24}
	f := s.figures(scale)
	if !f.led || len(f.at) != len(f.marks) {
		t.Fatalf("%d figures for %d marks, led to: %v", len(f.at), len(f.marks), f.led)
	}
	for i, m := range f.marks {
		if far := math.Abs(float64(f.at[i] - m.x)); far > float64(leadMost) {
			t.Errorf("%s is moved %v mm", m.text, far)
		}
		if i > 0 && f.at[i]-m.figures/2 < f.at[i-1]+f.marks[i-1].figures/2+numberGap-0.11 {
			t.Errorf("%s stands on the one before", m.text)
		}
	}
	for _, op := range drawn(s, scale).Ops {
		if x, ok := op.(paper.Text); ok && x.Angle != 0 {
			t.Errorf("%q is turned", x.String)
		}
	}
	if u := s.under(scale, room.W); len(u.list) != 1 || len(u.list[0].lines) != 1 || u.list[0].led {
		t.Errorf("under it: %+v", u.list)
	}
}

// A blade of 1/8 in on a half-inch pipe of 0.84 in, at half size: 1.5875 mm of black across 10.668 mm, right of the mark.
func TestSawCutIsHalfSize(t *testing.T) {
	page := &paper.Page{}
	SawCut{OD: 0.84 * inch, Kerf: inch / 8}.Draw(page, room)
	mark := uprights(page, paper.Emphasis)[0]
	blade := page.Ops[slices.IndexFunc(page.Ops, func(op paper.Op) bool { _, ok := op.(paper.Fill); return ok })].(paper.Fill).Path
	w, h := float64(blade[2].To.X-blade[0].To.X), float64(blade[2].To.Y-blade[0].To.Y)
	if math.Abs(w-1.5875) > 0.01 || math.Abs(h-10.668) > 0.01 || math.Abs(float64(blade[0].To.X)-mark) > 0.01 {
		t.Errorf("blade %v by %v mm at %v, mark at %v", w, h, blade[0].To.X, mark)
	}
}
