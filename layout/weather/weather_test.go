package weather

import (
	"math"
	"slices"
	"strings"
	"testing"

	"hoopwright/layout/arch"
	"hoopwright/layout/catalog"
	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// rowsOn hangs six rows a wall on the arch, as strings of .15 in wire in the bays beside it.
func rowsOn(in arch.Input) arch.Input {
	in.Loads = slices.Clone(in.Loads)
	for i := range 6 {
		for _, tape := range []measure.Length{foot * measure.Length(i+1), 241*measure.Inch - foot*measure.Length(i+1)} {
			in.Loads = append(in.Loads, arch.Load{From: tape, To: tape, Weight: pound / 16, Run: 54 * measure.Inch, Thick: .3 * measure.Inch, Loose: true})
		}
	}
	return in
}

// TestLimits: just below the gust that a tunnel bears every stake, bar, pipe and guy holds by its own formula, just above it one does not; the figures to act at follow from it.
func TestLimits(t *testing.T) {
	shallow := hoop()
	shallow.Spec.Stake.Depth, shallow.Spec.Stake.Length = 12*measure.Inch, 40*measure.Inch
	for name, c := range map[string]struct {
		in   arch.Input
		guys spec.Guys
		want Cause
	}{
		"shallow stakes": {shallow, guyed(7*foot, 1, 6), CauseStake},
		"guyed well":     {hoop(), guyed(7*foot, 1, 3, 6), CausePipe},
		"no guys":        {hoop(), spec.Guys{}, CauseLeans},
	} {
		tun := tunnel(6, c.in, c.guys)
		w := tun.Weather()
		b := w.Bears[0]
		if b.Built.Cause != c.want || b.Built.Gust <= 0 || b.Built.Gust >= mostGust {
			t.Errorf("%s: %+v", name, b.Built)
		}
		k := tun.Arches[0].Kind
		if c.want == CauseStake { // Broms, by another route: the depth that this gust asks is the depth it has
			at, over := k.Depth(b.Soil, b.Built.Gust), k.Depth(b.Soil, b.Built.Gust+1.1*measure.MPH)
			if deep := c.in.Spec.Stake.Depth; at > deep || over <= deep {
				t.Errorf("%s: the gust asks %g in of depth, one above it %g", name, at.Inches(), over.Inches())
			}
		}
		if inside := math.Min(float64(HouseGust), .6*float64(b.Built.Gust)); float64(w.Inside) > inside+1e-9 || float64(w.Inside) < inside-float64(measure.MPH) {
			t.Errorf("%s: inside until %g of %g m/s", name, float64(w.Inside), float64(b.Built.Gust))
		}
		if float64(w.Down) > .8*float64(b.Stripped.Gust)+1e-9 || w.Strip != 0 || w.Down < w.Inside {
			t.Errorf("%s: down at %g of %g m/s, strip at %g", name, float64(w.Down), float64(b.Stripped.Gust), float64(w.Strip))
		}
		if _, moment := k.Asks(w.Test); math.Abs(moment-w.Asks) > 1e-9 {
			t.Errorf("%s: stakes are tried with %g of %g N·m", name, w.Asks, moment)
		}
	}
}

// TestWeatherOrder: more soil, more depth and fewer lights never bear less, and a taller arch of the same pipe bears less.
func TestWeatherOrder(t *testing.T) {
	bears := func(in arch.Input) (Weather, measure.Speed) {
		w := tunnel(6, in, guyed(7*foot, 1, 6)).Weather()
		return w, w.Bears[0].Built.Gust
	}
	plain := hoop()
	plain.Spec.Stake.Depth = 14 * measure.Inch
	_, soft := bears(plain)
	firm := plain
	firm.Soil = spec.Firm
	if _, v := bears(firm); v < soft {
		t.Errorf("firm soil bears %g, soft %g", float64(v), float64(soft))
	}
	unknown := plain
	unknown.Soil = spec.SoilUnknown
	w, v := bears(unknown)
	if len(w.Bears) != 2 || v > soft || w.Bears[0].Built.Gust > w.Bears[1].Built.Gust {
		t.Errorf("unknown soil: %+v", w.Bears)
	}
	w, hung := bears(rowsOn(plain))
	if b := w.Bears[0]; hung >= soft || b.Stripped.Gust <= hung || w.Gains <= 0 || w.Strip <= 0 || w.Strip > w.Down {
		t.Errorf("with rows %g, without %g, plain %g; strip %g, down %g", float64(hung), float64(b.Stripped.Gust), float64(soft), float64(w.Strip), float64(w.Down))
	}
	long := plain
	long.Spec.Left, long.Spec.Right = []measure.Length{12 * foot}, []measure.Length{12 * foot}
	if _, v := bears(long); v >= soft {
		t.Errorf("longer sticks bear %g, shorter %g", float64(v), float64(soft))
	}
	if w.Cover < 5 || w.Sway[1] <= w.Sway[0] || w.Ice[0] < w.Ice[1] {
		t.Errorf("cover %g, sway %v, ice %v", w.Cover, w.Sway, w.Ice)
	}
}

// TestAdvice brings each finding about.
func TestAdvice(t *testing.T) {
	thin, _ := catalog.FindBar("3/8 in")
	for _, c := range []struct {
		code, says string
		level      finding.Level
		change     func(*arch.Input, *spec.Guys)
	}{
		{codeAlong, "Guy the end arches", finding.LookAt, func(in *arch.Input, g *spec.Guys) { *g = spec.Guys{} }},
		{codeAlong, "guys and all", finding.LookAt, func(in *arch.Input, g *spec.Guys) { g.From, in.Loads[0].Weight = 3*foot, 4*pound }},
		{codeAlong, "Guy the other end as well", finding.LookAt, func(in *arch.Input, g *spec.Guys) { g.Arches = []int{6} }},
		{codeCloses, "A bar of 1/2 in", finding.LookAt, func(in *arch.Input, g *spec.Guys) { in.Spec.Stake.Bar, in.Spec.Span = thin, 72*measure.Inch }},
		{codeCloses, "driven", finding.LookAt, func(in *arch.Input, g *spec.Guys) { in.Spec.Stake.Depth = 10 * measure.Inch }},
		{codeCloses, "guy stakes deeper", finding.LookAt, func(in *arch.Input, g *spec.Guys) { g.Stake.Depth, g.From = 3*measure.Inch, 7*foot }},
		{codeCross, "faces", finding.LookAt, func(in *arch.Input, g *spec.Guys) { g.From = 95 * measure.Inch }},
		{codeRidge, "Pin each ridge socket", finding.Note, func(in *arch.Input, g *spec.Guys) {}},
		{codeIce, "as raised", finding.MustFix, func(in *arch.Input, g *spec.Guys) { in.Ice = 2 * measure.Inch }},
	} {
		in, guys := hoop(), guyed(7*foot, 1, 6)
		in.Loads = slices.Clone(in.Loads)
		c.change(&in, &guys)
		tun := tunnel(6, in, guys)
		i := slices.IndexFunc(tun.Judge(tun.Weather()), func(f finding.Finding) bool { return f.Code == c.code })
		if i < 0 {
			t.Errorf("%s (%s) is not found: %v", c.code, c.says, tun.Judge(tun.Weather()))
			continue
		}
		if f := tun.Judge(tun.Weather())[i]; f.Level != c.level || !strings.Contains(f.Text, c.says) || strings.Contains(f.Text, "NaN") || strings.Contains(f.Text, "%!") {
			t.Errorf("%s: %v %s", c.code, f.Level, f.Text)
		}
	}
}

// TestCalm: an arch that does not stand in still air has no figures for wind.
func TestCalm(t *testing.T) {
	in := hoop()
	in.Loads = []arch.Load{{To: 241 * measure.Inch, Weight: 60 * pound}}
	tun := tunnel(3, in, spec.Guys{})
	if w := tun.Weather(); w.Inside != 0 || len(w.Bears) != 0 || tun.Judge(w) != nil {
		t.Errorf("%+v", w)
	}
}
