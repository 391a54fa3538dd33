package packet

import (
	"bytes"
	"fmt"
	"io/fs"
	"math"
	"regexp"
	"strings"
	"testing"
	"time"

	"hoopwright/draw/paper"
	"hoopwright/draw/pdf"
	"hoopwright/examples"
	"hoopwright/fonts"
	"hoopwright/layout"
	"hoopwright/layout/spec"
)

var issued = time.Date(2026, 11, 20, 0, 0, 0, 0, time.UTC)

// specs are the embedded examples and a few small and odd tunnels beside them. All invented.
func specs(t *testing.T) map[string][]byte {
	t.Helper()
	list := map[string][]byte{
		"one arch": []byte("hoopwright: 1\ntitle: One hoop\ntunnel: {arches: 1}\narch: {pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft 2 in}\n"),
		"two arches, no lights": []byte("hoopwright: 1\ntitle: Two hoops\ntunnel: {arches: 2, spacing: 4 ft}\n" +
			"arch: {pipe: pvc sch40 3/4 in, sticks: [11 ft, 11 ft], span: 8 ft 2 in}\n"),
		"one stick, no ridge": []byte("hoopwright: 1\ntitle: Single sticks\ntunnel: {arches: 4, spacing: 1.1 m}\n" +
			"arch: {pipe: pvc-u pn16 20 mm, sticks: [5.8 m], span: 2 m, stake: {bar: 10 mm, length: 900 mm, depth: 450 mm}}\nguys: none\nridge: false\nlights: {wraps: [{where: legs, string: led 100 warm 230 V}]}\n"),
		"must fix": []byte("hoopwright: 1\ntitle: \"A title that is a good deal longer than any title block could hold without being cut short somewhere: Žižkov łódka 雪 🎄\"\n" +
			"tunnel: {arches: 3, spacing: 4 ft, opening: {width: 6 ft, height: 7 ft 8 in}}\narch: {pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft, stake: {bar: 3/8 in, length: 36 in, depth: 18 in}}\nguys: none\n" +
			"site: {start: {at: [10 ft, 10 ft], heading: 0 deg}, buried: [{name: gas line, line: [[0 ft, 10 ft], [30 ft, 11 ft]], keep: 24 in}]}\n"),
	}
	err := fs.WalkDir(examples.Files, ".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		list[path], err = examples.Files.ReadFile(path)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return list
}

// Words the packet must never print as a claim of its own. A spec's names may hold them; ours do not.
var claims = regexp.MustCompile(`(?i)\b(safe|safely|rated|compliant|code-compliant)\b`)

// TestEverySheetCanBeRead holds every page of every spec to the house rules for paper: text inside the printable area and out of the clip
// zone, large enough, covered by a face; coordinates finite.
func TestEverySheetCanBeRead(t *testing.T) {
	t.Parallel()
	for name, source := range specs(t) {
		t.Run(name, func(t *testing.T) {
			for i, page := range bound(t, source).Pages {
				for _, fault := range outOfReach(page) {
					t.Errorf("page %d (%s): %s", i+1, page.Title, fault)
				}
			}
		})
	}
}

// outOfReach returns where a page breaks the house rules for paper.
func outOfReach(page *paper.Page) (faults []string) {
	fault := func(format string, args ...any) { faults = append(faults, fmt.Sprintf(format, args...)) }
	if left, right := reach(page); left < punchMargin-0.01 && right > page.Size.W-punchMargin+0.01 {
		fault("texts from %.1f to %.1f mm leave no edge to punch", left, right)
	}
	texts := 0 // of the sheet's own, beside the frame's
	foot := page.Size.H - edgeMargin - footHigh
	for _, op := range page.Ops {
		switch op := op.(type) {
		case paper.Text:
			if op.At.Y > clipZone && op.At.Y < foot {
				texts++
			}
			checkText(fault, page, op)
		case paper.Stroke:
			checkPath(fault, page, op.Path)
			if op.Pen.Width < 0.25 {
				fault("a pen of %.2f mm", op.Pen.Width)
			}
		case paper.Fill:
			checkPath(fault, page, op.Path)
		}
	}
	if texts < 4 {
		fault("has %d texts beside its frame: next to nothing on it", texts)
	}
	return faults
}

// reach returns how far a page's texts go to the left and to the right.
func reach(page *paper.Page) (left, right paper.Length) {
	left = page.Size.W
	for _, op := range page.Ops {
		if text, ok := op.(paper.Text); ok {
			end := text.At.Add(paper.Polar(text.Lettering.Width(text.String), text.Angle))
			left, right = min(left, text.At.X, end.X), max(right, text.At.X, end.X)
		}
	}
	return left, right
}

func checkText(fault func(string, ...any), page *paper.Page, op paper.Text) {
	if missing := fonts.Missing(op.String); len(missing) > 0 {
		fault("no face has %q of %q", string(missing), op.String)
	}
	floor := paper.PointSize(11)
	if page.Name == "spec" || page.Name == "tags" || leafNumber(page.Name) > leafNumber("spec") { // read at a table, in the hand; the annex
		floor = 9
	}
	if op.Lettering.Size < floor {
		fault("%q is set at %v pt, under the floor of %v", op.String, op.Lettering.Size, floor)
	}
	if c := claims.FindString(op.String); c != "" {
		fault("claims %q in %q", c, op.String)
	}
	end := op.At.Add(paper.Polar(op.Lettering.Width(op.String), op.Angle))
	for _, p := range []paper.Point{op.At, end} {
		inside := p.X >= edgeMargin-0.01 && p.X <= page.Size.W-edgeMargin+0.01 && p.Y >= edgeMargin && p.Y <= page.Size.H-edgeMargin+0.01
		if !inside {
			fault("%q reaches (%.1f, %.1f) mm, outside what can be printed", op.String, p.X, p.Y)
		}
	}
}

func checkPath(fault func(string, ...any), page *paper.Page, path paper.Path) {
	for _, piece := range path.Flatten(0.05) {
		for _, p := range piece {
			if math.IsNaN(float64(p.X+p.Y)) || p.X < 4 || p.X > page.Size.W-4 || p.Y < 4 || p.Y > page.Size.H-4 {
				fault("a line reaches (%.1f, %.1f) mm, off the printable sheet", p.X, p.Y)
				return
			}
		}
	}
}

func TestSameSpecAndDateSameBytes(t *testing.T) {
	t.Parallel()
	for name, source := range specs(t) {
		var first, second bytes.Buffer
		if err := pdf.Write(&first, bound(t, source)); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		sp, err := spec.Read("spec.yaml", source)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if err := pdf.Write(&second, boundAnew(t, layout.Solve(sp))); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if !bytes.Equal(first.Bytes(), second.Bytes()) {
			t.Errorf("%s: two packets of one spec and date differ", name)
		}
		files, err := pdf.Attachments(first.Bytes())
		if err != nil || len(files) != 2 || !bytes.Equal(files[0].Data, source) || !bytes.Contains(files[1].Data, []byte("late modulus")) {
			t.Errorf("%s: the attached spec is not the spec: %d files, %v", name, len(files), err)
		}
	}
}

func TestSheetsAreChosenByWord(t *testing.T) {
	plan := examplePlan(t, "garden")
	doc, _, err := Bind(plan, Options{Sheets: []string{"stake", "stock"}, Date: issued})
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, p := range doc.Pages {
		names = append(names, p.Name)
	}
	if got := strings.Join(names, " "); !strings.HasPrefix(got, "stakes ") || !strings.Contains(got, " stock") || strings.Contains(got, "overview") {
		t.Errorf("the pages are %q, want the leaf of the stakes, then that of stock", got)
	}
	if _, _, err := Bind(plan, Options{Sheets: []string{"steaks"}}); err == nil || !strings.Contains(err.Error(), "stock, raise") {
		t.Errorf("an unknown sheet gave %v, want the words there are", err)
	}
}

// A packet with a must fix is printed, with a black band on every page that lists the codes.
func TestMustFixIsOnEveryPage(t *testing.T) {
	doc := bound(t, specs(t)["must fix"])
	for i, page := range doc.Pages {
		found := false
		for _, op := range page.Ops {
			text, ok := op.(paper.Text)
			found = found || ok && strings.HasPrefix(text.String, "DO NOT BUILD") && text.Lettering.Colour == paper.White
		}
		if !found {
			t.Errorf("page %d (%s) lacks the DO NOT BUILD band", i+1, page.Title)
		}
	}
}
