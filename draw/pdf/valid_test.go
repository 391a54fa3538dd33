package pdf

import (
	"bytes"
	"math"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/klippa-app/go-pdfium"
	"github.com/klippa-app/go-pdfium/references"
	"github.com/klippa-app/go-pdfium/requests"
	"github.com/klippa-app/go-pdfium/webassembly"
	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"
	"github.com/tetratelabs/wazero"
	wasm "github.com/tetratelabs/wazero/api"
	"github.com/tetratelabs/wazero/experimental"

	"hoopwright/draw/paper"
)

// pdfcpu checks the structure. Strict, it holds the role of an attached file, an entry of PDF 2.0, against a 1.7 file, so that mode sees the file without them.
func TestStructureByPdfcpu(t *testing.T) {
	api.DisableConfigDir()
	bare := demo()
	bare.Attachments = nil
	for _, tt := range []struct {
		mode int
		doc  Document
	}{{model.ValidationRelaxed, demo()}, {model.ValidationStrict, bare}} {
		conf := model.NewDefaultConfiguration()
		conf.ValidationMode = tt.mode
		if err := api.Validate(bytes.NewReader(render(t, tt.doc)), conf); err != nil {
			t.Errorf("mode %d: %v", tt.mode, err)
		}
	}
	dims, err := api.PageDims(bytes.NewReader(render(t, demo())), nil)
	if err != nil || len(dims) != 3 {
		t.Fatalf("%d pages, %v", len(dims), err)
	}
	for _, d := range dims {
		if d.Width != 612 || d.Height != 792 {
			t.Errorf("a page of %v by %v points, want Letter, 612 by 792", d.Width, d.Height)
		}
	}
	got, err := api.ExtractAttachmentsRaw(bytes.NewReader(render(t, demo())), "", nil, nil)
	if err != nil || len(got) != len(demo().Attachments) {
		t.Fatalf("pdfcpu finds %d attachments, %v", len(got), err)
	}
	for _, a := range got {
		for _, want := range demo().Attachments {
			if want.Name == a.FileName {
				var b bytes.Buffer
				b.ReadFrom(a)
				if !bytes.Equal(b.Bytes(), want.Data) {
					t.Errorf("%s: other bytes came out", want.Name)
				}
			}
		}
	}
}

// One PDFium for all tests, interpreted: compiling it takes longer than the tests do.
var reader = sync.OnceValues(func() (pdfium.Pdfium, error) {
	config := wazero.NewRuntimeConfigInterpreter().WithCoreFeatures(wasm.CoreFeaturesV2 | experimental.CoreFeaturesExceptionHandling)
	pool, err := webassembly.Init(webassembly.Config{MinIdle: 1, MaxIdle: 1, MaxTotal: 1, RuntimeConfig: config})
	if err != nil {
		return nil, err
	}
	return pool.GetInstance(time.Minute)
})

func open(t *testing.T, data []byte) (pdfium.Pdfium, references.FPDF_DOCUMENT) {
	t.Helper()
	r, err := reader()
	if err != nil {
		t.Fatal(err)
	}
	doc, err := r.OpenDocument(&requests.OpenDocument{File: &data})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { r.FPDF_CloseDocument(&requests.FPDF_CloseDocument{Document: doc.Document}) })
	return r, doc.Document
}

func TestBookmarksByPdfium(t *testing.T) {
	r, doc := open(t, render(t, demo()))
	marks, err := r.GetBookmarks(&requests.GetBookmarks{Document: doc})
	if err != nil {
		t.Fatal(err)
	}
	if len(marks.Bookmarks) != 3 {
		t.Fatalf("%d bookmarks", len(marks.Bookmarks))
	}
	for i, m := range marks.Bookmarks {
		if m.Title != demo().Pages[i].Title || m.DestInfo == nil || m.DestInfo.PageIndex != i {
			t.Errorf("bookmark %d: %q goes to %+v", i, m.Title, m.DestInfo)
		}
	}
	for i, want := range []string{"1 Overview", "2 Stake plan", "3 Arch profile"} {
		label, err := r.FPDF_GetPageLabel(&requests.FPDF_GetPageLabel{Document: doc, Page: i})
		if err != nil || label.Label != want {
			t.Errorf("page %d is labelled %q, %v", i, label.Label, err)
		}
	}
}

