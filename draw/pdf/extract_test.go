package pdf

import (
	"bytes"
	"compress/zlib"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/pdfcpu/pdfcpu/pkg/api"

	"hoopwright/draw/paper"
)

// byName returns the attachments in the order of their names, roles left out where a tool drops them.
func byName(list []Attachment) []Attachment {
	list = slices.Clone(list)
	slices.SortFunc(list, func(a, b Attachment) int { return strings.Compare(a.Name, b.Name) })
	return list
}

func TestAttachmentsRoundTrip(t *testing.T) {
	doc := demo()
	doc.Attachments = append(doc.Attachments, Attachment{Name: "empty", MIME: "text/plain", Relationship: "Data", Data: []byte{}},
		Attachment{Name: "has endstream endobj.bin", MIME: "application/octet-stream", Relationship: "Unspecified", Data: []byte("1 0 obj\n<< >>\nendstream\nendobj trailer << /Root 1 0 R >>")})
	got, err := Attachments(render(t, doc))
	if err != nil {
		t.Fatal(err)
	}
	if want := doc.Attachments; !reflect.DeepEqual(byName(got), byName(want)) {
		t.Errorf("got %+v\nwant %+v", got, want)
	}
}

// Saved again by pdfcpu, which packs objects and cross-references into streams.
func TestAttachmentsResavedByPdfcpu(t *testing.T) {
	api.DisableConfigDir()
	var out bytes.Buffer
	if err := api.Optimize(bytes.NewReader(render(t, demo())), &out, nil); err != nil {
		t.Fatal(err)
	}
	if !bytes.Contains(out.Bytes(), []byte("/ObjStm")) {
		t.Log("pdfcpu packed no objects")
	}
	same(t, out.Bytes())
}

// testdata/*.pdf is the small document below, saved again by common tools with the options their names tell: qpdf 11.3, mutool 1.21, Ghostscript 10.0.
func TestAttachmentsResaved(t *testing.T) {
	files, err := filepath.Glob("testdata/*.pdf")
	if err != nil || len(files) < 5 {
		t.Fatalf("%d files, %v", len(files), err)
	}
	for _, f := range files {
		data, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		t.Run(f, func(t *testing.T) { same(t, data) })
	}
}

// small is a page with one line, and the demonstration's attachments.
func small() Document {
	doc := demo()
	doc.Pages = []*paper.Page{{Name: "one", Title: "One", Size: paper.Rect{W: 210, H: 297}}}
	doc.Pages[0].Line(paper.Point{X: 20, Y: 20}, paper.Point{X: 100, Y: 20}, paper.Thin)
	return doc
}

func same(t *testing.T, data []byte) {
	t.Helper()
	got, err := Attachments(data)
	if err != nil {
		t.Fatal(err)
	}
	want := byName(demo().Attachments)
	got = byName(got)
	if len(got) != len(want) {
		t.Fatalf("%d attachments, want %d", len(got), len(want))
	}
	for i := range want {
		if got[i].Name != want[i].Name || !bytes.Equal(got[i].Data, want[i].Data) {
			t.Errorf("%q with %d bytes, want %q with %d", got[i].Name, len(got[i].Data), want[i].Name, len(want[i].Data))
		}
	}
}

// What a hand can write: strings with escapes, a tree with kids, an indirect length that comes later, hexadecimal over zlib, a newer catalog appended.
func TestAttachmentsByHand(t *testing.T) {
	var z bytes.Buffer
	w := zlib.NewWriter(&z)
	w.Write([]byte("spans: 3\n"))
	w.Close()
	file := "%PDF-1.4\n1 0 obj <</Type/Catalog>> endobj\n" +
		"2 0 obj << /Kids [3 0 R] >> endobj 3 0 obj <</Limits[(a)(z)]/Names[(a\\(1\\)) 4 0 R]>> endobj\n" +
		"4 0 obj <</F (t\\165nnel\\\n \\(a\\).yaml) /EF <</F 5 0 R>> /AFRelationship /So#75rce % a comment >>\n>> endobj\n" +
		"5 0 obj <</Filter [/AHx /Fl] /Length 6 0 R /Subtype /text#2Fyaml>> stream\r\n" + fmt.Sprintf("%x>", z.Bytes()) + "\nendstream endobj\n" +
		fmt.Sprintf("6 0 obj %d endobj\n", 2*z.Len()+1) +
		"trailer <</Root 1 0 R>>\n%%EOF\n1 0 obj <</Type/Catalog /Names <</EmbeddedFiles 2 0 R>> >> endobj\ntrailer <</Root 1 0 R/Prev 9>>\n"
	got, err := Attachments([]byte(file))
	want := []Attachment{{Name: "tunnel (a).yaml", MIME: "text/yaml", Relationship: "Source", Data: []byte("spans: 3\n")}}
	if err != nil || !reflect.DeepEqual(got, want) {
		t.Errorf("%+v, %v", got, err)
	}
}

