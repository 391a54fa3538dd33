package layout_test

import (
	"cmp"
	"fmt"
	"math"
	"regexp"
	"slices"
	"testing"

	"hoopwright/layout"
	"hoopwright/layout/finding"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
	"hoopwright/layout/stock"
)

// stringsAddUp: what lies on the frame, hangs for plugs and is left over is the string's whole length, and no string is all left over.
func stringsAddUp(t *testing.T, p *layout.Plan) {
	for i, s := range p.Strings {
		near(t, s.Name, s.Used+s.LeftOver+s.Off+s.Free, s.Label.Length, hair)
		if s.Name != fmt.Sprintf("S%d", i+1) || s.Used <= 0 || s.LeftOver < -hair || s.Watts != s.Label.Watts || s.Kind != s.Label.Name {
			t.Errorf("string %d: %+v", i+1, s)
		}
	}
}

var runShape = regexp.MustCompile(`^(?:leg [LR]|row (?:left|right) |ridge |drop [LR]|drop ridge |drop arch |arch )(\d+)$`)

// stringsOnFrame: both ends of every string are on the pipe that its run names, or for a row between two arches and no lower than the sag.
func stringsOnFrame(t *testing.T, p *layout.Plan) {
	// The chords of the drawn curve stand off it by c²/8R.
	close := measure.Length(1)
	for _, a := range p.Arches {
		if chord := a.Length / 100; a.BendRadius > 0 {
			close = max(close, 1+chord*chord/(8*a.BendRadius))
		}
	}
	for _, s := range p.Strings {
		if !runShape.MatchString(s.Run.String()) {
			t.Errorf("%s runs on %q", s.Name, s.Run)
			continue
		}
		for _, end := range []lights.End{s.From, s.To} {
			at := place{float64(end.X), float64(end.Y), float64(end.Z)}
			least := measure.Length(math.Inf(1))
			switch {
			case s.Run.IsRow():
				least = fromRows(p, s.Run.Kind == lights.RowRight, at) // a string may run on into the next row of its kind
			default:
				for n := max(1, end.Arch-1); n <= min(len(p.Arches), end.Arch+1); n++ {
					least = min(least, fromArch(p, n, at))
				}
				for bay := max(1, end.Arch-1); bay <= end.Arch && bay < len(p.Arches) && len(p.Ridge) > 0; bay++ {
					least = min(least, fromLine(at, crownOf(p, bay), crownOf(p, bay+1)))
				}
			}
			if !(least <= close) || end.At.String() == "" {
				t.Errorf("%s on %s: %q is %v mm off the frame", s.Name, s.Run, end.At, float64(least))
			}
		}
	}
}

// archesBear: an arch carries its own pipe, its fittings as sleeves of the pipe's wall, every string on it whole, and half of the ridge and its strings on either side. Rows and drops,
// which hang between, are left to their own tests.
func archesBear(t *testing.T, p *layout.Plan) {
	if p.Spec.Lights.Rows != nil || len(p.Spec.Lights.Drops) > 0 || has(p, "no-arch") {
		return
	}
	kg := map[string]float64{}
	slack := 1e-3 // N
	for _, w := range p.Spec.Lights.Wraps {
		for _, at := range w.Where {
			// A hair of height may ask for one string more or less, and so may a ridge piece that a bend or slope makes longer than its bay.
			if at.Bound == spec.ByHeight || at.Part == spec.RidgePieces && (len(p.Spec.Site.Levels) > 0 || !p.Ground.Straight) {
				slack = max(slack, 2*9.80665*float64(w.String.Mass)*w.String.Length.Metres())
			}
		}
	}
	for _, s := range p.Strings {
		kg[s.Run.String()] += float64(s.Label.Mass) * s.Label.Length.Metres()
	}
	for _, a := range p.Arches {
		sum := float64(a.Spec.Pipe.Mass) * a.Length.Metres()
		for _, run := range []string{"leg L", "leg R", "arch "} {
			sum += kg[fmt.Sprint(run, a.Number)]
		}
		sleeve := func(length float64) float64 { // of the pipe's wall about the pipe
			d, w := a.Spec.Pipe.OD.Metres(), a.Spec.Pipe.Wall.Metres()
			return float64(a.Spec.Pipe.Mass) * length * (math.Pow(d+2*w, 2) - d*d) / (d*d - math.Pow(d-2*w, 2))
		}
		for _, j := range a.Joints() {
			sum += sleeve((j.To - j.From).Metres())
		}
		for bay := a.Number - 1; bay <= a.Number; bay++ {
			if bay >= 1 && bay <= len(p.Ridge) {
				for _, j := range a.Joints() {
					if j.Crown {
						sum += sleeve((j.To - j.From).Metres() / 2)
					}
				}
				sum += (float64(p.Spec.Ridge.Pipe.Mass)*p.Spec.Tunnel.Spacing.Metres() + kg[fmt.Sprint("ridge ", bay)]) / 2
			}
		}
		if newton := sum * 9.80665; math.Abs(float64(a.Weight)-newton) > 1e-3*newton+slack {
			t.Errorf("arch %d weighs %v N, what is on it %v N", a.Number, a.Weight, newton)
		}
	}
}

