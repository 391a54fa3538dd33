package paper

import (
	"regexp"
	"slices"
	"strings"
	"unicode/utf8"

	"hoopwright/fonts"
)

// Run is a piece of a text as it is set: its offset from the text's left baseline point before turning (x right, y down), its face and size.
type Run struct {
	Offset Point
	Face   fonts.Face
	Size   PointSize
	String string
}

// Set is a text broken into runs, with the bars of its built fractions as segments, offsets likewise.
type Set struct {
	Runs  []Run
	Bars  [][2]Point
	Width Length
}

// A fraction of a dimension: digits, a solidus, digits, at the start or after a space or a sign.
var fraction = regexp.MustCompile(`(^|[ \x{a0}±+−])([0-9]+)/([0-9]+)`)

// The built fraction's figures are this share of the lettering's size; smaller ones fill in when copied.
const fractionSize = 0.75

// Set breaks the text into runs. A rune that the face lacks is set in the text face of like weight.
func (l Lettering) Set(s string) Set {
	var set Set
	if l.Stacked {
		for {
			m := fraction.FindStringSubmatchIndex(s)
			if m == nil {
				break
			}
			set.plain(l.Face, l.Size, strings.TrimRight(s[:m[3]], " \u00a0"))
			set.fraction(l, s[m[4]:m[5]], s[m[6]:m[7]])
			s = s[m[1]:]
		}
	}
	set.plain(l.Face, l.Size, s)
	return set
}

// plain appends text on the baseline.
func (set *Set) plain(face fonts.Face, size PointSize, s string) {
	for s != "" {
		use, n, width := face.Run(s)
		set.Runs = append(set.Runs, Run{Point{set.Width, 0}, use, size, s[:n]})
		set.Width += Length(width) * size.Mm()
		s = s[n:]
	}
}

// fraction appends a numerator over a denominator, the bar at half the height of the capitals.
func (set *Set) fraction(l Lettering, num, den string) {
	size := PointSize(float64(l.Size) * fractionSize)
	em := l.Size.Mm()
	wn, wd := Length(l.Face.Width(num))*size.Mm(), Length(l.Face.Width(den))*size.Mm()
	w := max(wn, wd)
	gap := 0.10 * em
	left := set.Width + gap
	set.Runs = append(set.Runs,
		Run{Point{left + (w-wn)/2, -0.47 * em}, l.Face, size, num},
		Run{Point{left + (w-wd)/2, 0.25 * em}, l.Face, size, den})
	set.Bars = append(set.Bars, [2]Point{{left, -0.38 * em}, {left + w, -0.38 * em}})
	set.Width = left + w + gap
}

// printable puts ? in the place of what no face has: a mark that something stood there, never a hole.
func printable(s string) string {
	missing := fonts.Missing(s)
	if len(missing) == 0 {
		return s
	}
	return strings.Map(func(r rune) rune {
		if slices.Contains(missing, r) {
			return '?'
		}
		return r
	}, s)
}

// Width returns the length of the text as set.
func (l Lettering) Width(s string) Length {
	if l.Stacked && strings.Contains(s, "/") {
		return l.Set(s).Width
	}
	var width Length
	for s != "" {
		_, n, run := l.Face.Run(s)
		width += Length(run) * l.Size.Mm()
		s = s[n:]
	}
	return width
}

// Widest returns the length of the longest of some lines.
func (l Lettering) Widest(lines []string) (widest Length) {
	for _, s := range lines {
		widest = max(widest, l.Width(s))
	}
	return widest
}

// Ascent returns how far the lettering rises above its baseline, built fractions included.
func (l Lettering) Ascent() Length {
	if l.Stacked {
		return 1.02 * l.Size.Mm()
	}
	return 0.76 * l.Size.Mm()
}

// Descent returns how far it falls below.
func (l Lettering) Descent() Length {
	if l.Stacked {
		return 0.27 * l.Size.Mm()
	}
	return 0.22 * l.Size.Mm()
}

// Extent returns how far this text rises above its baseline and falls below it.
func (l Lettering) Extent(s string) (up, down Length) {
	l.Stacked = l.Stacked && fraction.MatchString(s)
	return l.Ascent(), l.Descent()
}

// Leading returns the distance from one baseline to the next in running text.
func (l Lettering) Leading() Length { return 1.28 * l.Size.Mm() }

// Wrap breaks the text between its words into lines no wider than the width; a word that is wider by itself is broken where the line is full. Newlines are kept.
func (l Lettering) Wrap(s string, width Length) []string {
	var lines []string
	for _, para := range strings.Split(s, "\n") {
		line, long := "", Length(0) // the line so far and its width: without kerning, widths add up
		for _, word := range Words(para) {
			next := l.Width(word)
			if line != "" {
				if with := long + l.Width(" ") + next; with <= width {
					line, long = line+" "+word, with
					continue
				}
				lines = append(lines, line)
			}
			for next > width {
				n := l.fill(word, width)
				if n == len(word) {
					break
				}
				lines = append(lines, word[:n])
				word = word[n:]
				next = l.Width(word)
			}
			line, long = word, next
		}
		lines = append(lines, line)
	}
	return lines
}

// fill returns the length in bytes of the longest start of a word that fits the width, one rune at least.
func (l Lettering) fill(word string, width Length) int {
	_, n := utf8.DecodeRuneInString(word)
	for n < len(word) {
		_, k := utf8.DecodeRuneInString(word[n:])
		if l.Width(word[:n+k]) > width {
			break
		}
		n += k
	}
	return n
}
