package layout_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"hoopwright/layout"
	"hoopwright/layout/crew"
	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
	"hoopwright/layout/stock"
)

// wanted lists every length that the tunnel is made of, by the name that its piece has.
func wanted(p *layout.Plan) map[string]measure.Length {
	list := map[string]measure.Length{}
	for _, a := range p.Arches {
		legs := map[string][]measure.Length{fmt.Sprintf("leg L%d", a.Number): a.Left, fmt.Sprintf("leg R%d", a.Number): a.Right}
		if a.Spec.OneStick {
			legs = map[string][]measure.Length{fmt.Sprintf("arch %d", a.Number): a.Left}
		}
		for name, sticks := range legs {
			for i, s := range sticks {
				switch n := len(sticks); {
				case n == 1:
					list[name] = s
				case i == 0:
					list[name+" lower"] = s
				case i == n-1:
					list[name+" upper"] = s
				case n == 3:
					list[name+" middle"] = s
				default:
					list[fmt.Sprintf("%s middle %d", name, i)] = s
				}
			}
		}
	}
	for _, r := range p.Ridge {
		list[fmt.Sprintf("ridge %d", r.Bay)] = r.Cut
	}
	for _, s := range p.Stakes {
		name := "stake " + s.String()
		switch {
		case s.Bay > 0:
			name = "peg " + s.String()
			if !p.Spec.Braces.Line { // a hand beyond each clamp
				list["brace "+s.String()] = longestBrace(p, 0) + 6*measure.Inch
			}
		case s.Guy:
			name = "guy " + name
		}
		if !bagged(p, s) {
			list[name] = s.Length
		}
	}
	return list
}

// longestBrace is the longest way of any brace from its mark on the leg, by the tape that is printed, to the ground at its peg, and so many turns round the leg: by Pythagoras over the plan and the levels.
func longestBrace(p *layout.Plan, turns measure.Length) (long measure.Length) {
	at := map[string]ground.Stake{}
	for _, s := range p.Stakes {
		at[s.String()] = s
	}
	for _, task := range p.Crew.Tasks {
		for _, f := range task.Want {
			if f.What != crew.BraceMark {
				continue
			}
			for _, side := range f.Walls {
				arch := p.Arches[f.Arches[0]-1]
				tape := f.Length
				if side == spec.Right {
					tape = arch.Length - tape
				}
				on, left, right := arch.PointAt(tape), at[fmt.Sprintf("L%d", arch.Number)], at[fmt.Sprintf("R%d", arch.Number)]
				share := on.X/arch.Span + 0.5
				x, y, z := left.X+(right.X-left.X)*share, left.Y+(right.Y-left.Y)*share, (left.Ground+right.Ground)/2+on.Y
				for _, s := range p.Stakes {
					if s.Bay > 0 && s.Arch == arch.Number && s.Side == side {
						way := math.Sqrt(float64((x-s.X)*(x-s.X) + (y-s.Y)*(y-s.Y) + (z-s.Ground)*(z-s.Ground)))
						long = max(long, measure.Length(way)+turns*math.Pi*arch.Spec.Pipe.OD)
					}
				}
			}
		}
	}
	return long
}

// linesReach: each brace of webbing goes from its mark to its peg, twice round the pipe and once round the bar, with a foot for the knot and a foot through the buckle; one coil gives all, and a clamp
// keeps each guy and line from sliding down its leg. None is cut half a metre too long.
func linesReach(t *testing.T, p *layout.Plan) {
	guys, lines, clamps, end := 0, 0, 0, math.Pi*p.Spec.Braces.Peg.Bar.Diameter
	for _, s := range p.Stakes {
		switch {
		case s.Kind() == ground.OfGuy:
			guys++
		case s.Kind() == ground.OfBrace && p.Spec.Braces.Line:
			lines++
			if s.Base { // through the bags' handles
				end = measure.Foot
			}
		}
	}
	for _, i := range p.Shopping {
		switch i.Kind {
		case stock.GuyClamp:
			clamps = i.Need
		case stock.Webbing:
			need, unit := longestBrace(p, 2)+end+2*measure.Foot, measure.By(p.Spec.Units, measure.Foot, measure.Metre)
			piece := i.Ropes[0]
			if over := piece.Length - need; len(i.Ropes) != 1 || piece.Count != lines || over < -1 || over > measure.Metre/2 {
				t.Errorf("%d lines of %v mm for %d braces that take %v", piece.Count, piece.Length, lines, need)
			}
			if sum := measure.Length(lines) * piece.Length; measure.Length(i.Need)*unit < sum-1 || measure.Length(i.Need)*unit > sum+unit {
				t.Errorf("%d of webbing for %v mm", i.Need, sum)
			}
		}
	}
	if clamps != guys+lines {
		t.Errorf("%d clamps for %d guys and %d brace lines", clamps, guys, lines)
	}
}