// rowsStay: rows are under the crown of every leg, each at its mark, the strings in turn.
func rowsStay(t *testing.T, p *layout.Plan) {
	for _, r := range p.Lights.Rows {
		rows := p.Spec.Lights.Rows
		near(t, fmt.Sprintf("row %v %d", r.Wall, r.Number), r.Tape, rows.First+rows.Step*measure.Length(r.Number-1), hair)
		if r.Tape > rows.UpTo+hair || r.Kind != rows.Strings[(r.Number-1)%len(rows.Strings)].Name || !slices.Contains(rows.Walls, r.Wall) {
			t.Errorf("row %v %d of %s at %v", r.Wall, r.Number, r.Kind, r.Tape)
		}
		for _, a := range p.Arches {
			leg := a.CrownTape
			if r.Wall == spec.Right {
				leg = a.Length - a.CrownTape
			}
			if r.Tape > leg {
				t.Errorf("row %v %d is beyond the crown of arch %d", r.Wall, r.Number, a.Number)
			}
		}
	}
}

// rowsEndAtLegs: the last string of a path comes to the mark of its last row at the arch where that ends, or stops a hand before it; and a socket that hangs in a bay
// hangs at the prongs of the row's next string.
func rowsEndAtLegs(t *testing.T, p *layout.Plan) {
	hand := measure.By(p.Spec.Units, 4*measure.Inch, 100*measure.Millimetre)
	next := map[string]lights.String{}
	for _, path := range p.Lights.Paths {
		on := slices.DeleteFunc(slices.Clone(p.Strings), func(s lights.String) bool { return !slices.Contains(path.Strings, s.Name) })
		for i := 1; i < len(on); i++ {
			next[on[i-1].Name] = on[i]
		}
		if finding.Has(p.Findings, "too-many-strings") || len(on) == 0 {
			continue
		}
		top, end := path.Rows[len(path.Rows)-1], path.Last
		if (len(path.Rows)%2 == 0) != path.Back { // an even number of rows comes back to where the first began
			end = path.First
		}
		k := slices.IndexFunc(p.Lights.Rows, func(r lights.Row) bool { return r.Wall == path.Wall && r.Number == top })
		last, mark := on[len(on)-1].To, p.Lights.Rows[k].Marks[end-1]
		if short := lights.Apart(last, mark); short > hand+hair {
			t.Errorf("%v row %d ends %v mm before arch %d", path.Wall, top, float64(short), end)
		}
	}
	of := map[string]lights.String{}
	for _, s := range p.Strings {
		of[s.Name] = s
	}
	for _, c := range p.Chains {
		s := of[c.Strings[len(c.Strings)-1]]
		n, ok := next[s.Name]
		if s.To.At.MidBay() && (!ok || lights.Apart(s.To, n.From) > hair) {
			t.Errorf("the socket of %s hangs in a bay by itself: %v", s.Name, s.To.At)
		}
	}
}

