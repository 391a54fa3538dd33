package packet

import (
	"bytes"
	"math"
	"regexp"
	"slices"
	"strconv"
	"testing"
	"time"

	"github.com/klippa-app/go-pdfium"
	"github.com/klippa-app/go-pdfium/enums"
	"github.com/klippa-app/go-pdfium/references"
	"github.com/klippa-app/go-pdfium/requests"
	"github.com/klippa-app/go-pdfium/webassembly"
	"github.com/tetratelabs/wazero"
	wasm "github.com/tetratelabs/wazero/api"
	"github.com/tetratelabs/wazero/experimental"

	"hoopwright/draw/pdf"
	"hoopwright/examples"
	"hoopwright/layout"
	"hoopwright/layout/ground"
)

const pointsPerMm = 72 / 25.4

// printout is a packet as an outside reader, PDFium, finds it: written to bytes and opened again. It tells places on paper in millimetres from
// the sheet's top left corner.
type printout struct {
	t      *testing.T
	reader pdfium.Pdfium
	doc    references.FPDF_DOCUMENT
	height float64 // of a page, in points
}

// printed writes an example's sheets as a PDF and opens it with the reader.
func printed(t *testing.T, r pdfium.Pdfium, example string, sheets ...string) (*printout, *layout.Plan) {
	t.Helper()
	source, err := examples.Files.ReadFile(example)
	if err != nil {
		t.Fatal(err)
	}
	return printedSpec(t, r, source, sheets...)
}

// printedSpec writes a spec's sheets as a PDF and opens it with the reader.
func printedSpec(t *testing.T, r pdfium.Pdfium, source []byte, sheets ...string) (*printout, *layout.Plan) {
	t.Helper()
	plan := planOf(t, source)
	bound, _, err := Bind(plan, Options{Sheets: sheets, Date: issued})
	if err != nil {
		t.Fatal(err)
	}
	var file bytes.Buffer
	if err := pdf.Write(&file, bound); err != nil {
		t.Fatal(err)
	}
	data := file.Bytes()
	doc, err := r.OpenDocument(&requests.OpenDocument{File: &data})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { r.FPDF_CloseDocument(&requests.FPDF_CloseDocument{Document: doc.Document}) })
	return &printout{t: t, reader: r, doc: doc.Document}, plan
}

// spot is a place on paper in millimetres, y down.
type spot struct{ x, y float64 }

func (a spot) to(b spot) float64 {
	return math.Sqrt((a.x-b.x)*(a.x-b.x) + (a.y-b.y)*(a.y-b.y))
}

// drawing is the paths of one page, each as the points it was drawn through, curves' handles included.
func (p *printout) drawing(index int) (paths [][]spot) {
	p.t.Helper()
	must := func(err error) {
		if err != nil {
			p.t.Helper()
			p.t.Fatal(err)
		}
	}
	page := requests.Page{ByIndex: &requests.PageByIndex{Document: p.doc, Index: index}}
	size, err := p.reader.GetPageSize(&requests.GetPageSize{Page: page})
	must(err)
	p.height = size.Height
	count, err := p.reader.FPDFPage_CountObjects(&requests.FPDFPage_CountObjects{Page: page})
	must(err)
	for i := range count.Count {
		object, err := p.reader.FPDFPage_GetObject(&requests.FPDFPage_GetObject{Page: page, Index: i})
		must(err)
		kind, err := p.reader.FPDFPageObj_GetType(&requests.FPDFPageObj_GetType{PageObject: object.PageObject})
		must(err)
		switch kind.Type {
		case enums.FPDF_PAGEOBJ_TEXT:
			font, err := p.reader.FPDFTextObj_GetFont(&requests.FPDFTextObj_GetFont{PageObject: object.PageObject})
			must(err)
			embedded, err := p.reader.FPDFFont_GetIsEmbedded(&requests.FPDFFont_GetIsEmbedded{Font: font.Font})
			must(err)
			if !embedded.IsEmbedded {
				p.t.Errorf("page %d: a font is not embedded", index+1)
			}
		case enums.FPDF_PAGEOBJ_PATH:
			segments, err := p.reader.FPDFPath_CountSegments(&requests.FPDFPath_CountSegments{PageObject: object.PageObject})
			must(err)
			path := make([]spot, segments.Count)
			for k := range path {
				segment, err := p.reader.FPDFPath_GetPathSegment(&requests.FPDFPath_GetPathSegment{PageObject: object.PageObject, Index: k})
				must(err)
				at, err := p.reader.FPDFPathSegment_GetPoint(&requests.FPDFPathSegment_GetPoint{PathSegment: segment.PathSegment})
				must(err)
				path[k] = spot{float64(at.X) / pointsPerMm, (p.height - float64(at.Y)) / pointsPerMm}
			}
			paths = append(paths, path)
		}
	}
	return paths
}

