package packet

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/layout/crew"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

func (b *binder) powerDangers() []danger {
	if len(b.plan.Strings) == 0 {
		return nil
	}
	device, test := "a ground-fault device (RCD, 30 mA or less)", "its test button"
	if crew.LikelyNEC(b.spec) {
		device, test = "ground-fault protection (GFCI)", "TEST and RESET"
	}
	list := []danger{{"Electricity and water", "Wet plugs and wet hands.",
		fmt.Sprintf("Only outlets with %s; try %s before use and every evening. Plugs off the ground, a loop hanging below each, covers on, cords for outdoors.", device, test)}}
	for _, c := range b.plan.Circuits {
		if c.Lights > 0 && !c.Spec.GFCI {
			list = append(list, danger{"Circuit " + c.Name, "The plan does not know of ground-fault protection on it.", "Do not plug in before a licensed electrician has seen it."})
		}
	}
	if where := b.switchOff(); where != "" {
		list = append(list, danger{"Switching off", "In an accident nobody has time to look for it.", where})
	}
	list = append(list, danger{"Overload and repairs", "A warm plug is the start of a fire.",
		b.mostLoad() + "Unplug a string before a lamp is changed. A damaged string or cord goes in the reject bag. Outlets, breakers and wiring are a licensed electrician's work."})
	for _, f := range b.plan.Findings {
		if f.Code == "mains-within-reach" {
			first, _, _ := strings.Cut(f.Text, ". ")
			list = append(list, danger{"Mains within reach", strings.TrimSuffix(first, ".") + ".", "Ask the local authority or a licensed electrician whether that is allowed here. Low-voltage strings are the usual answer."})
			break
		}
	}
	return list
}

// switchOff says where each circuit that feeds lights is switched off.
func (b *binder) switchOff() string {
	var words, plain []string // plain: the outlets of which there is no more to say
	for _, c := range b.plan.Circuits {
		if c.Lights <= 0 {
			continue
		}
		if c.Spec.BreakerNo == "" && !slices.ContainsFunc(b.spec.Site.Outlets, func(o spec.Outlet) bool { return o.Circuit == c.Name && o.ResetAt != "" }) {
			plain = append(plain, c.Outlets...)
			continue
		}
		word := c.Name + ":"
		if c.Spec.BreakerNo != "" {
			word += " breaker " + c.Spec.BreakerNo + ","
		}
		word += " pull the plugs at " + strings.Join(c.Outlets, ", ")
		for _, o := range b.spec.Site.Outlets {
			if o.Circuit == c.Name && o.ResetAt != "" {
				word += fmt.Sprintf(" (reset: %s)", o.ResetAt)
			}
		}
		words = append(words, word+".")
	}
	if len(plain) > 0 {
		words = append(words, "Pull the plugs at "+strings.Join(plain, ", ")+".")
	}
	return strings.Join(words, " ")
}

// mostLoad says how far the fullest circuit is loaded.
func (b *binder) mostLoad() string {
	worst, share := "", 0.0
	for _, c := range b.plan.Circuits {
		if c.Lights > 0 && c.Allowed > 0 && float64(c.Amps/c.Allowed) > share {
			worst, share = c.Name, float64(c.Amps/c.Allowed)
		}
	}
	if worst == "" {
		return ""
	}
	return fmt.Sprintf("The fullest circuit, %s, carries %s of what it may for hours on end: plug in nothing else. ", worst, measure.Percent(measure.Share(share)))
}

func (b *binder) openDangers() []danger {
	if len(b.plan.Kinds) == 0 {
		return nil
	}
	list := []danger{
		{"Too many at once", "Nobody can turn round, and a fall is a pile.", fmt.Sprintf("At most %s inside; the fire authority's figure wins. One way, in at arch 1, out at the far end, a watcher at each when it is busy.", people(b.plan.MostInside()))},
		{"Tripping", "It is dark, and people look up.", "No cord or guy where people walk; elsewhere flag guys at eye height. Level every edge or mark it. Mud and wet grass: mats, or close."},
		{"Ways out", "Smoke, panic, a child alone.", "Both ends open and lit from outside, wide enough for a wheelchair where the public comes. No fence, stall or queue before them."}}
	if len(b.plan.Strings) > 0 {
		list = append(list, danger{"Blackout and fire", "One trip may put half of it dark; pipe and wire burn.", "A torch at each end. No candle, no open flame, no heater. Fire: everyone out, power off, then ring."})
	}
	return list
}
