package arch

import (
	"fmt"
	"strings"

	"hoopwright/layout/measure"
)

// given reports whether the spec gives one of the arch's keys.
func (in *Input) given(keys ...string) bool {
	_, ok := in.path(keys...)
	return ok
}

// path returns the first of the arch's keys that the spec gives, as a full path; else where the first would stand.
func (in *Input) path(keys ...string) (string, bool) {
	roots := in.Keys
	if len(roots) == 0 {
		roots = []string{"arch"}
	}
	for _, key := range keys {
		for _, root := range roots {
			if p := root + "." + key; in.Given != nil && in.Given(p) {
				return p, true
			}
		}
	}
	return roots[len(roots)-1] + "." + keys[0], false
}

// Named says which arches some rising numbers are: Arch 3; Arches 1, 4 to 6.
func Named(n []int) string {
	if len(n) == 0 {
		return "Arch"
	}
	var parts []string
	for i := 0; i < len(n); {
		e := i
		for e+1 < len(n) && n[e+1] == n[e]+1 {
			e++
		}
		switch e - i {
		case 0:
			parts = append(parts, fmt.Sprint(n[i]))
		case 1:
			parts = append(parts, fmt.Sprint(n[i]), fmt.Sprint(n[e]))
		default:
			parts = append(parts, fmt.Sprintf("%d to %d", n[i], n[e]))
		}
		i = e + 1
	}
	if len(n) == 1 {
		return "Arch " + parts[0]
	}
	return "Arches " + strings.Join(parts, ", ")
}

// sticks names the sticks of the arch: sticks of 120 in and 120 in.
func (j *judge) sticks() string {
	leg := func(sticks []measure.Length) string {
		var parts []string
		for _, s := range sticks {
			parts = append(parts, j.units.Cut(s))
		}
		return strings.Join(parts, " + ")
	}
	if j.spec.OneStick {
		return "one stick of " + leg(j.spec.Left)
	}
	return "sticks of " + leg(j.spec.Left) + " and " + leg(j.spec.Right)
}
