package pdf

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
	"math"
	"os"
	"os/exec"
	"regexp"
	"strings"
	"testing"
	"time"

	"hoopwright/draw/paper"
	"hoopwright/fonts"
)

// contents returns each page's operators, found by the page's own reference.
func contents(t *testing.T, data []byte) []string {
	t.Helper()
	var pages []string
	for _, m := range regexp.MustCompile(`(?s)/Type /Page\n.*?/Contents (\d+) 0 R`).FindAllSubmatch(data, -1) {
		head := fmt.Appendf(nil, "\n%s 0 obj\n", m[1])
		at := bytes.Index(data, head)
		from := at + bytes.Index(data[at:], []byte("stream\n")) + len("stream\n")
		z, err := zlib.NewReader(bytes.NewReader(data[from:]))
		if err != nil {
			t.Fatal(err)
		}
		ops, err := io.ReadAll(z)
		if err != nil {
			t.Fatal(err)
		}
		pages = append(pages, string(ops))
	}
	return pages
}

// The operators themselves, which structure checkers do not read (ISO 32000-1, annex A lists them with their operands).
func TestOperators(t *testing.T) {
	operands := map[string]int{"w": 1, "J": 1, "j": 1, "d": -1, "RG": 3, "rg": 3, "m": 2, "l": 2, "c": 6, "h": 0, "S": 0, "f": 0, "q": 0, "Q": 0, "cm": 6,
		"BT": 0, "ET": 0, "Tf": 2, "Td": 2, "Tj": 1, "BDC": -1, "EMC": 0, "g": 1, "G": 1}
	number := regexp.MustCompile(`^-?[0-9]+(\.[0-9]+)?$`)
	literal := regexp.MustCompile(`(?s)\((?:\\.|[^\\()])*\)`)
	for i, page := range contents(t, render(t, demo())) {
		page = literal.ReplaceAllString(page, "(text)")
		depth, marked, font, given := 0, 0, false, 0
		for _, word := range strings.Fields(strings.NewReplacer("[", " [ ", "]", " ] ").Replace(page)) {
			n, known := operands[word]
			switch {
			case known:
				if n >= 0 && given != n {
					t.Errorf("page %d: %s with %d operands", i+1, word, given)
				}
				given = 0
				switch word {
				case "q":
					depth++
				case "Q":
					depth--
				case "BDC":
					marked++
				case "EMC":
					marked--
				case "Tf":
					font = true
				case "Tj":
					if !font {
						t.Errorf("page %d: text before a font", i+1)
					}
				}
				if depth < 0 || marked < 0 {
					t.Fatalf("page %d: %s without its opening", i+1, word)
				}
			case number.MatchString(word):
				if word == "-0" || word == "-0.00" {
					t.Errorf("page %d: %s", i+1, word)
				}
				given++
			case word == "(text)" || word[0] == '/' || word[0] == '<' || word == "[" || word == "]" || word == ">>":
				given++
			default:
				t.Errorf("page %d: unknown word %q", i+1, word)
			}
		}
		if depth != 0 || marked != 0 {
			t.Errorf("page %d: %d q and %d BDC left open", i+1, depth, marked)
		}
	}
}

// What cannot be drawn is refused with the sheet's name; nothing is written.
func TestRefused(t *testing.T) {
	letter := paper.Rect{W: 215.9, H: 279.4}
	nan := paper.Length(math.NaN())
	with := func(op paper.Op) Document {
		return Document{Pages: []*paper.Page{{Name: "stakes", Size: letter, Ops: []paper.Op{op}}}}
	}
	for name, doc := range map[string]Document{
		"no pages":      {},
		"no size":       {Pages: []*paper.Page{{Name: "stakes"}}},
		"infinite size": {Pages: []*paper.Page{{Name: "stakes", Size: paper.Rect{W: paper.Length(math.Inf(1)), H: 3}}}},
		"NaN line":      with(paper.Stroke{Path: paper.Polyline(paper.Point{X: nan}, paper.Point{}), Pen: paper.Thin}),
		"NaN dash":      with(paper.Stroke{Path: paper.Polyline(paper.Point{X: nan}, paper.Point{X: 4}), Pen: paper.Hidden}),
		"infinite fill": with(paper.Fill{Path: paper.Circle(paper.Point{}, paper.Length(math.Inf(1)))}),
		"NaN text":      with(paper.Text{At: paper.Point{Y: nan}, String: "x", Lettering: paper.Body}),
		"NaN angle":     with(paper.Text{String: "x", Lettering: paper.Body, Angle: math.NaN()}),
		"NaN size":      with(paper.Text{String: "x", Lettering: paper.Body.Sized(paper.PointSize(math.NaN()))}),
		"broken UTF-8":  with(paper.Text{String: "a\xe2", Lettering: paper.Body}),
		"past U+FFFF":   with(paper.Text{String: "light 💡", Lettering: paper.Body}),
		"two names":     {Pages: with(nil).Pages, Attachments: []Attachment{{Name: "a", Relationship: "Data"}, {Name: "a", Relationship: "Data"}}},
		"a path":        {Pages: with(nil).Pages, Attachments: []Attachment{{Name: "../a", Relationship: "Data"}}},
		"a role":        {Pages: with(nil).Pages, Attachments: []Attachment{{Name: "a", Relationship: "Friend"}}},
	} {
		var out bytes.Buffer
		err := Write(&out, doc)
		if err == nil || out.Len() > 0 {
			t.Errorf("%s: %d bytes written, error %v", name, out.Len(), err)
		}
		if len(doc.Pages) > 0 && doc.Attachments == nil && err != nil && !strings.Contains(err.Error(), "stakes") {
			t.Errorf("%s: %v does not name the sheet", name, err)
		}
	}
}

