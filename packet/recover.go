package packet

import (
	"bytes"
	"errors"
	"fmt"
	"path/filepath"
	"regexp"

	"hoopwright/draw/pdf"
)

// ErrNoSpec says that a PDF has files attached but none of them is a spec.
var ErrNoSpec = errors.New("none of the files attached to the PDF is a spec of a light tunnel")

// versionLine is the key that every spec has.
var versionLine = regexp.MustCompile(`(?m)^\x{FEFF}?hoopwright[ \t]*:`)

// Recover returns the spec that a packet carries, byte for byte, and the name it was given there, without a folder. The packet may have been saved again
// by another program, as long as its attachments were kept.
func Recover(file []byte) (name string, source []byte, err error) {
	attached, err := pdf.Attachments(file)
	if err != nil {
		return "", nil, err
	}
	for _, a := range attached {
		if versionLine.Match(a.Data) {
			name := attachmentName(a.Name)
			if name == ".." || name == "" {
				name = "spec.yaml"
			}
			return name, a.Data, nil
		}
	}
	return "", nil, fmt.Errorf("%w (there is %s)", ErrNoSpec, filepath.Base(attached[0].Name))
}

// IsPDF reports whether a file is a PDF rather than a spec: the header may stand a little way in.
func IsPDF(file []byte) bool { return bytes.Contains(file[:min(len(file), 1024)], []byte("%PDF-")) }
