package practice

import "hoopwright/layout/measure"

// Aims are the forecast gusts that a tunnel is to stand in and to be open to, where the spec does not say. Our own choice.
func Aims(u measure.System) (stand, inside measure.Speed) {
	return measure.By(u, 35*measure.MPH, measure.Speed(55)/3.6), measure.By(u, 20*measure.MPH, measure.Speed(32)/3.6)
}

// Cold is how cold it gets, where the spec does not say: 20 °F. Common practice, no source.
func Cold(u measure.System) measure.Temperature {
	return measure.By(u, measure.Temperature(-20.0/3), -7)
}

// Gusts and pulls that something is told or done from. Our own choice but where a source stands.
const (
	InsideLeast = 15 * measure.MPH        // the forecast gust below which a tunnel that people may be inside of is no tunnel to build
	StakesTest  = 20 * measure.MPH        // the least gust that stakes are tried for: a fresh breeze, which no yard is spared
	AirOfNote   = 4 * measure.MPH         // a wind that leaves stir in, below which no gust is named: Beaufort 2 begins at 4 mph (from memory)
	MuchPull    = 10 * measure.PoundForce // on dry sockets, from which on it is worth a look; common practice, no source
)

// SwayGusts are the two gusts that the crown's sway is told of. Our own choice.
func SwayGusts() [2]measure.Speed { return [2]measure.Speed{20 * measure.MPH, 30 * measure.MPH} }
