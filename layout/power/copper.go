package power

import (
	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
)

// flexWarm is how warm a flex gets at its full current, °C: the 60 °C of rubber and plastic. IEC 60228 gives its resistance at 20 °C, the NEC's table
// that of a cord already at 75 °C. A string's thin wire carries far less than it could and is figured as its table gives it.
const flexWarm = measure.Temperature(60)

// copper returns the resistance at one temperature over that at another: R = R20·(234.5 + T)/254.5, annealed copper.
func copper(at, from measure.Temperature) float64 {
	return (234.5 + float64(at)) / (234.5 + float64(from))
}

// warmOhms returns the resistance per km of one conductor of a cord that carries all it may.
func warmOhms(c catalog.Cord) float64 {
	if c.Volts >= 200 {
		return c.Ohms * copper(flexWarm, 20)
	}
	return c.Ohms
}
