package pdf

import (
	"fmt"
	"strings"
	"unicode/utf16"
)

// textString returns s as a hexadecimal text string in UTF-16 with its byte order mark (ISO 32000-1, 7.9.2.2).
func textString(s string) string {
	var b strings.Builder
	b.WriteString("<FEFF")
	for _, u := range utf16.Encode([]rune(s)) {
		fmt.Fprintf(&b, "%04X", u)
	}
	b.WriteString(">")
	return b.String()
}

// nameOf returns s as the text of a PDF name: bytes that are not regular characters as # and two digits (ISO 32000-1, 7.3.5).
func nameOf(s string) string {
	var b strings.Builder
	for _, c := range []byte(s) {
		if c <= ' ' || c > '~' || strings.IndexByte("#/%()<>[]{}", c) >= 0 {
			fmt.Fprintf(&b, "#%02X", c)
		} else {
			b.WriteByte(c)
		}
	}
	return b.String()
}
