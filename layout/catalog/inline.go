package catalog

import (
	"fmt"

	"hoopwright/layout/measure"
)

// Inline is an outdoor cord with several sockets along it: after a lead without any, one socket every so often, the last at its end.
type Inline struct {
	Cord    Cord `key:"gauge"` // its kind
	Length  measure.Length
	Sockets int
	Apart   measure.Length // of two sockets
	Price   *float64       // nil where not given
	Source  string
}

// Lead returns the length before its first socket.
func (c Inline) Lead() measure.Length { return c.Length - measure.Length(c.Sockets-1)*c.Apart }

// Name returns what a shop may call it: 16 AWG 50 ft with 9 sockets; in metres where its world is metric.
func (c Inline) Name() string {
	unit, word := measure.Foot, "ft"
	if c.Cord.Volts >= 200 {
		unit, word = measure.Metre, "m"
	}
	return fmt.Sprintf("%s %.4g %s with %d sockets", c.Cord.Name, float64(c.Length/unit), word, c.Sockets)
}

const inlineSource = "typical lengths and spacings of what is sold, from memory: check what your shop has"

// Inlines returns the cords with several sockets, those of 120 V first.
func Inlines() []Inline {
	var out []Inline
	add := func(gauge string, unit, length measure.Length, sockets int, apart measure.Length) {
		c, _ := FindCord(gauge)
		out = append(out, Inline{Cord: c, Length: length * unit, Sockets: sockets, Apart: apart * unit, Source: inlineSource})
	}
	for _, gauge := range []string{"16 AWG", "14 AWG"} {
		add(gauge, measure.Foot, 25, 3, 8)
		add(gauge, measure.Foot, 25, 5, 5)
		add(gauge, measure.Foot, 50, 5, 10)
		add(gauge, measure.Foot, 50, 9, 5)
	}
	for _, gauge := range []string{"1.5 mm2", "2.5 mm2"} {
		add(gauge, measure.Metre, 10, 5, 2)
		add(gauge, measure.Metre, 15, 5, 3)
		add(gauge, measure.Metre, 20, 10, 2)
	}
	return out
}
