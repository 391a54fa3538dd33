package main

import (
	"fmt"
	"io"
	"os"
	"strings"

	"hoopwright/layout"
	"hoopwright/layout/finding"
	"hoopwright/layout/say"
)

// ownSpec is what starter calls a spec unless told.
const ownSpec = "tunnel.yaml"

// sayMade says of a packet what a person can act on: where it is, when to close, what to look at, what was taken for granted.
func sayMade(w io.Writer, j job, plan *layout.Plan, sides int, noRoom []string) {
	where := ""
	if j.target != "-" {
		where = "wrote " + j.target + ". "
	}
	line := where + say.Count(sides, "side") + "."
	if wx := plan.Weather; len(wx.Bears) > 0 {
		switch g, u := wx.InsideGust(), plan.Spec.Units; {
		case wx.Calm():
			line += " Nobody inside in any wind."
		case g.Forecast > 0:
			line += fmt.Sprintf(" People inside below gusts of %s forecast.", u.Speed(g.Forecast))
		default:
			line += fmt.Sprintf(" People inside below gusts of %s measured at head height.", u.Speed(g.Local))
		}
	}
	var look []string
	for _, f := range plan.Findings {
		if row, ok := finding.Of(f.Code); ok && f.Level == finding.LookAt {
			look = append(look, row.Title)
		}
	}
	if len(look) > 0 {
		line += fmt.Sprintf(" %s to look at: %s.", say.Count(len(look), "thing"), strings.Join(look, "; "))
	}
	fmt.Fprintln(w, line)
	if n := len(plan.Spec.Defaults); n > 0 {
		fmt.Fprintf(w, "%s taken for granted; hoopwright check --assumed%s lists them\n", say.Count(n, "value"), strings.TrimRight(" "+j.operand, " "))
	}
	for _, what := range noRoom {
		fmt.Fprintf(w, "paper note: %s found no room\n", what)
	}
	if _, err := os.Stat(ownSpec); err == nil && j.operand == "" {
		fmt.Fprintf(w, "you have %s here; this was the built-in example. Yours: hoopwright packet %s\n", ownSpec, ownSpec)
	}
}

// trimmed takes the blanks off the words of a list, as in --sheets "stakes, stock".
func trimmed(list []string) []string {
	for i := range list {
		list[i] = strings.TrimSpace(list[i])
	}
	return list
}