// Text where it was put, as wide as it was measured, and found by the words it stands for.
func TestTextByPdfium(t *testing.T) {
	r, doc := open(t, render(t, demo()))
	page := requests.Page{ByIndex: &requests.PageByIndex{Document: doc, Index: 0}}
	loaded, err := r.FPDFText_LoadPage(&requests.FPDFText_LoadPage{Page: page})
	if err != nil {
		t.Fatal(err)
	}
	defer r.FPDFText_ClosePage(&requests.FPDFText_ClosePage{TextPage: loaded.TextPage})
	const title = "Millrace Lantern Walk"
	found, err := r.FPDFText_FindStart(&requests.FPDFText_FindStart{TextPage: loaded.TextPage, Find: title})
	if err != nil {
		t.Fatal(err)
	}
	if next, err := r.FPDFText_FindNext(&requests.FPDFText_FindNext{Search: found.Search}); err != nil || !next.GotMatch {
		t.Fatalf("the title is not found on the page, %v", err)
	}
	at, err := r.FPDFText_GetSchResultIndex(&requests.FPDFText_GetSchResultIndex{Search: found.Search})
	if err != nil {
		t.Fatal(err)
	}
	for i := range len(title) {
		origin, err := r.FPDFText_GetCharOrigin(&requests.FPDFText_GetCharOrigin{TextPage: loaded.TextPage, Index: at.Index + i})
		if err != nil {
			t.Fatal(err)
		}
		x := 20 + float64(paper.SheetName.Width(title[:i]))
		if gotX, gotY := origin.X/pointsPerMm, 279.4-origin.Y/pointsPerMm; math.Abs(gotX-x) > 0.02 || math.Abs(gotY-30) > 0.02 {
			t.Errorf("%q of the title stands at %.3f, %.3f mm, measured %.3f, 30", title[i], gotX, gotY, x)
		}
	}
	count, err := r.FPDFText_CountChars(&requests.FPDFText_CountChars{TextPage: loaded.TextPage})
	if err != nil {
		t.Fatal(err)
	}
	plain, err := r.FPDFText_GetText(&requests.FPDFText_GetText{TextPage: loaded.TextPage, Count: count.Count})
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"12′-7 7/8″ and 151 7/8 in", "Łódź × − ° ± – — · → ≤ ≥ Ω", "(a) back\\slash (b"} {
		if !strings.Contains(plain.Text, want) {
			t.Errorf("%q is not in the page's text:\n%s", want, plain.Text)
		}
	}
}

// Rendered at 20 dots a millimetre, the lines of page 2 begin, end and lie where they were drawn, to 0.1 mm.
func TestLinesByPdfium(t *testing.T) {
	r, doc := open(t, render(t, demo()))
	img, err := r.RenderPageInDPI(&requests.RenderPageInDPI{Page: requests.Page{ByIndex: &requests.PageByIndex{Document: doc, Index: 1}}, DPI: 508})
	if err != nil {
		t.Fatal(err)
	}
	defer img.Cleanup()
	const dots = 20
	black := func(x, y int) bool {
		r, _, _, _ := img.Result.RenderedImage.At(x, y).RGBA()
		return r < 0x8000
	}
	for i := range 8 {
		y := (40 + 10*i) * dots
		first, last := -1, -1
		for x := 20 * dots; x < 135*dots; x++ {
			if black(x, y) {
				if first < 0 {
					first = x
				}
				last = x
			}
		}
		pen := []paper.Pen{paper.Thin, paper.Thick, paper.Emphasis, paper.Hidden, paper.HiddenBar, paper.Centre, paper.Other, paper.Tied}[i]
		cap := 0.0
		if pen.Dash == nil {
			cap = float64(pen.Width) / 2 // round ends
		}
		if a, b := float64(first)/dots, float64(last+1)/dots; math.Abs(a-30+cap) > 0.1 || math.Abs(b-130-cap) > 0.1 {
			t.Errorf("line %d runs from %.2f to %.2f mm, drawn 30 to 130", i, a, b)
		}
		thick := 0
		for dy := -40; dy <= 40; dy++ {
			if black(31*dots, y+dy) {
				thick++
			}
		}
		if math.Abs(float64(thick)/dots-float64(pen.Width)) > 0.1 {
			t.Errorf("line %d is %.2f mm thick, drawn %v", i, float64(thick)/dots, pen.Width)
		}
	}
	for deg := range 360 {
		sin, cos := math.Sincos(float64(deg) * math.Pi / 180)
		inner, outer := 0.0, 0.0
		for d := 39.0; d < 41; d += 0.02 {
			if black(int((80+d*cos)*dots), int((180-d*sin)*dots)) {
				if inner == 0 {
					inner = d
				}
				outer = d
			}
		}
		if mid := (inner + outer) / 2; math.Abs(mid-40) > 0.1 {
			t.Fatalf("the circle of 40 mm is %.3f at %d°", mid, deg)
		}
	}
}