// Only the document's date is in the file: no other year, whatever the clock and the zone say.
func TestNoOtherDate(t *testing.T) {
	data := render(t, demo())
	year := fmt.Sprint(time.Now().Year())
	var text bytes.Buffer
	for _, part := range bytes.Split(data, []byte("stream\n")) {
		if i := bytes.Index(part, []byte("endobj")); i >= 0 { // outside compressed streams
			text.Write(part[i:])
		} else if !bytes.Contains(part, []byte("endstream")) {
			text.Write(part)
		}
	}
	if strings.Contains(text.String(), "D:"+year) || strings.Contains(string(data), year+"-") {
		t.Errorf("the current year %s is in the file", year)
	}
	if !strings.Contains(text.String(), "D:20311106190000+00'00'") {
		t.Error("the document's date is not in the file in UTC")
	}
}

// The same bytes from another process in another time zone.
func TestSameBytesElsewhere(t *testing.T) {
	if os.Getenv("PDF_TEST_WRITE") != "" {
		os.Stdout.Write(render(t, demo()))
		os.Exit(0)
	}
	want := render(t, demo())
	for _, zone := range []string{"UTC", "Asia/Tokyo"} {
		cmd := exec.Command(os.Args[0], "-test.run=TestSameBytesElsewhere")
		cmd.Env = append(os.Environ(), "PDF_TEST_WRITE=1", "TZ="+zone)
		got, err := cmd.Output()
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(got, want) {
			t.Errorf("TZ=%s: %d other bytes", zone, len(got))
		}
	}
}

// The library measures every text as fonts does: measured is drawn.
func TestWidthsByTheLibrary(t *testing.T) {
	doc := demo()
	for _, face := range fonts.Faces() {
		c := canvas{lib: newLibrary(doc), used: map[fonts.Face]runes{}}
		c.font(face, 1000)
		for r := rune(' '); r < 0x2300; r++ {
			if !face.Covers(r) {
				continue
			}
			if got, want := c.lib.GetStringWidth(string(r)), face.Width(string(r))*1000; math.Abs(got-want) > 1e-6 {
				t.Fatalf("%v %U: the library says %v, fonts %v", face, r, got, want)
			}
		}
	}
}

// Dashes fitted to a line begin and end on it whole: n periods and the first dash make its length.
func TestDashesFit(t *testing.T) {
	for _, pen := range []paper.Pen{paper.Hidden, paper.Centre, paper.Other, paper.Tied} {
		for length := paper.Length(1); length < 90; length += 0.7 {
			line := paper.Polyline(paper.Point{X: 3, Y: 4}, paper.Point{X: 3 + length, Y: 4})
			for _, p := range dashPieces(line, pen) {
				if p.dash == nil {
					if length > 1.6*(pen.Dash[0]+pen.Dash[1]+9) {
						t.Errorf("%v mm drawn solid", length)
					}
					continue
				}
				period := paper.Length(0)
				for i, d := range p.dash {
					period += d
					if r := d / pen.Dash[i]; r < 0.6 || r > 1.7 {
						t.Errorf("%v mm: dash stretched by %v", length, r)
					}
				}
				n := float64((length - p.dash[0]) / period)
				if math.Abs(n-math.Round(n)) > 1e-9 || p.phase != 0 {
					t.Errorf("%v mm holds %v periods", length, n)
				}
			}
		}
	}
}
