package crew

import "time"

// CallBy is the last day to call the locating service so that the full business days lie between it and the day of building.
func CallBy(build time.Time) time.Time { return callBy(build) }
