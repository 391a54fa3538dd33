//go:build unix

package spec

import (
	"errors"
	"fmt"
	"strings"
	"syscall"
	"testing"
	"time"
)

// busy returns how long this process has kept a processor busy: unlike a clock, it does not mind what else the machine does.
func busy(t *testing.T) time.Duration {
	t.Helper()
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		t.Fatal(err)
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

// TestBombs reads files that are made to take long: each must be refused well within a second.
func TestBombs(t *testing.T) {
	var aliases strings.Builder
	aliases.WriteString("hoopwright: 1\na0: &a0 [x, x, x, x, x, x, x, x, x]\n")
	for i := 1; i < 12; i++ {
		fmt.Fprintf(&aliases, "a%d: &a%d [%s]\n", i, i, strings.TrimSuffix(strings.Repeat(fmt.Sprintf("*a%d, ", i-1), 9), ", "))
	}
	wide := "hoopwright: 1\nbig: &b [" + strings.Repeat("1,", 100_000) + "1]\nsite: {features: [" + strings.Repeat("{outline: *b},", 20_000) + "{}]}\n"
	for _, c := range []struct{ name, source string }{
		{"aliases of aliases", aliases.String()},
		{"aliases, padded to a mebibyte", aliases.String() + strings.Repeat("# x\n", 260_000)},
		{"one list many times", wide},
		{"deep brackets", "hoopwright: 1\na: " + strings.Repeat("[", 500_000)},
		{"deep blocks", "hoopwright: 1\na:\n" + strings.Repeat("- ", 9_000) + "x\n"},
		{"many keys", "hoopwright: 1\n" + strings.Repeat("a: 1\n", 100_000)},
		{"many unknown keys", "hoopwright: 1\n" + manyKeys(60_000)},
		{"a long key", "hoopwright: 1\n" + strings.Repeat("k", 1_000_000) + ": 1\n"},
		{"many colons", "hoopwright: 1\n" + strings.Repeat("a: b: c\n", 120_000)},
		{"many circuits", "hoopwright: 1\npower: {circuits: {" + manyCircuits(30_000) + "}}\n"},
		{"long quantity", "hoopwright: 1\ntitle: T\ntunnel: {arches: 3, spacing: " + strings.Repeat("9", 1_000_000) + " ft}\n"},
	} {
		began := busy(t)
		if len(c.source) > MostBytes+1000 {
			c.source = c.source[:MostBytes]
		}
		s, err := Read("bomb.yaml", []byte(c.source))
		if took := busy(t) - began; took > time.Second {
			t.Errorf("%s: took %v", c.name, took)
		}
		if s != nil || err == nil {
			t.Errorf("%s: was read", c.name)
			continue
		}
		var list Errors
		errors.As(err, &list)
		for _, e := range list {
			if len(e.Error()) > 2000 {
				t.Errorf("%s: a message of %d bytes", c.name, len(e.Error()))
				break
			}
		}
	}
}

func manyKeys(n int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, "key %d: 1\n", i)
	}
	return b.String()
}

func manyCircuits(n int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, "c%d: {volts: 1 V},", i)
	}
	return b.String()
}
