package spec

import (
	"regexp"
	"slices"
	"strings"
	"sync"
)

// slip is the pattern of a slip of the pen, made when it is first looked for: most specs hold none.
func slip(pattern string) func() *regexp.Regexp {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(pattern) })
}

var (
	colonInBlock = slip(`^(\s*(?:- +)*)([^\s:#'"{\[][^:#'"{\[]*): +([^'"{\[|>&*!%@#].*?:(?: .*?)?)(\s+#.*)?\r?$`)
	colonInFlow  = slip(`([{,]\s*)([^\s:{}\[\],"'#][^:{}\[\],"'#]*): +([^\s:{}\[\],"'#][^:{}\[\],"'#]*: [^{}\[\],"'#]*)`)
	placeInFlow  = slip(`((?:left |right )?legs|arches|ridge)( [^\[\]{}"',]*)? of \[[^\[\]{}"']*\]`)
	hashInFlow   = slip(`[:,\[{]\s*(#.*)$`)
	oddStart     = slip("(?:^\\s*|[:,\\[{-] *)([@`%])")
	markStart    = slip(`[:-] +([*&].*)$`)
	afterQuote   = slip(`: +("[^"]*"|'[^']*') *([^\s,\]}#])`)
	noAnchor     = slip(`^unknown anchor '(.*)' referenced`)
)

// mend explains a fault of syntax. Where the remedy is plain it mends the lines and returns true.
func (r *reader) mend(lines []string, err error) bool {
	line, text := fault(err)
	line = min(line, len(lines))
	here := lines[line-1]
	says := func(part string) bool { return strings.Contains(text, part) }
	inFlow := says("',' or") || says("expected key") || says("node content") || says("end of stream")
	switch {
	case r.tab(line):
	case inFlow && r.hash(line):
	case inFlow && (r.flowColon(lines) || r.flowPlace(lines)):
		return true
	case says("mapping values") && colonInBlock().MatchString(here):
		at := colonInBlock().FindStringSubmatchIndex(here)
		lines[line-1] = r.quoteColon(line, here, at[4:8])
		return true
	case r.mendLine(lines):
		return true
	case says("could not find expected ':'") && r.stray(lines, line):
		return true
	case says("alphabetic or numeric"):
		for i := range line {
			if at := markStart().FindStringSubmatchIndex(r.lines[i]); at != nil {
				r.failPart(i+1, at[2], `"`+brief(strings.TrimSpace(r.lines[i][at[2]:]))+`"`, "a value that begins with %s must stand in quotes", r.lines[i][at[2]:at[2]+1])
				break
			}
		}
	case says("mapping values"):
		r.failLine(line, "", "a key cannot stand here; line it up with the other keys of its section, and put a value with a colon and a space in it in quotes")
	case says("cannot start any token") && oddStart().MatchString(here):
		at := oddStart().FindStringSubmatchIndex(here)
		r.failPart(line, at[2], `"`+brief(strings.TrimSpace(here[at[2]:]))+`"`, "a value cannot begin with %s; put it in quotes", here[at[2]:at[3]])
	case noAnchor().MatchString(text):
		r.anchor(noAnchor().FindStringSubmatch(text)[1])
	case says("end of stream"):
		r.failLine(line, "", "a quotation mark or a bracket opens near this line and is never closed")
	case says("',' or"):
		r.failLine(line, "opening: {width: 4 ft, height: 6 ft 8 in}", "the list or the braces near this line are never closed, or a comma is missing in them")
	case says("expected key"):
		r.failLine(line, "", "the lines near this one do not line up; the keys of one section begin in the same column")
	default:
		r.failLine(line, "", "YAML cannot be read near this line: %s", brief(text))
	}
	return false
}

// stray reports and mends a line that is neither a key with its value nor an item: a key without one, or the rest of the line before.
func (r *reader) stray(lines []string, number int) bool {
	at := number - 1
	text := strings.TrimSpace(lines[at])
	margin := len(lines[at]) - len(strings.TrimLeft(lines[at], " "))
	before := -1 // the line before it
	for i := at - 1; i >= 0 && before < 0; i-- {
		if t := strings.TrimSpace(lines[i]); t != "" && t[0] != '#' {
			before = i
		}
	}
	switch {
	case isKey(text):
		section := ""
		for i := at - 1; i >= 0 && section == ""; i-- {
			if indent := len(lines[i]) - len(strings.TrimLeft(lines[i], " ")); indent < margin && blockKey().MatchString(lines[i]) {
				section, _, _ = strings.Cut(strings.TrimLeft(lines[i], " -"), ":")
			}
		}
		example := exampleOf(under(section, text), r.spec.Units)
		if !strings.HasPrefix(example, text+": ") {
			example = text + ": …"
		}
		r.failPart(number, margin, example, "a colon and a value are missing after %s", text)
		lines[at] = lines[at][:margin] + example
	case before >= 0 && blockKey().MatchString(lines[before]) && !strings.Contains(lines[before], " #"):
		joined := strings.TrimRight(lines[before], " \r") + " " + text
		r.failPart(number, margin, brief(strings.TrimSpace(joined)), "this line is neither a key nor an item of a list; a value stands on one line with its key")
		lines[before], lines[at] = joined, ""
	default:
		return false
	}
	return true
}