var ratio = regexp.MustCompile(`\(1:(\d+)\)|(?:Scale|drawn) 1:(\d+)`)

// scale returns the ratio that the page's title block states, 0 where it is not to scale.
func (p *printout) scale(index int) float64 {
	p.t.Helper()
	text, err := p.reader.GetPageText(&requests.GetPageText{Page: requests.Page{ByIndex: &requests.PageByIndex{Document: p.doc, Index: index}}})
	if err != nil {
		p.t.Fatal(err)
	}
	m := ratio.FindStringSubmatch(text.Text)
	if m == nil {
		return 0
	}
	v, _ := strconv.ParseFloat(m[1]+m[2], 64)
	return v
}

// pathBounds returns the box about a path.
func pathBounds(path []spot) (low, high spot) {
	low, high = path[0], path[0]
	for _, q := range path {
		low = spot{min(low.x, q.x), min(low.y, q.y)}
		high = spot{max(high.x, q.x), max(high.y, q.y)}
	}
	return low, high
}

// TestPrintMeasuredFromOutside reads finished packets with PDFium and lays a ruler on them. One reader for all: it takes longest to start.
func TestPrintMeasuredFromOutside(t *testing.T) {
	t.Parallel()
	config := wazero.NewRuntimeConfigInterpreter().WithCoreFeatures(wasm.CoreFeaturesV2 | experimental.CoreFeaturesExceptionHandling)
	pool, err := webassembly.Init(webassembly.Config{MinIdle: 1, MaxIdle: 1, MaxTotal: 1, RuntimeConfig: config})
	if err != nil {
		t.Fatal(err)
	}
	defer pool.Close()
	reader, err := pool.GetInstance(time.Minute)
	if err != nil {
		t.Fatal(err)
	}
	t.Run("stakes on Letter", func(t *testing.T) { measureStakes(t, reader, "garden.yaml", 612, 792) })
	t.Run("stakes on A4", func(t *testing.T) { measureStakes(t, reader, "schoolyard.yaml", 595.28, 841.89) })
	t.Run("every sheet of a long row", func(t *testing.T) { measureTiles(t, reader, stakeYards["longer than a tape"], 3) })
	t.Run("every sheet of a bend", func(t *testing.T) { measureTiles(t, reader, longBend, 2) })
	t.Run("cuts", func(t *testing.T) { measureCuts(t, reader, "garden.yaml", 1) })
	t.Run("cuts in metric", func(t *testing.T) { measureCuts(t, reader, "schoolyard.yaml", 1) })
	t.Run("raise", func(t *testing.T) { measureArch(t, reader, "garden.yaml") })
	t.Run("pitch strips", func(t *testing.T) { measureStrips(t, reader, "garden.yaml") })
	t.Run("site map on Letter", func(t *testing.T) { measureSite(t, reader, "garden.yaml") })
	t.Run("site map on A4", func(t *testing.T) { measureSite(t, reader, "schoolyard.yaml") })
}

