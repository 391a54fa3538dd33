package pdf

import (
	"bytes"
	"compress/zlib"
	"crypto/sha256"
	"errors"
	"fmt"
	"regexp"
	"slices"
	"sort"
	"strconv"

	"hoopwright/fonts"
)

var errForm = errors.New("the library's file has another form than expected")

// finish rewrites the library's file as PDF 1.7 with a catalog, information and trailer of our own. Objects keep their numbers; new ones follow.
func finish(raw []byte, used map[fonts.Face]runes, doc Document) ([]byte, error) {
	lib, err := parseLibraryFile(raw)
	if err != nil {
		return nil, err
	}
	f := file{objects: lib.objects}
	f.refineFonts(sha256.Sum256(raw), used)
	if err := f.packPages(lib.pages); err != nil {
		return nil, err
	}
	f.objects[lib.root] = catalog(&f, doc, lib.pages)
	f.objects[lib.info] = information(doc)
	return f.bytes(lib.root, lib.info), nil
}

// libraryFile is the library's output taken apart: object bodies by number, between obj and endobj.
type libraryFile struct {
	objects    [][]byte // from 1; 0 is empty
	root, info int
	pages      []int // object numbers in order
}

var (
	rootRef   = regexp.MustCompile(`/Root ([0-9]+) 0 R`)
	infoRef   = regexp.MustCompile(`/Info ([0-9]+) 0 R`)
	kidsArray = regexp.MustCompile(`/Kids \[([0-9 R]*)\]`)
	pageShows = regexp.MustCompile(`/Contents ([0-9]+) 0 R`)
	anyRef    = regexp.MustCompile(`([0-9]+) 0 R`)
)

// parseLibraryFile reads the plain cross-reference table that the library writes: one section, entries of 20 bytes.
func parseLibraryFile(raw []byte) (*libraryFile, error) {
	const entry = 20
	at := bytes.LastIndex(raw, []byte("startxref\n"))
	if at < 0 {
		return nil, errForm
	}
	var table, size int
	if _, err := fmt.Sscanf(string(raw[at:]), "startxref\n%d", &table); err != nil || table < 0 || table >= at {
		return nil, errForm
	}
	if _, err := fmt.Sscanf(string(raw[table:min(len(raw), table+40)]), "xref\n0 %d\n", &size); err != nil || size < 4 {
		return nil, errForm
	}
	entries := raw[table+len("xref\n0 \n")+len(strconv.Itoa(size)):]
	if len(entries) < entry*size {
		return nil, errForm
	}
	lib := &libraryFile{objects: make([][]byte, size)}
	if err := lib.takeApart(raw[:table], entries[:entry*size]); err != nil {
		return nil, err
	}
	trailer := raw[table:at]
	ref := func(re *regexp.Regexp, in []byte) int {
		if m := re.FindSubmatch(in); m != nil {
			n, _ := strconv.Atoi(string(m[1]))
			if n < size {
				return n
			}
		}
		return 0
	}
	if lib.root, lib.info = ref(rootRef, trailer), ref(infoRef, trailer); lib.root == 0 || lib.info == 0 {
		return nil, errForm
	}
	kids := kidsArray.FindSubmatch(lib.objects[1])
	if kids == nil {
		return nil, errForm
	}
	for _, m := range anyRef.FindAllSubmatch(kids[1], -1) {
		n, _ := strconv.Atoi(string(m[1]))
		lib.pages = append(lib.pages, n)
	}
	return lib, nil
}

// takeApart cuts the objects out of the body at the offsets that the entries of the table tell.
func (lib *libraryFile) takeApart(body, entries []byte) error {
	size := len(lib.objects)
	offsets := make([]int, size)
	for n := 1; n < size; n++ {
		v, err := strconv.Atoi(string(entries[len(entries)/size*n:][:10]))
		if err != nil || v <= 0 || v >= len(body) {
			return errForm
		}
		offsets[n] = v
	}
	order := slices.Sorted(slices.Values(offsets[1:]))
	for n := 1; n < size; n++ {
		end := len(body)
		if i := sort.SearchInts(order, offsets[n]+1); i < len(order) {
			end = order[i]
		}
		object := bytes.TrimSpace(body[offsets[n]:end])
		head := fmt.Sprintf("%d 0 obj", n)
		if !bytes.HasPrefix(object, []byte(head)) || !bytes.HasSuffix(object, []byte("endobj")) {
			return fmt.Errorf("%w: object %d", errForm, n)
		}
		lib.objects[n] = bytes.TrimSpace(object[len(head) : len(object)-len("endobj")])
	}
	return nil
}

// file is a PDF being put together.
type file struct {
	objects [][]byte // bodies by number; 0 is unused
	packer  *zlib.Writer
}

func (f *file) packPages(pages []int) error {
	for _, n := range pages {
		m := pageShows.FindSubmatch(f.objects[n])
		if m == nil {
			return errForm
		}
		at, _ := strconv.Atoi(string(m[1]))
		_, shows, _ := bytes.Cut(f.objects[at], []byte("stream\n"))
		f.objects[at] = stream("/Filter /FlateDecode", f.deflate(bytes.TrimSuffix(shows, []byte("\nendstream"))))
	}
	return nil
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
func (f *file) bytes(root, info int) []byte {
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
