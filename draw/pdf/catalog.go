package pdf

import (
	"bytes"
	"crypto/md5"
	"fmt"
	"slices"
	"strings"
	"time"
)

// producer names the program that made the file in the sense of ISO 32000-1, 14.3.3.
const producer = "hoopwright, drawn with go-pdf/fpdf 0.9.0"

// catalog adds what the catalog points to and returns the catalog itself.
func catalog(f *file, doc Document, pages array) []byte {
	var b bytes.Buffer
	b.WriteString("<< /Type /Catalog /Pages 1 0 R")
	if doc.Lang != "" {
		fmt.Fprintf(&b, " /Lang %s", textString(doc.Lang))
	}
	// Printed at full size, on one side or two, on the paper it was drawn for; the title in the window's bar.
	duplex := "Simplex"
	if doc.TwoSided {
		duplex = "DuplexFlipLongEdge"
	}
	fmt.Fprintf(&b, "\n/ViewerPreferences << /DisplayDocTitle true /PrintScaling /None /Duplex /%s /PickTrayByPDFSize true >>", duplex)
	fmt.Fprintf(&b, "\n/PageLayout /SinglePage /PageMode /UseOutlines /Outlines %d 0 R", outline(f, doc, pages))
	fmt.Fprintf(&b, "\n/PageLabels << /Nums [%s] >>", pageLabels(doc))
	fmt.Fprintf(&b, "\n/Metadata %d 0 R", f.addStream("/Type /Metadata /Subtype /XML", xmp(doc)))
	if len(doc.Attachments) > 0 {
		names, all := attach(f, doc)
		fmt.Fprintf(&b, "\n/Names << /EmbeddedFiles << /Names [%s] >> >> /AF [%s]", names, all)
	}
	b.WriteString(" >>")
	return b.Bytes()
}

// outline adds the bookmarks, one a page on one level, and returns the number of their root.
func outline(f *file, doc Document, pages array) int {
	root := f.add(nil) // its body comes last
	first := root + 1
	last := root + len(pages)
	for i, page := range pages {
		var b bytes.Buffer
		fmt.Fprintf(&b, "<< /Title %s /Parent %d 0 R /Dest [%d 0 R /Fit]", textString(doc.Pages[i].Title), root, page)
		if i > 0 {
			fmt.Fprintf(&b, " /Prev %d 0 R", first+i-1)
		}
		if i < len(pages)-1 {
			fmt.Fprintf(&b, " /Next %d 0 R", first+i+1)
		}
		b.WriteString(" >>")
		f.add(b.Bytes())
	}
	f.objects[root] = fmt.Appendf(nil, "<< /Type /Outlines /First %d 0 R /Last %d 0 R /Count %d >>", first, last, len(pages))
	return root
}

// pageLabels returns a label a page: its number and title, so that a viewer shows the sheet's name.
func pageLabels(doc Document) string {
	var b strings.Builder
	for i, p := range doc.Pages {
		fmt.Fprintf(&b, "%d << /P %s >> ", i, textString(strings.TrimSpace(fmt.Sprintf("%d %s", i+1, p.Title))))
	}
	return strings.TrimSpace(b.String())
}

// attach adds the attached files and returns the entries of the name tree, in the order of their keys, and the references of all. The keys carry the files' order, for some programs
// keep the first alone when they save a document again.
func attach(f *file, doc Document) (names, all string) {
	var pairs, refs []string
	for i, a := range doc.Attachments {
		data := f.addStream(fmt.Sprintf("/Type /EmbeddedFile /Subtype /%s /Filter /FlateDecode /Params << /Size %d /CheckSum <%X> /ModDate (%s) >>",
			nameOf(a.MIME), len(a.Data), md5.Sum(a.Data), date(doc.Date)), f.deflate(a.Data))
		spec := f.add(fmt.Appendf(nil, "<< /Type /Filespec /F %s /UF %s /Desc %s /AFRelationship /%s /EF << /F %d 0 R /UF %d 0 R >> >>",
			textString(a.Name), textString(a.Name), textString(a.Description), a.Relationship, data, data))
		refs = append(refs, fmt.Sprintf("%d 0 R", spec))
		pairs = append(pairs, textString(fmt.Sprintf("%03d %s", i+1, a.Name))+" "+refs[i])
	}
	slices.Sort(pairs)
	return strings.Join(pairs, " "), strings.Join(refs, " ")
}

// relationships are the roles an attached file can play (ISO 32000-2, 7.11.3, table 43).
var relationships = map[string]bool{"Source": true, "Data": true, "Alternative": true, "Supplement": true, "Unspecified": true}

// checkAttachments reports what cannot be attached.
func checkAttachments(list []Attachment) error {
	seen := map[string]bool{}
	for _, a := range list {
		switch {
		case a.Name == "" || strings.ContainsAny(a.Name, "/\\\x00"):
			return fmt.Errorf("an attachment cannot be named %q", a.Name)
		case seen[a.Name]:
			return fmt.Errorf("two attachments are named %q", a.Name)
		case !relationships[a.Relationship]:
			return fmt.Errorf("attachment %q: no relationship %q", a.Name, a.Relationship)
		}
		seen[a.Name] = true
	}
	return nil
}

func information(doc Document) []byte {
	var b bytes.Buffer
	b.WriteString("<< /Producer " + textString(producer))
	for _, e := range [][2]string{{"Title", doc.Title}, {"Subject", doc.Subject}} {
		if e[1] != "" {
			fmt.Fprintf(&b, " /%s %s", e[0], textString(e[1]))
		}
	}
	fmt.Fprintf(&b, " /CreationDate (%s) /ModDate (%s) >>", date(doc.Date), date(doc.Date))
	return b.Bytes()
}

// date returns a date as a PDF string, in UTC.
func date(t time.Time) string { return t.UTC().Format("D:20060102150405+00'00'") }
