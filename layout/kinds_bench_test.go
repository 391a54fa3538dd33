package layout_test

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"hoopwright/layout"
	"hoopwright/layout/spec"
)

// BenchmarkManyKinds solves 240 arches, nearly each with its own levels and so its own shape, season, wind and ice: with the span given, and with the span to be found.
func BenchmarkManyKinds(b *testing.B) {
	source, err := os.ReadFile("../examples/parkwalk.yaml")
	if err != nil {
		b.Fatal(err)
	}
	head, _, _ := strings.Cut(string(source), "lights:")
	before, rest, _ := strings.Cut(head, "  outlets:")
	_, address, _ := strings.Cut(rest, "  address:")
	var levels strings.Builder
	levels.WriteString("  levels:\n")
	for i := 1; i <= 240; i++ {
		fmt.Fprintf(&levels, "    - {arch: %d, left: 0 mm, right: %.1f mm}\n", i, 0.4*float64(i*97%240))
	}
	for name, span := range map[string]string{"span given": "span: 8 ft 6 in", "height given": "height: 9 ft"} {
		text := strings.NewReplacer("arches: 60", "arches: 240", "span: 8 ft 6 in", span).Replace(before) + levels.String() + "  address:" + address
		s, err := spec.Read("many.yaml", []byte(text))
		if err != nil {
			b.Fatal(err)
		}
		b.Run(name, func(b *testing.B) {
			kinds := 0
			for b.Loop() {
				kinds = len(layout.Solve(s).Kinds)
			}
			b.ReportMetric(float64(kinds), "kinds")
		})
	}
}