// bagged reports whether a guy or a brace of line ends there on bags, where nothing can be driven; a brace of pipe has a bar in a socket.
func bagged(p *layout.Plan, s ground.Stake) bool {
	return s.Base && s.Guy && (s.Bay == 0 || p.Spec.Braces.Line)
}

// driven are the stakes that are of steel.
func driven(p *layout.Plan) []ground.Stake {
	return slices.DeleteFunc(slices.Clone(p.Stakes), func(s ground.Stake) bool { return bagged(p, s) })
}

// piecesAreCut: every leg's sticks, every ridge piece and every stake is on one bar, at its length up to the grid and never short; a
// stake may be bought ready instead, and a piece that no stock gives is a finding.
func piecesAreCut(t *testing.T, p *layout.Plan) {
	want, grid := wanted(p), p.Spec.Units.Grid()
	got := map[string]int{}
	for _, b := range p.Cuts.Bars {
		for _, c := range b.Pieces {
			got[c.ID.String()]++
			l, known := want[c.ID.String()]
			least, most := l-1e-5, l+grid
			if c.ID.Brace { // all as long as the longest, up to a reading of the tape
				least, most = l-1, l+grid+practice.Reading(p.Spec.Units)+1
			}
			if !known || c.Length < least || c.Length >= most {
				t.Errorf("%s is cut to %v, want %v", c.ID, c.Length, l)
			}
		}
	}
	ready := 0
	for _, i := range p.Shopping {
		if i.Kind == stock.ReadyStake {
			ready += i.Need - i.Spare
		}
	}
	for name := range want {
		switch n := got[name]; {
		case n == 1:
		case n == 0 && (strings.Contains(name, "stake") || strings.HasPrefix(name, "peg")) && ready > 0:
			ready--
		case n == 0 && has(p, "piece-too-long", "no-cut-plan"):
		default:
			t.Errorf("%s is on %d bars", name, n)
		}
	}
	if ready != 0 {
		t.Errorf("%d ready stakes too many are bought", ready)
	}
}

// barsHold: trim, pieces and a kerf between each two fit; marks rise by piece and kerf; what is left over is what is not cut.
func barsHold(t *testing.T, p *layout.Plan) {
	grid, kerf, trim := p.Spec.Units.Grid(), p.Spec.Stock.Kerf, p.Spec.Stock.Trim
	for n, b := range p.Cuts.Bars {
		if len(b.Pieces) == 1 && b.Pieces[0].Mark == b.Stock { // used whole, as sold
			if b.Offcut != 0 || b.Pieces[0].Length < b.Stock-grid-trim || b.Pieces[0].Length > b.Stock+grid {
				t.Errorf("bar %d of %v is used whole for %v", n, b.Stock, b.Pieces[0].Length)
			}
			continue
		}
		end := trim
		for i, c := range b.Pieces {
			if i > 0 {
				end += kerf
			}
			end += c.Length
			if c.Mark < end-1e-5 || c.Mark > b.Stock+hair {
				t.Errorf("bar %d of %v: mark %d at %v, want %v or a little more", n, b.Stock, i+1, c.Mark, end)
			}
		}
		if end > b.Stock+1e-5 || b.Offcut < 0 || b.Offcut > b.Stock-end+hair {
			t.Errorf("bar %d of %v is cut to %v, %v left over", n, b.Stock, end, b.Offcut)
		}
	}
}

func stockIsThere(t *testing.T, p *layout.Plan) {
	type length struct {
		item  string
		mm    measure.Length
		owned bool
	}
	taken := map[length]int{}
	for _, b := range p.Cuts.Bars {
		taken[length{b.Item, b.Stock, b.Owned}]++
	}
	for l, n := range taken {
		there, listed := 0, false
		if l.owned {
			listed = true
			for _, o := range p.Spec.Stock.Own {
				if (o.Item == l.item || "steel bar "+o.Item == l.item) && o.Length == l.mm {
					there += o.Count
				}
			}
		}
		for _, s := range p.Spec.Stock.Sell {
			if same := s.Item == l.item || "steel bar "+s.Item == l.item; !l.owned && same && s.Length == l.mm {
				listed = true
				there += s.Limit
				if s.Limit == 0 {
					there = math.MaxInt
				}
			}
		}
		if !listed && !has(p, "stock-lengths-assumed") || listed && n > there && !has(p, "stock-limit") {
			t.Errorf("%d of %s, %v are cut, owned %v; %d are there", n, l.item, l.mm, l.owned, there)
		}
	}
}

