// Package pdf writes pages of plain drawing operations as one PDF and gets attached files back out of one.
//
// Pages are replayed through github.com/go-pdf/fpdf, which embeds the faces and keeps the file's bookkeeping. Paths are written as PDF
// operators here, since the library rounds coarser and its arcs leave the true circle. What the library cannot say (print at
// full size, page labels, bookmarks beside attachments, attachments with their role, a file identifier) is put in by a finishing pass over its
// bytes. The same document gives the same bytes, on every run and in every time zone. Operators and keys are those of ISO 32000-1:2008, PDF 1.7.
package pdf

import (
	"errors"
	"fmt"
	"io"
	"time"

	"hoopwright/draw/paper"
)

// Document is what a PDF is made from.
type Document struct {
	Title    string
	Subject  string
	Lang     string    // language tag, such as en-US
	Date     time.Time // the only date in the file; the zero time stands for 1 January 2000
	TwoSided bool      // printed on both sides, turned on the long edge

	Pages       []*paper.Page
	Attachments []Attachment
}

// Attachment is a file that travels inside the PDF.
type Attachment struct {
	Name         string // file name, unique in the document
	MIME         string // such as text/csv
	Relationship string // Source, Data, Alternative, Supplement or Unspecified
	Description  string
	Data         []byte
}

var errNoPages = errors.New("a document needs at least one page")

// Write renders the document in memory and writes it only when it is whole.
func Write(w io.Writer, doc Document) error {
	if len(doc.Pages) == 0 {
		return errNoPages
	}
	if doc.Date.IsZero() {
		doc.Date = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)
	}
	doc.Date = doc.Date.UTC()
	if err := checkAttachments(doc.Attachments); err != nil {
		return err
	}
	raw, used, err := replay(doc)
	if err != nil {
		return fmt.Errorf("drawing the PDF: %w", err)
	}
	whole, err := finish(raw, used, doc)
	if err != nil {
		return fmt.Errorf("finishing the PDF: %w", err)
	}
	_, err = w.Write(whole)
	return err
}
