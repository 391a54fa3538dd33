package pdf

import (
	"bytes"
	"errors"
	"math"
	"strconv"

	"hoopwright/draw/paper"
)

const pointsPerMm = 72 / 25.4

var errNotFinite = errors.New("a coordinate is not a finite number")

// grid rounds a length to 1e-4 mm, so that the last bits in which processors differ do not reach the file.
func grid(l paper.Length) float64 { return math.Round(float64(l)*1e4) / 1e4 }

// points turns a length on paper into points.
func points(l paper.Length) float64 { return grid(l) * pointsPerMm }

// appendNumber appends v with the given decimals at most and no minus before zero. Every number of a page passes here.
func appendNumber(b []byte, v float64, decimals int) ([]byte, error) {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return b, errNotFinite
	}
	start := len(b)
	b = strconv.AppendFloat(b, v, 'f', decimals, 64)
	if decimals > 0 {
		b = bytes.TrimRight(b, "0") // stops at the point
		b = bytes.TrimSuffix(b, []byte{'.'})
	}
	if string(b[start:]) == "-0" {
		b = append(b[:start], '0')
	}
	return b, nil
}
