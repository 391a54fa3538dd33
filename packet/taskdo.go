package packet

import (
	"fmt"

	"hoopwright/layout/crew"
	"hoopwright/layout/practice"
	"hoopwright/layout/say"
)

// plainly is an action's words where no figure is in them.
func plainly(s string) func(taskWords, crew.Task) string {
	return func(taskWords, crew.Task) string { return s }
}

// ofArches is an action's words with the arches it concerns in place of the verb %s.
func ofArches(format string) func(taskWords, crew.Task) string {
	return func(_ taskWords, t crew.Task) string { return fmt.Sprintf(format, say.Numbered("arch", t.Of.Arches)) }
}

// doing finds how an action is said; nil where nobody has words for it.
func doing(a crew.Action) func(taskWords, crew.Task) string {
	for _, table := range []map[crew.Action]func(taskWords, crew.Task) string{doingGround, doingArches, doingLights} {
		if words := table[a]; words != nil {
			return words
		}
	}
	return nil
}

// grown says the least age.
func grown() string { return fmt.Sprintf("All %d or older.", practice.Least) }
