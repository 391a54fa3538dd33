package pdf

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"time"
)

// xmp returns the document's metadata as an XMP packet (ISO 16684-1), the same facts as the information dictionary.
func xmp(doc Document) []byte {
	var b bytes.Buffer
	b.WriteString("<?xpacket begin=\"\uFEFF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n<x:xmpmeta xmlns:x=\"adobe:ns:meta/\">\n" +
		"<rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">\n<rdf:Description rdf:about=\"\"" +
		" xmlns:dc=\"http://purl.org/dc/elements/1.1/\" xmlns:xmp=\"http://ns.adobe.com/xap/1.0/\" xmlns:pdf=\"http://ns.adobe.com/pdf/1.3/\">\n")
	element := func(name, open, value, close string) {
		if value != "" {
			fmt.Fprintf(&b, "<%s>%s%s%s</%s>\n", name, open, escaped(value), close, name)
		}
	}
	const alt, endAlt = `<rdf:Alt><rdf:li xml:lang="x-default">`, `</rdf:li></rdf:Alt>`
	element("dc:format", "", "application/pdf", "")
	element("dc:title", alt, doc.Title, endAlt)
	element("dc:description", alt, doc.Subject, endAlt)
	element("dc:language", "<rdf:Bag><rdf:li>", doc.Lang, "</rdf:li></rdf:Bag>")
	element("pdf:Producer", "", producer, "")
	when := doc.Date.UTC().Format(time.RFC3339)
	element("xmp:CreateDate", "", when, "")
	element("xmp:ModifyDate", "", when, "")
	b.WriteString("</rdf:Description>\n</rdf:RDF>\n</x:xmpmeta>\n<?xpacket end=\"r\"?>")
	return b.Bytes()
}

func escaped(s string) string {
	var b bytes.Buffer
	xml.EscapeText(&b, []byte(s)) // a bytes.Buffer takes all
	return b.String()
}
