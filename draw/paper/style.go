package paper

import "hoopwright/fonts"

// Colour is a printer's colour. Black carries everything; colour is a second code on top of letter and line pattern.
type Colour struct{ R, G, B uint8 }

// The colours that every sheet may use; those of light strings stand in draw.
var (
	Black = Colour{}
	White = Colour{255, 255, 255}
)

// Pen is a line's width, dash pattern and colour. A nil Dash is a solid line.
type Pen struct {
	Width  Length
	Dash   []Length
	Colour Colour
}

// The pens, by what their line means. Widths follow ISO 128's two-to-one rule; under 0.35 mm a line does not survive a photocopy.
var (
	Thin      = Pen{Width: 0.35}                                             // dimension, extension, leader, table rule
	Thick     = Pen{Width: 0.70}                                             // outline of what is built
	Emphasis  = Pen{Width: 1.00}                                             // the one thing to look at
	Hidden    = Pen{Width: 0.35, Dash: []Length{3.5, 1.4}}                   // in the ground, behind something
	HiddenBar = Pen{Width: 0.70, Dash: []Length{3.5, 1.4}}                   // what is built, in the ground
	Centre    = Pen{Width: 0.35, Dash: []Length{9, 1.4, 0.35, 1.4}}          // centre line
	Other     = Pen{Width: 0.35, Dash: []Length{9, 1.4, 0.7, 1.4, 0.7, 1.4}} // another position: late in the season, a keep-clear edge
	Tied      = Pen{Width: 0.35, Dash: []Length{1.4, 1.4}}                   // a tape's line
	Hatching  = Pen{Width: 0.25}                                             // hatch alone: nothing is lost where a copy loses it
)

// Lettering is a face at a size. Stacked builds fractions: numerator over denominator, for drawings; tables keep 3/8 at full size.
type Lettering struct {
	Face    fonts.Face
	Size    PointSize
	Colour  Colour
	Stacked bool
}

// The lettering, by what it is for. Nothing on a clipboard is under 11 pt; Small is for the rebuild file, tags and printed spec alone.
var (
	SheetName = Lettering{Face: fonts.Head, Size: 20}
	Heading   = Lettering{Face: fonts.Head, Size: 14}
	Body      = Lettering{Face: fonts.Text, Size: 12}
	Strong    = Lettering{Face: fonts.Head, Size: 12}
	Floor     = Lettering{Face: fonts.Text, Size: 11}
	Cell      = Lettering{Face: fonts.FigureBold, Size: 14}                // a number to be read on a clipboard, in a table
	CellSmall = Lettering{Face: fonts.FigureBold, Size: 12}                // the same where columns are many
	Dimension = Lettering{Face: fonts.FigureBold, Size: 14, Stacked: true} // on a drawing
	DimSmall  = Lettering{Face: fonts.FigureBold, Size: 12, Stacked: true}
	StakeName = Lettering{Face: fonts.FigureBold, Size: 18}
	Large     = Lettering{Face: fonts.FigureBold, Size: 24} // read from three feet
	Small     = Lettering{Face: fonts.Text, Size: 9}
	SmallHead = Lettering{Face: fonts.Head, Size: 9}
	SmallCell = Lettering{Face: fonts.FigureBold, Size: 9} // a number in the rebuild file
	Printed   = Lettering{Face: fonts.Mono, Size: 9}       // the spec as it was written
)

// Sized returns the lettering at another size.
func (l Lettering) Sized(size PointSize) Lettering { l.Size = size; return l }

// In returns the lettering in another colour.
func (l Lettering) In(c Colour) Lettering { l.Colour = c; return l }

// In returns the pen in another colour.
func (p Pen) In(c Colour) Pen { p.Colour = c; return p }
