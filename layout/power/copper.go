// What copper loses by its temperature.

package power

import (
	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
)

// Copper's temperatures, °C. Cords are figured as warm as they get at their full current: the NEC's table at 75 °C; IEC 60228's 20 °C
// taken to the 60 °C of rubber and plastic flex. With that 1.0, 1.5 and 2.5 mm² lose 46, 32 and 19 mV/A/m as in BS 7671 table
// 4F3B (from memory). A string's thin wire carries far less than it could and is figured at 20 °C.
const (
	necWarm    = measure.Temperature(75)
	flexWarm   = measure.Temperature(60)
	stringWarm = measure.Temperature(20)
)

// copper returns the resistance at one temperature over that at another: R = R20·(234.5 + T)/254.5, annealed copper.
func copper(at, from measure.Temperature) float64 {
	return (234.5 + float64(at)) / (234.5 + float64(from))
}

// warmth is the temperature that a cord's loss is figured at.
func warmth(c catalog.Cord) measure.Temperature {
	if c.Volts >= 200 {
		return flexWarm
	}
	return necWarm
}

// warmOhms returns the resistance per km of one conductor of a cord that carries all it may.
func warmOhms(c catalog.Cord) float64 {
	if c.Volts >= 200 {
		return c.Ohms * copper(flexWarm, 20)
	}
	return c.Ohms
}
