package fonts

import (
	"math"
	"strings"
	"sync"
	"testing"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// Every rune of the basic plane: coverage and advance as golang.org/x/image/font/sfnt reads them from the same file.
func TestMetricsAgainstSfnt(t *testing.T) {
	for _, f := range Faces() {
		ref, err := sfnt.Parse(f.Bytes())
		if err != nil {
			t.Fatal(err)
		}
		var buf sfnt.Buffer
		em := ref.UnitsPerEm()
		covered := 0
		for r := rune(0); r < 0xFFFF; r++ {
			glyph, err := ref.GlyphIndex(&buf, r)
			if err != nil {
				t.Fatal(err)
			}
			if f.Covers(r) != (glyph != 0) {
				t.Fatalf("%v: Covers(%U) = %v, sfnt glyph %d", f, r, f.Covers(r), glyph)
			}
			adv, err := ref.GlyphAdvance(&buf, glyph, fixed.Int26_6(em)<<6, font.HintingNone)
			if err != nil {
				t.Fatal(err)
			}
			if r >= 0xD800 && r < 0xE000 {
				continue // halves of pairs are not runes
			}
			want := math.Round(float64(adv)/64*1000/float64(em)) / 1000
			if got := f.Width(string(r)); got != want {
				t.Fatalf("%v: Width(%U) = %v, sfnt %v", f, r, got, want)
			}
			if glyph != 0 {
				covered++
			}
		}
		if covered < 300 {
			t.Errorf("%v: only %d runes", f, covered)
		}
	}
}

// The runes the sheets are written with. Digits must share one width, or columns of figures do not line up.
func TestSheetRunes(t *testing.T) {
	const needed = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789 .,:;!?'\"()[]/+-=%&#@*<>_" +
		"′″×−°±–—·→≤≥Ω…’“”²³µ"
	for _, f := range Faces() {
		for _, r := range needed {
			if !f.Covers(r) {
				g, _, _ := f.setting(r)
				t.Logf("%v lacks %c, set in %v", f, r, g)
				if !g.Covers(r) {
					t.Errorf("no face has %c", r)
				}
			}
		}
		for _, r := range "123456789" {
			if f.Width(string(r)) != f.Width("0") {
				t.Errorf("%v: %c is %v wide, 0 is %v", f, r, f.Width(string(r)), f.Width("0"))
			}
		}
	}
}

func TestRun(t *testing.T) {
	type run struct {
		face Face
		text string
	}
	tests := []struct {
		face Face
		text string
		want []run
	}{
		{Figure, "12′-7", []run{{Figure, "12′-7"}}},
		{FigureBold, "Ł3", []run{{Head, "Ł"}, {FigureBold, "3"}}},
		{Figure, "ač4", []run{{Figure, "a"}, {Text, "č"}, {Figure, "4"}}},
		{Text, "x✓", []run{{Text, "x"}, {Figure, "✓"}}}, // only B612 has the tick
		{Text, "漢x", []run{{Text, "漢x"}}},               // nobody has it: stays
		{Text, "a\xffb", []run{{Text, "a\xffb"}}},
		{Text, "", nil},
	}
	for _, tt := range tests {
		rest := tt.text
		var got []run
		for rest != "" {
			f, n, _ := tt.face.Run(rest)
			if n <= 0 {
				t.Fatalf("%q: no progress at %q", tt.text, rest)
			}
			got = append(got, run{f, rest[:n]})
			rest = rest[n:]
		}
		if len(got) != len(tt.want) {
			t.Errorf("%v %q: %v, want %v", tt.face, tt.text, got, tt.want)
			continue
		}
		for i := range got {
			if got[i] != tt.want[i] {
				t.Errorf("%v %q: %v, want %v", tt.face, tt.text, got, tt.want)
			}
		}
	}
}

func TestMissing(t *testing.T) {
	if got := string(Missing("Łódź 3′ 漢字漢\nč")); got != "漢字" {
		t.Errorf("Missing = %q", got)
	}
	if got := Missing("plain"); got != nil {
		t.Errorf("Missing = %q", got)
	}
}

func TestBytesAreFresh(t *testing.T) {
	a := Text.Bytes()
	a[0] = 99
	if Text.Bytes()[0] == 99 {
		t.Error("Bytes returned the embedded file itself")
	}
}

func TestBrokenFiles(t *testing.T) {
	file := Text.Bytes()
	for _, n := range []int{0, 3, 11, 40, 300, len(file) / 2} {
		if _, err := parse(file[:n]); err == nil {
			t.Errorf("%d bytes accepted", n)
		}
	}
	if _, err := parse([]byte(strings.Repeat("OTTO", 10))); err == nil {
		t.Error("CFF file accepted")
	}
}

func TestTwoReaders(t *testing.T) {
	var wg sync.WaitGroup
	for range 4 {
		wg.Go(func() { _ = FigureBold.Width("22′-6 1/2″") })
	}
	wg.Wait()
}
