package measure

import (
	"encoding/json"
	"fmt"
	"math"
)

// MarshalJSON writes millimetres to a millionth, so that spreadsheets see 7620 and not the dust of binary arithmetic. A
// length that is no number is an error.
func (l Length) MarshalJSON() ([]byte, error) { return millionths("length", float64(l)) }

// MarshalJSON writes volts to a millionth, as lengths are.
func (v Voltage) MarshalJSON() ([]byte, error) { return millionths("voltage", float64(v)) }

func millionths(what string, x float64) ([]byte, error) {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return nil, fmt.Errorf("measure: a %s of %v", what, x)
	}
	return json.Marshal(math.Round(x*1e6)/1e6 + 0) // + 0 turns -0 into 0
}
