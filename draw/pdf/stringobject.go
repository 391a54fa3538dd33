package pdf

import (
	"bytes"
	"encoding/hex"
	"strconv"
	"strings"
	"unicode/utf16"
)

// literal reads a string in parentheses (7.3.4.2).
func (l *lexer) literal() (any, error) {
	l.at++
	var s text
	for open := 1; l.at < len(l.data); l.at++ {
		switch c := l.data[l.at]; c {
		case '(':
			open++
			s = append(s, c)
		case ')':
			if open--; open == 0 {
				l.at++
				return s, nil
			}
			s = append(s, c)
		case '\\':
			l.at++
			s = l.escape(s)
		default:
			s = append(s, c)
		}
	}
	return nil, errSyntax
}

// escape appends what the characters after a backslash stand for and stops on the last of them.
func (l *lexer) escape(s text) text {
	c := l.peek(0)
	if i := strings.IndexByte("nrtbf", c); i >= 0 {
		return append(s, "\n\r\t\b\f"[i])
	}
	switch {
	case c == '\r':
		if l.peek(1) == '\n' {
			l.at++
		}
		return s
	case c == '\n':
		return s
	case c >= '0' && c <= '7':
		v, n := 0, 0
		for ; n < 3 && l.peek(n) >= '0' && l.peek(n) <= '7'; n++ {
			v = v*8 + int(l.peek(n)-'0')
		}
		l.at += n - 1
		return append(s, byte(v))
	}
	return append(s, c)
}

func (l *lexer) hexadecimal() (any, error) {
	end := bytes.IndexByte(l.data[l.at:], '>')
	if end < 0 {
		l.at = len(l.data)
		return nil, errSyntax
	}
	s, err := unhex(l.data[l.at+1 : l.at+end])
	l.at += end + 1
	return text(s), err
}

// unhex decodes hexadecimal digits with white space among them; an odd last digit counts as its first half.
func unhex(b []byte) ([]byte, error) {
	digits := bytes.Join(bytes.FieldsFunc(b, func(r rune) bool { return strings.ContainsRune(spaces, r) }), nil)
	if len(digits)%2 == 1 {
		digits = append(digits, '0')
	}
	out := make([]byte, len(digits)/2)
	if _, err := hex.Decode(out, digits); err != nil {
		return nil, errSyntax
	}
	return out, nil
}

// unescapeName resolves # and two digits.
func unescapeName(s string) string {
	if !strings.Contains(s, "#") {
		return s
	}
	var b strings.Builder
	for i := 0; i < len(s); i++ {
		if s[i] == '#' && i+2 < len(s) {
			if v, err := strconv.ParseUint(s[i+1:i+3], 16, 8); err == nil {
				b.WriteByte(byte(v))
				i += 2
				continue
			}
		}
		b.WriteByte(s[i])
	}
	return b.String()
}

// string returns a text string (7.9.2.2): UTF-16 or UTF-8 behind their marks, else one byte a character.
func (t text) string() string {
	switch {
	case bytes.HasPrefix(t, []byte{0xFE, 0xFF}):
		var units []uint16
		for i := 2; i+1 < len(t); i += 2 {
			units = append(units, uint16(t[i])<<8|uint16(t[i+1]))
		}
		return string(utf16.Decode(units))
	case bytes.HasPrefix(t, []byte{0xEF, 0xBB, 0xBF}):
		return strings.ToValidUTF8(string(t[3:]), "\uFFFD")
	}
	runes := make([]rune, len(t))
	for i, c := range t {
		runes[i] = rune(c)
	}
	return string(runes)
}