// joinedRowsReach: what is left of a row's string, once it lies to its end, is as long as the way from there to the prongs of the row's string that is plugged into it: of the leg between their
// marks where both are at one, along its curve; else straight.
func joinedRowsReach(t *testing.T, p *layout.Plan) {
	of := map[string]lights.String{}
	for _, s := range p.Strings {
		of[s.Name] = s
	}
	mark := func(e lights.End) measure.Length {
		k := slices.IndexFunc(p.Lights.Rows, func(r lights.Row) bool { return r.Wall == e.Side && r.Number == e.Row.Row })
		return p.Lights.Rows[k].Tape
	}
	for _, c := range p.Chains {
		for i := 1; i < len(c.Strings); i++ {
			a, b := of[c.Strings[i-1]], of[c.Strings[i]]
			if !a.Run.IsRow() || !b.Run.IsRow() {
				continue
			}
			way := lights.Apart(a.To, b.From)
			if a.To.At.Spot == lights.AtArch && b.From.At.Spot == lights.AtArch && a.To.Arch == b.From.Arch && a.To.Side == b.From.Side {
				way = measure.Abs(mark(a.To) - mark(b.From))
			}
			left := a.Label.Length - a.Used
			if way > max(left, measure.Inch)+hair {
				t.Errorf("%s has %v mm left for %v mm to %s: %v, %v", a.Name, float64(left), float64(way), b.Name, a.To.At, b.From.At)
			}
		}
	}
}

// fromArch returns how far a point is from an arch's pipe.
func fromArch(p *layout.Plan, number int, at place) measure.Length {
	a := p.Arches[number-1]
	least := measure.Length(math.Inf(1))
	for i := 1; i < len(a.Curve); i++ {
		u, v := a.Curve[i-1], a.Curve[i]
		least = min(least, fromLine(at, onArch(p, number, u.X, u.Y), onArch(p, number, v.X, v.Y)))
	}
	return least
}

// fromLine returns the distance of a point from the stretch between two others.
func fromLine(at, a, b place) measure.Length {
	var along, square float64
	for i := range 3 {
		along += (at[i] - a[i]) * (b[i] - a[i])
		square += (b[i] - a[i]) * (b[i] - a[i])
	}
	share := 0.0
	if square > 0 {
		share = min(max(along/square, 0), 1)
	}
	var foot place
	for i := range 3 {
		foot[i] = a[i] + share*(b[i]-a[i])
	}
	return at.to(foot)
}

// fromRows returns how far a point is from the legs of a wall that rows climb, and from the bands that their sag makes below the lines
// from mark to mark.
func fromRows(p *layout.Plan, right bool, at place) measure.Length {
	least := measure.Length(math.Inf(1))
	for _, r := range p.Lights.Rows {
		if right != (r.Wall == spec.Right) {
			continue
		}
		mark := func(number int) place {
			a := p.Arches[number-1]
			tape := r.Tape
			if right {
				tape = a.Length - r.Tape
			}
			c := a.PointAt(tape)
			return onArch(p, number, c.X, c.Y)
		}
		for n := 1; n <= len(p.Arches); n++ {
			least = min(least, fromArch(p, n, at))
			if n < len(p.Arches) {
				least = min(least, max(0, fromLine(at, mark(n), mark(n+1))-p.Spec.Lights.Rows.Sag))
			}
		}
	}
	return least
}

// wrapsUnroll: the string on a wrap is the long side of a right triangle whose short sides are the pipe it covers and the turns' girths,
// L² = h² + (n·π·D)², D through the wire's middle; the strings end to end are that long. Along a guy's bare band, whose middle is as high as the guy is tied,
// they run straight; that height is kept to half a step of the tape it is marked by, save where the band keeps off a coupling.
func wrapsUnroll(t *testing.T, p *layout.Plan) {
	byName := map[string]lights.String{}
	for _, s := range p.Strings {
		byName[s.Name] = s
	}
	marked := measure.By(p.Spec.Units, measure.Inch/4, 5*measure.Millimetre) // the step of a tape that a band is marked by
	for _, w := range p.Wraps {
		pipe := p.Spec.Ridge.Pipe
		if w.On.Kind != lights.Ridge {
			pipe = p.Arches[w.On.Number-1].Spec.Pipe
		}
		from, to := w.Wound()
		straight := measure.Length(0)
		for _, b := range w.Bare {
			straight += max(0, min(b.To, to)-max(b.From, from))
			if a := p.Arches[w.On.Number-1]; w.On.IsLeg() && b.From > w.From && b.To < w.To {
				side, _ := w.On.Wall()
				high := a.HeightAt(side, (b.From+b.To)/2)
				want := slices.MinFunc(p.Spec.TiedAt(w.On.Number), func(x, y measure.Length) int {
					return cmp.Compare(math.Abs(float64(x-high)), math.Abs(float64(y-high)))
				})
				give := 0.5 + marked/2
				for _, j := range a.Joints() { // a band that a coupling would meet lies right beside it
					if side == spec.Right {
						j.From, j.To = a.Length-j.To, a.Length-j.From
					}
					if b.To <= j.From+0.5 && b.To > j.From-2*marked || b.From >= j.To-0.5 && b.From < j.To+2*marked {
						give += j.To - j.From + b.To - b.From
					}
				}
				near(t, "bare band on "+w.On.String(), high, want, give)
			}
		}
		h := float64(to - from - straight)
		long := float64(straight) + math.Hypot(h, w.Turns*math.Pi*float64(pipe.OD+w.Label.Wire))
		var used measure.Length
		for _, name := range w.Strings {
			used += byName[name].Used
		}
		near(t, "string on "+w.On.String(), used, measure.Length(long), 1e-3)
		near(t, "turns on "+w.On.String(), w.Pitch*measure.Length(w.Turns), measure.Length(h), 1e-3)
		if w.Pitch < w.Label.Wire-hair || !(w.Covers > 0) || w.Covers > 1 {
			t.Errorf("%s: pitch %v, covers %v", w.On, w.Pitch, w.Covers)
		}
	}
}

