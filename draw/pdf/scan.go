package pdf

import (
	"bytes"
	"strconv"
)

// scan is a file's objects as found by reading it from front to back. It needs no cross-reference table, so a damaged or rewritten one does not matter; of
// several objects with one number the last stands, as after an update.
type scan struct {
	data    []byte
	objects map[ref]any
	places  map[ref][2]int // of the objects that are not packed in another: from behind obj to their end, of a stream that of its bytes
	root    any            // the last catalog named by a trailer
	info    any            // and the last information
	locked  bool           // the file is encrypted
	left    int            // bytes that may still be decoded

	// Broken objects are read and given up; what that may cost in all is bounded, or a file made of them would take the square of its length.
	patience int
}

// mostDecoded bounds what a file may unpack to, all streams together.
const mostDecoded = 64 << 20

func scanFile(data []byte) *scan {
	s := &scan{data: data, objects: map[ref]any{}, places: map[ref][2]int{}, left: mostDecoded, patience: len(data) + 1024}
	for at := 0; at < len(data) && s.patience > 0; {
		switch rest := data[at:]; {
		case rest[0] == 'o' && bytes.HasPrefix(rest, []byte("obj")):
			at += len("obj")
			if n, ok := numberBefore(data, at-len("obj")); ok {
				at = s.indirect(n, at)
			}
		case rest[0] == 't' && bytes.HasPrefix(rest, []byte("trailer")):
			at += len("trailer")
			l := lexer{data, at}
			if d, err := l.object(0); err == nil {
				s.trailer(d)
				at = l.at
			} else {
				s.patience -= l.at - at
			}
		default:
			at++
		}
	}
	return s
}

// numberBefore reads "12 0 " backwards from before the keyword.
func numberBefore(data []byte, at int) (ref, bool) {
	back := func(end int, accept func(byte) bool) int {
		for end > 0 && accept(data[end-1]) {
			end--
		}
		return end
	}
	end := back(at, isSpace)
	generation := back(end, isDigit)
	gap := back(generation, isSpace)
	number := back(gap, isDigit)
	if generation == end || gap == generation || number == gap {
		return 0, false
	}
	n, err := strconv.Atoi(string(data[number:gap]))
	return ref(n), err == nil && n > 0
}

// indirect reads the object that begins at a place and returns where it ends.
func (s *scan) indirect(n ref, at int) int {
	l := lexer{s.data, at}
	o, err := l.object(0)
	if err != nil {
		s.patience -= l.at - at
		return at
	}
	d, isDict := o.(dict)
	if isDict {
		l.space()
		if bytes.HasPrefix(s.data[l.at:], []byte("stream")) {
			l.at += len("stream")
			if l.peek(0) == '\r' {
				l.at++
			}
			if l.peek(0) == '\n' {
				l.at++
			}
			st := streamObject{d, l.at, 0}
			st.end = s.endOf(st)
			o, l.at = st, st.end
		}
	}
	s.objects[n], s.places[n] = o, [2]int{at, l.at}
	if st, ok := o.(streamObject); ok {
		switch d["Type"] {
		case name("XRef"):
			s.trailer(d)
		case name("ObjStm"):
			s.unpack(st)
		}
	}
	return l.at
}

// trailer takes what is needed from a trailer or a cross-reference stream's dictionary.
func (s *scan) trailer(o any) {
	d, _ := o.(dict)
	if d["Root"] != nil {
		s.root, s.info = d["Root"], d["Info"]
	}
	if d["Encrypt"] != nil {
		s.locked = true
	}
}

// endOf returns the end of a stream's bytes: by its length where the keyword follows there, else at the keyword.
func (s *scan) endOf(st streamObject) int {
	if n, ok := s.resolve(st.dict["Length"]).(float64); ok && n >= 0 && n <= float64(len(s.data)-st.start) {
		l := lexer{s.data, st.start + int(n)}
		for isSpace(l.peek(0)) && l.at < len(l.data) {
			l.at++
		}
		if bytes.HasPrefix(s.data[l.at:], []byte("endstream")) {
			return st.start + int(n)
		}
	}
	n := bytes.Index(s.data[st.start:], []byte("endstream"))
	if n < 0 {
		return len(s.data)
	}
	end := st.start + n
	if end > st.start && s.data[end-1] == '\n' {
		end--
	}
	if end > st.start && s.data[end-1] == '\r' {
		end--
	}
	return end
}

// unpack reads the objects packed in an object stream (7.5.7).
func (s *scan) unpack(st streamObject) {
	data, err := s.decode(st)
	if err != nil {
		return
	}
	count, _ := s.resolve(st.dict["N"]).(float64)
	first, _ := s.resolve(st.dict["First"]).(float64)
	head, read := lexer{data, 0}, 0
	for range int(min(max(count, 0), float64(len(data)))) {
		n, err1 := head.object(0)
		at, err2 := head.object(0)
		number, ok1 := n.(float64)
		offset, ok2 := at.(float64)
		if err1 != nil || err2 != nil || !ok1 || !ok2 || number <= 0 || number > 1e9 || first < 0 || offset < 0 || first+offset > float64(len(data)) {
			return
		}
		body := lexer{data, int(first + offset)}
		o, err := body.object(0)
		if err == nil {
			s.objects[ref(number)] = o
		}
		if read += body.at - int(first+offset); read > 2*len(data) { // they overlap: nobody's honest file
			return
		}
	}
}

// resolve follows references to an object.
func (s *scan) resolve(o any) any {
	for range deepest {
		r, ok := o.(ref)
		if !ok {
			return o
		}
		o = s.objects[r]
	}
	return nil
}
