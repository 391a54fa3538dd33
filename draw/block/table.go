package block

import (
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
)

// Table is a ruled table; its head is repeated on the next side.
type Table struct {
	place.Table
	Rows []place.Row
}

// Height implements Body.
func (t Table) Height(width paper.Length) paper.Length { return t.Table.Height(width, t.Rows) }

// Draw implements Body.
func (t Table) Draw(page *paper.Page, box paper.Rect) (missing []string) {
	box.H += 1 // what was measured fits, whatever the last bit of a sum says
	_, rest := t.Table.Draw(page, box, t.Rows)
	for _, r := range rest {
		missing = append(missing, rowName(r))
	}
	return missing
}

func rowName(r place.Row) string {
	if r.Heading != "" || len(r.Cells) == 0 {
		return r.Heading
	}
	return r.Cells[0]
}

// Split implements splitter, between rows, two at least on this side; a heading goes with its rows and is repeated over the rest of them.
func (t Table) Split(width, height paper.Length) (first, rest Body, ok bool) {
	fitted := t.Table.Fitted(width, t.Rows)
	n := fitted.Fits(width, height+hair, t.Rows)
	if n < 2 || n >= len(t.Rows) {
		return nil, nil, false
	}
	more := t.Rows[n:]
	if more[0].Heading == "" {
		for i := n - 1; i >= 0; i-- {
			if h := t.Rows[i].Heading; h != "" {
				more = append([]place.Row{{Heading: h}}, more...)
				break
			}
		}
	}
	return Table{fitted, t.Rows[:n]}, Table{fitted, more}, true
}
