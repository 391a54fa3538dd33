package spec

import (
	"regexp"
	"slices"
	"strings"
	"unicode"

	"hoopwright/layout/measure"
)

// hardBlank is a blank at which no line is broken; YAML takes it for a letter.
const hardBlank = "\u00a0"

// Slips that make a line no YAML, or another YAML than was meant. They are looked for only in a file that YAML cannot read, from its first line on, and mended, so that
// the cause is told before its effects and the rest of the file is read too.

var (
	oddDash   = slip(`^(\s*)([–—•*]|-)(\s*)([{\[A-Za-z"'].*)$`)
	tightPair = slip(`^(\s*(?:- +)*)([A-Za-z][A-Za-z ]*):([^\s].*)$`)
	equalPair = slip(`^(\s*(?:- +)*)([A-Za-z][A-Za-z ]*?)\s*=\s*(.*)$`)
	openQuote = slip(`: +("[^"]*|'[^']*)$`)
	blockKey  = slip(`^\s*(?:- +)*[^\s#{\["'][^#]*?:(?:\s+(.*))?$`)
)

// mendLine reports and mends the first slip of a line, and returns whether there was one.
func (r *reader) mendLine(lines []string) bool {
	depth := 0 // of brackets that are open
	for i, line := range lines {
		bare := strings.TrimRight(line, " \r")
		switch {
		case strings.HasPrefix(strings.TrimSpace(bare), "```"):
			r.failLine(i+1, "", "a line of three back quotes marks pasted text and is no part of a spec; take it out")
			lines[i] = ""
			return true
		case strings.TrimSpace(bare) == "" || strings.HasPrefix(strings.TrimSpace(bare), "#"):
			continue
		case strings.Contains(line[:len(line)-len(strings.TrimLeftFunc(line, unicode.IsSpace))], hardBlank):
			lines[i] = strings.ReplaceAll(line, hardBlank, " ")
			r.failLine(i+1, brief(strings.TrimRight(lines[i], " \r")), "this line is indented with no-break blanks, as pasted text is; YAML is indented with plain ones")
			return true
		case depth == 0 && r.mendPair(lines, i):
			return true
		case r.mendQuotes(lines, i):
			return true
		}
		opened, wrong := brackets(bare)
		if depth == 0 && wrong > 0 {
			lines[i] = bare[:wrong] + opened + bare[wrong+1:]
			r.failPart(i+1, wrong, brief(strings.TrimSpace(lines[i])), "%s stands where %s closes what is open", bare[wrong:wrong+1], opened)
			return true
		}
		if depth == 0 && opened != "" && (i+1 >= len(lines) || startsAnew(lines[i+1])) {
			body, comment := bare, ""
			if at := strings.Index(bare, " #"); at >= 0 {
				body, comment = strings.TrimRight(bare[:at], " "), bare[at:]
			}
			closed := strings.TrimRight(body, ",") + opened
			r.failLine(i+1, brief(strings.TrimSpace(closed)), "a bracket or a brace of this line is never closed")
			lines[i] = closed + comment
			return true
		}
		depth = max(0, depth+balance(bare))
	}
	return r.mendIndent(lines)
}

// mendPair mends what parts a key from its value, and a list's dash from its item.
func (r *reader) mendPair(lines []string, i int) bool {
	line := strings.TrimRight(lines[i], "\r")
	if at := oddDash().FindStringSubmatch(line); at != nil && !(at[2] == "-" && at[3] != "") && !strings.HasPrefix(line, "---") {
		lines[i] = at[1] + "- " + at[4]
		what := "an item of a list begins with a hyphen and a blank"
		if at[2] != "-" {
			what = "an item of a list begins with a plain hyphen and a blank, not with " + at[2]
		}
		item, _, _ := strings.Cut(at[4], " #")
		r.failLine(i+1, brief("- "+item), "%s", what)
		return true
	}
	for _, p := range []struct {
		form *regexp.Regexp
		what string
	}{{tightPair(), "a blank is missing after the colon"}, {equalPair(), "a key and its value are parted by a colon and a blank, not by ="}} {
		if at := p.form.FindStringSubmatch(line); at != nil && isKey(at[2]) && at[3] != "" {
			lines[i] = at[1] + at[2] + ": " + at[3]
			value, _, _ := strings.Cut(at[3], " #")
			r.failPart(i+1, len(at[1]), brief(at[2]+": "+strings.TrimSpace(value)), "%s", p.what)
			return true
		}
	}
	return false
}

