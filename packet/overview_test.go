package packet

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"hoopwright/draw/paper"
	"hoopwright/examples"
	"hoopwright/layout"
	"hoopwright/layout/finding"
	"hoopwright/layout/spec"
)

// planOf solves a spec.
func planOf(t *testing.T, source []byte) *layout.Plan {
	t.Helper()
	s, err := spec.Read("test.yaml", source)
	if err != nil {
		t.Fatal(err)
	}
	return layout.Solve(s)
}

func examplePlan(t *testing.T, name string) *layout.Plan {
	t.Helper()
	source, err := examples.Files.ReadFile(name + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	return planOf(t, source)
}

// plansForSheets are the examples and some odd tunnels, invented: one arch, two, no ridge, no lights, forty.
func plansForSheets(t *testing.T) map[string]*layout.Plan {
	t.Helper()
	plans := map[string]*layout.Plan{}
	for _, name := range []string{"garden", "schoolyard", "parkwalk", "starter"} {
		plans[name] = examplePlan(t, name)
	}
	for n, more := range map[int]string{1: "", 2: "ridge: false\n", 3: "guys: {arches: [1, last], from: 5 ft, out: 5 ft}\nsite: {soil: frozen}\n", 40: ""} {
		spacing := "spacing: 4 ft 3 in"
		if n == 1 {
			spacing = "opening: {width: 4 ft}"
		}
		title := strings.Repeat("A long walk under ten thousand lights by the water and back, ", n%3+1)
		plans[fmt.Sprint(n)] = planOf(t, fmt.Appendf(nil, "hoopwright: 1\ntitle: %q\nunits: imperial\ntunnel: {arches: %d, %s}\narch: {pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft}\n%s", title, n, spacing, more))
	}
	return plans
}

// framedSheet binds one sheet of a plan and returns its pages with the live area each must keep to.
func framedSheet(t *testing.T, plan *layout.Plan, word string) ([]*paper.Page, paper.Rect) {
	t.Helper()
	doc, err := Bind(plan, Options{Sheets: []string{word}, Date: time.Date(2026, 11, 1, 0, 0, 0, 0, time.UTC)})
	if err != nil {
		t.Fatal(err)
	}
	size, _ := paper.Sheet(plan.Spec.Paper)
	live := paper.Rect{X: punchMargin, Y: clipZone, W: size.W - punchMargin - edgeMargin, H: size.H - clipZone - edgeMargin - blockHeight}
	return doc.Pages, live
}

// wordsOf returns a page's texts in order.
func wordsOf(pages ...*paper.Page) []string {
	var list []string
	for _, page := range pages {
		for _, op := range page.Ops {
			if text, ok := op.(paper.Text); ok {
				list = append(list, text.String)
			}
		}
	}
	return list
}

// keepsTo reports texts and lines that leave the live area; the frame's own lie in the clip zone and in the block at the foot.
func keepsTo(t *testing.T, name string, pages []*paper.Page, live paper.Rect) {
	t.Helper()
	block := live.Bottom() + 0.01
	for i, page := range pages {
		for _, op := range page.Ops {
			switch op := op.(type) {
			case paper.Text:
				right := op.At.X + op.Lettering.Width(op.String)
				if op.At.X < live.X-0.01 || right > live.Right()+0.01 || op.At.Y > live.Bottom()-blockGap && op.At.Y < block {
					t.Errorf("%s, page %d: %q runs from %.1f to %.1f at %.1f, out of %v", name, i+1, op.String, op.At.X, right, op.At.Y, live)
				}
				if op.Lettering.Size < paper.Floor.Size {
					t.Errorf("%s, page %d: %q is set in %v pt", name, i+1, op.String, op.Lettering.Size)
				}
			case paper.Stroke:
				for _, piece := range op.Path.Flatten(2) {
					for _, p := range piece {
						if p.X < live.X-1.01 || p.X > live.Right()+1.01 {
							t.Errorf("%s, page %d: a line reaches %v", name, i+1, p)
						}
					}
				}
			}
		}
	}
}

func TestOverviewIsOnePage(t *testing.T) {
	for name, plan := range plansForSheets(t) {
		pages, live := framedSheet(t, plan, "overview")
		if len(pages) != 1 {
			t.Errorf("%s: %d pages", name, len(pages))
		}
		keepsTo(t, name, pages, live)
		all := strings.Join(wordsOf(pages...), "\n")
		for _, want := range []string{"Arches", "What this is, and is not", "The sheets, and who gets which", "Before building"} {
			if !strings.Contains(all, want) {
				t.Errorf("%s: no %q", name, want)
			}
		}
	}
}

// The list of sheets is whole however many there are, and the picture gives way to it.
func TestOverviewListsEverySheet(t *testing.T) {
	plan := examplePlan(t, "garden")
	b := &binder{plan: plan, spec: plan.Spec, size: paper.Rect{W: 215.9, H: 279.4}}
	for i := range 16 {
		b.contents = append(b.contents, entry{fmt.Sprintf("Sheet %d", i), "somebody", 10 * i, 10*i + 9})
	}
	pages := b.overview()
	live := paper.Rect{X: punchMargin, Y: clipZone, W: b.size.W - punchMargin - edgeMargin, H: b.size.H - clipZone - edgeMargin - blockHeight}
	keepsTo(t, "sixteen sheets", []*paper.Page{pages[0].page}, live)
	if n := countOf(wordsOf(pages[0].page), "somebody"); n != 16 {
		t.Errorf("%d of 16 sheets listed", n)
	}
}

// However many findings there are, the page says how many it leaves out, and the worst come first.
func TestOverviewClipsFindings(t *testing.T) {
	plan := examplePlan(t, "garden")
	for i := range 40 {
		plan.Findings = append(plan.Findings, finding.Finding{Level: finding.LookAt, Code: fmt.Sprintf("odd-thing-%d", i), Text: strings.Repeat("It is odd. ", 9)})
	}
	plan.Findings = append([]finding.Finding{{Level: finding.MustFix, Code: "cannot-be", Text: "It cannot be built so. Make it 3 in wider."}}, plan.Findings...)
	pages, live := framedSheet(t, plan, "overview")
	keepsTo(t, "many findings", pages, live)
	words := wordsOf(pages...)
	all := strings.Join(words, "\n")
	if len(pages) != 1 || !strings.Contains(all, "Must fix: cannot-be\n") || !strings.Contains(all, "more in `hoopwright check`.") {
		t.Errorf("%d pages with\n%s", len(pages), all)
	}
	told := strings.Count(all, "Look at: odd-thing-")
	var left int
	for _, w := range words {
		fmt.Sscanf(w, "And %d more", &left)
	}
	if told == 0 || told+left != 40 {
		t.Errorf("%d told and %d left out of 40", told, left)
	}
}

func TestRemarksFillTheirBox(t *testing.T) {
	list := []remark{remarkOn(finding.Finding{Level: finding.MustFix, Code: "a", Text: "One short sentence. And a second one that is somewhat longer than it."}),
		remarkOn(finding.Finding{Level: finding.LookAt, Code: "b", Text: "One short sentence. And a second one that is somewhat longer than it."})}
	width := paper.Length(80)
	full := setHeight(list, width)
	for h := paper.Length(2); h < full+10; h += 1.3 {
		texts := fitRemarks(list, paper.Rect{W: width, H: h})
		used := paper.Length(0)
		for i, text := range texts {
			used += list[i].height(text, width)
		}
		if len(texts) < len(list) {
			used += paper.Floor.Leading()
		}
		if used > h+1e-9 && len(texts) > 0 {
			t.Errorf("%v of %v mm used", used, h)
		}
		if h >= full && (len(texts) != 2 || texts[1] != list[1].versions[0]) {
			t.Errorf("room for all, told %q", texts)
		}
	}
}
