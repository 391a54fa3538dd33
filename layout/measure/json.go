package measure

import (
	"encoding/json"
	"fmt"
	"math"
)

// MarshalJSON writes millimetres to a millionth, so that spreadsheets see 7620 and not the dust of binary arithmetic. A
// length that is no number is an error.
func (l Length) MarshalJSON() ([]byte, error) {
	if math.IsNaN(float64(l)) || math.IsInf(float64(l), 0) {
		return nil, fmt.Errorf("measure: a length of %v", float64(l))
	}
	return json.Marshal(math.Round(float64(l)*1e6)/1e6 + 0) // + 0 turns -0 into 0
}
