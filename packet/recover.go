package packet

import (
	"bytes"
	"errors"
	"fmt"
	"path/filepath"
	"regexp"
	"strings"

	"hoopwright/draw/pdf"
	"hoopwright/layout/spec"
)

// errNoSpec says that a PDF has files attached but none of them is a spec.
var errNoSpec = errors.New("none of the files attached to the PDF is a spec of a light tunnel")

// versionLine is the key that every spec has.
var versionLine = regexp.MustCompile(`(?m)^\x{FEFF}?hoopwright[ \t]*:`)

// filledName is the name that the filled spec has in a packet. A spec of that name is attached under another.
const filledName = "filled.yaml"

// attachments are the spec as it was written, and the same with every default and choice written out, which a rebuild and a comparison solve. A spec so long that its defaults
// have no room beside it goes alone.
func (b *binder) attachments() []pdf.Attachment {
	list := []pdf.Attachment{{Name: attachmentName(b.spec.File), MIME: "application/yaml", Relationship: "Source", Description: "The spec this packet was made from", Data: b.spec.Source}}
	if filled, err := spec.Filled(b.spec); err == nil {
		list = append(list, pdf.Attachment{Name: filledName, MIME: "application/yaml", Relationship: "Supplement", Description: "The same with every default written out", Data: filled})
	}
	return list
}

// attachmentName is the spec's own file name without a folder, or a plain one for standard input.
func attachmentName(file string) string {
	base := filepath.Base(file)
	if strings.ContainsAny(base, "<>/\\") || base == "." || base == ".." || base == filledName {
		return "spec.yaml"
	}
	return base
}

// Recover returns the spec that a packet carries, byte for byte, and the name it was given there, without a folder. The packet may have been saved again
// by another program, as long as its attachments were kept.
func Recover(file []byte) (name string, source []byte, err error) { return recovered(file, false) }

// RecoverFilled returns the spec that a packet carries with every default and choice written out; of a packet that has none, the spec as written.
func RecoverFilled(file []byte) (name string, source []byte, err error) { return recovered(file, true) }

func recovered(file []byte, filled bool) (name string, source []byte, err error) {
	attached, err := pdf.Attachments(file)
	if err != nil {
		return "", nil, err
	}
	for _, a := range attached {
		switch {
		case !versionLine.Match(a.Data):
		case filled && a.Name == filledName:
			return filledName, a.Data, nil
		case a.Name != filledName && source == nil:
			name, source = attachmentName(a.Name), a.Data
		}
	}
	if source == nil {
		return "", nil, fmt.Errorf("%w (there is %s)", errNoSpec, filepath.Base(attached[0].Name))
	}
	return name, source, nil
}

// IsPDF reports whether a file is a PDF rather than a spec: the header may stand a little way in.
func IsPDF(file []byte) bool { return bytes.Contains(file[:min(len(file), 1024)], []byte("%PDF-")) }
