package spec

import (
	"slices"
	"strings"
)

// level is a column that lines stand at, from 0: a list's dashes, or keys.
type level struct {
	indent int
	dash   bool
}

// outline follows how the lines of a file stand under each other.
type outline struct {
	levels []level // from the outermost in
	lost   []level // that the line before has left
	last   int     // the line before, -1 for none
}

// mendIndent reports and mends the first line that does not stand under its neighbours: out of line, too far to the left between two that agree, too far to the right, or without the
// dash of its list. Lines within brackets may stand anywhere.
func (r *reader) mendIndent(lines []string) bool {
	o := outline{last: -1}
	depth := 0
	for i, line := range lines {
		text := strings.TrimSpace(line)
		inside := depth > 0
		if text != "" && text[0] != '#' {
			depth = max(0, depth+balance(line))
		}
		if inside || text == "" || text[0] == '#' {
			continue
		}
		indent := len(line) - len(strings.TrimLeft(line, " "))
		if r.misplaced(&o, lines, i, indent, text) {
			return true
		}
		o.enter(indent, text)
		o.last = i
	}
	return false
}

// misplaced reports and mends a line that cannot stand where it does. It leaves the levels that the line is not within.
func (r *reader) misplaced(o *outline, lines []string, i, indent int, text string) bool {
	before := o.levels
	for len(o.levels) > 0 && o.levels[len(o.levels)-1].indent > indent {
		o.levels = o.levels[:len(o.levels)-1]
	}
	left := before[len(o.levels):]
	top := level{indent: -1}
	if len(o.levels) > 0 {
		top = o.levels[len(o.levels)-1]
	}
	const noDash = "a hyphen is missing at the beginning of this line: each item of a list has one"
	dash, lost := strings.HasPrefix(text, "- "), o.lost
	o.lost = slices.Clone(left)
	switch {
	case top.indent == indent && top.dash && !dash && len(left) > 0 && !left[0].dash && isNew(lines, i, left[0].indent, text):
		return r.move(lines, i, left[0].indent, text, "this line stands too far to the left; the keys of its item begin in column %d", left[0].indent+1)
	case top.indent == indent:
		return top.dash && !dash && r.move(lines, i, indent, "- "+text, noDash)
	case o.last < 0:
		return false
	case len(left) > 0:
		to := nearestLevel(before, indent)
		return r.move(lines, i, to, text, "this line does not stand under its neighbours, which begin in column %d", to+1)
	case !whole(lines[o.last]):
		return false
	case slices.ContainsFunc(lost, func(l level) bool { return l.indent == indent }):
		return r.move(lines, o.last, indent, strings.TrimSpace(lines[o.last]), "this line stands too far to the left; the keys before and after it begin in column %d", indent+1)
	case top.dash && !dash:
		return r.move(lines, i, top.indent, "- "+text, noDash)
	}
	return r.move(lines, i, max(top.indent, 0), text, "this line stands too far to the right; its neighbours begin in column %d", max(top.indent, 0)+1)
}

// isNew reports whether a line's key is one that the item before it does not have, whose keys begin in a column: it belongs to that item, then, and no other begins with it.
func isNew(lines []string, i, column int, text string) bool {
	name, _, _ := strings.Cut(text, ":")
	for j := i - 1; j >= 0; j-- {
		if len(lines[j]) > column && strings.TrimLeft(lines[j][:column], " -") == "" {
			if strings.HasPrefix(lines[j][column:], name+":") {
				return false
			}
			if strings.Contains(lines[j][:column], "-") {
				return true
			}
		}
	}
	return false
}

// enter notes the levels that a line opens: its own, and that of the keys after its dash.
func (o *outline) enter(indent int, text string) {
	dash := strings.HasPrefix(text, "- ")
	if len(o.levels) == 0 || o.levels[len(o.levels)-1].indent != indent {
		o.levels = append(slices.Clone(o.levels), level{indent, dash})
	}
	if item := strings.TrimLeft(strings.TrimPrefix(text, "-"), " "); dash && blockKey().MatchString(item) {
		o.levels = append(o.levels, level{indent + len(text) - len(item), false})
	}
}

// nearestLevel returns the column nearest to an indentation; of two the deeper.
func nearestLevel(levels []level, indent int) int {
	best := levels[0].indent
	for _, l := range levels {
		if d, least := l.indent-indent, best-indent; d*d <= least*least {
			best = l.indent
		}
	}
	return best
}

// whole reports whether a line has a key with its value, or an item in brackets, so that nothing can stand under it.
func whole(line string) bool {
	line, _, _ = strings.Cut(line, " #")
	text := strings.TrimSpace(line)
	if item, ok := strings.CutPrefix(text, "- "); ok && strings.ContainsAny(strings.TrimSpace(item)[:1], "{[") {
		return true
	}
	at := blockKey().FindStringSubmatch(text)
	value := ""
	if at != nil {
		value = strings.TrimSpace(at[1])
	}
	return value != "" && !strings.ContainsAny(value[:1], "|>&")
}

// move reports a line that stands in the wrong column, or wants its dash, and puts it right.
func (r *reader) move(lines []string, i, indent int, text, format string, args ...any) bool {
	value, _, _ := strings.Cut(text, " #")
	margin := strings.Repeat(" ", indent)
	r.failPart(i+1, len(lines[i])-len(strings.TrimLeft(lines[i], " ")), brief(margin+strings.TrimRight(value, " \r")), format, args...)
	lines[i] = margin + text
	return true
}