func isKey(word string) bool {
	return slices.ContainsFunc(keys, func(k key) bool { return k.path[strings.LastIndexByte(k.path, '.')+1:] == word })
}

// mendQuotes mends a value that goes on after its closing quotation mark, as feet and inches in quotes do.
func (r *reader) mendQuotes(lines []string, i int) bool {
	if at := openQuote().FindStringSubmatchIndex(lines[i]); at != nil && !strings.Contains(lines[i][:at[2]], "#") && (i+1 >= len(lines) || startsAnew(lines[i+1])) {
		closed := strings.TrimRight(lines[i], " \r") + lines[i][at[2]:at[2]+1]
		r.failPart(i+1, at[2], brief(strings.TrimSpace(closed)), "a quotation mark opens here and is never closed")
		lines[i] = closed
		return true
	}
	at := afterQuote().FindStringSubmatchIndex(lines[i])
	if at == nil || strings.Contains(lines[i][:at[2]], "#") {
		return false
	}
	value := lines[i][at[2]:]
	if end := strings.Index(value, " #"); end >= 0 {
		value = value[:end]
	}
	if end := strings.Index(value[1:], `""`); end >= 0 {
		value = value[:end+3]
	}
	value = strings.TrimRight(value, " \r")
	key := lines[i][:at[2]]
	key = strings.TrimLeft(key[strings.LastIndexAny(key, "{,")+1:], " -")
	if l, err := measure.ParseLength(value[1:max(1, len(value)-1)]); err == nil {
		plain := r.spec.Units.Written(l)
		r.failPart(i+1, at[2], brief(key+plain), "a quotation mark ends the text here; write feet and inches with ft and in")
		lines[i] = strings.Replace(lines[i], value, plain, 1)
		return true
	}
	inside := strings.ReplaceAll(strings.TrimSuffix(value[1:], value[:1]), `"`, "")
	r.failPart(i+1, at[2], brief(key+`"`+strings.TrimSpace(inside)+`"`), "the value goes on after its closing quotation mark; put all of it between the two marks")
	lines[i] = strings.Replace(lines[i], value, `"`+inside+`"`, 1)
	return true
}

// brackets returns what closes the brackets that a line leaves open, "" where it leaves none open or closes too many. Where one is closed by another's mark it returns the right one
// and where the wrong one stands.
func brackets(line string) (closing string, wrong int) {
	var open []byte
	quoted := byte(0)
	for i := 0; i < len(line); i++ {
		c := line[i]
		switch {
		case quoted != 0:
			if c == quoted {
				quoted = 0
			}
		case (c == '"' || c == '\'') && i > 0 && strings.IndexByte(" [{,", line[i-1]) >= 0:
			quoted = c
		case c == '#' && i > 0 && line[i-1] == ' ':
			i = len(line)
		case c == '{':
			open = append(open, '}')
		case c == '[':
			open = append(open, ']')
		case (c == '}' || c == ']') && len(open) > 0 && open[len(open)-1] == c:
			open = open[:len(open)-1]
		case (c == '}' || c == ']') && len(open) > 0:
			return string(open[len(open)-1:]), i
		case c == '}' || c == ']':
			return "", 0
		}
	}
	slices.Reverse(open)
	return string(open), 0
}

// balance counts the brackets that a line opens less those that it closes.
func balance(line string) int {
	line, _, _ = strings.Cut(line, " #")
	return strings.Count(line, "{") + strings.Count(line, "[") - strings.Count(line, "}") - strings.Count(line, "]")
}

// startsAnew reports whether a line begins a key or an item of its own, so that what is before it has ended.
func startsAnew(line string) bool {
	text := strings.TrimSpace(line)
	if text == "" || strings.HasPrefix(text, "- ") {
		return true
	}
	name, _, ok := strings.Cut(text, ":")
	return ok && isKey(name) && balance(line) >= 0 && !strings.HasSuffix(text, ",")
}
