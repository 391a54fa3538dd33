package place

import (
	"cmp"
	"slices"
	"strings"

	"hoopwright/draw/paper"
)

// Table is a ruled table that can go on over several sheets, its head repeated on each.
type Table struct {
	Columns []Column
	Head    paper.Lettering // of column heads; zero: bold 11 pt
	RowMin  paper.Length    // least height of a row: room to write in
}

// Column is one column of a table.
type Column struct {
	Head      string
	Width     paper.Length // zero: from its contents, see Table.Fitted
	Align     paper.Align
	Lettering paper.Lettering // zero: body text
	Tick      bool            // a tick box in each row that has no text here
	Boxes     int             // how many tick boxes stand side by side; 0 stands for 1
}

// Row is one row of a table. Cells that are missing are left blank to be written in.
type Row struct {
	Cells   []string
	Heading string // where given, the row is this one line across the table, and stays with the row after it
	Total   bool   // a thick rule above: the row sums up
	Note    string // set small under the row's cells, from the second column to the right side
}

// Room in a table.
const (
	padSide    paper.Length = 1.8 // left and right of a cell's text
	padAbove   paper.Length = 1.2 // above its capitals and below its descenders
	tickMargin paper.Length = 0.6 // above and below a tick box
	noteCloser paper.Length = 0.8 // of the room above a note that is left out
)

// Fitted returns the table with every column's width set for the total width: a column without one gets what its longest cell needs where that is
// no more than an even share, and columns of running text share what is left by their need, down to their longest word; a column too narrow for that is set smaller. Fit the table once for
// all its rows, so that its columns agree from sheet to sheet.
func (t Table) Fitted(width paper.Length, rows []Row) Table {
	t = t.styled()
	left := width
	var open []int
	need := make([]paper.Length, len(t.Columns))
	least := make([]paper.Length, len(t.Columns))
	for i, c := range t.Columns {
		if c.Width > 0 {
			left -= c.Width
			continue
		}
		open = append(open, i)
		least[i] = longestWord(c.Head, t.Head)
		need[i] = least[i]
		if c.Tick {
			least[i] = max(least[i], paper.TickBoxSide)
		}
		for _, r := range rows {
			if i < len(r.Cells) {
				least[i] = max(least[i], longestWord(r.Cells[i], c.Lettering))
				need[i] = max(need[i], c.Lettering.Widest(strings.Split(r.Cells[i], "\n")))
			}
		}
		least[i] += 2*padSide + 0.1
		need[i] = max(need[i]+2*padSide+0.1, least[i])
	}
	// Columns that ask for no more than an even share get what they ask for; that leaves more for the others.
	for len(open) > 1 {
		k := slices.IndexFunc(open, func(i int) bool { return need[i] <= left/paper.Length(len(open)) })
		if k < 0 {
			break
		}
		t.Columns[open[k]].Width = need[open[k]]
		left -= need[open[k]]
		open = slices.Delete(open, k, k+1)
	}
	t.shared(open, left, need, least)
	for i := range t.Columns {
		t.Columns[i].unbroken(i, rows)
	}
	return t
}

// shared shares what is left of the width among columns by what they need, down to the least.
func (t Table) shared(open []int, left paper.Length, need, least []paper.Length) {
	sumNeed, sumLeast := paper.Length(0), paper.Length(0)
	for _, i := range open {
		sumNeed += need[i]
		sumLeast += least[i]
	}
	for _, i := range open {
		switch c := &t.Columns[i]; {
		case sumNeed <= left: // room to spare
			c.Width = need[i] * left / sumNeed
		case sumLeast < left: // what is left over the longest words goes where it is wanted
			c.Width = least[i] + (need[i]-least[i])*(left-sumLeast)/(sumNeed-sumLeast)
		default:
			c.Width = max(1, left) * least[i] / sumLeast
		}
	}
}

// unbroken sets a column smaller, down to the least that is read at arm's length, where a word of its cells, as a figure with its fraction, would be broken.
func (c *Column) unbroken(at int, rows []Row) {
	for _, r := range rows {
		for at < len(r.Cells) && c.Lettering.Size > paper.Floor.Size && longestWord(r.Cells[at], c.Lettering) > c.Width-2*padSide {
			c.Lettering.Size--
		}
	}
}

// styled returns the table with lettering filled in, its columns its own.
func (t Table) styled() Table {
	t.Head = cmp.Or(t.Head, paper.Strong.Sized(11))
	t.Columns = slices.Clone(t.Columns)
	for i := range t.Columns {
		t.Columns[i].Lettering = cmp.Or(t.Columns[i].Lettering, paper.Body)
	}
	return t
}

func longestWord(s string, l paper.Lettering) paper.Length {
	return l.Widest(paper.Words(s))
}

// Draw draws the head and as many rows as fit in the area, and returns the height used and the rows left over. Nothing is drawn and 0 is used where the area is too low
// for the head and a row.
func (t Table) Draw(page *paper.Page, within paper.Rect, rows []Row) (used paper.Length, rest []Row) {
	t = t.Fitted(within.W, rows)
	n := t.Fits(within.W, within.H, rows)
	if n == 0 {
		return 0, rows
	}
	y := t.drawHead(page, within.X, within.Y)
	for _, r := range rows[:n] {
		y = t.drawRow(page, within.X, y, r)
	}
	return y - within.Y, rows[n:]
}

// Fits returns how many of the rows one sheet's area of that height holds under the head.
func (t Table) Fits(width, height paper.Length, rows []Row) (n int) {
	t = t.Fitted(width, rows)
	h, most := paper.Length(0), height-t.headHeight()
	for n < len(rows) && h+t.rowHeight(rows[n]) <= most {
		h += t.rowHeight(rows[n])
		n++
	}
	for n > 0 && n < len(rows) && rows[n-1].Heading != "" { // a heading does not end a sheet
		n--
	}
	return n
}

// Height returns the height of the whole table with its head, were it on one sheet.
func (t Table) Height(width paper.Length, rows []Row) paper.Length {
	t = t.Fitted(width, rows)
	h := t.headHeight()
	for _, r := range rows {
		h += t.rowHeight(r)
	}
	return h
}
