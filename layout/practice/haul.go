package practice

import "hoopwright/layout/measure"

// Ride is what a length of pipe rides on.
type Ride int

// The rides.
const (
	InCar Ride = iota
	InVan
	OnRoof // tied to a rack
	OnTrailer
)

// Rides returns what pipe of a length and weight rides on. A roof and its rack bear some 75 kg; a van or a trailer bears any tunnel's pipe. Common practice, no source.
func Rides(u measure.System, long measure.Length, load measure.Mass) Ride {
	const onRoof measure.Mass = 75
	for i, most := range []measure.Length{measure.By(u, 5*measure.Foot, 1500), measure.By(u, 8*measure.Foot, 2500), measure.By(u, 13*measure.Foot, 4000)} {
		if long <= most && (load <= onRoof || Ride(i) != OnRoof) {
			return Ride(i)
		}
	}
	return OnTrailer
}
