package block

import (
	"math"
	"strings"
	"testing"

	"hoopwright/draw/paper"
)

// elastic is a body that grows up to a height.
type elastic struct{ high, most paper.Length }

func (e elastic) Height(paper.Length) paper.Length             { return e.high }
func (e elastic) Most(paper.Length) paper.Length               { return e.most }
func (e elastic) Draw(*paper.Page, paper.Rect) (miss []string) { return nil }

// What a side has left over is shared out evenly, by hand; whoever needs less than a share leaves the rest of it to the others.
func TestLeftOverIsShared(t *testing.T) {
	for _, c := range []struct {
		box  paper.Length
		most []paper.Length // of blocks that need 10 each
		want []paper.Length
	}{
		{60, []paper.Length{110, 110, 110}, []paper.Length{20, 20, 20}},
		{60, []paper.Length{15, 110, 110}, []paper.Length{15, 22.5, 22.5}},
		{60, []paper.Length{12, 19, 110}, []paper.Length{12, 19, 29}},
		{60, []paper.Length{10, 12, 13}, []paper.Length{10, 12, 13}},
		{30, []paper.Length{110, 110, 110}, []paper.Length{10, 10, 10}},
	} {
		var set []Block
		for _, m := range c.most {
			set = append(set, Block{Body: elastic{10, m}})
		}
		for i, h := range grown(set, paper.Rect{W: 100, H: c.box}) {
			if math.Abs(float64(h-c.want[i])) > 1e-9 {
				t.Errorf("%v high, at most %v: block %d is %v, want %v", c.box, c.most, i, h, c.want[i])
			}
		}
	}
}

// Lines to write on fill the box's width to its right edge, 3 mm apart behind their words, and share what words leave.
func TestLinesToWriteOn(t *testing.T) {
	for _, blanks := range [][]Blank{{{Word: "by"}}, {{Word: "by", Share: 2}, {Word: "at"}}, {{Word: "name", Share: 3}, {Word: "by"}, {Word: "at", Share: .5}}} {
		page, box := &paper.Page{}, paper.Rect{X: 20, Y: 30, W: 150, H: 8}
		drawBlanks(page, box, blanks)
		per, before, n := paper.Length(0), box.X-3, 0
		for _, op := range page.Ops {
			switch op := op.(type) {
			case paper.Text:
				if math.Abs(float64(op.At.X-before-3)) > 1e-9 || op.String != blanks[n].Word {
					t.Errorf("%q at %v after a line that ends at %v", op.String, op.At.X, before)
				}
			case paper.Stroke:
				from, to := op.Path[0].To, op.Path[1].To
				long := (to.X - from.X) / paper.Length(blanks[n].share())
				if per == 0 {
					per = long
				}
				if math.Abs(float64(long-per)) > 1e-9 || long <= 0 {
					t.Errorf("line %d is %v by its share, the first %v", n, long, per)
				}
				before = to.X
				n++
			}
		}
		if n != len(blanks) || math.Abs(float64(before-box.Right())) > 1e-9 {
			t.Errorf("%d lines of %d end at %v of %v", n, len(blanks), before, box.Right())
		}
	}
}

// Words part between lines, two at least on each side, wherever there is room for two and two are left.
func TestWordsPartByTwoLines(t *testing.T) {
	for n := 1; n < 9; n++ {
		w := Words{Text: strings.TrimSpace(strings.Repeat("a line\n", n))}
		line := w.Height(100) / paper.Length(n)
		for room := 0; room <= n; room++ {
			first, rest, ok := w.Split(100, line*paper.Length(room)+line/2)
			want := min(room, n-2)
			if ok != (want >= 2) {
				t.Errorf("%d lines, room for %d: parted %v", n, room, ok)
			}
			if ok && (first.(Words).Text != strings.TrimSpace(strings.Repeat("a line\n", want)) || rest.(Words).Text != strings.TrimSpace(strings.Repeat("a line\n", n-want))) {
				t.Errorf("%d lines, room for %d: %q and %q", n, room, first, rest)
			}
		}
	}
}
