package fonts

import (
	"encoding/binary"
	"errors"
	"fmt"
	"math"
)

// metrics are a face's advance widths in thousandths of an em, by rune of the basic plane, and that of the box it shows for a rune it
// lacks. Every text is measured several times before it is set, so the widths lie in an array.
type metrics struct {
	advance [0x10000]uint16 // none for a rune that the face lacks
	missing uint16
}

// none is the advance of a rune that a face lacks.
const none = 0xFFFF

// of returns a rune's advance, and whether the face has it.
func (m *metrics) of(r rune) (uint16, bool) {
	if r < 0 || int(r) >= len(m.advance) || m.advance[r] == none {
		return m.missing, false
	}
	return m.advance[r], true
}

var errCut = errors.New("the file ends early")

// parse reads the tables head, hhea, hmtx and cmap of a TrueType file. Layouts after the OpenType specification 1.9, ISO/IEC 14496-22.
func parse(file []byte) (m *metrics, err error) {
	tables, err := directory(file)
	if err != nil {
		return nil, err
	}
	for tag, least := range map[string]int{"head": 54, "hhea": 36, "hmtx": 4, "cmap": 4} {
		if len(tables[tag]) < least {
			return nil, fmt.Errorf("table %s: %w", tag, errCut)
		}
	}
	em := int(be16(tables["head"], 18))
	count := int(be16(tables["hhea"], 34))
	hmtx := tables["hmtx"]
	if em == 0 || count == 0 || len(hmtx) < 4*count {
		return nil, errCut
	}
	advance := func(glyph int) uint16 {
		units := be16(hmtx, 4*min(glyph, count-1))
		return uint16(math.Round(float64(units) * 1000 / float64(em)))
	}
	m = &metrics{missing: advance(0)}
	for r := range m.advance {
		m.advance[r] = none
	}
	found := false
	for _, sub := range subtables(tables["cmap"]) {
		if be16(sub, 0) == 4 {
			found = true
			format4(sub, func(r rune, glyph int) { m.advance[r] = advance(glyph) })
		}
	}
	if !found {
		return nil, errors.New("no Unicode character map in format 4")
	}
	return m, nil
}

// directory returns the file's tables by tag.
func directory(file []byte) (map[string][]byte, error) {
	if len(file) < 12 || binary.BigEndian.Uint32(file) != 0x00010000 {
		return nil, errors.New("not a TrueType file")
	}
	count := int(be16(file, 4))
	if len(file) < 12+16*count {
		return nil, errCut
	}
	tables := map[string][]byte{}
	for i := range count {
		rec := file[12+16*i:]
		at, size := uint64(binary.BigEndian.Uint32(rec[8:])), uint64(binary.BigEndian.Uint32(rec[12:]))
		if at+size > uint64(len(file)) {
			return nil, errCut
		}
		tables[string(rec[:4])] = file[at : at+size]
	}
	return tables, nil
}

// subtables returns the character maps for Unicode: platform 0, or platform 3 with encoding 1 or 10.
func subtables(cmap []byte) [][]byte {
	var subs [][]byte
	for i := range int(be16(cmap, 2)) {
		rec := 4 + 8*i
		if rec+8 > len(cmap) {
			break
		}
		platform, encoding := be16(cmap, rec), be16(cmap, rec+2)
		at := int(binary.BigEndian.Uint32(cmap[rec+4:]))
		unicode := platform == 0 || platform == 3 && (encoding == 1 || encoding == 10)
		if unicode && at+16 <= len(cmap) {
			subs = append(subs, cmap[at:])
		}
	}
	return subs
}

// format4 yields each rune of a segmented map that has a glyph: all of the basic plane, and what lies beyond the PDF library cannot set.
func format4(sub []byte, yield func(rune, int)) {
	n := int(be16(sub, 6)) / 2
	if 16+8*n > len(sub) {
		return
	}
	ends, starts, deltas, offsets := 14, 16+2*n, 16+4*n, 16+6*n
	for i := range n {
		first, last := int(be16(sub, starts+2*i)), int(be16(sub, ends+2*i))
		delta, offset := int(be16(sub, deltas+2*i)), int(be16(sub, offsets+2*i))
		for c := first; c <= last && c < 0xFFFF; c++ {
			glyph := (c + delta) & 0xFFFF
			if offset != 0 {
				at := offsets + 2*i + offset + 2*(c-first)
				if at+2 > len(sub) {
					break
				}
				if glyph = int(be16(sub, at)); glyph != 0 {
					glyph = (glyph + delta) & 0xFFFF
				}
			}
			if glyph != 0 {
				yield(rune(c), glyph)
			}
		}
	}
}

func be16(b []byte, at int) uint16 { return binary.BigEndian.Uint16(b[at:]) }