func TestAttachmentErrors(t *testing.T) {
	bare := demo()
	bare.Attachments = nil
	whole := render(t, demo())
	damaged := bytes.Clone(whole)
	copy(damaged[bytes.Index(damaged, []byte("/CheckSum <"))+len("/CheckSum <"):], "00000000")
	for name, tt := range map[string]struct {
		data []byte
		want error
	}{
		"empty":     {nil, errNotPDF},
		"text":      {[]byte("hoopwright: 1\n"), errNotPDF},
		"no root":   {[]byte("%PDF-1.7\n1 0 obj null endobj"), errNotPDF},
		"none":      {render(t, bare), errNoAttachments},
		"encrypted": {[]byte("%PDF-1.4\n1 0 obj<<>>endobj trailer<</Root 1 0 R/Encrypt 2 0 R>>"), errEncrypted},
		"damaged":   {damaged, nil},
	} {
		_, err := Attachments(tt.data)
		if err == nil || tt.want != nil && !errors.Is(err, tt.want) {
			t.Errorf("%s: %v, want %v", name, err, tt.want)
		}
	}
	for n := 0; n < len(whole); n += 997 { // cut short anywhere: an error, or all there is; never a panic
		if got, err := Attachments(whole[:n]); err == nil && len(got) != 2 {
			t.Errorf("cut at %d: %d attachments", n, len(got))
		}
	}
}

// Files made to take the square of their length, or to unpack without end, come to an end. Unbounded, each would take minutes; the limit leaves room for a busy machine.
func TestHostileFiles(t *testing.T) {
	var bomb bytes.Buffer
	z := zlib.NewWriter(&bomb)
	z.Write(make([]byte, mostDecoded+1))
	z.Close()
	var packed bytes.Buffer
	z = zlib.NewWriter(&packed)
	z.Write([]byte(strings.Repeat("5 0 ", 50000) + "[" + strings.Repeat("1 ", 1<<18) + "]"))
	z.Close()
	stream := func(entries string, data []byte) string {
		return fmt.Sprintf("<<%s/Filter/FlateDecode/Length %d>>stream\n%s\nendstream endobj ", entries, len(data), data)
	}
	attach := "1 0 obj<</Names<</EmbeddedFiles<</Names[(a)<</F(a)/EF<</F 2 0 R>>>>]>>>>>>endobj trailer<</Root 1 0 R>> "
	for name, file := range map[string]string{
		"open strings":  strings.Repeat("1 0 obj(", 100000),
		"open hex":      strings.Repeat("1 0 obj<", 100000),
		"open arrays":   strings.Repeat("[", 1000000),
		"deep arrays":   "1 0 obj" + strings.Repeat("[", 1000000),
		"open streams":  strings.Repeat("1 0 obj<<>>stream ", 100000),
		"own kids":      "5 0 obj[<</Kids 5 0 R>><</Kids 5 0 R>>]endobj 1 0 obj<</Names<</EmbeddedFiles<</Kids 5 0 R>>>>>>endobj trailer<</Root 1 0 R>>",
		"own reference": "1 0 obj 1 0 R endobj trailer<</Root 1 0 R>>",
		"bomb":          "2 0 obj" + stream("", bomb.Bytes()) + attach,
		"overlapping":   "3 0 obj" + stream("/Type/ObjStm/N 50000/First 200000", packed.Bytes()) + attach,
	} {
		start := time.Now()
		got, err := Attachments([]byte("%PDF-1.4\n" + file))
		if err == nil {
			t.Errorf("%s: %d attachments and no error", name, len(got))
		}
		if d := time.Since(start); d > 15*time.Second {
			t.Errorf("%s: took %v", name, d)
		}
	}
}

func FuzzAttachments(f *testing.F) {
	f.Add(render(f, small()))
	files, _ := filepath.Glob("testdata/*.pdf")
	for _, name := range files {
		if data, err := os.ReadFile(name); err == nil {
			f.Add(data)
		}
	}
	f.Add([]byte("%PDF-1.4\n1 0 obj<</Names<</EmbeddedFiles<</Names[(a)<</F(a)/EF<</F 2 0 R>>>>]>>>>>>endobj 2 0 obj<</Length 2>>stream\nab\nendstream endobj trailer<</Root 1 0 R>>"))
	f.Fuzz(func(t *testing.T, data []byte) {
		got, err := Attachments(data)
		if (err == nil) != (len(got) > 0) {
			t.Errorf("%d attachments, error %v", len(got), err)
		}
	})
}
