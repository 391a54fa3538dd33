package stock

import (
	"fmt"
	"math"
	"slices"

	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
)

// How far things go. Common practice, no source.
const (
	tiesInBag     = 100
	stakesToPaint = 60 // marks one can of paint makes
	archesToRoll  = 30 // one roll of flagging tape
	knotsOfGuy    = 3 * measure.Foot
	slackOfGuy    = 1.02 // a line tied by hand is never quite straight
)

// stakes lists stakes by bar and length, ready-cut, or the bars they are cut from; and a cap for every one: bare steel is capped
// until a pipe covers it, and a guy stake for good.
func (b *basket) stakes(in Input, cuts Cuts, offers []offer) {
	for _, o := range offers {
		switch {
		case !o.bar:
		case o.ready:
			b.readyStakes(in, o, cuts)
			b.sticks(o, cuts, in.Spec)
		default:
			b.sticks(o, cuts, in.Spec)
		}
	}
	b.add(Item{Item: "stake cap", Need: len(in.Stakes), Unit: Each, Where: whereSteel, Why: "one on every stake while it is bare; guy stakes keep theirs"})
}

// readyStakes lists stakes bought cut to length: all but those that bars of the shed give.
func (b *basket) readyStakes(in Input, o offer, cuts Cuts) {
	cut := map[PieceID]bool{}
	for _, bar := range cuts.Bars {
		for _, p := range bar.Pieces {
			cut[p.ID] = true
		}
	}
	type line struct {
		length     measure.Length
		legs, guys int
	}
	var lines []line
	for _, s := range in.Stakes {
		bar := in.Spec.ArchOf(s.Arch).Stake.Bar
		switch {
		case s.Bay > 0:
			bar = in.Spec.Braces.Peg.Bar
		case s.Guy:
			bar = in.Spec.Guys.Stake.Bar
		}
		if barItem(bar) != o.item || cut[PieceID{Steel: true, Stake: s.StakeID}] {
			continue
		}
		k := slices.IndexFunc(lines, func(l line) bool { return l.length == s.Length })
		if k < 0 {
			k = len(lines)
			lines = append(lines, line{length: s.Length})
		}
		if s.Guy {
			lines[k].guys++
		} else {
			lines[k].legs++
		}
	}
	for _, l := range lines {
		why := "under the legs"
		if l.guys > 0 {
			why = "for guys"
			if l.legs > 0 {
				why = fmt.Sprintf("%d under the legs, %d for guys", l.legs, l.guys)
			}
		}
		b.add(Item{Item: o.item + ", " + Sold(l.length, in.Spec.Units), Of: o.item, Length: l.length, Need: l.legs + l.guys, Unit: Each, Where: whereSteel, Why: why + "; bought cut to length"})
	}
}

// braces lists what holds braces: a clamp at each end of a pipe, or webbing with a buckle.
func (b *basket) braces(in Input) {
	n := 0
	for _, s := range in.Stakes {
		if s.Bay > 0 {
			n++
		}
	}
	if !in.Spec.Braces.Line {
		b.add(Item{Item: "hose clamp", Need: 2 * n, Unit: Each, Where: whereSundries, Why: "one at each end of a brace, around brace and leg or brace and peg; two turns of strong wire do as well"})
		return
	}
	per, unit := measure.By(in.Spec.Units, measure.Foot, measure.Metre), measure.By(in.Spec.Units, Feet, Metres)
	line := (in.Spec.BraceLength()*slackOfGuy + knotsOfGuy) * measure.Length(n)
	b.add(Item{Item: "webbing", Need: int(math.Ceil(float64(line / per))), Unit: unit, Where: whereSundries, Why: fmt.Sprintf("%d braces; 1 in (25 mm), bright, with a buckle each, no loops", n)})
}

// sundries lists line for guys, ties, paint and tape.
func (b *basket) sundries(in Input) {
	guys := 0
	line := measure.Length(0)
	for _, g := range in.Stakes {
		if !g.Guy || g.Bay > 0 {
			continue
		}
		guys++
		out := in.Spec.Guys.Out
		if k := slices.IndexFunc(in.Stakes, func(s ground.Stake) bool { return !s.Guy && s.Arch == g.Arch && s.Side == g.Side }); k >= 0 {
			leg := in.Stakes[k]
			out = measure.Length(math.Sqrt(float64((leg.X-g.X)*(leg.X-g.X)) + float64((leg.Y-g.Y)*(leg.Y-g.Y))))
		}
		from := in.Spec.Guys.From
		line += measure.Length(math.Sqrt(float64(out*out)+float64(from*from)))*slackOfGuy + knotsOfGuy
	}
	per, unit := measure.By(in.Spec.Units, measure.Foot, measure.Metre), measure.By(in.Spec.Units, Feet, Metres)
	b.add(Item{Item: "guy line", Need: int(math.Ceil(float64(line / per))), Unit: unit, Where: whereSundries,
		Why: fmt.Sprintf("%d guys; cord of 1/8 in (3 mm) or more, bright, that does not stretch", guys)})
	b.add(Item{Item: "line tightener", Need: guys, Unit: Each, Where: whereSundries})
	b.braces(in)
	ties := withSpares(in.Ties, in.Spec.Stock.Spares)
	b.add(Item{Item: fmt.Sprintf("zip ties %d", tiesInBag), Need: (ties + tiesInBag - 1) / tiesInBag, Unit: Bag, Where: whereSundries,
		Why: fmt.Sprintf("8 in (200 mm), for outdoors; %d with spares", ties)})
	b.add(Item{Item: "marking paint", Need: (len(in.Stakes) + stakesToPaint - 1) / stakesToPaint, Unit: Can, Where: whereSundries,
		Why: "white, as the locating service asks; marks every stake"})
	b.add(Item{Item: "flagging tape", Need: (in.Spec.Tunnel.Arches + archesToRoll - 1) / archesToRoll, Unit: Roll, Where: whereSundries,
		Why: "flags on pipe, guys and stakes"})
}
