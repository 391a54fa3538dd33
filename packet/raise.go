package packet

import (
	"fmt"
	"strings"

	"hoopwright/draw"
	"hoopwright/draw/paper"
	"hoopwright/layout/arch"
	"hoopwright/layout/crew"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// raisePanel is one picture of the raising sheet with its words.
type raisePanel struct {
	title   string
	do      string
	want    string        // the value or state wanted, with its limit
	off     string        // what to move when it is off
	blanks  []string      // to be filled in; the last one signs a hold
	checks  func(f *flow) // set under the panel; nil for none
	picture func(page *paper.Page, room paper.Rect)
}

// Room on the raising sheet.
const (
	raiseWide paper.Length = 70 // of a picture
	raiseHigh paper.Length = 34.5
	raiseGap  paper.Length = 2
	raiseSide paper.Length = 3 // from the picture to its words
)

// raising prints how the arches are stood, as pictures in their order.
func (b *binder) raising() []leaf {
	pictures, ok := draw.NewRaising(b.plan)
	if !ok {
		return nil
	}
	f := b.newFlow("Stand the arches one after the other: A and B at the feet, C at the crown, all 16 or older.", b.tools(crew.Raising))
	r := raiseWords{b, pictures, b.standing()}
	box := framed{r.warning(), r.stop()}
	box.draw(f.page, f.take(box.height(f.room.W)))
	f.gap(2)
	for i, p := range r.panels() {
		f.together(f.freshHeight(), func(f *flow) {
			f.raisePanel(i+1, p)
			if p.checks != nil {
				p.checks(f)
			}
		})
	}
	return f.leaves
}

// asked puts what the build steps want of a part of the raising, and what to move when it is off, into its panel.
func (r raiseWords) asked(part crew.Part, p raisePanel) raisePanel {
	for _, s := range r.plan.Crew.Steps {
		if s.Part == part {
			p.want, p.off = s.Want, strings.ToLower(s.Off[:1])+s.Off[1:]
			break
		}
	}
	return p
}

// standing lists the arches that have a shape.
func (b *binder) standing() []arch.Arch {
	var list []arch.Arch
	for _, a := range b.plan.Arches {
		if a.Kind != nil {
			list = append(list, a)
		}
	}
	return list
}

// raisePanel sets a picture with its words beside it.
func (f *flow) raisePanel(number int, p raisePanel) {
	const indent paper.Length = 10
	title := paper.Heading.Sized(13)
	width := f.room.W - raiseWide - raiseSide
	words := func(page *paper.Page, box paper.Rect) paper.Length {
		y := page.Paragraph(paper.Rect{X: box.X + indent, Y: box.Y, W: width - indent}, p.title, title)
		page.Text(paper.Point{X: box.X, Y: box.Y + title.Ascent()}, paper.AtLeft, fmt.Sprint(number), paper.Large.Sized(18))
		y = page.Paragraph(paper.Rect{X: box.X, Y: max(y, box.Y+6.2), W: width}, p.do, paper.Floor)
		if p.want != "" {
			y = page.Paragraph(paper.Rect{X: box.X, Y: y + 0.6, W: width}, p.want, paper.Strong)
		}
		if p.off != "" {
			y = page.Paragraph(paper.Rect{X: box.X, Y: y + 0.6, W: width}, "If not: "+p.off, paper.Floor)
		}
		if len(p.blanks) > 0 {
			y += 6
			x, each := box.X, width/paper.Length(len(p.blanks))
			if len(p.blanks) > 2 { // from under the picture on, so that each has room for a figure
				x, each = box.Right()-f.room.W, f.room.W/paper.Length(len(p.blanks))
				y = max(y, box.Y+raiseHigh+5)
			}
			for _, label := range p.blanks {
				page.Text(paper.Point{X: x, Y: y}, paper.AtLeft, label, paper.Strong)
				page.Line(paper.Point{X: x + paper.Strong.Width(label) + 1.5, Y: y + 0.8}, paper.Point{X: x + each - 2, Y: y + 0.8}, paper.Thin)
				x += each
			}
			y += 1.4
		}
		return y - box.Y
	}
	high := max(raiseHigh, words(&paper.Page{}, paper.Rect{W: width}))
	box := f.take(high + raiseGap)
	picture := paper.Rect{X: box.X, Y: box.Y, W: raiseWide, H: raiseHigh}
	p.picture(f.page, picture)
	words(f.page, paper.Rect{X: picture.Right() + raiseSide, Y: box.Y, W: width})
}

// raiseWords writes the panels.
type raiseWords struct {
	*binder
	draw.Raising
	stand []arch.Arch
}

// warning is read before the first picture.
func (r raiseWords) warning() string {
	s := "A bent arch is a spring: nobody under it, no face near it, eye protection on."
	for _, l := range r.spec.Site.Overhead {
		s += fmt.Sprintf(" Overhead: %s. Pipe, ladder and people stay %s away.", l.Name, r.spec.Units.Room(l.Keep))
	}
	return s
}

// stop says when nobody goes on.
func (r raiseWords) stop() string {
	u := r.spec.Units
	return fmt.Sprintf("Stop and ask: a crack or white line in a pipe. A stake that moves. Arch 1 off its figures. A gust that moves the arch in your hands, gusts of %s forecast, thunder, frost (%s). "+
		"A wire nearer than %s. Fewer than three people. Dusk: no arch stays standing without guys or ridge.", r.insideWords(), u.Temperature(0), u.Room(practice.KeepOverhead(u)))
}

// panels are the pictures in order.
func (r raiseWords) panels() []raisePanel {
	first := r.stand[0]
	var list []raisePanel
	if !first.Spec.OneStick {
		list = append(list, r.together(first))
	}
	list = append(list, r.leftFoot(first), r.rightFoot(first), r.held(first), r.measured(first))
	if len(r.stand) > 1 {
		list = append(list, r.second())
	}
	if len(r.stand) > 2 {
		list = append(list, r.others())
	}
	return append(list, r.finished())
}

func (r raiseWords) together(a arch.Arch) raisePanel {
	fitting := r.spec.CrownFitting(a.Number)
	depth := r.spec.Units.Cut(a.Spec.Pipe.Socket)
	stub := fitting == spec.Tee || fitting == spec.Cross
	return r.asked(crew.Together, raisePanel{title: fmt.Sprintf("On the ground: both legs into the %s", fitting),
		do:      fmt.Sprintf("A and B. Mark each end %s from its end, drive it in with the mallet. Names at the feet, L left, R right as seen from the entrance.", depth),
		picture: func(page *paper.Page, room paper.Rect) { r.Together(page, room, depth, stub) }})
}

func (r raiseWords) leftFoot(a arch.Arch) raisePanel {
	return raisePanel{title: "Left foot on its stake",
		do:      fmt.Sprintf("C carries the crown. A and B slip the left leg over L%d, down to the ground. The cap comes off only as the pipe goes on; it goes into the bucket.", a.Number),
		want:    "Foot on the ground, its name facing in.",
		off:     "lift it off, wipe the stake. Never hammer on the pipe.",
		picture: func(page *paper.Page, room paper.Rect) { r.LeftFoot(page, room, a.Number) }}
}

func (r raiseWords) rightFoot(a arch.Arch) raisePanel {
	return r.asked(crew.Bent, raisePanel{title: "Walk the right foot in",
		do:      fmt.Sprintf("A holds the left foot down. B walks the right leg slowly to R%d, C steadies the bend. Cap off as the pipe comes, slip it down. Nobody lets go before both feet are on the ground.", a.Number),
		picture: func(page *paper.Page, room paper.Rect) { r.RightFoot(page, room, a.Number) }})
}

func (r raiseWords) held(a arch.Arch) raisePanel {
	u := r.spec.Units
	p := raisePanel{picture: func(page *paper.Page, room paper.Rect) { r.Held(page, room, a.Number) }}
	names := r.guyNames(a.Number)
	if len(names) == 0 && (len(r.stand) == 1 || len(r.plan.Ridge) == 0) {
		p.title = fmt.Sprintf("Arch %d stands by its feet alone", a.Number)
		p.do = "It has neither guys nor ridge. C keeps a hand on it while A and B measure; nobody goes under it in wind."
		p.want = "Plumb seen from the side."
		p.off = "a stake leans: drive it again."
		return p
	}
	if len(names) == 0 {
		p.title = fmt.Sprintf("One person holds arch %d", a.Number)
		p.do = "It has no guys: nothing else holds it lengthwise. C does nothing else until the last arch is joined."
		p.want = "A name said aloud: ______________"
		return p
	}
	p.title = fmt.Sprintf("Guy arch %d before arch %d is touched", a.Number, a.Number+1)
	if len(r.stand) == 1 {
		p.title = fmt.Sprintf("Guy arch %d", a.Number)
	}
	from, _ := r.spec.Held()
	p.do = fmt.Sprintf("C holds it plumb. A and B %s both legs, %s above the ground, and to %s; flag them at eye height.", r.fix(), u.Tape(from), say.And(names))
	if len(r.stand) > 1 {
		p.do += " C holds on until picture " + fmt.Sprint(r.numberOfSecond()) + " is done."
	}
	return r.asked(crew.Guyed, p)
}

// numberOfSecond is the number of the picture that joins arch 2 to arch 1.
func (r raiseWords) numberOfSecond() int {
	if r.stand[0].Spec.OneStick {
		return 5
	}
	return 6
}

// fix says how arches are held lengthwise: by guys, or by braces where there are no guys.
func (r raiseWords) fix() string {
	if len(r.spec.Guys.Arches) == 0 {
		return "clamp braces to"
	}
	return "tie guys to"
}

// holders names what holds them.
func (r raiseWords) holders() string {
	if len(r.spec.Guys.Arches) == 0 {
		return "Braces"
	}
	return "Guys"
}

// guyNames names an arch's guy stakes.
func (b *binder) guyNames(number int) []string {
	var names []string
	for _, s := range b.plan.Stakes {
		if s.Guy && s.Arch == number {
			names = append(names, s.String())
		}
	}
	return names
}

func (r raiseWords) measured(a arch.Arch) raisePanel {
	u, k := r.spec.Units, a.Kind
	return r.asked(crew.Measured, raisePanel{title: fmt.Sprintf("Measure arch %d", a.Number),
		do:     "From a string between the feet up to the crown: its middle, its underside.",
		blanks: []string{"Crown", "Feet", "Clear", "Signed"},
		picture: func(page *paper.Page, room paper.Rect) {
			r.Measured(page, room, a.Number, u.Inches(k.Crown), u.Inches(k.Span))
		}})
}

func (r raiseWords) second() raisePanel {
	u, first, a := r.spec.Units, r.stand[0], r.stand[1]
	p := raisePanel{title: fmt.Sprintf("Arch %d, the same way", a.Number), picture: func(page *paper.Page, room paper.Rect) {
		r.Second(page, room, first.Number, a.Number, len(r.plan.Ridge) > 0)
	}}
	p.do = fmt.Sprintf("Crown together, left foot on L%d, right foot on R%d. ", a.Number, a.Number)
	if len(r.plan.Ridge) == 0 {
		p.do += "B holds it until it stands by itself. " + r.guyToo(a.Number)
		p.want = fmt.Sprintf("Plumb; %s from arch %d at both feet.", u.Tape(r.spec.Tunnel.Spacing), first.Number)
		return p
	}
	piece := r.plan.Ridge[0]
	p.title = fmt.Sprintf("Arch %d, ridge piece %d: new crown first", a.Number, piece.Bay)
	p.do += fmt.Sprintf("A and B hold the arches; C puts ridge piece %d into crown %d, springs it into crown %d, drives both home. ", piece.Bay, a.Number, first.Number) + r.guyToo(a.Number)
	if r.ladder() {
		p.do += "Stepladder on firm ground, never leant on pipe, someone at its foot."
	}
	p.blanks = []string{"Bay 1", "Signed"}
	return r.asked(crew.Joined, p)
}

// guyToo says that an arch has guys of its own.
func (r raiseWords) guyToo(number int) string {
	if names := r.guyNames(number); len(names) > 0 {
		return fmt.Sprintf("Guys to %s at once. ", say.And(names))
	}
	return ""
}

func (r raiseWords) others() raisePanel {
	third, last := r.stand[2].Number, r.stand[len(r.stand)-1].Number
	to, distance := r.pictured()
	p := raisePanel{title: fmt.Sprintf("%s, one at a time", say.Capital(say.Numbered("arch", say.From(third, last)))),
		picture: func(page *paper.Page, room paper.Rect) { r.Running(page, room, 1, to, len(r.plan.Ridge) > 0, distance) }}
	p.do = "Crown together, left foot, right foot, caps off as the pipe comes"
	if len(r.plan.Ridge) == 0 {
		p.do += "."
	} else {
		p.do += ", ridge piece into the new crown first. Hold the newest arch until it is in. Every third bay stop: tape along the ridge from the middle of crown 1."
		p.checks = r.runningChecks
	}
	if guyed := r.guyedBetween(); len(guyed) > 0 {
		p.do += fmt.Sprintf(" Guy %s at once.", say.Numbered("arch", guyed))
	}
	return r.asked(crew.Row, p)
}

// guyedBetween lists the arches past the second and before the last that have guys.
func (r raiseWords) guyedBetween() []int {
	var list []int
	for _, a := range r.stand[2 : len(r.stand)-1] {
		if len(r.guyNames(a.Number)) > 0 {
			list = append(list, a.Number)
		}
	}
	return list
}

// pictured is the crown that the picture's tape runs to, with its distance: the first that is checked.
func (r raiseWords) pictured() (int, string) {
	for _, s := range r.plan.Crew.Steps {
		if len(s.Crowns) > 0 {
			return s.Crowns[0], s.Readings[0].Want
		}
	}
	return min(4, len(r.stand)), r.spec.Units.Tape(r.spec.Tunnel.Spacing) + " each"
}

// running lists the running distances that are checked while the row grows.
func (r raiseWords) running() []crew.Reading {
	var list []crew.Reading
	for _, s := range r.plan.Crew.Steps {
		if s.Phase == crew.Raising && s.Record {
			list = append(list, s.Readings...)
		}
	}
	return list
}

// runningChecks sets the running distances with a box to tick and a line to write on for each.
func (r raiseWords) runningChecks(f *flow) {
	list := r.running()
	if len(list) == 0 {
		return
	}
	for _, st := range readingStrips(crew.Step{Readings: list, Record: true}, f.room.W+wordsLeft) {
		box := f.take(st.height)
		box.X -= wordsLeft
		st.draw(f.page, box)
	}
	f.gap(1.5)
}

func (r raiseWords) finished() raisePanel {
	last := r.stand[len(r.stand)-1]
	legs, _ := r.stakeCounts()
	caps := say.Count(legs, "cap")
	p := raisePanel{title: "Sight along it and count the caps",
		picture: func(page *paper.Page, room paper.Rect) {
			r.Finished(page, room, last.Number, len(r.plan.Ridge) > 0, caps)
		}}
	if names := r.guyNames(last.Number); len(names) > 0 && len(r.stand) > 1 {
		p.title = fmt.Sprintf("Guy arch %d, sight along it, count the caps", last.Number)
		from, _ := r.spec.Held()
		p.do = fmt.Sprintf("%s from both legs, %s up, to %s. ", r.holders(), r.spec.Units.Tape(from), say.And(names))
	}
	p.do += "Look along ridge and feet from each end; tighten guys evenly."
	switch r.spec.Arch.Joints {
	case spec.Pinned:
		p.do += " One screw through every socket, from outside, no point standing out inside."
	case spec.Glued:
		p.do += " Prime and cement the sockets one at a time, in open air, no flame, gloves on."
	}
	p.blanks = []string{"Caps", "Signed"}
	return r.asked(crew.Counted, p)
}
