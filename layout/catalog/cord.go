package catalog

import (
	"fmt"
	"strings"

	"hoopwright/layout/measure"
)

const (
	necSource = "resistance NEC chapter 9 table 8, stranded copper at 75 °C; amps the least of NEC table 400.5(A)(1), the 15 A plug and " +
		"typical labels (from memory): check the label"
	iecSource = "resistance IEC 60228 class 5 at 20 °C; amps the lesser of BS 7671 table 4F3A (from memory) and a plug: 16 A, " +
		"13 A behind the fuse of a BS 1363 plug, which is taken for all: check the label"
)

// Cords returns the cords, thinnest first within their world. The lengths are what stores commonly keep: common practice, no source.
func Cords() []Cord {
	feet, metres := lengths(measure.Foot, 6, 9, 15, 25, 50, 100), lengths(measure.Metre, 2, 3, 5, 10, 15, 25, 50)
	thin := nec("16 AWG", 16, 4.99, 13, feet)
	thin.Long, thin.LongAmps = 50*measure.Foot, 10
	return []Cord{
		thin,
		nec("14 AWG", 14, 3.14, 15, feet),
		nec("12 AWG", 12, 1.98, 15, feet),
		{Name: "1.0 mm2", Area: 1.0, Ohms: 19.5, Amps: 10, Lengths: metres, Volts: 230, Source: iecSource},
		{Name: "1.5 mm2", Area: 1.5, Ohms: 13.3, Amps: 13, Lengths: metres, Volts: 230, Source: iecSource},
		{Name: "2.5 mm2", Area: 2.5, Ohms: 7.98, Amps: 13, Lengths: metres, Volts: 230, Source: iecSource},
	}
}

// nec takes the table's ohms per thousand feet.
func nec(name string, gauge int, ohms float64, amps measure.Current, feet []measure.Length) Cord {
	return Cord{
		Name:    name,
		Area:    measure.AWG(gauge),
		Ohms:    ohms / measure.Foot.Metres(),
		Amps:    amps,
		Lengths: feet,
		Volts:   120,
		Source:  necSource,
	}
}

func lengths(unit measure.Length, counts ...int) []measure.Length {
	list := make([]measure.Length, len(counts))
	for i, n := range counts {
		list[i] = measure.Length(n) * unit
	}
	return list
}

// TimerSize returns the least size in which timers for outdoors are sold that carries so many amps, the largest where none does. The sizes: common
// practice, no source.
func TimerSize(amps measure.Current, volts measure.Voltage) measure.Current {
	sizes := []measure.Current{8, 10, 13, 15}
	if volts >= 200 {
		sizes = []measure.Current{10, 13, 16}
	}
	for _, size := range sizes {
		if amps <= size {
			return size
		}
	}
	return sizes[len(sizes)-1]
}

// FindCord returns the cord of that conductor size: 14 AWG, 1.5 mm2, cord 14 AWG.
func FindCord(name string) (Cord, bool) {
	area, err := measure.Parse[measure.Area](strings.TrimPrefix(key(name), "cord "))
	if err != nil {
		return Cord{}, false
	}
	for _, c := range Cords() {
		if measure.Abs(area/c.Area-1) < 1e-6 {
			return c, true
		}
	}
	return Cord{}, false
}

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
