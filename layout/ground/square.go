package ground

import "hoopwright/layout/measure"

// Square is a right angle to set out with tapes: A along the line of the first arch's stakes, B along the tunnel, C across.
type Square struct{ A, B, C measure.Length }
