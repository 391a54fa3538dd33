package layout_test

import (
	"math"
	"strings"
	"testing"

	"hoopwright/layout/finding"
	"hoopwright/layout/ground"
	"hoopwright/layout/spec"
)

// By another way: the guy is walked along from its knot in small steps, in space, and measured from the neighbours' curves where it passes their planes. Whether it is told goes by that.
func TestGuyRubs(t *testing.T) {
	for out, rubs := range map[string]bool{"7 ft 6 in": true, "4 ft": false, "10 ft": false} {
		text := base.with("tunnel", "{arches: 6, spacing: 4 ft 3 in, opening: {width: 4 ft, height: 6 ft 8 in}}", "guys", "{arches: [1, 3, last], from: 7 ft 3 in, out: "+out+"}").text()
		p := solved(t, text)
		least := math.Inf(1)
		stake, _ := p.Ground.Stake(ground.StakeID{Arch: 3, Side: spec.Right, Guy: true, Way: ground.Away})
		var curve [][2]float64
		for _, q := range p.Arches[2].Kind.Curve {
			curve = append(curve, [2]float64{float64(q.X), float64(q.Y)})
		}
		at := func(high float64) (x float64) { // of the right leg, between the curve's points
			for i := len(curve) - 1; i > 0; i-- {
				if a, b := curve[i], curve[i-1]; a[1] <= high && high <= b[1] {
					return a[0] + (b[0]-a[0])*(high-a[1])/(b[1]-a[1])
				}
			}
			return math.NaN()
		}
		high := float64(stake.Tied)
		knot := at(high)
		for k := range 1000 {
			share := float64(k) / 1000
			along := share * float64(stake.Along-p.Ground.Stations[2].Along)
			for _, station := range p.Ground.Stations[3:] {
				if math.Abs(along-float64(station.Along-p.Ground.Stations[2].Along)) < 3 {
					x := knot + share*(float64(stake.Offset)-knot)
					least = min(least, math.Abs(x-at(high*(1-share))))
				}
			}
		}
		told := strings.Contains(strings.Join(codesOf(p.Findings), " "), "guy-rubs-leg")
		if told != rubs || (least < 75) != rubs {
			t.Errorf("%s out: told %v, %.0f mm by steps", out, told, least)
		}
	}
}

func codesOf(list []finding.Finding) (codes []string) {
	for _, f := range list {
		codes = append(codes, f.Code)
	}
	return codes
}
