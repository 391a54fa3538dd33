package block

import "hoopwright/draw/paper"

// Framed is blocks under one another in a heavy frame: a stop box, a warning.
type Framed struct {
	Blocks []Block
	Pen    paper.Pen // zero: the heaviest
}

const framePad paper.Length = 2

// Height implements Body.
func (f Framed) Height(width paper.Length) paper.Length {
	return Height(f.Blocks, width-2*framePad) + 2*framePad
}

// Draw implements Body.
func (f Framed) Draw(page *paper.Page, box paper.Rect) (missing []string) {
	pen := f.Pen
	if pen.Width == 0 {
		pen = paper.Emphasis
	}
	box.H = f.Height(box.W)
	page.Stroke(paper.Box(box), pen)
	return inside(page, box.Inset(framePad), f.Blocks)
}

// inside draws the blocks of another one.
func inside(page *paper.Page, box paper.Rect, blocks []Block) (missing []string) {
	for _, n := range draw(page, box, blocks) {
		missing = append(missing, n.What)
	}
	return missing
}

// Box frames one text.
func Box(name, text string) Block {
	return Block{Name: name, Gap: 2.5, Body: Framed{Blocks: []Block{{Body: Words{Text: text}}}}}
}

// Columns is blocks side by side, each column its share of the width.
type Columns struct {
	Cols []Column
	Gap  paper.Length
}

// Column is one column of blocks.
type Column struct {
	Share  float64 // of the width that is left by columns of a fixed one
	Width  paper.Length
	Blocks []Block
}

// boxes are the columns' boxes within a box.
func (c Columns) boxes(box paper.Rect) []paper.Rect {
	free, shares := box.W-c.Gap*paper.Length(len(c.Cols)-1), 0.0
	for _, col := range c.Cols {
		free -= col.Width
		if col.Width == 0 {
			shares += col.Share
		}
	}
	var list []paper.Rect
	x := box.X
	for _, col := range c.Cols {
		w := col.Width
		if w == 0 {
			w = free * paper.Length(col.Share/shares)
		}
		list = append(list, paper.Rect{X: x, Y: box.Y, W: w, H: box.H})
		x += w + c.Gap
	}
	return list
}

// Height implements Body.
func (c Columns) Height(width paper.Length) paper.Length {
	h := paper.Length(0)
	for i, b := range c.boxes(paper.Rect{W: width}) {
		h = max(h, Height(c.Cols[i].Blocks, b.W))
	}
	return h
}

// Draw implements Body. Blocks that grow do so within their column.
func (c Columns) Draw(page *paper.Page, box paper.Rect) (missing []string) {
	for i, b := range c.boxes(box) {
		missing = append(missing, inside(page, b, c.Cols[i].Blocks)...)
	}
	return missing
}

// Most implements grower: columns grow as far as the blocks in them can.
func (c Columns) Most(width paper.Length) paper.Length {
	most := paper.Length(0)
	for i, b := range c.boxes(paper.Rect{W: width}) {
		most = max(most, stack(c.Cols[i].Blocks, func(block *Block) paper.Length {
			if g, ok := block.Body.(grower); ok {
				return g.Most(b.W)
			}
			return block.height(b.W)
		}))
	}
	return most
}

// Picture is a drawing that needs a height and may use more.
type Picture struct {
	Least, Best paper.Length // heights it needs and can use; Best under Least stands for Least
	Paint       func(page *paper.Page, box paper.Rect) (missing []string)
}

// Height implements Body.
func (p Picture) Height(paper.Length) paper.Length { return p.Least }

// Most implements grower.
func (p Picture) Most(paper.Length) paper.Length { return max(p.Least, p.Best) }

// Draw implements Body.
func (p Picture) Draw(page *paper.Page, box paper.Rect) []string { return p.Paint(page, box) }
