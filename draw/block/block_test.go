package block

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
)

// brick is a body of a fixed height.
type brick struct {
	high paper.Length
	log  *[]paper.Rect
}

func (b brick) Height(paper.Length) paper.Length { return b.high }
func (b brick) Draw(_ *paper.Page, box paper.Rect) []string {
	*b.log = append(*b.log, box)
	return nil
}

func names(blocks []Block) string {
	var list []string
	for _, b := range blocks {
		list = append(list, b.Name)
	}
	return strings.Join(list, " ")
}

// Room is given by rank: what is May goes first to a shorter form, then to the next side; Should and Must are shortened before anything is split.
func TestRanksGiveWayInOrder(t *testing.T) {
	var log []paper.Rect
	b := func(name string, rank Rank, high, short paper.Length) Block {
		x := Block{Name: name, Rank: rank, Body: brick{high, &log}}
		if short > 0 {
			x.Short = brick{short, &log}
		}
		return x
	}
	blocks := []Block{b("must", Must, 50, 40), b("should", Should, 30, 20), b("may", May, 20, 10)}
	for _, c := range []struct {
		room      paper.Length
		set, rest string
		heights   []paper.Length
	}{
		{100, "must should may", "", []paper.Length{50, 30, 20}},
		{95, "must should may", "", []paper.Length{50, 30, 10}},
		{80, "must should may", "", []paper.Length{50, 20, 10}},
		{70, "must should may", "", []paper.Length{40, 20, 10}},
		{65, "must should", "may", []paper.Length{40, 20}},
		{55, "must", "should may", []paper.Length{50}}, // another side is needed anyway: in full
	} {
		log = nil
		set, rest, notes := Fill(&paper.Page{}, paper.Rect{W: 100, H: c.room}, blocks)
		if names(set) != c.set || names(rest) != c.rest || len(notes) > 0 {
			t.Errorf("room %v: set %q, rest %q, notes %v; want %q and %q", c.room, names(set), names(rest), notes, c.set, c.rest)
		}
		for i, h := range c.heights {
			if log[i].H != h {
				t.Errorf("room %v: block %d is %v high, want %v", c.room, i, log[i].H, h)
			}
		}
	}
}

// A heading does not end a side, and a block that no side can hold is noted, not dropped.
func TestHeadingsKeepAndGiantsAreNoted(t *testing.T) {
	var log []paper.Rect
	blocks := []Block{{Name: "a", Body: brick{40, &log}}, {Name: "head", Keep: true, Body: brick{10, &log}}, {Name: "b", Body: brick{30, &log}}, {Name: "giant", Body: brick{500, &log}}}
	set, rest, notes := Fill(&paper.Page{}, paper.Rect{W: 100, H: 60}, blocks)
	if names(set) != "a" || names(rest) != "head b" || len(notes) != 1 || notes[0].Block != "giant" {
		t.Errorf("set %q, rest %q, notes %v", names(set), names(rest), notes)
	}
}

// Whatever is thrown at it, Fill sets every block once or returns it or notes it, in order, within the box and without overlap, and always goes on.
func TestNothingIsLostBetweenSides(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 14))
	for trial := range 400 {
		var log []paper.Rect
		var blocks []Block
		for i := range 1 + r.IntN(14) {
			b := Block{Name: fmt.Sprint(i), Rank: Rank(r.IntN(3)), Gap: paper.Length(r.IntN(5)), Keep: r.IntN(4) == 0, Body: brick{paper.Length(5 + r.IntN(70)), &log}}
			if r.IntN(3) == 0 {
				b.Short = brick{b.Body.Height(0) / 2, &log}
			}
			blocks = append(blocks, b)
		}
		seen := map[string]int{}
		for side, left := 0, blocks; len(left) > 0; side++ {
			if side > 40 {
				t.Fatalf("trial %d does not end", trial)
			}
			log = nil
			set, rest, notes := Fill(&paper.Page{}, paper.Rect{X: 8, Y: 22, W: 100, H: 60}, left)
			for _, b := range set {
				seen[b.Name]++
			}
			for _, n := range notes {
				seen[n.Block]++
			}
			bottom := paper.Length(22)
			for _, box := range log {
				if box.Y < bottom-hair || box.Bottom() > 82+hair {
					t.Fatalf("trial %d: a block from %v to %v, the one before ends at %v", trial, box.Y, box.Bottom(), bottom)
				}
				bottom = box.Bottom()
			}
			left = rest
		}
		for _, b := range blocks {
			if seen[b.Name] != 1 {
				t.Fatalf("trial %d: block %s is set or noted %d times", trial, b.Name, seen[b.Name])
			}
		}
	}
}

