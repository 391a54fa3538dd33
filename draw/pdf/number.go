package pdf

import (
	"bytes"
	"cmp"
	"errors"
	"math"
	"strconv"

	"hoopwright/draw/paper"
)

const pointsPerMm = 72 / 25.4

var errNotFinite = errors.New("a coordinate is not a finite number")

// points turns a length on paper into points, rounded to 1e-4 mm first, so that the last bits in which processors differ do not reach the file.
func points(l paper.Length) float64 { return math.Round(float64(l)*1e4) / 1e4 * pointsPerMm }

// num writes v with the given decimals at most and no minus before zero. Every number of a page passes here.
func (c *canvas) num(v float64, decimals int) {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		c.err = cmp.Or(c.err, errNotFinite)
		return
	}
	start := len(c.buf)
	c.buf = strconv.AppendFloat(c.buf, v, 'f', decimals, 64)
	if decimals > 0 {
		c.buf = bytes.TrimRight(c.buf, "0") // stops at the point
		c.buf = bytes.TrimSuffix(c.buf, []byte{'.'})
	}
	if string(c.buf[start:]) == "-0" {
		c.buf = append(c.buf[:start], '0')
	}
	c.buf = append(c.buf, ' ')
}
