package crew

import (
	"math"

	"hoopwright/layout/ground"
	"hoopwright/layout/measure"
)

// Crowns are the crowns that ridge pieces join, arch 1 first: what a tape reads along them.
type Crowns struct {
	at   []crownSpot
	held bool // on a bend, where a tape pulled tight would slip off to the inside: a hand holds it to the ridge at each crown
}

// crownSpot is a crown: how far along the ridge, level and by its pieces, and how high above the datum.
type crownSpot struct{ level, pieces, high float64 }

// alongCrowns finds them; none without a ridge.
func (in Input) alongCrowns() Crowns {
	c := Crowns{held: !in.Ground.Straight}
	high := func(number int) float64 {
		left, right := ground.Levels(in.Spec, number)
		return float64((left+right)/2 + in.Arches[number-1].Crown)
	}
	for i, r := range in.Ridge {
		if i == 0 {
			c.at = append(c.at, crownSpot{high: high(1)})
		}
		last, next := c.at[i], high(r.Bay+1)
		long, climb := float64(r.Centres), next-last.high
		c.at = append(c.at, crownSpot{last.level + math.Sqrt(max(0, long*long-climb*climb)), last.pieces + long, next})
	}
	return c
}

// Joined reports whether ridge pieces lead to the crown of an arch.
func (c Crowns) Joined(number int) bool { return number <= len(c.at) }

// Apart is how long a tape is from one crown to another. Pulled tight it touches only crowns that none of the others between makes it pass above.
func (c Crowns) Apart(from, to int) measure.Length {
	if c.held {
		return measure.Length(c.at[to-1].pieces - c.at[from-1].pieces)
	}
	var on []crownSpot // that the tape lies on
	for _, s := range c.at[from-1 : to] {
		for n := len(on); n > 1 && (on[n-1].high-on[n-2].high)*(s.level-on[n-2].level) <= (s.high-on[n-2].high)*(on[n-1].level-on[n-2].level); n-- {
			on = on[:n-1]
		}
		on = append(on, s)
	}
	sum := 0.0
	for i := 1; i < len(on); i++ {
		sum += math.Hypot(on[i].level-on[i-1].level, on[i].high-on[i-1].high)
	}
	return measure.Length(sum)
}
