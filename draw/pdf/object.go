package pdf

import (
	"bytes"
	"errors"
	"slices"
	"strconv"
	"strings"
)

// The objects of a PDF file (ISO 32000-1, 7.3): nil, bool, float64, name, text (a string's bytes), array, dict, ref and streamObject.
type (
	name  string
	text  []byte
	array []any
	dict  map[name]any
	ref   int
)

// streamObject is a stream: its dictionary and the place of its bytes in the file. The end is a guess until its length is known.
type streamObject struct {
	dict       dict
	start, end int
}

var errSyntax = errors.New("broken object")

// deepest is how far objects may nest: far more than any writer does, far less than the stack holds.
const deepest = 100

// lexer reads objects from bytes.
type lexer struct {
	data []byte
	at   int
}

// spaces are the characters of white space (ISO 32000-1, 7.2.2).
const spaces = " \n\r\t\f\x00"

func isSpace(c byte) bool     { return strings.IndexByte(spaces, c) >= 0 }
func isDelimiter(c byte) bool { return strings.IndexByte("()<>[]{}/%", c) >= 0 }
func isDigit(c byte) bool     { return c >= '0' && c <= '9' }

// space skips white space and comments.
func (l *lexer) space() {
	for l.at < len(l.data) {
		switch c := l.data[l.at]; {
		case isSpace(c):
			l.at++
		case c == '%':
			for l.at < len(l.data) && l.data[l.at] != '\n' && l.data[l.at] != '\r' {
				l.at++
			}
		default:
			return
		}
	}
}

// peek returns the byte n ahead, 0 past the end.
func (l *lexer) peek(n int) byte {
	if l.at+n < len(l.data) {
		return l.data[l.at+n]
	}
	return 0
}

// word reads regular characters.
func (l *lexer) word() string {
	start := l.at
	for l.at < len(l.data) && !isSpace(l.data[l.at]) && !isDelimiter(l.data[l.at]) {
		l.at++
	}
	return string(l.data[start:l.at])
}

// object reads one object; a dictionary that a stream follows is returned alone.
func (l *lexer) object(depth int) (any, error) {
	if depth > deepest {
		return nil, errSyntax
	}
	l.space()
	switch c := l.peek(0); {
	case c == '/':
		l.at++
		return name(unescapeName(l.word())), nil
	case c == '(':
		return l.literal()
	case c == '<' && l.peek(1) == '<':
		return l.dictionary(depth)
	case c == '<':
		return l.hexadecimal()
	case c == '[':
		l.at++
		return l.items("]", depth)
	}
	start := l.at
	w := l.word()
	switch w {
	case "":
		return nil, errSyntax
	case "null":
		return nil, nil
	case "true", "false":
		return w == "true", nil
	}
	v, err := strconv.ParseFloat(w, 64)
	if err != nil {
		l.at = start
		return nil, errSyntax
	}
	if r, ok := l.reference(w); ok {
		return r, nil
	}
	return v, nil
}

// reference reads what is left of "12 0 R" after its first number, or nothing.
func (l *lexer) reference(first string) (ref, bool) {
	n, err := strconv.Atoi(first)
	if err != nil || n <= 0 || !isDigit(first[0]) {
		return 0, false
	}
	back := l.at
	l.space()
	if isDigit(l.peek(0)) {
		if _, err := strconv.Atoi(l.word()); err == nil {
			l.space()
			if l.peek(0) == 'R' && (isSpace(l.peek(1)) || isDelimiter(l.peek(1))) {
				l.at++
				return ref(n), true
			}
		}
	}
	l.at = back
	return 0, false
}

// items reads objects up to the mark that closes them.
func (l *lexer) items(closing string, depth int) (array, error) {
	list := array{}
	for {
		l.space()
		if bytes.HasPrefix(l.data[l.at:], []byte(closing)) {
			l.at += len(closing)
			return list, nil
		}
		item, err := l.object(depth + 1)
		if err != nil {
			return nil, err
		}
		list = append(list, item)
	}
}

func (l *lexer) dictionary(depth int) (any, error) {
	l.at += len("<<")
	list, err := l.items(">>", depth)
	if err != nil {
		return nil, err
	}
	d := dict{}
	for pair := range slices.Chunk(list, 2) {
		key, ok := pair[0].(name)
		if !ok || len(pair) < 2 {
			return nil, errSyntax
		}
		d[key] = pair[1]
	}
	return d, nil
}
