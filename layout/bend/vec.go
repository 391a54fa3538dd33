package bend

import "math"

// vec is a vector in space: x and y in the arch's plane, z square to it.
type vec [3]float64

func (a vec) dot(b vec) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }

func (a vec) cross(b vec) vec {
	return vec{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}

// plus returns a + t·b.
func (a vec) plus(t float64, b vec) vec { return vec{a[0] + t*b[0], a[1] + t*b[1], a[2] + t*b[2]} }

// add adds t·b to a, in place: sums over many are made of it.
func (a *vec) add(t float64, b *vec) { a[0], a[1], a[2] = a[0]+t*b[0], a[1]+t*b[1], a[2]+t*b[2] }

// on returns the dot product, the same as dot, without copies.
func (a *vec) on(b *vec) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }

func (a vec) length() float64 { return math.Sqrt(a.dot(a)) }

// mat is a 3×3 matrix, row by row.
type mat [9]float64

func (m *mat) times(v vec) vec {
	return vec{m[0]*v[0] + m[1]*v[1] + m[2]*v[2], m[3]*v[0] + m[4]*v[1] + m[5]*v[2], m[6]*v[0] + m[7]*v[1] + m[8]*v[2]}
}

// by returns the product m·n.
func (m *mat) by(n *mat) (p mat) {
	for i := 0; i < 9; i += 3 {
		for j := range 3 {
			p[i+j] = m[i]*n[j] + m[i+1]*n[3+j] + m[i+2]*n[6+j]
		}
	}
	return p
}

func (m *mat) transposed() mat {
	return mat{m[0], m[3], m[6], m[1], m[4], m[7], m[2], m[5], m[8]}
}

// inverse returns the inverse of a symmetric matrix and how many of its eigenvalues are negative, by the signs of its leading minors.
func (m *mat) inverse() (n mat, negative int) {
	a, b, c, d, e, f := m[0], m[1], m[2], m[4], m[5], m[8]
	p, q, r := d*f-e*e, c*e-b*f, b*e-c*d
	second, third := a*d-b*b, a*p+b*q+c*r
	for _, pivot := range [3]float64{a, a * second, second * third} {
		if pivot < 0 {
			negative++
		}
	}
	s := 1 / third
	n = mat{p * s, q * s, r * s, q * s, (a*f - c*c) * s, (b*c - a*e) * s, r * s, (b*c - a*e) * s, second * s}
	return n, negative
}

// turn is a rotation as a unit quaternion: its real part and the others.
type turn struct {
	s float64
	v vec
}

// after returns the rotation that turns by b first, then by a.
func (a turn) after(b turn) turn {
	return turn{a.s*b.s - a.v.dot(b.v), a.v.cross(b.v).plus(a.s, b.v).plus(b.s, a.v)}
}

// back is the opposite rotation.
func (a turn) back() turn { return turn{a.s, vec{-a.v[0], -a.v[1], -a.v[2]}} }

// about returns the rotation by a rotation vector.
func about(v vec) turn {
	angle := v.length()
	half := 0.5 - angle*angle/48
	if angle > 1e-3 {
		half = math.Sin(angle/2) / angle
	}
	return turn{math.Cos(angle / 2), vec{}.plus(half, v)}
}

// axes returns the rotated axes as the columns of a matrix: the first is the rod's tangent.
func (a turn) axes() mat {
	s, x, y, z := a.s, a.v[0], a.v[1], a.v[2]
	return mat{
		1 - 2*(y*y+z*z), 2 * (x*y - s*z), 2 * (x*z + s*y),
		2 * (x*y + s*z), 1 - 2*(x*x+z*z), 2 * (y*z - s*x),
		2 * (x*z - s*y), 2 * (y*z + s*x), 1 - 2*(x*x+y*y),
	}
}
