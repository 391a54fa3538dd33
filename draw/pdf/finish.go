package pdf

import (
	"bytes"
	"compress/zlib"
	"crypto/sha256"
	"errors"
	"fmt"
	"slices"

	"hoopwright/fonts"
)

var errForm = errors.New("the library's file has another form than expected")

// finish rewrites the library's file as PDF 1.7 with a catalog, information and trailer of our own. Objects keep their numbers; new ones follow.
func finish(raw []byte, used map[fonts.Face]runes, doc Document) ([]byte, error) {
	lib := scanFile(raw)
	root, _ := lib.root.(ref)
	info, _ := lib.info.(ref)
	old, _ := lib.resolve(root).(dict)
	tree, _ := lib.resolve(old["Pages"]).(dict)
	pages, _ := tree["Kids"].(array)
	if root == 0 || info == 0 || len(pages) != len(doc.Pages) {
		return nil, errForm
	}
	f := file{objects: make([][]byte, len(lib.objects)+1)}
	for n, at := range lib.places {
		end := bytes.Index(raw[at[1]:], []byte("endobj"))
		if end < 0 || int(n) >= len(f.objects) {
			return nil, fmt.Errorf("%w: object %d", errForm, n)
		}
		f.objects[n] = bytes.TrimSpace(raw[at[0] : at[1]+end])
	}
	f.refineFonts(lib, sha256.Sum256(raw), used)
	for _, page := range pages {
		d, _ := lib.resolve(page).(dict)
		shows, ok := lib.resolve(d["Contents"]).(streamObject)
		if !ok {
			return nil, errForm
		}
		f.objects[d["Contents"].(ref)] = stream("/Filter /FlateDecode", f.deflate(raw[shows.start:shows.end]))
	}
	f.objects[root] = catalog(&f, doc, pages)
	f.objects[info] = information(doc)
	return f.bytes(root, info), nil
}

// file is a PDF being put together.
type file struct {
	objects [][]byte // bodies by number; 0 is unused
	packer  *zlib.Writer
}

// deflate packs bytes, soon rather than small. One packer does them all, for a new one takes as long as a page.
func (f *file) deflate(data []byte) []byte {
	var b bytes.Buffer
	if f.packer == nil {
		f.packer, _ = zlib.NewWriterLevel(nil, zlib.BestSpeed) // no error but for a level there is none of
	}
	f.packer.Reset(&b)
	f.packer.Write(data) // a bytes.Buffer takes all
	f.packer.Close()
	return b.Bytes()
}

// add appends an object and returns its number.
func (f *file) add(body []byte) int {
	f.objects = append(f.objects, body)
	return len(f.objects) - 1
}

// addStream appends a stream object with the given dictionary entries.
func (f *file) addStream(entries string, data []byte) int { return f.add(stream(entries, data)) }

func stream(entries string, data []byte) []byte {
	return slices.Concat(fmt.Appendf(nil, "<< %s /Length %d >>\nstream\n", entries, len(data)), data, []byte("\nendstream"))
}

// bytes writes the file: header, objects, cross-reference table, trailer. The identifier is a hash of the content, so it changes with it and with nothing else.
func (f *file) bytes(root, info ref) []byte {
	var b bytes.Buffer
	b.WriteString("%PDF-1.7\n%\xE2\xE3\xCF\xD3\n")
	offsets := make([]int, len(f.objects))
	for n := 1; n < len(f.objects); n++ {
		offsets[n] = b.Len()
		fmt.Fprintf(&b, "%d 0 obj\n%s\nendobj\n", n, f.objects[n])
	}
	sum := sha256.Sum256(b.Bytes())
	table := b.Len()
	fmt.Fprintf(&b, "xref\n0 %d\n0000000000 65535 f \n", len(offsets))
	for _, at := range offsets[1:] {
		fmt.Fprintf(&b, "%010d 00000 n \n", at)
	}
	fmt.Fprintf(&b, "trailer\n<< /Size %d /Root %d 0 R /Info %d 0 R /ID [<%X> <%X>] >>\nstartxref\n%d\n%%%%EOF\n",
		len(offsets), root, info, sum[:16], sum[:16], table)
	return b.Bytes()
}
