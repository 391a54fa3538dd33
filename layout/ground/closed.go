package ground

import (
	"fmt"
	"slices"
	"strings"

	"hoopwright/layout/finding"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// closedWays says which side ways braces or guys stand across, where people would walk into them or could not get out.
func closedWays(t tunnel) (list []finding.Finding) {
	s := t.spec
	closed := func(bay int) bool { return s.IsWay(spec.Left, bay) || s.IsWay(spec.Right, bay) }
	tell := func(key, what string, at, shut, rest []int) {
		if len(at) == 0 {
			return
		}
		slices.Sort(shut)
		level := finding.LookAt
		if s.Given(key) {
			level = finding.MustFix
		}
		f := finding.Finding{Level: level, Code: "way-is-closed", Key: key}
		f.Text = fmt.Sprintf("%s across the side way of %s, where people would run into them and could not get out.", what, say.Numbered("bay", slices.Compact(shut)))
		if len(rest) > 0 {
			value := strings.ReplaceAll(fmt.Sprint(rest), " ", ", ")
			f.Text += fmt.Sprintf(" Write %s: %s.", key, value)
			f.Cure = []finding.Change{{Key: key, Value: value}}
		} else {
			f.Text += " Hold the tunnel by guys at its ends."
		}
		list = append(list, f)
	}
	free := func(bay int) bool { return !closed(bay) }
	braced, open := slices.DeleteFunc(slices.Clone(s.Braces.Bays), free), slices.DeleteFunc(slices.Clone(s.Braces.Bays), closed)
	for bay := 1; bay < s.Tunnel.Arches && len(open) == 0; bay++ {
		if free(bay) {
			open = append(open, bay)
		}
	}
	tell("braces.bays", "Braces stand", braced, braced, open)

	var guyed, shut, rest []int
	for _, arch := range s.Guys.Arches {
		bays := slices.DeleteFunc(t.guyedBays(arch), free)
		if len(bays) > 0 {
			guyed, shut = append(guyed, arch), append(shut, bays...)
		} else {
			rest = append(rest, arch)
		}
	}
	if len(rest) == 0 {
		rest = []int{1, s.Tunnel.Arches}
	}
	tell("guys.arches", fmt.Sprintf("Guys of %s run", say.Numbered("arch", guyed)), guyed, shut, rest)
	return list
}

// guyedBays lists the bays that the guys of an arch run along. Those of an end arch run away from the tunnel.
func (t tunnel) guyedBays(arch int) (bays []int) {
	n := len(t.stations)
	if arch <= 1 || arch >= n {
		return nil
	}
	reach := func(a, b int) bool {
		d := t.stations[b].Along - t.stations[a].Along
		return max(d, -d) < t.spec.Guys.Out-1 // mm, of rounding
	}
	for bay := arch - 1; bay >= 1 && reach(arch-1, bay); bay-- {
		bays = append(bays, bay)
	}
	for bay := arch; bay < n && reach(arch-1, bay-1); bay++ {
		bays = append(bays, bay)
	}
	return bays
}