// costAddsUp: what the bars bought cost, or where prices are not all known their length; the bound is no higher, and meets a proven plan.
func costAddsUp(t *testing.T, p *layout.Plan) {
	money, length := 0.0, 0.0
	for _, b := range p.Cuts.Bars {
		if b.Owned {
			continue
		}
		length += float64(b.Stock)
		least := math.Inf(1)
		for _, s := range p.Spec.Stock.Sell {
			if (s.Item == b.Item || "steel bar "+s.Item == b.Item) && s.Length == b.Stock && s.Price != nil {
				least = min(least, *s.Price)
			}
		}
		money += least
	}
	c := p.Cuts
	if c.ByLength && math.Abs(c.Cost-length) > float64(p.Spec.Units.Grid())*float64(len(c.Bars)) || !c.ByLength && math.Abs(c.Cost-money) > 1e-6 {
		t.Errorf("the cuts are said to cost %v (by length %v); the bars cost %v and are %v mm long", c.Cost, c.ByLength, money, length)
	}
	if c.Bound > c.Cost+1e-6 || c.Proven != (math.Abs(c.Cost-c.Bound) < 1e-6) && !has(p, "no-cut-plan") {
		t.Errorf("cost %v, bound %v, proven %v", c.Cost, c.Bound, c.Proven)
	}
}

func shoppingAddsUp(t *testing.T, p *layout.Plan) {
	total, seen := 0.0, map[string]bool{} // by kind and name: guys and braces have hose clamps of their own
	need := map[string]int{}
	for _, i := range p.Shopping {
		line := fmt.Sprint(i.Kind, " ", i.Item)
		if i.Need <= 0 || i.Own < 0 || i.Buy != max(0, i.Need-i.Own) || i.Unit == 0 || i.Where == "" || i.Price < 0 || seen[line] {
			t.Errorf("line %+v, seen before %v", i, seen[line])
		}
		seen[line] = true
		need[i.Item] = i.Need
		total += float64(i.Buy) * i.Price
	}
	if math.Abs(total-p.Stock.Total) > 1e-6 {
		t.Errorf("the list adds up to %v, said to be %v", total, p.Stock.Total)
	}
	kinds := map[string]int{}
	for _, s := range p.Strings {
		kinds[s.Kind]++
	}
	for kind, n := range kinds {
		if spare := float64(n) * float64(p.Spec.Stock.Spares); need[kind] != n+int(math.Ceil(spare-1e-9)) {
			t.Errorf("%d %s on the list, %d hang", need[kind], kind, n)
		}
	}
	spares := int(math.Ceil(float64(len(driven(p)))*float64(p.Spec.Stock.Spares) - 1e-9))
	owned := 0 // stakes bought by length with their spares, and those cut from bars
	for _, i := range p.Shopping {
		if i.Kind == stock.ReadyStake {
			owned += i.Need
		}
	}
	for _, piece := range p.Stock.Pieces {
		if piece.ID.Steel {
			for _, bar := range p.Cuts.Bars {
				if slices.ContainsFunc(bar.Pieces, func(o stock.Piece) bool { return o.ID == piece.ID }) {
					owned++
				}
			}
		}
	}
	if n := need["stake cap"]; n != max(len(driven(p))+spares, owned) {
		t.Errorf("%d caps for %d stakes and %d spare, %d bought", n, len(driven(p)), spares, owned)
	}
}

// fittingsCount: two tees and crosses between under a ridge, else a coupling an arch of two legs; a coupling between each two sticks.
func fittingsCount(t *testing.T, p *layout.Plan) {
	want, got := map[string]int{}, map[string]int{}
	for _, a := range p.Arches {
		pipe := a.Spec.Pipe.Name
		if n := len(a.Left) + len(a.Right) - 2; !a.Spec.OneStick {
			want["coupling "+pipe] += n
			switch {
			case len(p.Ridge) == 0:
				want["coupling "+pipe]++
			case a.Number == 1 || a.Number == len(p.Arches):
				want["tee "+pipe]++
			default:
				want["cross "+pipe]++
			}
		}
	}
	for _, i := range p.Shopping {
		got[i.Item] = i.Need - i.Spare
	}
	for name, n := range want {
		if got[name] != n {
			t.Errorf("%d of %s, want %d", got[name], name, n)
		}
	}
}
