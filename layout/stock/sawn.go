package stock

// Sawn counts the bars that a saw goes through, and the leg pieces among what is cut from them; whole sticks are not counted.
func (c Cuts) Sawn() (bars, legs int) {
	for _, b := range c.Bars {
		if b.Whole() {
			continue
		}
		bars++
		for _, p := range b.Pieces {
			if !p.ID.Steel && !p.ID.Ridge() {
				legs++
			}
		}
	}
	return bars, legs
}
