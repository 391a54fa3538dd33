package layout_test

import (
	"os"
	"strconv"
	"strings"
	"testing"
	"time"

	"hoopwright/layout"
	"hoopwright/layout/dice"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// FuzzRules throws the dice for a spec, wise or not, and holds its plan to every rule. HOOPWRIGHT_THROWN throws more than the twelve.
func FuzzRules(f *testing.F) {
	seeds := uint64(12)
	if more, err := strconv.ParseUint(os.Getenv("HOOPWRIGHT_THROWN"), 10, 64); err == nil {
		seeds = more
	}
	for seed := range seeds {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, seed uint64) {
		text := dice.Whole(seed, 49)
		s, err := spec.Read("dice.yaml", []byte(text))
		if err != nil {
			return
		}
		began := time.Now()
		p := layout.Solve(s)
		if took := time.Since(began); took > 10*time.Second {
			t.Errorf("took %v", took)
		}
		for _, r := range rules {
			t.Run(strings.ReplaceAll(r.name, " ", "-"), func(t *testing.T) { r.hold(t, p) })
		}
		if t.Failed() {
			t.Log(text)
		}
	})
}

// The dice throw every key of the format, and the reader takes nearly all that they throw.
func TestDiceThrowEveryKey(t *testing.T) {
	const throws = 800
	var taken strings.Builder
	refused := 0
	for seed := range uint64(throws) {
		text := dice.Whole(seed, 240)
		if _, err := spec.Read("dice.yaml", []byte(text)); err != nil {
			refused++
			continue
		}
		taken.WriteString(text)
	}
	if refused*20 > throws {
		t.Errorf("%d of %d specs are refused", refused, throws)
	}
	for _, k := range spec.Keys(measure.Imperial) {
		name := k.Path[strings.LastIndexByte(k.Path, '.')+1:]
		if !strings.ContainsAny(name, "*[") && !strings.Contains(taken.String(), name+": ") {
			t.Errorf("%s is never thrown", k.Path)
		}
	}
}
