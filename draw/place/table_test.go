package place

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"hoopwright/draw/paper"
)

func wordsOf(rows []Row) (words []string) {
	for _, r := range rows {
		words = append(words, strings.Fields(r.Heading+" "+strings.Join(r.Cells, " ")+" "+r.Note)...)
	}
	return words
}

// Long tables over many sheets: every word and every tick box of every row comes out once, inside the area, with no text on another or on a rule.
func TestTableGoesOn(t *testing.T) {
	for seed := range uint64(4) {
		rnd := rand.New(rand.NewPCG(seed, 3))
		table := Table{Columns: []Column{{Head: "Stake", Lettering: paper.Cell}, {Head: "Distance from the zero", Lettering: paper.Cell, Align: paper.AtRight},
			{Head: "Done", Tick: true}, {Head: "Remarks"}}}
		var rows []Row
		ticks := 0
		for i := range 60 {
			if i%20 == 0 {
				rows = append(rows, Row{Heading: fmt.Sprintf("group%d of stakes", i)})
			}
			note := ""
			for k := range rnd.IntN(30) {
				note += fmt.Sprintf("w%d.%d ", i, k)
			}
			row := Row{Cells: []string{fmt.Sprintf("L%d", i), fmt.Sprintf("%d′-6 1/2″", i), "", note}}
			if i%3 == 0 {
				row.Note = strings.Repeat(fmt.Sprintf("under%d ", i), 1+rnd.IntN(40))
			}
			rows = append(rows, row)
			ticks++
		}
		area := paper.Rect{X: 20, Y: 30, W: 180, H: 90 + paper.Length(rnd.IntN(100))}
		fitted := table.Fitted(area.W, rows)
		want := map[string]int{}
		for _, w := range wordsOf(rows) {
			want[w]++
		}
		rest, sheets := rows, 0
		for len(rest) > 0 {
			page := sheet()
			before := len(rest)
			var used paper.Length
			used, rest = fitted.Draw(page, area, rest)
			if used <= 0 || used > area.H+1e-6 {
				t.Fatalf("seed %d: used %v of %v, %d rows before, %d left", seed, used, area.H, before, len(rest))
			}
			heads := 0
			for _, op := range page.Ops {
				switch op := op.(type) {
				case paper.Text:
					if op.String == "Stake" {
						heads++
					}
					if op.Lettering == fitted.Head {
						continue
					}
					for _, w := range strings.Fields(op.String) {
						want[w]--
					}
					for _, p := range quadOf(op) {
						if !area.Contains(p) {
							t.Errorf("seed %d: %q leaves the area", seed, op.String)
						}
					}
				case paper.Stroke:
					if op.Pen.Width == paper.Thick.Width && len(op.Path) == 5 {
						ticks--
					}
				}
			}
			if heads != 1 {
				t.Errorf("seed %d: %d heads on a sheet", seed, heads)
			}
			if f := faults(page); f != nil {
				t.Errorf("seed %d: %v", seed, f[0])
			}
			if sheets++; sheets > 60 {
				t.Fatal("the table does not end")
			}
		}
		if ticks != 0 {
			t.Errorf("seed %d: %d tick boxes short", seed, ticks)
		}
		for w, n := range want {
			if n != 0 {
				t.Errorf("seed %d: %q is out by %d", seed, w, n)
			}
		}
		if sheets < 3 {
			t.Errorf("only %d sheets", sheets)
		}
	}
}

// Columns share the width exactly; a number's column is never so narrow that the number is broken.
func TestTableWidths(t *testing.T) {
	rows := []Row{{Cells: []string{"L12", "112′-11 7/8″", strings.Repeat("words of advice ", 30)}}}
	table := Table{Columns: []Column{{Head: "Stake"}, {Head: "Run", Lettering: paper.Cell}, {Head: "Advice"}}}
	for _, width := range []paper.Length{90, 120, 183} {
		fitted := table.Fitted(width, rows)
		if w := fitted.width(); abs(w-width) > 1e-6 {
			t.Errorf("columns of %v sum to %v", width, w)
		}
		if n := len(fitted.lines(rows[0], 1)); n != 1 {
			t.Errorf("width %v: the number takes %d lines", width, n)
		}
	}
	if w := table.Fitted(20, rows).width(); abs(w-20) > 1e-6 {
		t.Errorf("too narrow a table is %v wide, want 20", w)
	}
}

// Where a column's width is given, a figure that is wider is set smaller, not broken within its fraction.
func TestTableBreaksNoFigure(t *testing.T) {
	rows := []Row{{Cells: []string{"4", "49′-6 1/2″"}}}
	at := paper.Cell.Sized(11).Width(rows[0].Cells[1]) + 2*padSide + 0.1
	table := Table{Columns: []Column{{Head: "To"}, {Head: "Tape", Lettering: paper.Cell, Width: at}}}
	if n := len(table.Fitted(60, rows).lines(rows[0], 1)); n != 1 {
		t.Errorf("the figure takes %d lines", n)
	}
}

// Too low an area for anything: the rows come back as they were.
func TestTableWithoutRoom(t *testing.T) {
	rows := []Row{{Cells: []string{"a"}}}
	page := sheet()
	used, rest := Table{Columns: []Column{{Head: "A"}}}.Draw(page, paper.Rect{W: 100, H: 3}, rows)
	if used != 0 || len(rest) != 1 || len(page.Ops) != 0 {
		t.Errorf("used %v, %d rows left, %d operations", used, len(rest), len(page.Ops))
	}
}

func TestTableFitsWhatItSays(t *testing.T) {
	var rows []Row
	for i := range 40 {
		rows = append(rows, Row{Cells: []string{fmt.Sprint(i), "text"}})
	}
	table := Table{Columns: []Column{{Head: "No."}, {Head: "What"}}}
	n := table.Fits(100, 100, rows)
	_, rest := table.Draw(sheet(), paper.Rect{W: 100, H: 100}, rows)
	if len(rows)-len(rest) != n || n < 5 {
		t.Errorf("Fits says %d, Draw set %d", n, len(rows)-len(rest))
	}
	h := table.Height(100, rows)
	if _, rest := table.Draw(sheet(), paper.Rect{W: 100, H: h + 1e-6}, rows); len(rest) != 0 {
		t.Errorf("%d rows do not fit the height the table gives itself", len(rest))
	}
	if _, rest := table.Draw(sheet(), paper.Rect{W: 100, H: h - 0.1}, rows); len(rest) == 0 {
		t.Error("Height is too generous")
	}
}