// measureStakes holds the first page of a stake plan against the ground: paper size, bookmarks, the bars of 2 in and 50 mm and every distance between two stakes of legs.
func measureStakes(t *testing.T, reader pdfium.Pdfium, example string, width, height float64) {
	p, plan := printed(t, reader, example, "stakes")
	size, err := reader.GetPageSize(&requests.GetPageSize{Page: requests.Page{ByIndex: &requests.PageByIndex{Document: p.doc, Index: 0}}})
	if err != nil || math.Abs(size.Width-width) > 0.01 || math.Abs(size.Height-height) > 0.01 {
		t.Errorf("a page of %.2f by %.2f points, %v, want %v by %v", size.Width, size.Height, err, width, height)
	}
	marks, err := reader.GetBookmarks(&requests.GetBookmarks{Document: p.doc})
	if err != nil || len(marks.Bookmarks) == 0 {
		t.Fatalf("bookmarks: %v", err)
	}
	for i, m := range marks.Bookmarks {
		if m.DestInfo == nil || m.DestInfo.PageIndex != i {
			t.Errorf("bookmark %d, %q, goes to %+v", i, m.Title, m.DestInfo)
		}
	}

	paths := p.drawing(0)
	inch, metre := false, false // the two bars in the strip at the top
	for _, path := range paths {
		if len(path) == 2 && path[0].y == path[1].y && path[0].y < 20 {
			l := path[0].to(path[1])
			inch, metre = inch || math.Abs(l-50.8) < 0.02, metre || math.Abs(l-50) < 0.02
		}
	}
	if !inch || !metre {
		t.Errorf("a bar of 2 in is there: %v, one of 50 mm: %v", inch, metre)
	}

	scale := p.scale(0)
	if scale == 0 {
		t.Fatal("the plan states no scale")
	}
	var legs []ground.Stake
	for _, s := range plan.Stakes {
		if !s.Guy {
			legs = append(legs, s)
		}
	}
	var dots []spot
	for _, path := range paths {
		low, high := pathBounds(path)
		if round := len(path) > 30; round && math.Abs(high.x-low.x-2.4) < 0.02 && math.Abs(high.y-low.y-2.4) < 0.02 {
			dots = append(dots, spot{(low.x + high.x) / 2, (low.y + high.y) / 2})
		}
	}
	if len(dots) < len(legs) {
		t.Fatalf("%d dots for %d stakes", len(dots), len(legs))
	}
	dots = dots[:len(legs)]
	worst := 0.0
	for i := range legs {
		for k := range i {
			real := float64(ground.Between(legs[i], legs[k]))
			worst = max(worst, math.Abs(dots[i].to(dots[k])-real/scale))
		}
	}
	if worst > 0.1 {
		t.Errorf("at 1:%v two stakes are %.3f mm off on paper", scale, worst)
	}
}

// measureArch holds the drawn curve of the first arch profile against the solved arches: crown over feet and foot to foot, the mean of the
// pipe's two sides where both are drawn.
func measureArch(t *testing.T, reader pdfium.Pdfium, example string) {
	p, plan := printed(t, reader, example, "raise")
	scale := p.scale(0)
	if scale == 0 {
		t.Fatal("the title block of the arch profile states no scale")
	}
	points := len(plan.Kinds[0].Curve)
	var heights, spans []float64
	for _, path := range p.drawing(0) {
		if len(path) != 1+3*(points-1) {
			continue
		}
		low, _ := pathBounds(path)
		first, last := path[0], path[len(path)-1]
		heights = append(heights, (first.y+last.y)/2-low.y)
		spans = append(spans, math.Abs(last.x-first.x))
	}
	if len(heights) == 0 {
		t.Fatal("no curve of the solved arch's points is drawn")
	}
	// The pipe is drawn last, after the late-season curve: as one line, or where it is wide enough as its two sides, which end a pipe's width apart.
	n := len(heights)
	if n > 1 && math.Abs(spans[n-1]-spans[n-2]) > 1 {
		heights, spans = heights[n-2:], spans[n-2:]
	} else {
		heights, spans = heights[n-1:], spans[n-1:]
	}
	mean := func(list []float64) (m float64) {
		for _, v := range list {
			m += v / float64(len(list))
		}
		return m
	}
	// Arches that differ by a hair share a page, drawn as one of them: the drawing must be true to one of the solved kinds.
	crown, feet := math.Inf(1), math.Inf(1)
	for _, kind := range plan.Kinds {
		highest := 0.0 // of the pipe's middle; the crown itself where the sticks are alike
		for _, q := range kind.Curve {
			highest = max(highest, float64(q.Y))
		}
		if off := math.Abs(mean(heights) - highest/scale); off < crown {
			crown, feet = off, math.Abs(mean(spans)-float64(kind.Span)/scale)
		}
	}
	if crown > 0.1 || feet > 0.1 {
		t.Errorf("at 1:%v the crown is %.3f mm and the feet are %.3f mm off on paper", scale, crown, feet)
	}
}