// stringsAreFed: each string is in one run, whose every string is of the same volts and lamp; a run that nothing feeds is told of.
func stringsAreFed(t *testing.T, p *layout.Plan) {
	in := map[string]string{}
	kind := map[string]string{}
	for _, s := range p.Strings {
		kind[s.Name] = fmt.Sprint(s.Label.Volts, s.Label.Lamp)
	}
	for _, c := range p.Chains {
		for _, name := range c.Strings {
			if in[name] != "" || kind[name] != kind[c.Strings[0]] {
				t.Errorf("%s, a %s, is in chain %q and in %s of %s", name, kind[name], in[name], c.Name, kind[c.Strings[0]])
			}
			in[name] = c.Name
		}
		if c.Outlet == "" && !has(p, "no-power-given", "not-enough-amps", "not-enough-sockets", "wrong-volts") {
			t.Errorf("nothing feeds chain %s, and nobody says so", c.Name)
		}
	}
	if len(in) != len(p.Strings) {
		t.Errorf("%d of %d strings are in chains", len(in), len(p.Strings))
	}
}

func chainsHold(t *testing.T, p *layout.Plan) {
	byName := map[string]lights.String{}
	for _, s := range p.Strings {
		byName[s.Name] = s
	}
	for _, c := range p.Chains {
		label := byName[c.Strings[0]].Label
		n := len(c.Strings)
		var watts measure.Power
		var amps measure.Current
		mixed := false
		for _, name := range c.Strings {
			l := byName[name].Label
			watts, amps, mixed = watts+l.Watts, amps+l.Amps, mixed || l.Name != label.Name
		}
		if math.Abs(float64(c.Watts-watts)) > 1e-9 || math.Abs(float64(c.Amps-amps)) > 1e-9 {
			t.Errorf("chain %s of %d: %v W, %v A", c.Name, n, c.Watts, c.Amps)
		}
		if label.MostChain > 0 && n > label.MostChain || n > 1 && label.MostWatts > 0 && c.Watts > label.MostWatts+1e-9 {
			t.Errorf("chain %s: %d strings, %v W; its label says %d and %v W", c.Name, n, c.Watts, label.MostChain, label.MostWatts)
		}
		supply := label.Volts
		for _, k := range p.Spec.Power.Circuits {
			if k.Name == c.Circuit && label.Supply == nil {
				supply = k.Volts
			}
		}
		// Own wire: R′·s·I·N·(N+1), both wires; the cords take the rest. IEC 60228 class 5: 19.5 ohm a km for 1 mm².
		own := 19.5 / float64(label.Gauge) * label.Length.Metres() / 1000 * float64(label.Amps) * float64(n) * float64(n+1)
		if lost := float64(supply - c.EndVolts); !mixed && (lost < own-1e-9 || c.Cord == 0 && lost > own+1e-9 && c.Joint == 0) {
			t.Errorf("chain %s loses %v V, %v of it in its own wire", c.Name, lost, own)
		}
		if c.Cord > 0 && (c.Cord < c.Lies || c.Gauge == "") {
			t.Errorf("chain %s: a cord of %v, %s, for a way of %v", c.Name, c.Cord, c.Gauge, c.Lies)
		}
	}
}