// failPart reports what is wrong with a part of a line that begins so many bytes in.
func (r *reader) failPart(line, offset int, example, format string, args ...any) {
	r.failLine(line, example, format, args...)
	last := &r.errors[len(r.errors)-1]
	last.Pos.Column = len([]rune(r.lines[line-1][:min(offset, len(r.lines[line-1]))])) + 1
}

// tab reports tabs where YAML wants blanks, if there is one up to the line after the faulty one.
func (r *reader) tab(line int) bool {
	tabbed := func(l string) bool { return strings.HasPrefix(strings.TrimLeft(l, " "), "\t") }
	first := slices.IndexFunc(r.lines, tabbed)
	if first < 0 || first > line {
		return false
	}
	also := ""
	if slices.ContainsFunc(r.lines[first+1:], tabbed) {
		also = ", and so are others"
	}
	mended := strings.ReplaceAll(strings.TrimRight(r.lines[first], "\r"), "\t", "  ")
	r.failPart(first+1, strings.IndexByte(r.lines[first], '\t'), brief(mended), "this line is indented with a tab%s; YAML is indented with blanks", also)
	return true
}

// quoteColon reports a value with a colon in it and returns the line with the value in quotes. At holds where the key begins and ends, and the value.
func (r *reader) quoteColon(line int, here string, at []int) string {
	key, value := here[at[0]:at[1]], strings.TrimRight(here[at[2]:at[3]], " \r")
	quoted := `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`, "“", "", "”", "", "„", "").Replace(value) + `"`
	r.failPart(line, at[0], brief(key)+": "+brief(quoted), "a value with a colon and a space in it must stand in quotes")
	return here[:at[2]] + quoted + here[at[3]:]
}

// flowColon reports and mends the first value in braces that has a colon in it: a comma is missing before a key of the format, or
// else the value must stand in quotes.
func (r *reader) flowColon(lines []string) bool {
	for i, l := range lines {
		at := colonInFlow().FindStringSubmatchIndex(l)
		if at == nil || !plainFlow(l[:at[0]]) {
			continue
		}
		value, _, _ := strings.Cut(l[at[6]:], ": ")
		if key := keyAtEnd(value); key != "" {
			end := at[6] + len(value) - len(key) - 1
			before := strings.TrimRight(l[:end], "; ")
			r.failPart(i+1, at[6], brief(before[at[4]:]+", "+key+": …"), "a comma is missing before %s", key)
			lines[i] = before + "," + l[end:]
		} else {
			lines[i] = r.quoteColon(i+1, l, at[4:8])
		}
		return true
	}
	return false
}

// keyAtEnd returns the key of the format that a text ends in, after a blank, or nothing.
func keyAtEnd(text string) string {
	longest := ""
	for _, k := range keys {
		name := k.path[strings.LastIndexByte(k.path, '.')+1:]
		if strings.HasSuffix(text, " "+name) && len(name) > len(longest) {
			longest = name
		}
	}
	return longest
}

// flowPlace reports and mends the first place for lights whose brackets stand within other brackets without quotes.
func (r *reader) flowPlace(lines []string) bool {
	for i, l := range lines {
		at := placeInFlow().FindStringIndex(l)
		if at != nil && strings.ContainsAny(l[:at[0]], "{[") && plainFlow(l[:at[0]]) {
			quoted := `"` + l[at[0]:at[1]] + `"`
			r.failPart(i+1, at[0], brief(quoted), "a place with brackets in it must stand in quotes here")
			lines[i] = l[:at[0]] + quoted + l[at[1]:]
			return true
		}
	}
	return false
}

// plainFlow reports whether what follows on a line is neither in a comment nor in double quotes.
func plainFlow(before string) bool {
	return !strings.Contains(before, "#") && strings.Count(before, `"`)%2 == 0
}

// hash reports the comment that swallowed the end of a list or of braces, near the line.
func (r *reader) hash(line int) bool {
	for i := max(line-3, 0); i < min(line+1, len(r.lines)); i++ {
		if at := hashInFlow().FindStringSubmatchIndex(r.lines[i]); at != nil {
			example := "bar: 1/2 in"
			if number := barNumber.FindStringSubmatch(r.lines[i][at[2]:]); number != nil {
				example = "bar: no. " + number[1]
			}
			r.failPart(i+1, at[2], example, "# begins a comment, so YAML takes nothing from %s", quote(strings.TrimSpace(r.lines[i][at[2]:])))
			return true
		}
	}
	return false
}

func (r *reader) anchor(name string) {
	for i, l := range r.lines {
		if at := strings.Index(l, "*"+name); at >= 0 {
			r.failPart(i+1, at, "", "the alias %s stands for nothing; a value that is to be repeated is marked %s before", quote("*"+name), quote("&"+name))
			return
		}
	}
	r.failLine(1, "", "the alias %s stands for nothing", quote("*"+name))
}
