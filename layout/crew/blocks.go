package crew

// Block is a run of steps of one phase: what one crew does before the work passes on. Times are minutes from the start of the
// day; marking is on a day of its own.
type Block struct {
	Phase      Phase
	Steps      []Step
	People     int // the most that any of its steps takes
	Begin, End float64
}

// blocks parts the steps into runs of one phase and lays them along the day. Driving and the bench work (cutting and wrapping before the
// first arch stands) go on side by side where there are hands for both; all else is one after the other.
func (b *builder) blocks(steps []Step) []Block {
	var list []Block
	for i, s := range steps {
		if i == 0 || s.Phase != steps[i-1].Phase {
			list = append(list, Block{Phase: s.Phase})
		}
		block := &list[len(list)-1]
		block.Steps = append(block.Steps, s)
		block.People = max(block.People, s.People)
		block.End += s.Minutes
	}
	day, driven, raised := 0.0, 0.0, false
	for i := range list {
		block := &list[i]
		raised = raised || block.Phase == Raising
		bench := !raised && (block.Phase == Cutting || block.Phase == Wrapping)
		switch {
		case block.Phase == Marking:
			continue
		case bench && b.hands >= twoCrews:
			// day is where the bench has come to; driving runs beside it
		case block.Phase == Driving && b.hands >= twoCrews:
			driven = block.End
			continue
		default:
			day = max(day, driven)
		}
		block.Begin, block.End = day, day+block.End
		day = block.End
	}
	return list
}

// At returns the clock time of so many minutes after the start of the day, empty where the spec gives no start.
func (p Plan) At(minutes float64) string {
	if p.Start == "" {
		return ""
	}
	return clockTime(p.began + minutes)
}
