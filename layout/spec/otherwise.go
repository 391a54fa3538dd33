package spec

import "strings"

// otherwise is what people call a key, by the section that they write it in.
var otherwise = map[string]map[string]string{
	"": {"name": "title", "pipe": "arch.pipe", "stakes": "arch.stake", "circuits": "power.circuits", "outlets": "site.outlets", "currency symbol": "currency", "year": "season", "budget": "currency", "storage": "store", "as found": "found", "measured": "found",
		"arches": "tunnel.arches", "height": "arch.height", "length": "tunnel.length", "width": "arch.span", "start": "site.start", "strings": "lights.strings"},
	"tunnel":           {"number": "tunnel.arches", "count": "tunnel.arches", "hoops": "tunnel.arches", "distance": "tunnel.spacing", "gap": "tunnel.spacing", "bay": "tunnel.spacing", "clear": "tunnel.opening"},
	"arch":             {"width": "arch.span", "base": "arch.span", "legs": "arch.sticks", "poles": "arch.sticks", "lengths": "arch.sticks", "crown": "arch.height", "size": "arch.pipe", "material": "arch.pipe", "rebar": "arch.stake", "bar": "arch.stake.bar", "peak": "arch.height"},
	exception:          {"width": "arch.span", "legs": "arch.sticks", "poles": "arch.sticks", "arch": "arch.except[].arches"},
	"arch.stake":       {"diameter": "arch.stake.bar", "size": "arch.stake.bar", "rebar": "arch.stake.bar", "pipe": "arch.stake.bar", "angle": "arch.stake.lean", "deep": "arch.stake.depth", "in ground": "arch.stake.depth"},
	"arch.pipe":        {"diameter": "arch.pipe.od", "outside": "arch.pipe.od", "thickness": "arch.pipe.wall"},
	"found":            {"height": "found.crown", "crowns": "found.crown", "width": "found.span", "spans": "found.span", "when": "found.after"},
	"guys":             {"height": "guys.from", "distance": "guys.out", "bays": "guys.arches"},
	"site":             {"gps": "site.place", "location": "site.place", "latitude": "site.place", "timezone": "site.clock", "time zone": "site.clock", "zone": "site.clock", "utc": "site.clock", "trees": "site.features", "obstacles": "site.features", "wires": "site.overhead", "utilities": "site.buried", "sockets": "site.outlets", "ground": "site.soil", "phone": "site.emergency"},
	"site.outlets[]":   {"location": "site.outlets[].at", "position": "site.outlets[].at", "breaker": "power.circuits.*.breaker", "gfci": "power.circuits.*.gfci", "volts": "power.circuits.*.volts"},
	"site.marks[]":     {"location": "site.marks[].at", "position": "site.marks[].at", "tapes": "site.marks[].from"},
	"lights":           {"wrap": "lights.wraps", "row": "lights.rows", "drop": "lights.drops", "string": "lights.strings"},
	"lights.wraps[]":   {"on": "lights.wraps[].where", "light": "lights.wraps[].string", "lights": "lights.wraps[].string", "strings": "lights.wraps[].string", "at": "lights.wraps[].where", "place": "lights.wraps[].where", "spacing": "lights.wraps[].pitch", "number": "lights.wraps[].count"},
	"lights.drops[]":   {"on": "lights.drops[].where", "light": "lights.drops[].string", "length": "lights.drops[].hang"},
	"lights.rows":      {"string": "lights.rows.strings", "from": "lights.rows.first", "to": "lights.rows.up to", "spacing": "lights.rows.step", "side": "lights.rows.walls"},
	"power":            {"outlets": "site.outlets", "breakers": "power.circuits", "hours": "power.evenings.hours", "nights": "power.evenings.nights", "price": "power.evenings.price"},
	"power.circuits.*": {"amps": "power.circuits.*.breaker", "amperage": "power.circuits.*.breaker", "voltage": "power.circuits.*.volts", "GFCI": "power.circuits.*.gfci", "rcd": "power.circuits.*.gfci", "load": "power.circuits.*.other load"},
	"lights.strings.*": {"lamps": "lights.strings.*.bulbs", "leds": "lights.strings.*.bulbs", "color": "lights.strings.*.colour", "power": "lights.strings.*.watts", "voltage": "lights.strings.*.volts", "type": "lights.strings.*.kind", "max": "lights.strings.*.most in a chain"},
	"crew":             {"people": "crew.helpers", "volunteers": "crew.helpers", "phone": "crew.ask.phone", "time": "crew.start"},
	"stock.sell[]":     {"name": "stock.sell[].item", "cost": "stock.sell[].price"},
	"stock.own[]":      {"name": "stock.own[].item", "number": "stock.own[].count", "quantity": "stock.own[].count"},
}

// hint is what to say of a key that has no counterpart.
type hint struct{ text, example string }

var coloured = hint{"a string's colour is part of its name, which `hoopwright names string` lists", "string: mini led 100 red"}

var sized = hint{"`arch.span` and `arch.height` say how wide and how high the arch is, `tunnel.opening` how much of it stays clear for people", ""}

var hints = map[string]map[string]hint{
	"tunnel":         {"width": sized, "height": sized},
	"lights.wraps[]": {"color": coloured, "colour": coloured, "colors": coloured},
	"lights.drops[]": {"color": coloured, "colour": coloured},
	"lights.rows":    {"color": coloured, "colour": coloured, "colors": {"rows take their strings in turn, and a string's colour is part of its name", "strings: [mini led 100 warm, mini led 100 red]"}},
}

// elsewhere returns the one key of that name in another section, or nothing where there is none or more than one.
func elsewhere(name, table string) string {
	found := ""
	for _, k := range keys {
		dot := strings.LastIndexByte(k.path, '.')
		if dot < 0 || k.path[dot+1:] != name || k.path[:dot] == table {
			continue
		}
		if found != "" {
			return ""
		}
		found = k.path
	}
	return found
}