// circuitsHold: no circuit carries more than its breaker's continuous share, other load counted; 80 % by NEC 210.19(A)(1) unless the spec
// says otherwise.
func circuitsHold(t *testing.T, p *layout.Plan) {
	for i, c := range p.Circuits {
		s := p.Spec.Power.Circuits[i]
		sum := s.OtherLoad
		for _, f := range p.Power.Feeders {
			if f.Circuit == c.Name {
				sum += f.Amps
			}
		}
		if allowed := measure.Current(float64(s.Breaker) * float64(p.Spec.Power.Continuous)); c.Allowed != allowed || c.Amps > max(allowed, s.OtherLoad)+1e-9 {
			t.Errorf("circuit %s: %v A of %v", c.Name, c.Amps, c.Allowed)
		}
		if math.Abs(float64(c.Amps-sum)) > 1e-9 {
			t.Errorf("circuit %s carries %v A, its feeders and other load %v", c.Name, c.Amps, sum)
		}
	}
	// Where two parts are to be fed apart and nothing says that they are not, no circuit feeds both.
	if p.Spec.Power.Split == spec.SplitNone || has(p, "split-not-possible", "no-power-given") || len(p.Spec.Power.Circuits) < 2 {
		return
	}
	parts := map[string][]int{}
	for _, c := range p.Chains {
		for _, on := range c.On {
			part := -1
			if side, ok := on.Wall(); ok && p.Spec.Power.Split == spec.SplitWalls {
				part = int(side)
			}
			if n, ok := on.OnArch(); ok && p.Spec.Power.Split == spec.SplitArches {
				part = n % 2
			}
			if part >= 0 && c.Circuit != "" && !slices.Contains(parts[c.Circuit], part) {
				parts[c.Circuit] = append(parts[c.Circuit], part)
			}
		}
	}
	for name, list := range parts {
		if len(list) > 1 {
			t.Errorf("circuit %s feeds both parts", name)
		}
	}
}

// Without a GFCI a portable one is on the list: where the spec says that there is none it must be fixed, where it says nothing it is asked.
func TestPortableGFCI(t *testing.T) {
	for says, level := range map[string]finding.Level{", gfci: true": 0, ", gfci: false": finding.MustFix, "": finding.LookAt} {
		p := solved(t, base.with("power", "{circuits: {a: {volts: 120 V, breaker: 15 A"+says+"}, b: {volts: 120 V, breaker: 20 A, gfci: true}}, split: left and right}").text())
		var got finding.Level
		for _, f := range p.Findings {
			if f.Code == "no-gfci" {
				got = f.Level
			}
		}
		bought := slices.ContainsFunc(p.Shopping, func(i stock.Item) bool { return i.Kind == stock.PortableGFCI && i.Need == 1 })
		if got != level || bought != (level != 0) {
			t.Errorf("%q: found as %v, on the list %v", says, got, bought)
		}
	}
}

// outletsBind: of breaker, timer, there or to be bought, and cords, none is nearer to what it may carry than what a feeder is said to be bound by.
func outletsBind(t *testing.T, p *layout.Plan) {
	for _, f := range p.Power.Feeders {
		told := f.Limit.Have / f.Limit.Of
		nearer := func(what string, amps, most measure.Current) {
			if share := float64(amps / most); most > 0 && share > told+1e-6 {
				t.Errorf("feeder %s is told %v of %v, its %s %v of %v", f.Name, f.Limit.Have, f.Limit.Of, what, amps, most)
			}
		}
		for _, c := range p.Circuits {
			if c.Name == f.Circuit {
				nearer("breaker", c.Amps, c.Allowed)
			}
		}
		through := measure.Current(0)
		for _, o := range p.Power.Feeders {
			if o.Outlet == f.Outlet {
				through += o.Amps
			}
		}
		for _, o := range p.Spec.Site.Outlets {
			if o.Name == f.Outlet {
				nearer("timer", through, o.Timer)
			}
		}
		for _, c := range p.Cords {
			if c.Feeder == f.Name {
				nearer("cord", c.Amps, c.May)
			}
		}
		for _, o := range p.Power.Timers {
			if o.Outlet == f.Outlet {
				nearer("timer to buy", o.Amps, o.Size)
			}
		}
	}
}