// measureStrips lays a ruler on the strips at the outer edges of the lights' leaf: on front and back strokes stand a wrap's pitch apart, full size.
func measureStrips(t *testing.T, reader pdfium.Pdfium, example string) {
	p, plan := printed(t, reader, example, "lights")
	const letter, margin, stroke = 215.9, 8, 5.0
	for side, fold := range []float64{letter - margin, margin} {
		var strokes []float64
		for _, path := range p.drawing(side) {
			low, high := pathBounds(path)
			if len(path) == 2 && math.Abs(high.x-low.x-stroke) < 0.01 && high.y-low.y < 0.01 && min(math.Abs(low.x-fold), math.Abs(high.x-fold)) < 0.05 {
				strokes = append(strokes, low.y)
			}
		}
		slices.Sort(strokes)
		met := map[float64]bool{}
		for i := 1; i < len(strokes); i++ {
			for _, w := range plan.Wraps {
				if math.Abs(strokes[i]-strokes[i-1]-float64(w.Pitch)) < 0.02 {
					met[strokes[i]] = true
				}
			}
		}
		// Between two strips on one edge lies one gap that is no pitch.
		if len(strokes) < 6 || len(met) < len(strokes)-2 {
			t.Errorf("side %d: strokes at %.2f, %d of their distances are pitches", side+1, strokes, len(met))
		}
	}
}

// measureCuts holds the sticks drawn on a side against the cut plan: each stick as long on paper as the plan has it at the scale stated, in the order of the
// patterns, and a line across it at each of its saw marks.
func measureCuts(t *testing.T, reader pdfium.Pdfium, example string, index int) {
	p, plan := printed(t, reader, example, "stock")
	scale := p.scale(index)
	if scale == 0 {
		t.Fatal("the cuts state no scale")
	}
	const high = 9 // of a stick on paper
	var sticks [][2]spot
	var cuts []spot // tops of the upright lines
	for _, path := range p.drawing(index) {
		low, high2 := pathBounds(path)
		switch w, h := high2.x-low.x, high2.y-low.y; {
		case len(path) >= 4 && math.Abs(h-high) < 0.02 && w > 20:
			sticks = append(sticks, [2]spot{low, high2})
		case len(path) == 2 && w < 0.01 && h > high:
			cuts = append(cuts, low)
		}
	}
	list := patterns(plan.Cuts.Bars)
	if len(sticks) < len(list) {
		t.Fatalf("%d sticks are drawn, there are %d patterns", len(sticks), len(list))
	}
	for i, pattern := range list {
		bar, left, right := pattern.bars[0], sticks[i][0], sticks[i][1]
		if got, want := right.x-left.x, float64(bar.Stock)/scale; math.Abs(got-want) > 0.1 {
			t.Errorf("cut %d: the stick is %.3f mm long on paper, want %.3f", i+1, got, want)
		}
		for _, piece := range bar.Pieces {
			at := left.x + float64(piece.Mark)/scale
			if piece.Mark != bar.Stock && !slices.ContainsFunc(cuts, func(c spot) bool { return math.Abs(c.x-at) < 0.1 && c.y < left.y && c.y > left.y-10 }) {
				t.Errorf("cut %d: no line at the mark of %v, %.2f mm on paper", i+1, piece.ID, at)
			}
		}
	}
}
