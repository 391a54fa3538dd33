package main

import (
	"os"
	"strings"
	"testing"
)

// Three wishes of ours, asked and answered by script in one go: the spec passes check, and the packet is made where it is wanted. An answer that cannot be read is asked for again.
func TestAskedWishesStand(t *testing.T) {
	for name, script := range map[string]string{
		"ten feet wide with rows in two colours, half of it answered twice": "Birch Lane\nten feet\n10 ft\n8 ft\n30 ft\n\n10 ft\n\nrows warm, red\nsoft\nsuburban\nleft 12 ft, behind 6 ft\n20 A\nyes\nno\nno\n\npublic\nno\n",
		"nothing but Enter":               strings.Repeat("\n", 18),
		"a child's walk, with its packet": "Fern Walk\n6 ft\n7 ft\n12 ft\n1/2 inch pvc\n\n\nlegs red, green\n?\n?\nright 8 ft, ahead 3 ft\n?\n?\n?\n16 ft\nporch post 9 ft 4 in, 14 ft behind\nchildren\nyes\n",
	} {
		t.Run(name, func(t *testing.T) {
			inFolder(t, nil)
			code, out, errs := call(t, script, "starter", "--ask")
			if code != 0 || out != "" {
				t.Fatalf("exit %d: %s%s", code, out, errs)
			}
			if code, out, errs := call(t, "", "check", "tunnel.yaml"); code != 0 {
				t.Errorf("check: exit %d: %s%s", code, out, errs)
			}
			_, err := os.Stat("tunnel.pdf")
			if wanted := strings.HasSuffix(script, "yes\n"); wanted != (err == nil) {
				t.Errorf("packet wanted %v, %v", wanted, err)
			}
		})
	}
}

// The same from options, for scripts: nothing is asked, nothing that is there is overwritten.
func TestWishFromOptions(t *testing.T) {
	inFolder(t, nil)
	args := []string{"starter", "--width", "9 ft", "--height", "8 ft", "--length", "30 ft"}
	code, _, errs := call(t, "", args...)
	if code != 0 || !strings.Contains(errs, "wrote tunnel.yaml") || !strings.Contains(errs, "The pipe was chosen") {
		t.Errorf("exit %d: %s", code, errs)
	}
	before, _ := os.ReadFile("tunnel.yaml")
	if code, _, errs := call(t, "", args...); code != 3 || !strings.Contains(errs, "tunnel.yaml is there already") {
		t.Errorf("exit %d: %s", code, errs)
	}
	if after, _ := os.ReadFile("tunnel.yaml"); string(after) != string(before) || len(before) == 0 {
		t.Error("tunnel.yaml was changed")
	}
	if code, _, errs := call(t, "", "starter", "m.yaml", "--width", "wide"); code != 2 || !strings.Contains(errs, "--width: ") {
		t.Errorf("exit %d: %s", code, errs)
	}
	if code, out, _ := call(t, "", "starter", "-", "-q", "--width", "2.4 m", "--height", "2.4 m", "--length", "8 m"); code != 0 || !strings.Contains(out, "units: metric") || !strings.Contains(out, "pvc-u") {
		t.Errorf("exit %d: %s", code, out)
	}
}
