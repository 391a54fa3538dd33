package paper

// Paper sizes, portrait: ISO 216 A3 and A4; ANSI/ASME Y14.1 A and B, 8.5 by 11 in and 11 by 17 in; legal, 8.5 by 14 in.
var sizes = map[string]Rect{
	"letter":  {W: 215.9, H: 279.4},
	"legal":   {W: 215.9, H: 355.6},
	"tabloid": {W: 279.4, H: 431.8},
	"a4":      {W: 210, H: 297},
	"a3":      {W: 297, H: 420},
}

// Sheet returns the size of a paper by its name in the spec, not ok for a name that is none.
func Sheet(name string) (size Rect, ok bool) {
	size, ok = sizes[name]
	return size, ok
}
