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

// Rides returns what pipe of a length rides on. Common practice, no source.
func Rides(u measure.System, long measure.Length) Ride {
	for i, most := range []measure.Length{measure.By(u, 5*measure.Foot, 1500), measure.By(u, 8*measure.Foot, 2500), measure.By(u, 13*measure.Foot, 4000)} {
		if long <= most {
			return Ride(i)
		}
	}
	return OnTrailer
}
