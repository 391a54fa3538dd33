package finding

import "slices"

// Row is what holds of every finding of one code.
type Row struct {
	Code   string  // lower-case words joined by hyphens; stays the same from year to year
	Levels []Level // that it may be found at, worst first; one that somebody accepted is a note besides
	Leaf   string  // the word of the leaf whose crew acts on it
	Title  string  // a few plain words for paper

	Firm  bool     // nobody may take it on
	Cause bool     // likely why others are found
	Cures []string // the keys that its cure changes, lists without their numbers; none: no figure of the spec cures it
}

var (
	must       = []Level{MustFix}
	mustOrLook = []Level{MustFix, LookAt}
	look       = []Level{LookAt}
	lookOrNote = []Level{LookAt, Note}
	note       = []Level{Note}

	startMoved = []string{"site.start.at", "site.start.from", "site.start.side", "site.start.heading", "site.start.toward"}
)

// rows has every code there is, by leaf.
var rows = [...]Row{
	{Code: "lights-too-long", Levels: look, Leaf: "board", Title: "Lights stay up too long", Cures: []string{"dates.close", "dates.down"}},
	{Code: "mark-too-late", Levels: look, Leaf: "board", Title: "Dots come too late", Cures: []string{"dates.mark"}},
	{Code: "days-past", Levels: note, Leaf: "board", Title: "Days that are past"},
	{Code: "season-elsewhere", Levels: look, Leaf: "board", Title: "Another season's days", Cures: []string{"season"}},
	{Code: "letters-missing", Levels: look, Leaf: "board", Title: "Letters that cannot be printed"},
	{Code: "nothing-to-accept", Levels: note, Leaf: "board", Title: "Nothing to accept"},
	{Code: "walk-slopes", Levels: note, Leaf: "board", Title: "The walk slopes"},
	{Code: "near-overhead-line", Levels: mustOrLook, Leaf: "board", Title: "Too near an overhead line", Firm: true},
	{Code: "lies-flat-early", Levels: look, Leaf: "board", Title: "To be laid flat early"},
	{Code: "closes-early", Levels: mustOrLook, Leaf: "board", Title: "Closes in light wind"},
	{Code: "folds-under-ice", Levels: mustOrLook, Leaf: "board", Title: "Folds under ice"},

	{Code: "few-hands", Levels: look, Leaf: "day", Title: "Too few hands", Cures: []string{"crew.helpers"}},
	{Code: "buried-not-known", Levels: look, Leaf: "day", Title: "Buried lines not looked into", Firm: true},
	{Code: "overhead-not-known", Levels: look, Leaf: "day", Title: "Overhead lines not looked into", Firm: true},
	{Code: "height-not-known", Levels: note, Leaf: "day", Title: "Flat, or does it stand up?"},
	{Code: "gfci-not-known", Levels: look, Leaf: "day", Title: "Protection of outlets not tried"},
	{Code: "breaker-not-known", Levels: look, Leaf: "day", Title: "Breaker not read"},
	{Code: "long-day", Levels: look, Leaf: "day", Title: "The day is too long", Cures: []string{"crew.helpers", "crew.days", "crew.start", "found.wrapped"}},
	{Code: "days-too-short", Levels: must, Leaf: "day", Title: "The days are too short", Cures: []string{"crew.helpers", "crew.days", "found.wrapped"}},

	{Code: "stake-in-hard-ground", Levels: mustOrLook, Leaf: "stakes", Title: "A stake in hard ground", Cures: startMoved},
	{Code: "stake-near-hard-ground", Levels: look, Leaf: "stakes", Title: "A stake beside hard ground", Cures: startMoved},
	{Code: "stake-in-feature", Levels: look, Leaf: "stakes", Title: "A stake in something", Cures: startMoved},
	{Code: "stake-near-buried-line", Levels: mustOrLook, Leaf: "stakes", Title: "A stake near a buried line", Firm: true, Cures: startMoved},
	{Code: "stake-beside-keep", Levels: look, Leaf: "stakes", Title: "A stake beside a keep band", Cures: startMoved},
	{Code: "feature-in-tunnel", Levels: mustOrLook, Leaf: "stakes", Title: "Something stands in the tunnel"},
	{Code: "arches-overlap", Levels: must, Leaf: "stakes", Title: "Arches cross", Cures: []string{"site.route"}},
	{Code: "route-crosses-itself", Levels: must, Leaf: "stakes", Title: "The route crosses itself", Cures: []string{"site.route"}},
	{Code: "bay-too-narrow-inside", Levels: look, Leaf: "stakes", Title: "A bay too narrow inside the bend", Cures: []string{"site.route"}},
	{Code: "way-is-closed", Levels: mustOrLook, Leaf: "stakes", Title: "A side way is closed", Cures: []string{"braces.bays", "guys.arches"}},
	{Code: "way-is-blocked", Levels: look, Leaf: "stakes", Title: "A way runs into something", Cures: []string{"tunnel.ways[].bay"}},
	{Code: "guy-stakes-meet", Levels: look, Leaf: "stakes", Title: "Guy stakes meet"},
	{Code: "stake-on-mark", Levels: look, Leaf: "stakes", Title: "A stake on a mark"},
	{Code: "mark-not-fixed", Levels: must, Leaf: "stakes", Title: "Something taped has no place"},
	{Code: "mark-tapes-miss", Levels: must, Leaf: "stakes", Title: "Tapes miss each other"},
	{Code: "mark-misclosure", Levels: look, Leaf: "stakes", Title: "Tapes disagree"},
	{Code: "mark-on-other-side", Levels: look, Leaf: "stakes", Title: "Taped on the other side", Cures: []string{"site.marks[].side", "site.start.side", "site.start.toward.side", "site.outlets[].side", "site.places[].side"}},
	{Code: "mark-weak", Levels: look, Leaf: "stakes", Title: "Tapes fix weakly"},
	{Code: "marks-coincide", Levels: look, Leaf: "stakes", Title: "Two marks on one spot"},
	{Code: "tie-out-of-reach", Levels: look, Leaf: "stakes", Title: "Beyond the tape"},
	{Code: "tie-weak", Levels: look, Leaf: "stakes", Title: "A stake is weakly tied"},
	{Code: "ties-missing", Levels: note, Leaf: "stakes", Title: "No marks to tie to"},
	{Code: "hold-tape-level", Levels: note, Leaf: "stakes", Title: "Hold the tape level"},
	{Code: "bar-too-thick", Levels: mustOrLook, Leaf: "stakes", Title: "Stakes do not enter the pipe"},
	{Code: "sleeve-longer-than-stick", Levels: mustOrLook, Leaf: "stakes", Title: "Stakes reach past the stick"},
	{Code: "stake-bends", Levels: mustOrLook, Leaf: "stakes", Title: "Stakes bend for good"},
	{Code: "stake-too-shallow", Levels: look, Leaf: "stakes", Title: "Stakes are too shallow"},

	{Code: "no-cut-plan", Levels: mustOrLook, Leaf: "stock", Title: "No cut plan"},
	{Code: "piece-too-long", Levels: mustOrLook, Leaf: "stock", Title: "A piece longer than any stick", Cures: []string{"arch.sticks", "arch.height"}},
	{Code: "prices-missing", Levels: note, Leaf: "stock", Title: "Prices are missing"},
	{Code: "stock-lengths-assumed", Levels: note, Leaf: "stock", Title: "Stick lengths are assumed"},
	{Code: "ridge-bushing", Levels: note, Leaf: "stock", Title: "Bushings on the ridge"},
	{Code: "nothing-to-cement", Levels: note, Leaf: "stock", Title: "Nothing to cement", Cures: []string{"arch.joints"}},
	{Code: "wrapped-not-owned", Levels: look, Leaf: "stock", Title: "Wrapped legs not listed"},
	{Code: "nothing-kept-wrapped", Levels: note, Leaf: "takedown", Title: "Nothing is kept wrapped"},
	{Code: "way-in-differs", Levels: note, Leaf: "stock", Title: "The way in differs"},
	{Code: "stock-limit", Levels: look, Leaf: "stock", Title: "The store has too little"},

	{Code: "found-off-plan", Levels: look, Leaf: "raise", Title: "Found otherwise than planned"},
	{Code: "no-arch", Levels: must, Leaf: "raise", Title: "No arch has these figures", Firm: true},
	{Code: "arches-not-tried", Levels: look, Leaf: "raise", Title: "Arches not tried"},
	{Code: "falls-over", Levels: mustOrLook, Leaf: "raise", Title: "The arch falls over"},
	{Code: "guy-pulls-down", Levels: look, Leaf: "raise", Title: "Guys pull down", Cures: []string{"guys.out"}},
	{Code: "guy-rubs-leg", Levels: look, Leaf: "raise", Title: "A guy rubs", Cures: []string{"guys.from", "guys.out"}},
	{Code: "guy-in-lane", Levels: look, Leaf: "raise", Title: "Guy stakes in the way of legs", Cures: []string{"guys.out"}},
	{Code: "no-room-to-raise", Levels: look, Leaf: "raise", Title: "No room to raise", Cures: startMoved},
	{Code: "guys-at-the-way-in", Levels: note, Leaf: "raise", Title: "Guys beside the way"},
	{Code: "brace-is-flat", Levels: look, Leaf: "raise", Title: "Braces lie flat", Cures: []string{"braces.from"}},
	{Code: "leans-along", Levels: mustOrLook, Leaf: "raise", Title: "Leans along the tunnel"},
	{Code: "sways-sideways", Levels: look, Leaf: "raise", Title: "Sways sideways"},
	{Code: "bends-too-tight", Levels: mustOrLook, Leaf: "raise", Title: "Pipe bends tightly"},
	{Code: "opening-blocked", Levels: mustOrLook, Leaf: "raise", Title: "The opening is blocked"},
	{Code: "opening-near", Levels: look, Leaf: "raise", Title: "The opening is tight"},
	{Code: "opening-wider-than-high", Levels: look, Leaf: "raise", Title: "Opening wider than high", Cause: true},
	{Code: "span-height-swapped", Levels: look, Leaf: "raise", Title: "Span and height swapped?", Cause: true},
	{Code: "crown-pulls-apart", Levels: look, Leaf: "raise", Title: "The crown joint pulls apart"},
	{Code: "guy-above-arch", Levels: must, Leaf: "raise", Title: "Guys are tied above the arch", Cures: []string{"guys.from"}},
	{Code: "guy-tied-low", Levels: look, Leaf: "raise", Title: "Guys are tied too low", Cures: []string{"guys.from"}},
	{Code: "guys-cross-the-walk", Levels: look, Leaf: "raise", Title: "Guys cross the walk"},
	{Code: "ridge-is-pulled", Levels: lookOrNote, Leaf: "raise", Title: "Wind pulls at the ridge"},
	{Code: "rows-bow-arch", Levels: look, Leaf: "raise", Title: "Rows bow an arch", Cures: []string{"lights.rows.sag"}},

	{Code: "lights-not-laid", Levels: look, Leaf: "lights", Title: "Lights were not laid"},
	{Code: "lights-nowhere", Levels: look, Leaf: "lights", Title: "Lights find no place"},
	{Code: "no-ridge-for-lights", Levels: look, Leaf: "lights", Title: "No ridge for lights"},
	{Code: "too-many-strings", Levels: look, Leaf: "lights", Title: "Too many strings"},
	{Code: "wrap-too-short", Levels: look, Leaf: "lights", Title: "A wrap does not reach", Cures: []string{"lights.wraps[].count"}},
	{Code: "wrap-turns-touch", Levels: look, Leaf: "lights", Title: "Too much string for a wrap", Cures: []string{"lights.wraps[].pitch", "lights.wraps[].count", "lights.wraps[].string"}},
	{Code: "wrap-left-over", Levels: note, Leaf: "lights", Title: "String is left over"},
	{Code: "string-hardly-used", Levels: note, Leaf: "lights", Title: "A string is hardly used"},
	{Code: "rows-need-two-arches", Levels: look, Leaf: "lights", Title: "Rows need two arches", Cures: []string{"lights.rows"}},
	{Code: "rows-left-over", Levels: note, Leaf: "lights", Title: "Much string is left over in rows"},
	{Code: "row-above-crown", Levels: look, Leaf: "lights", Title: "Rows reach past the crown", Cures: []string{"lights.rows.up to"}},
	{Code: "row-on-ground", Levels: look, Leaf: "lights", Title: "A row near the ground", Cures: []string{"lights.rows.first", "lights.rows.up to"}},
	{Code: "row-in-opening", Levels: mustOrLook, Leaf: "lights", Title: "A row in the opening", Cures: []string{"lights.rows.up to"}},
	{Code: "drop-in-opening", Levels: mustOrLook, Leaf: "lights", Title: "A drop in the opening", Cures: []string{"lights.drops[].hang"}},
	{Code: "drop-without-hang", Levels: look, Leaf: "lights", Title: "A drop of no length"},
	{Code: "drop-lap-too-long", Levels: look, Leaf: "lights", Title: "A lap too long", Cures: []string{"lights.drops[].lap"}},

	{Code: "no-power-given", Levels: note, Leaf: "power", Title: "No power is given"},
	{Code: "not-enough-amps", Levels: must, Leaf: "power", Title: "Not enough amps"},
	{Code: "not-enough-sockets", Levels: mustOrLook, Leaf: "power", Title: "Not enough sockets"},
	{Code: "wrong-volts", Levels: mustOrLook, Leaf: "power", Title: "Wrong volts"},
	{Code: "string-over-limit", Levels: mustOrLook, Leaf: "power", Title: "A string draws too much"},
	{Code: "split-not-possible", Levels: look, Leaf: "power", Title: "Walls cannot be fed apart"},
	{Code: "other-load-too-high", Levels: look, Leaf: "power", Title: "A circuit is full already"},
	{Code: "no-gfci", Levels: mustOrLook, Leaf: "power", Title: "No GFCI"},
	{Code: "gfci-also-feeds", Levels: look, Leaf: "power", Title: "A GFCI feeds more than lights"},
	{Code: "mains-within-reach", Levels: look, Leaf: "power", Title: "Mains within reach"},
	{Code: "drop-over-3-percent", Levels: lookOrNote, Leaf: "power", Title: "Volts are lost"},
	{Code: "drop-over-5-percent", Levels: lookOrNote, Leaf: "power", Title: "Many volts are lost"},
	{Code: "chain-limit-unknown", Levels: note, Leaf: "power", Title: "Read the label for the limit"},
	{Code: "cord-crosses", Levels: note, Leaf: "power", Title: "A cord passes a way"},
	{Code: "outlet-in-lane", Levels: look, Leaf: "power", Title: "Cords where people walk"},
	{Code: "mixed-run", Levels: note, Leaf: "power", Title: "Unlike strings end to end"},
	{Code: "back-socket-would-save", Levels: note, Leaf: "power", Title: "Sockets in plugs would save cords"},
	{Code: "crossing-would-save", Levels: look, Leaf: "power", Title: "A crossing cord would save cords", Cures: []string{"site.cords.crossing"}},
	{Code: "cords-in-line", Levels: note, Leaf: "power", Title: "Many cords in line"},
	{Code: "sockets-wanted", Levels: note, Leaf: "power", Title: "Free sockets at an outlet"},
	{Code: "rcd-standing-leakage", Levels: note, Leaf: "power", Title: "Leaks may trip the RCD"},
	{Code: "supply-input", Levels: note, Leaf: "power", Title: "Supplies take more than they give"},
}

var byCode = func() map[string]Row {
	index := make(map[string]Row, len(rows))
	for _, r := range rows {
		index[r.Code] = r
	}
	return index
}()

// Of returns the row of a code, not ok for one that no finding has.
func Of(code string) (Row, bool) {
	r, ok := byCode[code]
	return r, ok
}

// Rows returns every row, by leaf.
func Rows() []Row { return slices.Clone(rows[:]) }
