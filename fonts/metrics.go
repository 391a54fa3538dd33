package fonts

import (
	"bytes"
	"slices"
)

// String returns the typeface's own name.
func (f Face) String() string { return table[f].name }

// Bytes returns a fresh copy of the font file: the PDF library changes the bytes it is given.
func (f Face) Bytes() []byte { return bytes.Clone(*table[f].file) }

// Width returns the advance of the string in ems, without kerning. Each glyph counts in whole thousandths, as the PDF writes it,
// so what is measured is what is drawn. A rune that the face lacks counts as the box drawn in its place.
func (f Face) Width(s string) float64 {
	m := table[f].metrics()
	thousandths := 0
	for _, r := range s {
		w, _ := m.of(r)
		thousandths += int(w)
	}
	return float64(thousandths) / 1000
}

// Covers reports whether the face has a glyph for the rune.
func (f Face) Covers(r rune) bool {
	_, ok := table[f].metrics().of(r)
	return ok
}

// Run returns the longest start of s that can be set in one face, that face, and its width in ems as Width tells it. A rune is set in f where f has it,
// else in the face of like weight that has it, else in any that has it; where none has it, it stays in f.
func (f Face) Run(s string) (use Face, end int, width float64) {
	use = f
	thousandths := 0
	for i, r := range s {
		face, advance, _ := f.setting(r)
		if i == 0 {
			use = face
		} else if face != use {
			return use, i, float64(thousandths) / 1000
		}
		thousandths += int(advance)
	}
	return use, len(s), float64(thousandths) / 1000
}

// setting returns the face that a rune asked for in f is set in, its advance there, and whether the face has it.
func (f Face) setting(r rune) (Face, uint16, bool) {
	missing, ok := table[f].metrics().of(r)
	if ok {
		return f, missing, true
	}
	for _, g := range table[f].instead {
		if advance, ok := table[g].metrics().of(r); ok {
			return g, advance, true
		}
	}
	return f, missing, false
}

// Missing returns the runes of s that no face of the packet has, each once, in the order they appear. A line break is not a rune to be set.
func Missing(s string) []rune {
	var missing []rune
	for _, r := range s {
		if _, _, ok := Text.setting(r); !ok && r != '\n' && !slices.Contains(missing, r) {
			missing = append(missing, r)
		}
	}
	return missing
}
