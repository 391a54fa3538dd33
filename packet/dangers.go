package packet

import (
	"fmt"
	"strings"

	"hoopwright/layout/crew"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
	"hoopwright/layout/spec"
)

// dangers gathers the usual cautions of each part of the work that this tunnel has, with its own figures.
func (b *binder) dangers() []dangers {
	all := []dangers{
		{"Before any stake", b.underAndOver()},
		{"Driving stakes", b.drivingDangers()},
		{"Cutting and joining", b.cuttingDangers()},
		{"Raising", b.raisingDangers()},
		{"Lights and power", b.powerDangers()},
		{"Open to people", b.openDangers()},
		{"Weather, while it stands", b.weatherDangers()},
		{"Taking down", b.downDangers()},
	}
	var list []dangers
	for _, d := range all {
		if len(d.list) > 0 {
			list = append(list, d)
		}
	}
	return list
}

// underAndOver is what lies in the ground and hangs above it.
func (b *binder) underAndOver() []danger {
	u := b.spec.Units
	call := "Mark every stake in white, call the local locating service"
	if crew.LikelyNEC(b.spec) {
		call = "Mark every stake in white, call 811 (it is the law)"
	}
	for _, d := range crew.Calendar(b.spec) {
		if d.Note != "" && !d.On.IsZero() {
			call += " by " + d.On.Format("Mon 2 Jan")
			break
		}
	}
	list := []danger{{"Buried lines", "A stake through a gas or power line can kill.",
		fmt.Sprintf("%s, and drive nothing before the answer. Have the ticket on site and in date. Keep %s from every mark, on both sides.", call, u.Inches(practice.KeepBuried(u)))}}
	for _, l := range b.spec.Site.Buried {
		who := "its owner"
		if l.MarkedBy != "" {
			who = l.MarkedBy
		}
		list = append(list, danger{"Private line: " + l.Name, "A locating service does not mark it.",
			fmt.Sprintf("Marked on the ground before the day (%s). No stake within %s of it, on both sides.", who, u.Inches(l.Keep))})
	}
	for _, l := range b.spec.Site.Overhead {
		list = append(list, danger{"Overhead: " + l.Name, "Electricity jumps to a pipe, a ladder or a wet cord before they touch.",
			fmt.Sprintf("Pipe, ladder and people stay %s away from it. One person does nothing but watch. Nobody measures up to a wire. Its owner alone moves or covers it.", u.Room(l.Keep))})
	}
	if len(b.spec.Site.Overhead) == 0 {
		list = append(list, danger{"Overhead lines", "The plan knows of none; the place may.",
			fmt.Sprintf("Look up along the whole tunnel before pipe is carried. A wire nearer than %s to anything that stands up: stop and ask.", u.Room(practice.KeepOverhead(u)))})
	}
	return list
}

func (b *binder) drivingDangers() []danger {
	legs, guys := b.stakeCounts()
	if legs+guys == 0 {
		return nil
	}
	list := []danger{
		{"Hammer", "Fingers under it, steel splinters from it.", "Gloves and eye protection on. Nobody holds a stake that is being hit; others stay two paces off."},
		{"Bare stake", "It is a spike for whoever falls on it.", fmt.Sprintf("Cap each of the %d stakes as soon as it is in. A cap comes off only as the pipe goes on.", legs+guys)}}
	switch b.spec.Site.Soil {
	case spec.Frozen:
		list = append(list, danger{"Frozen ground", "Stakes glance off, and go slack when it thaws.", "Drive before it freezes, or after a thaw. Else start the hole with a bar, never by hitting harder. The figures are for thawing ground: try every stake again after each thaw."})
	case spec.SoilUnknown:
		list = append(list, danger{"Unknown ground", "In soft or sandy ground a stake lets go.", "Do the pull test of the build steps on the first stake, and again wherever the ground changes."})
	}
	var hard []string
	for _, feature := range b.spec.Site.Features {
		if feature.Hard {
			hard = append(hard, feature.Name)
		}
	}
	if len(hard) > 0 {
		list = append(list, danger{"Hard ground", "A stake that will not go bounces and bends.", fmt.Sprintf("No stake into %s. Do not drill or dig there without its owner.", strings.Join(hard, ", "))})
	}
	return list
}

func (b *binder) cuttingDangers() []danger {
	if len(b.plan.Kinds) == 0 {
		return nil
	}
	list := []danger{{"Saw and pipe", "Cuts; chips in eyes.", "Eye protection on, pipe clamped, hands a forearm from the blade."}}
	if cold := b.spec.Weather.Cold; cold < practice.BendSlowly {
		u := b.spec.Units
		list = append(list, danger{"Cold pipe", fmt.Sprintf("PVC is brittle in the cold, and this place is figured for %s: pieces fly.", u.Temperature(cold)),
			"Keep pipe indoors until it is used. " + b.coldRule() + " No flame to warm it: warm water or a warm room. Eye protection whenever it is bent or cut."})
	}
	if b.spec.Arch.Joints == spec.Glued {
		list = append(list, danger{"Primer and cement", "They burn, and their vapour harms.", "In open air, gloves on, no flame and no smoking, lids on. As the label says."})
	}
	if b.spec.Arch.Joints == spec.Pinned {
		list = append(list, danger{"Screw points", "They tear hands, sleeves and wires.", "Screw from the outside, file every point flush on the inside."})
	}
	return list
}

func (b *binder) raisingDangers() []danger {
	if len(b.plan.Kinds) == 0 {
		return nil
	}
	u := b.spec.Units
	list := []danger{{"Bent pipe", "A bent arch is a spring; a leg that slips off whips out, a pipe that breaks throws pieces.",
		"Three people, eye protection, faces out of its plane. Let go only when both feet are on the ground. A crack or white line: walk it back down."}}
	switch guyed := len(b.spec.Guys.Arches) > 0; {
	case guyed && b.spec.Tunnel.Arches > 1:
		list = append(list, danger{"Arches falling lengthwise", "Until arch 1 has its guys nothing holds the row.", "Guy arch 1 before arch 2 is touched. One person holds the last arch until its ridge piece is in."})
	case !guyed:
		list = append(list, danger{"Arches falling lengthwise", "Nothing holds this tunnel along its length: it has no guys.", "One person holds arch 1 and does nothing else until all is joined. Nobody goes under it in wind."})
	}
	if b.ladder() {
		list = append(list, danger{"Ladder", fmt.Sprintf("The crowns are up to %s high.", u.Room(b.highest())), "Stepladder, fully open, on firm level ground, one person at its foot. Never lean a ladder on pipe. Not in gusts, not near a wire."})
	}
	return append(list, danger{"Wind while raising", "An arch alone goes over before the tunnel would.", "Stop when a gust moves the arch in your hands. Leave no arch standing overnight without guys or ridge."})
}

// highest is the highest crown.
func (b *binder) highest() measure.Length {
	top := measure.Length(0)
	for _, k := range b.plan.Kinds {
		top = max(top, k.Crown)
	}
	return top
}

func (b *binder) downDangers() []danger {
	list := []danger{}
	if len(b.plan.Strings) > 0 {
		list = append(list, danger{"Power", "A cut wire that is live.", "Unplug at every outlet first, and say so aloud. Then lights off, then arches."})
	}
	if len(b.plan.Kinds) > 0 {
		list = append(list, danger{"Springs and spikes again", "Cold pipe after a season cracks more easily; stakes stand bare again.",
			"Last arch first, guys of arch 1 last. Cap each stake as the pipe comes off. Count every stake out of the ground."})
	}
	return list
}
