package pdf

import (
	"bytes"
	"compress/zlib"
	"encoding/ascii85"
	"errors"
	"fmt"
	"io"
)

var errTooLarge = errors.New("the file unpacks to more than 64 MB")

// decode returns a stream's bytes with its filters undone (ISO 32000-1, 7.4).
func (s *scan) decode(st streamObject) ([]byte, error) {
	end := st.end
	if _, later := st.dict["Length"].(ref); later { // known by now
		end = s.endOf(st)
	}
	data := s.data[st.start:end]
	if s.left -= len(data); s.left < 0 {
		return nil, errTooLarge
	}
	filters := listOf(s.resolve(st.dict["Filter"]))
	params := listOf(s.resolve(st.dict["DecodeParms"]))
	if len(filters) > 8 {
		return nil, errSyntax
	}
	for i, f := range filters {
		var p dict
		if i < len(params) {
			p, _ = s.resolve(params[i]).(dict)
		}
		var err error
		switch f := s.resolve(f); f {
		case name("FlateDecode"), name("Fl"):
			if data, err = s.inflate(data); err == nil {
				data, err = s.unpredict(data, p)
			}
		case name("ASCIIHexDecode"), name("AHx"):
			data, err = unhex(bytes.TrimRight(data, "> \r\n\t"))
		case name("ASCII85Decode"), name("A85"):
			data, err = unascii85(data)
		case name("Crypt"):
			err = errEncrypted
		default:
			err = fmt.Errorf("packed with %v, which is not read here", f)
		}
		if err != nil {
			return nil, err
		}
	}
	return data, nil
}

func listOf(o any) array {
	switch o := o.(type) {
	case nil:
		return nil
	case array:
		return o
	}
	return array{o}
}

func (s *scan) inflate(data []byte) ([]byte, error) {
	z, err := zlib.NewReader(bytes.NewReader(data))
	if err != nil {
		return nil, err
	}
	out, err := io.ReadAll(io.LimitReader(z, int64(s.left)+1))
	if len(out) > s.left {
		return nil, errTooLarge
	}
	s.left -= len(out)
	return out, err
}

func unascii85(data []byte) ([]byte, error) {
	data = bytes.TrimPrefix(bytes.TrimSpace(data), []byte("<~"))
	if end := bytes.IndexByte(data, '~'); end >= 0 {
		data = data[:end]
	}
	return io.ReadAll(ascii85.NewDecoder(bytes.NewReader(data)))
}

// unpredict undoes the PNG predictors (7.4.4.4), which cross-reference streams use and few others.
func (s *scan) unpredict(data []byte, p dict) ([]byte, error) {
	value := func(key name, usual int) int {
		if v, ok := s.resolve(p[key]).(float64); ok && v >= 0 && v < 1e6 {
			return int(v)
		}
		return usual
	}
	predictor := value("Predictor", 1)
	if predictor == 1 {
		return data, nil
	}
	bits := value("Colors", 1) * value("BitsPerComponent", 8)
	step, row := max(1, (bits+7)/8), (bits*value("Columns", 1)+7)/8
	if predictor < 10 || row <= 0 {
		return nil, fmt.Errorf("predicted by method %d, which is not read here", predictor)
	}
	var out []byte
	above := make([]byte, row)
	for len(data) > 1 {
		method := data[0]
		line := bytes.Clone(data[1:min(len(data), 1+row)])
		data = data[1+len(line):]
		for i := range line {
			var left, corner byte
			if i >= step {
				left, corner = line[i-step], above[i-step]
			}
			switch method {
			case 1:
				line[i] += left
			case 2:
				line[i] += above[i]
			case 3:
				line[i] += byte((int(left) + int(above[i])) / 2)
			case 4:
				line[i] += paeth(left, above[i], corner)
			}
		}
		out = append(out, line...)
		copy(above, line)
	}
	return out, nil
}

// paeth returns the neighbour nearest to left + above − corner (PNG specification, 9.4).
func paeth(left, above, corner byte) byte {
	p := int(left) + int(above) - int(corner)
	dist := func(v byte) int { return max(p-int(v), int(v)-p) }
	if dist(left) <= dist(above) && dist(left) <= dist(corner) {
		return left
	}
	if dist(above) <= dist(corner) {
		return above
	}
	return corner
}
