package layout_test

import (
	"os"
	"strings"
	"testing"

	"hoopwright/layout"
	"hoopwright/layout/spec"
)

// BenchmarkLeftOpen solves the starter with guys, braces and stakes left open, and a wider one that needs more.
func BenchmarkLeftOpen(b *testing.B) {
	source, err := os.ReadFile("../examples/starter.yaml")
	if err != nil {
		b.Fatal(err)
	}
	var kept []string
	for _, line := range strings.Split(string(source), "\n") {
		if !strings.HasPrefix(line, "guys:") && !strings.HasPrefix(line, "  stake:") {
			kept = append(kept, line)
		}
	}
	for name, sticks := range map[string]string{"low": "[10 ft, 10 ft]", "tall": "[[10 ft, 1 ft], [10 ft, 1 ft]]"} {
		s, err := spec.Read("open.yaml", []byte(strings.ReplaceAll(strings.Join(kept, "\n"), "[10 ft, 10 ft]", sticks)))
		if err != nil {
			b.Fatal(err)
		}
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				layout.Solve(s)
			}
		})
	}
}
