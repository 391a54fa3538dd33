// Package wish makes a spec out of what a person wishes for and knows: a dozen answers in plain words. What a wish leaves open, the pipe and the sticks, is chosen by solving: the
// first that stands, with the fewest things to look at. What nobody knows of a danger is written down as not known, never taken for harmless.
package wish

import (
	"cmp"
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// DontKnow is the answer of who does not know.
const DontKnow = "don't know"

// Question is one thing to be asked.
type Question struct {
	Name    string // one word, an option's name
	Ask     string // the question
	Why     string // what its answer decides
	Default string // the answer of who gives none
	read    func(w *wishes, answer string) error
}

// wishes are the answers, read.
type wishes struct {
	units                 measure.System
	title                 string
	width, height, length measure.Length
	pipe                  string // canonical; empty: to be chosen
	stick                 measure.Length
	rows                  bool
	strings               []string // catalog names; none: no lights
	soil, around          string   // words of the spec; empty where not known
	outlet                offset   // from the middle of the entrance
	hasOutlet             bool
	volts                 measure.Voltage
	breaker               measure.Current
	breakerKnown          bool
	gfci                  answer
	buried                answer
	overhead              answer
	wire                  measure.Length // height of the lowest, where there is one
	marks                 []mark
	people                []string
}

type answer int

const (
	unknown answer = iota
	yes
	no
)

// offset is a place seen from the middle of the entrance, as the walker looks in.
type offset struct {
	side, along   string // left or right, ahead or behind
	across, depth measure.Length
}

// mark is a fixed thing with its tapes from the left and the right peg of the entrance.
type mark struct {
	name        string
	left, right measure.Length
	ahead       bool
}

// Questions are what is asked, in the order of asking, with examples in the system's units.
func Questions(u measure.System) []Question {
	by := func(imperial, metric string) string { return measure.By(u, imperial, metric) }
	return []Question{
		{"title", "What is it called?", "Stands on every sheet, and tells this packet from others.", "My light tunnel", func(w *wishes, a string) error { w.title = a; return nil }},
		{"width", "How wide at the ground, from stake to stake?", "With the height it decides the sticks.", by("8 ft", "2.4 m"), func(w *wishes, a string) error { return length(a, &w.width) }},
		{"height", "How high at the crown?", "People, their hats and what hangs there must pass below.", by("8 ft", "2.4 m"), func(w *wishes, a string) error { return length(a, &w.height) }},
		{"length", "How long, from the first arch to the last?", "Decides how many arches there are.", by("24 ft", "7 m"), func(w *wishes, a string) error { return length(a, &w.length) }},
		{"pipe", "Which pipe is at hand?", "Another bends otherwise. Left open, the pipe that stands best is chosen.", DontKnow, (*wishes).readPipe},
		{"stick", "How long are its sticks as sold?", "Longer legs are joined from two.", DontKnow, func(w *wishes, a string) error { return optional(a, &w.stick) }},
		{"volts", "How many volts has the outlet?", "Strings, cords and timers are made for one or the other.", by("120 V", "230 V"), (*wishes).readVolts},
		{"lights", "Which lights? legs or rows, then colours, as in: rows warm, " + by("red", "multi") + ". Or none.", "Rows run along the walls, in turn; legs are wound.", "legs warm", (*wishes).readLights},
		{"soil", "What is the soil? firm, soft, sandy or frozen.", "Decides how deep the stakes go, and the wind to close at.", DontKnow, (*wishes).readSoil},
		{"around", "What stands within 100 yards, all round? open, suburban, sheltered, shore, hilltop or gap.", "Houses and trees keep the wind off; a hilltop does not.", DontKnow, (*wishes).readAround},
		{"outlet", "Where is the outlet, seen from the middle of the entrance?", "As in: left " + by("12 ft", "3.6 m") + ", behind " + by("6 ft", "1.8 m") + ". Decides the cords.", DontKnow, (*wishes).readOutlet},
		{"breaker", "How many amps does the outlet's breaker read?", "It limits how many strings one outlet feeds. Not known: the least is taken, " + by("15 A", "10 A") + ", and reading it is a task.", DontKnow, (*wishes).readBreaker},
		{"gfci", "Does the outlet go dead when TEST is pressed (" + by("GFCI", "RCD") + ")? yes or no.", "Without that protection, lights outdoors can kill.", DontKnow, func(w *wishes, a string) error { return yesNo(a, &w.gfci) }},
		{"buried", "Is anything buried where stakes go? yes or no.", "A stake through a gas or power line can kill.", DontKnow, func(w *wishes, a string) error { return yesNo(a, &w.buried) }},
		{"overhead", "Is a wire or branch overhead? no, or the height of the lowest.", "An arch carried upright into a wire can kill.", DontKnow, (*wishes).readOverhead},
		{"marks", "Fixed things, each with its tapes from the left and the right peg of the entrance?", "As in: porch post " + by("9 ft 4 in, 14 ft", "2.8 m, 4.3 m") + " behind; oak " + by("30 ft, 28 ft", "9 m, 8.5 m") + " ahead. Next year's stakes are found by them.", "none", (*wishes).readMarks},
		{"people", "Who comes? family, or any of public, children, wheelchairs.", "Decides how wide the way must stay.", "family", (*wishes).readPeople},
	}
}

// Check reports what is wrong with an answer to the question of that name, after those given before, nothing where it can be read.
func Check(u measure.System, given map[string]string, name, answer string) error {
	w := &wishes{units: u}
	for _, q := range Questions(u) {
		text, ok := given[q.Name]
		switch {
		case q.Name == name:
			return q.answer(w, answer)
		case ok:
			if err := q.answer(w, text); err != nil {
				return fmt.Errorf("%s: %w", q.Name, err)
			}
		}
	}
	return fmt.Errorf("no question is named %s", name)
}

// answer reads an answer, or the default in the place of none.
func (q Question) answer(w *wishes, text string) error {
	text = cmp.Or(strings.Join(strings.Fields(text), " "), q.Default)
	if slices.Contains([]string{"?", DontKnow, "dont know", "do not know", "not known", "unknown", "no idea", "not sure"}, strings.ToLower(strings.ReplaceAll(text, "’", "'"))) {
		text = DontKnow
	}
	return q.read(w, text)
}

func notKnown(text string) bool { return strings.EqualFold(text, DontKnow) }

func length(text string, into *measure.Length) error {
	v, err := measure.ParseLength(text)
	if err == nil && v <= 0 {
		err = fmt.Errorf("%q is nought or less; a length such as 8 ft or 2.4 m is wanted", text)
	}
	*into = v
	return err
}

func optional(text string, into *measure.Length) error {
	if notKnown(text) {
		return nil
	}
	return length(text, into)
}

func yesNo(text string, into *answer) error {
	switch strings.ToLower(text) {
	case "yes", "y", "true":
		*into = yes
	case "no", "n", "false", "none", "nothing":
		*into = no
	case DontKnow:
		*into = unknown
	default:
		return fmt.Errorf("%q is neither yes nor no nor %s", text, DontKnow)
	}
	return nil
}

func (w *wishes) readPipe(text string) error {
	if notKnown(text) {
		return nil
	}
	known := spec.PipeNames()
	p, ok := catalog.FindPipe(text)
	if !ok {
		if p, ok = catalog.FindPipe(catalog.Alike(text, known)); !ok {
			return fmt.Errorf("no pipe is named %q; known are %s, or %s", text, strings.Join(known, ", "), DontKnow)
		}
	}
	w.pipe = p.Name
	return nil
}

func (w *wishes) readLights(text string) error {
	w.strings, w.rows = nil, false
	if strings.EqualFold(text, "none") || strings.EqualFold(text, "no") {
		return nil
	}
	first, rest, _ := strings.Cut(strings.NewReplacer(":", " ", " and ", ", ").Replace(text), " ")
	switch strings.ToLower(first) {
	case "rows", "row":
		w.rows = true
	case "legs", "leg", "wraps":
	default:
		rest = text
	}
	if strings.TrimSpace(rest) == "" {
		rest = "warm"
	}
	for _, colour := range strings.Split(rest, ",") {
		name, err := w.lightString(strings.TrimSpace(colour))
		if err != nil {
			return err
		}
		w.strings = append(w.strings, name)
	}
	if !w.rows && len(w.strings) > 2 {
		return fmt.Errorf("legs take one or two colours, not %d; rows take any number", len(w.strings))
	}
	return nil
}

// lightString is the catalog's string of a name or a colour: 100 lamps of the outlet's volts, or of those that go with the units.
func (w *wishes) lightString(text string) (string, error) {
	high := w.volts > 200 || w.volts == 0 && w.units == measure.Metric
	var known []string
	for _, s := range catalog.Strings() {
		if s.Supply == nil && (s.Volts > 200) == high {
			known = append(known, s.Name)
		}
	}
	if s, ok := catalog.FindString(text); ok {
		return s.Name, nil
	}
	ours := "mini led 100 %s"
	if high {
		ours = "led 100 %s 230 V"
	}
	if s, ok := catalog.FindString(fmt.Sprintf(ours, text)); ok {
		return s.Name, nil
	}
	if name := catalog.Alike(text, known); name != "" {
		return name, nil
	}
	return "", fmt.Errorf("no string is like %q; known are %s", text, strings.Join(known, ", "))
}

func (w *wishes) readSoil(text string) error {
	return oneOf(text, []string{spec.Firm.String(), spec.Soft.String(), spec.Sandy.String(), spec.Frozen.String()}, &w.soil)
}

func (w *wishes) readAround(text string) error {
	return oneOf(text, []string{"open", "suburban", "sheltered", "shore", "hilltop", "gap"}, &w.around)
}

// oneOf reads one of a few words, or nothing where it is not known.
func oneOf(text string, words []string, into *string) error {
	*into = ""
	if notKnown(text) {
		return nil
	}
	if !slices.Contains(words, strings.ToLower(text)) {
		return fmt.Errorf("%q is not known here; %s is wanted, or %s", text, say.Or(words), DontKnow)
	}
	*into = strings.ToLower(text)
	return nil
}

var aside = regexp.MustCompile(`(?i)^(left|right) (.+?),? (?:and )?(ahead|behind) (.+)$`)

func (w *wishes) readOutlet(text string) error {
	w.hasOutlet = false
	if notKnown(text) || strings.EqualFold(text, "none") {
		return nil
	}
	parts := aside.FindStringSubmatch(text)
	if parts == nil {
		return fmt.Errorf("%q tells no place; left or right and ahead or behind are wanted, each with its length, as in left 12 ft, behind 6 ft", text)
	}
	across, wrongAcross := measure.ParseLength(strings.TrimRight(parts[2], ", "))
	depth, wrongDepth := measure.ParseLength(strings.TrimRight(parts[4], ", "))
	w.outlet = offset{strings.ToLower(parts[1]), strings.ToLower(parts[3]), across, depth}
	err := cmp.Or(wrongAcross, wrongDepth)
	w.hasOutlet = err == nil
	return err
}

func (w *wishes) readVolts(text string) (err error) {
	if notKnown(text) {
		text = measure.By(w.units, "120 V", "230 V")
	}
	w.volts, err = measure.Parse[measure.Voltage](text)
	return err
}

// readBreaker takes the least that outlets have where nobody knows: 15 A where it is 120 V (NEC 210.24), else 10 A (Switzerland, Australia; 13 A in Britain and 16 A in most of
// Europe are more).
func (w *wishes) readBreaker(text string) (err error) {
	w.breakerKnown = !notKnown(text)
	if !w.breakerKnown {
		text = "10 A"
		if w.volts > 0 && w.volts < 200 {
			text = "15 A"
		}
	}
	w.breaker, err = measure.Parse[measure.Current](text)
	return err
}

func (w *wishes) readOverhead(text string) error {
	if l, err := measure.ParseLength(text); err == nil && l > 0 {
		w.overhead, w.wire = yes, l
		return nil
	}
	if err := yesNo(text, &w.overhead); err != nil || w.overhead == yes {
		return fmt.Errorf("%q says neither that nothing is overhead nor how high the lowest is", text)
	}
	return nil
}

var taped = regexp.MustCompile(`(?i)^(\D+?),? (\d.*?), ?(\d.*?),? (ahead|behind)$`)

// readMarks reads fixed things parted by semicolons.
func (w *wishes) readMarks(text string) error {
	w.marks = nil
	if strings.EqualFold(text, "none") || notKnown(text) {
		return nil
	}
	for _, one := range strings.Split(text, ";") {
		parts := taped.FindStringSubmatch(strings.TrimSpace(one))
		if parts == nil {
			return fmt.Errorf("%q is no mark; a name, the tape from the left peg, the tape from the right peg, then ahead or behind are wanted, as in porch post 9 ft 4 in, 14 ft behind", strings.TrimSpace(one))
		}
		m := mark{name: parts[1], ahead: strings.EqualFold(parts[4], "ahead")}
		if err := errors.Join(length(parts[2], &m.left), length(parts[3], &m.right)); err != nil {
			return err
		}
		w.marks = append(w.marks, m)
	}
	return nil
}

func (w *wishes) readPeople(text string) error {
	w.people = nil
	known := []string{"family", "public", "children", "wheelchairs"}
	for _, one := range strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return r == ',' || r == ' ' || r == ';' }) {
		if one == "and" {
			continue
		}
		if !slices.Contains(known, one) {
			return fmt.Errorf("%q is not known here; %s is wanted", one, say.Or(known))
		}
		w.people = append(w.people, one)
	}
	return nil
}
