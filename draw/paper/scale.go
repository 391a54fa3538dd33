package paper

// Scale is a drawing's scale: one millimetre of paper stands for Ratio millimetres of ground.
type Scale struct {
	Ratio float64
	Words string // as the title block says it: "1/2 in = 1 ft (1:24)", "1:50"
}

// The standard series, largest first. Metric after ISO 5455 with its usual 1:25 and 1:250 beside; imperial the architect's
// and, from 1:120, the engineer's scales.
var (
	MetricScales = []Scale{{1, "full size"}, {2, "1:2"}, {5, "1:5"}, {10, "1:10"}, {20, "1:20"}, {25, "1:25"}, {50, "1:50"},
		{100, "1:100"}, {200, "1:200"}, {250, "1:250"}, {500, "1:500"}, {1000, "1:1000"}, {2000, "1:2000"}}
	ImperialScales = []Scale{{1, "full size"}, {2, "half size (1:2)"}, {4, "3 in = 1 ft (1:4)"}, {8, "1-1/2 in = 1 ft (1:8)"}, {12, "1 in = 1 ft (1:12)"},
		{16, "3/4 in = 1 ft (1:16)"}, {24, "1/2 in = 1 ft (1:24)"}, {32, "3/8 in = 1 ft (1:32)"}, {48, "1/4 in = 1 ft (1:48)"}, {64, "3/16 in = 1 ft (1:64)"}, {96, "1/8 in = 1 ft (1:96)"},
		{120, "1 in = 10 ft (1:120)"}, {192, "1/16 in = 1 ft (1:192)"}, {240, "1 in = 20 ft (1:240)"}, {360, "1 in = 30 ft (1:360)"}, {480, "1 in = 40 ft (1:480)"}, {600, "1 in = 50 ft (1:600)"}, {720, "1 in = 60 ft (1:720)"}, {1200, "1 in = 100 ft (1:1200)"}, {2400, "1 in = 200 ft (1:2400)"}}
)

// Fit returns the largest scale of the series at which a real extent of w by h millimetres fits the room on paper, or the smallest scale there is.
func Fit(series []Scale, w, h float64, room Rect) Scale {
	for _, s := range series {
		if w/s.Ratio <= float64(room.W) && h/s.Ratio <= float64(room.H) {
			return s
		}
	}
	return series[len(series)-1]
}

// Length returns what a real length of mm millimetres measures on paper.
func (s Scale) Length(mm float64) Length { return Length(mm / s.Ratio) }
