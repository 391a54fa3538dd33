package packet

import (
	"bytes"
	"strings"
	"testing"

	"hoopwright/draw/paper"
	"hoopwright/draw/pdf"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// The blank form is two pages in either system of units, keeps to the house rules for paper and to its live area, and asks for everything that a spec
// says of a site: those are the keys of the file format's site section.
func TestSiteVisitAsksForTheSite(t *testing.T) {
	for _, units := range []measure.System{measure.Imperial, measure.Metric} {
		doc := SiteVisit(units, issued)
		if len(doc.Pages) != 2 {
			t.Fatalf("%v: %d pages", units, len(doc.Pages))
		}
		var all strings.Builder
		for i, page := range doc.Pages {
			lowest := paper.Length(0) // of what stands over the foot
			foot := page.Size.H - edgeMargin - visitBox
			for _, op := range page.Ops {
				switch op := op.(type) {
				case paper.Text:
					checkText(t.Errorf, page, op)
					all.WriteString(op.String + "\n")
					if op.At.Y < foot {
						lowest = max(lowest, op.At.Y)
					}
				case paper.Stroke:
					checkPath(t.Errorf, page, op.Path)
				}
			}
			if lowest > foot-1 || lowest < foot-30 {
				t.Errorf("%v, page %d: the last line stands at %.1f mm, over a foot at %.1f", units, i+1, lowest, foot)
			}
		}
		for _, want := range []string{"Sketch.", "Fixed marks.", "from D", "Levels.", "level string", "at one height", "Breaker", "Sockets", "Also", "Overhead.", "Buried.", "Marked by", "Soil.", "all round?", "site.exposure", "Exit, middle", "site.start.toward", "site.outlets[].from"} {
			if !strings.Contains(all.String(), want) {
				t.Errorf("%v: nothing asks for %q", units, want)
			}
		}
	}
}

// A page that is too full for its form would go on to a third one: what is set must fit on the first it begins.
func TestSiteVisitFits(t *testing.T) {
	for _, units := range []measure.System{measure.Imperial, measure.Metric} {
		doc := SiteVisit(units, issued)
		for i, first := range []string{"Measures a yard before anything", "4. The walk."} {
			found := false
			for _, op := range doc.Pages[i].Ops {
				if x, ok := op.(paper.Text); ok && strings.HasPrefix(x.String, first) {
					found = true
				}
			}
			if !found {
				t.Errorf("%v: page %d has lost its beginning, %q", units, i+1, first)
			}
		}
		var a, b bytes.Buffer
		if err := pdf.Write(&a, doc); err != nil {
			t.Fatal(err)
		}
		if err := pdf.Write(&b, SiteVisit(units, issued)); err != nil || !bytes.Equal(a.Bytes(), b.Bytes()) {
			t.Errorf("%v: two forms of one day differ, %v", units, err)
		}
	}
}

// Every line of the form is typed into a key of the spec that there is, and buried lines come before any peg.
func TestSiteVisitMapsToKeys(t *testing.T) {
	known := map[string]bool{}
	for _, k := range spec.Keys(measure.Imperial) {
		known[k.Path] = true
	}
	parts := visitParts()
	if parts[0].Name != "Buried" {
		t.Errorf("%s comes before the buried lines", parts[0].Name)
	}
	var said strings.Builder
	for _, page := range SiteVisit(measure.Imperial, issued).Pages {
		for _, op := range page.Ops {
			if x, ok := op.(paper.Text); ok {
				said.WriteString(x.String + " ")
			}
		}
	}
	for _, p := range parts {
		if len(p.Keys) == 0 {
			t.Errorf("%s is typed into nothing", p.Name)
		}
		for _, key := range p.Keys {
			if !known[key] {
				t.Errorf("%s is typed into %s, which is no key", p.Name, key)
			}
			if p.Name != "Foot" && !strings.Contains(said.String(), key) {
				t.Errorf("the form does not say that %s is typed into %s", p.Name, key)
			}
		}
	}
}