// A table that goes on keeps its rows, under its head and its heading.
func TestTablesSplit(t *testing.T) {
	tab := Table{Table: place.Table{Columns: []place.Column{{Head: "Stake"}, {Head: "From zero"}}}}
	tab.Rows = append(tab.Rows, place.Row{Heading: "Left row"})
	for i := range 20 {
		tab.Rows = append(tab.Rows, place.Row{Cells: []string{fmt.Sprintf("L%d", i+1), "4 ft 6 in"}})
	}
	first, rest, ok := tab.Split(100, 80)
	if !ok {
		t.Fatal("does not split")
	}
	a, b := first.(Table), rest.(Table)
	if got := len(a.Rows) + len(b.Rows); got != len(tab.Rows)+1 || b.Rows[0].Heading != "Left row" {
		t.Errorf("%d rows and %d, the second part under %q", len(a.Rows), len(b.Rows), b.Rows[0].Heading)
	}
	if h := first.Height(100); h > 80 {
		t.Errorf("the first part is %v high", h)
	}
}

// Running text keeps its words through wrapping and splitting, and its figures stay figures.
func TestWordsKeepTheirText(t *testing.T) {
	text := "Pull " + Figure("6.6 lb") + " at " + Figure("24 in") + ", away from the walk: it moves less than " + Figure("1 in") + " (and springs back). Then drive the others one by one, left before right."
	w := Words{Text: text}
	for width := paper.Length(30); width < 200; width += 7 {
		page := &paper.Page{}
		w.Draw(page, paper.Rect{W: width, H: 200})
		var got []string
		for _, op := range page.Ops {
			s := op.(paper.Text)
			if s.At.X < -hair || s.At.X+s.Lettering.Width(s.String) > width+0.1 {
				t.Errorf("width %v: %q reaches from %v to %v", width, s.String, s.At.X, s.At.X+s.Lettering.Width(s.String))
			}
			got = append(got, s.String)
		}
		if flat := strings.ReplaceAll(strings.Join(got, ""), " ", ""); flat != strings.ReplaceAll(plain(text), " ", "") {
			t.Errorf("width %v: %q", width, flat)
		}
		if first, rest, ok := w.Split(width, w.Height(width)*0.6); ok {
			joined := first.(Words).Text + " " + rest.(Words).Text
			if strings.Join(strings.Fields(joined), " ") != text {
				t.Errorf("width %v: split and joined it reads %q", width, joined)
			}
		}
	}
}

// plain takes the marks of figures out again: for a table's cell, a label, a test.
func plain(s string) string { return strings.NewReplacer(figureOn, "", figureOff, "").Replace(s) }

// Blocks set more closely need less height, keep their words and their figures, and are not set closer twice.
func TestTight(t *testing.T) {
	text := Words{Text: strings.Repeat("Pull the line tight and leave it there. ", 12)}
	blocks := []Block{Heading("Mark"), {Gap: 4, Body: text}, {Gap: 3, Body: Step{Number: 1, Text: text.Text}},
		{Gap: 3, Body: Framed{Blocks: []Block{{Body: text}, {Gap: 3, Body: text}}}}, {Gap: 3, Body: Columns{Cols: []Column{{Share: 1, Blocks: []Block{{Body: text}}}}}}}
	const width = 120
	was := Height(blocks, width)
	for _, tight := range []Tightness{Close, Tightest} {
		closer := Tight(blocks, tight)
		now := Height(closer, width)
		if now >= was {
			t.Errorf("tightness %d takes %v, no less than %v", tight, now, was)
		}
		if again := Height(Tight(closer, tight), width); again != now {
			t.Errorf("tightness %d set again takes %v, not %v", tight, again, now)
		}
		was = now
	}
	if n := Height(Tight(blocks, Loose), width); n != Height(blocks, width) {
		t.Errorf("set loosely the blocks take %v", n)
	}
}
