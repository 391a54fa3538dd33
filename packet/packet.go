// Package packet binds a solved plan into one printed build packet: which sheets, in which order, each with its frame, its
// words and its checklists, and the spec itself attached.
//
// It computes no geometry and decides nothing about the tunnel: every figure it prints comes from the plan. Pictures come from
// package draw; this package gives them room and puts words beside them.
package packet

import (
	"crypto/sha256"
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"hoopwright/draw/paper"
	"hoopwright/draw/pdf"
	"hoopwright/layout"
	"hoopwright/layout/crew"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// Options say what to bind.
type Options struct {
	Sheets []string  // words of the sheets wanted; none means all that are not made on request alone
	For    []string  // crews that it is bundled for: their sheets, and their own part of the build steps
	Date   time.Time // the issue date, printed on every sheet
}

// sheet is one kind of sheet: its word on the command line, its name on paper, who it is handed to, and how it is made. A sheet that
// this tunnel gives nothing to do makes no leaves and is left out of the packet.
type sheet struct {
	word, name, holder string
	make               func(b *binder) []leaf
}

// leaf is one page with the scale its title block states.
type leaf struct {
	page  *paper.Page
	scale string
}

// The sheets in the order of the packet. The overview is made last, for it lists the others with their page numbers.
func sheets() []sheet {
	return []sheet{
		{"overview", "Overview", "organiser", (*binder).overview},
		{"safety", "Safety", "read aloud to all", (*binder).safety},
		{"stake", "Stake plan", "marking crew", (*binder).stakePlan},
		{"arch", "Arch profile", "raising crew", (*binder).archProfiles},
		{"cut", "Cut sheet", "person at the saw", (*binder).cutSheet},
		{"shopping", "Shopping list", "buyer", (*binder).shoppingList},
		{"raise", "Raising", "raising crew", (*binder).raising},
		{"light", "Light plan", "wrapping crew", (*binder).lightPlan},
		{"circuit", "Circuit diagram", "power crew", (*binder).circuitDiagram},
		{"steps", "Build steps", "organiser, crew leads", (*binder).buildSteps},
		{"watch", "Opening nights", "evening watch", (*binder).openingNights},
		{"takedown", "Take-down", "take-down crew", (*binder).takeDown},
		{"rebuild", "Rebuild file", "file, for next year", (*binder).rebuildFile},
		{"tags", "Tags", "packing crew", (*binder).tags},
		{"permission", "Permission", "owner, authority", (*binder).permission},
	}
}

// onRequest are the sheets made only where they are asked for by their words.
var onRequest = []string{"permission"}

// Words returns the words that name the sheets, in packet order.
func Words() []string {
	var words []string
	for _, s := range sheets() {
		words = append(words, s.word)
	}
	return words
}

// binder makes the sheets of one packet.
type binder struct {
	plan     *layout.Plan
	spec     *spec.Spec
	size     paper.Rect
	date     time.Time
	checksum string
	phases   []crew.Phase // whose build steps are printed; none means all
	contents []entry      // what the overview lists
}

// entry is a line of the overview's list of sheets.
type entry struct {
	name, holder string
	first, last  int // page numbers
}

// Bind makes the packet of a plan. The error says which sheet word is unknown.
func Bind(plan *layout.Plan, opt Options) (pdf.Document, error) {
	words, phases, err := bundled(opt.For)
	if err != nil {
		return pdf.Document{}, err
	}
	if slices.Contains(opt.Sheets, "steps") {
		phases = nil // asked for by word: all of them
	}
	chosen, err := choose(append(words, opt.Sheets...))
	if err != nil {
		return pdf.Document{}, err
	}
	size, ok := paper.Sheet(plan.Spec.Paper)
	if !ok {
		return pdf.Document{}, fmt.Errorf("paper is %s, not %q", say.Or(spec.Papers()), plan.Spec.Paper)
	}
	b := &binder{plan: plan, spec: plan.Spec, size: size, date: opt.Date, phases: phases,
		checksum: fmt.Sprintf("%x", sha256.Sum256(plan.Spec.Source))[:8]}
	doc := b.bind(chosen)
	if len(doc.Pages) == 0 {
		return doc, fmt.Errorf("the spec has nothing for the sheet %s: it has no lights", strings.Join(append(words, opt.Sheets...), ", "))
	}
	return doc, nil
}

// choose picks the sheets by their words, in packet order.
func choose(words []string) ([]sheet, error) {
	if len(words) == 0 {
		return slices.DeleteFunc(sheets(), func(s sheet) bool { return slices.Contains(onRequest, s.word) }), nil
	}
	for _, w := range words {
		if !slices.Contains(Words(), w) {
			return nil, fmt.Errorf("no sheet %q; the sheets are %s", w, strings.Join(Words(), ", "))
		}
	}
	return slices.DeleteFunc(sheets(), func(s sheet) bool { return !slices.Contains(words, s.word) }), nil
}

// bind makes every sheet, numbers the pages and frames them.
func (b *binder) bind(chosen []sheet) pdf.Document {
	made := make([][]leaf, len(chosen))
	next := 1
	for i, s := range chosen {
		if s.word == "overview" {
			next++ // one page, made below
			b.contents = append(b.contents, entry{s.name, s.holder, 1, 1})
			continue
		}
		if made[i] = s.make(b); len(made[i]) == 0 {
			continue
		}
		b.contents = append(b.contents, entry{s.name, s.holder, next, next + len(made[i]) - 1})
		next += len(made[i])
	}
	for i, s := range chosen {
		if s.word == "overview" {
			made[i] = s.make(b)
		}
	}
	doc := pdf.Document{
		Title: b.spec.Title + ": build packet", Subject: "Build packet of a walk-through light tunnel", Lang: "en", Date: b.date,
		Attachments: []pdf.Attachment{{Name: attachmentName(b.spec.File), MIME: "application/yaml", Relationship: "Source",
			Description: "The spec this packet was made from", Data: b.spec.Source}},
	}
	for i, s := range chosen {
		for k, l := range made[i] {
			l.page.Name = s.word
			l.page.Title = s.name
			if len(made[i]) > 1 {
				l.page.Title = fmt.Sprintf("%s %d of %d", s.name, k+1, len(made[i]))
			}
			doc.Pages = append(doc.Pages, l.page)
			b.frame(l, len(doc.Pages), next-1)
		}
	}
	return doc
}

// attachmentName is the spec's own file name, or a plain one for standard input.
func attachmentName(file string) string {
	base := filepath.Base(file)
	if strings.ContainsAny(base, "<>/\\") || base == "." {
		return "spec.yaml"
	}
	return base
}
