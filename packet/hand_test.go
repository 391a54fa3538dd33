package packet

import (
	"slices"
	"strings"
	"testing"
)

// A strip for the pitch of a wrap tells every line of the charts that it serves, by that line's ten turns; each line has one, and that of most pipes comes first.
func TestPitchStripsServeEveryLine(t *testing.T) {
	for name, source := range specs(t) {
		l := binderOf(t, planOf(t, source)).lighting()
		strips, pipes := l.pitchStrips(), 0
		for i, s := range strips {
			if pipes += s.on; i > 0 && s.on > strips[i-1].on {
				t.Errorf("%s: %d pipes come after %d", name, s.on, strips[i-1].on)
			}
		}
		for _, c := range l.wrapCharts() {
			for _, line := range c.lines {
				pipes -= len(line.on)
				what, ten := l.tenTurns(line.wrap)
				if !slices.ContainsFunc(strips, func(s pitchStrip) bool { return slices.Contains(s.told, what+ten) && strings.Contains(s.words(), ten) }) {
					t.Errorf("%s: no strip tells %s%s", name, what, ten)
				}
			}
		}
		if pipes != 0 {
			t.Errorf("%s: strips serve %d pipes more than there are", name, pipes)
		}
	}
}
