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

	OneSided bool // every side on a sheet of its own, punched on the left
}

// sheet is one kind of sheet: its word on the command line, its name on paper, who it is handed to, and how it is made. A sheet that
// this tunnel gives nothing to do makes no leaves and is left out of the packet.
type sheet struct {
	word, name, holder string
	make               func(b *binder) []leaf
	folios             func(b *binder) []folio // of a leaf made of blocks, in place of make
}

// leaf is one page with the scale its title block states.
type leaf struct {
	page  *paper.Page
	scale string
}

// The sheets in the order of the packet. The overview is made last, for it lists the others with their page numbers.
func sheets() []sheet {
	return []sheet{
		{word: "overview", name: "Overview", holder: "organiser", make: (*binder).overview},
		{word: "safety", name: "Safety", holder: "read aloud to all", make: (*binder).safety},
		{word: "stake", name: "Stake plan", holder: "marking crew", make: (*binder).stakePlan},
		{word: "arch", name: "Arch profile", holder: "raising crew", make: (*binder).archProfiles},
		{word: "cut", name: "Cut sheet", holder: "person at the saw", make: (*binder).cutSheet},
		{word: "shopping", name: "Shopping list", holder: "buyer", make: (*binder).shoppingList},
		{word: "raise", name: "Raising", holder: "raising crew", make: (*binder).raising},
		{word: "light", name: "Light plan", holder: "wrapping crew", make: (*binder).lightPlan},
		{word: "circuit", name: "Circuit diagram", holder: "power crew", make: (*binder).circuitDiagram},
		{word: "steps", name: "Build steps", holder: "organiser, crew leads", make: (*binder).buildSteps},
		{word: "watch", name: "Opening nights", holder: "evening watch", make: (*binder).openingNights},
		{word: "takedown", name: "Take-down", holder: "take-down crew", make: (*binder).takeDown},
		{word: "rebuild", name: "Rebuild file", holder: "file, for next year", make: (*binder).rebuildFile},
		{word: "tags", name: "Tags", holder: "packing crew", make: (*binder).tags},
		{word: "permission", name: "Permission", holder: "owner, authority", make: (*binder).permission},
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
	twoSided bool
	plate    string // four characters that tell this plan from another
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
		checksum: fmt.Sprintf("%x", sha256.Sum256(plan.Spec.Source))[:8], twoSided: !opt.OneSided}
	b.plate = plateOf(plan.Spec.Source)
	doc := b.bind(chosen)
	if len(doc.Pages) == 0 {
		return doc, fmt.Errorf("the spec has nothing for the sheet %s: it has no lights", strings.Join(append(words, opt.Sheets...), ", "))
	}
	return doc, nil
}

// plateOf returns four characters that tell a spec from another at a glance: digits and capitals without those that are taken for others.
func plateOf(source []byte) string {
	const letters = "23456789ABCDEFGHJKLMNPQRSTUVWXYZ"
	sum := sha256.Sum256(source)
	var plate [4]byte
	for i := range plate {
		plate[i] = letters[int(sum[i])%len(letters)]
	}
	return string(plate[:])
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
	sets := make([][]set, len(chosen))
	next := 1
	for i, s := range chosen {
		if s.folios != nil {
			sides, _ := b.pack(leafKind{word: s.word, name: s.name, holder: s.holder, make: s.folios}, i+1, next-1)
			if sheetsCounted(sides); len(sides) > 0 {
				sets[i] = sides
				b.contents = append(b.contents, entry{s.name, s.holder, next, next + len(sides) - 1})
				next += len(sides)
			}
			continue
		}
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
		for _, side := range sets[i] {
			doc.Pages = append(doc.Pages, side.page)
			b.frameSide(side, len(doc.Pages), next-1)
		}
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
