package paper

// Op is one drawing operation: a Stroke, a Fill or a Text.
type Op interface{ op() }

// Stroke draws a line along a path.
type Stroke struct {
	Path Path
	Pen  Pen
}

// Fill colours the inside of a path.
type Fill struct {
	Path   Path
	Colour Colour
}

// Text sets one line of lettering. At is the left end of its baseline; Angle turns it about that point, radians counter-clockwise.
type Text struct {
	At        Point
	String    string
	Lettering Lettering
	Angle     float64
}

func (Stroke) op() {}
func (Fill) op()   {}
func (Text) op()   {}

// Page is one sheet: its size and what is drawn on it, in order.
type Page struct {
	Name  string // the sheet's word, as in `packet --sheets`
	Title string // as bookmarked
	Size  Rect
	Ops   []Op
}

// Stroke draws a line along the path.
func (p *Page) Stroke(path Path, pen Pen) { p.Ops = append(p.Ops, Stroke{path, pen}) }

// Line draws a straight line.
func (p *Page) Line(a, b Point, pen Pen) { p.Stroke(Polyline(a, b), pen) }

// Fill colours the inside of the path.
func (p *Page) Fill(path Path, c Colour) { p.Ops = append(p.Ops, Fill{path, c}) }

// Align says which part of a text sits at its point.
type Align int

// The alignments.
const (
	AtLeft Align = iota
	AtMiddle
	AtRight
)

// Text sets a line of lettering with its baseline at the point.
func (p *Page) Text(at Point, align Align, s string, l Lettering) {
	s = printable(s)
	switch w := l.Width(s); align {
	case AtMiddle:
		at.X -= w / 2
	case AtRight:
		at.X -= w
	}
	p.Ops = append(p.Ops, Text{At: at, String: s, Lettering: l})
}

// TurnedText sets a line of lettering whose baseline is centred on the point and turned about it.
func (p *Page) TurnedText(centre Point, angle float64, s string, l Lettering) {
	s = printable(s)
	at := centre.Sub(Polar(l.Width(s)/2, angle))
	p.Ops = append(p.Ops, Text{At: at, String: s, Lettering: l, Angle: angle})
}

// Paragraph sets text wrapped to the box's width from its top.
func (p *Page) Paragraph(box Rect, s string, l Lettering) {
	for i, line := range l.Wrap(s, box.W) {
		p.Text(Point{box.X, box.Y + Length(i)*l.Leading() + l.Ascent()}, AtLeft, line, l)
	}
}

// TickBoxSide is the side of a box that a gloved hand can tick.
const TickBoxSide Length = 6

// TickBox draws a tick box with its top left corner at the point.
func (p *Page) TickBox(at Point) {
	p.Stroke(Box(Rect{at.X, at.Y, TickBoxSide, TickBoxSide}), Thick)
}
