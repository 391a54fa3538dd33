package pdf

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"maps"
	"slices"

	"hoopwright/fonts"
)

type runes map[rune]bool

// refineFonts gives the embedded faces their own names with the six-letter tag that marks a subset (ISO 32000-1, 9.6.4), says that their character codes are
// used as they are, and maps to Unicode the runes that are used: the library's map of all 65 536 makes a reader slow.
func (f *file) refineFonts(lib *scan, seed [32]byte, used map[fonts.Face]runes) {
	for n, body := range f.objects {
		if bytes.HasPrefix(body, []byte("<</Registry (Adobe)")) {
			f.objects[n] = bytes.Replace(body, []byte("(UCS)"), []byte("(Identity)"), 1)
		}
		if !bytes.HasPrefix(body, []byte("<</Type /Font")) {
			continue
		}
		for _, face := range fonts.Faces() {
			name := []byte("/utf8" + family(face))
			if !bytes.Contains(body, name) {
				continue
			}
			own := sha256.Sum256(append(seed[:], byte(face)))
			tag := own[:6]
			for i := range tag {
				tag[i] = 'A' + tag[i]%26
			}
			f.objects[n] = bytes.ReplaceAll(body, name, fmt.Appendf(nil, "/%s+%v", tag, face))
			font, _ := lib.objects[ref(n)].(dict)
			if at, ok := font["ToUnicode"].(ref); ok {
				f.objects[at] = stream("/Filter /FlateDecode", f.deflate(toUnicode(used[face])))
			}
		}
	}
}

// toUnicode returns the character map that takes the codes of the runes to themselves, in blocks of no more than a hundred (ISO 32000-1, 9.10.3; Adobe
// Technical Note 5411).
func toUnicode(used runes) []byte {
	var b bytes.Buffer
	b.WriteString("/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def\n" +
		"/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n")
	for block := range slices.Chunk(slices.Sorted(maps.Keys(used)), 100) {
		fmt.Fprintf(&b, "%d beginbfchar\n", len(block))
		for _, r := range block {
			fmt.Fprintf(&b, "<%04X> <%04X>\n", r, r)
		}
		b.WriteString("endbfchar\n")
	}
	b.WriteString("endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend")
	return b.Bytes()
}
