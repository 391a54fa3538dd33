// Package packet binds a solved plan into one printed build packet: which sheets, in which order, each with its frame, its
// words and its checklists, and the spec itself attached.
//
// It computes no geometry and decides nothing about the tunnel: every figure it prints comes from the plan. Pictures come from
// package draw; this package gives them room and puts words beside them.
package packet

import (
	"crypto/sha256"
	"fmt"
	"slices"
	"strings"
	"time"

	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/draw/pdf"
	"hoopwright/layout"
	"hoopwright/layout/arch"
	"hoopwright/layout/say"
	"hoopwright/layout/spec"
)

// Options say what to bind.
type Options struct {
	Sheets []string  // words of the sheets wanted; none means all that are not made on request alone
	For    []string  // crews that it is bundled for: their sheets
	Date   time.Time // the issue date, printed on every sheet

	Annex    bool // the annex too
	OneSided bool // every side on a sheet of its own, punched on the left
}

// sheet is one kind of sheet: its word on the command line, its name on paper, who it is handed to, and how it is made. A sheet that
// this tunnel gives nothing to do makes no leaves and is left out of the packet.
type sheet struct {
	word, name, holder string
	folios             func(b *binder) []folio
	annex              bool // made only where it is asked for
}

// The sheets in the order of the packet, the annex last.
func sheets() []sheet {
	return []sheet{
		{word: "day", name: "Run sheet", holder: "organiser", folios: (*binder).dayLeaf},
		{word: "board", name: "Board", holder: "everyone", folios: (*binder).boardLeaf},
		{word: "stakes", name: "Stakes", holder: "marking and driving crew", folios: stakesLeaf},
		{word: "stock", name: "Buy and cut", holder: "buyer, person at the saw", folios: (*binder).stockLeaf},
		{word: "raise", name: "Raise", holder: "raising crew", folios: (*binder).raiseLeaf},
		{word: "lights", name: "Lights", holder: "wrapping crew", folios: (*binder).lightsLeaf},
		{word: "power", name: "Power", holder: "power crew", folios: (*binder).powerLeaf},
		{word: "nights", name: "Nights", holder: "evening watch", folios: (*binder).nightsLeaf},
		{word: "takedown", name: "Take down", holder: "take-down crew", folios: (*binder).takedownLeaf},
		{word: "tags", name: "Tags", holder: "take-down crew", folios: (*binder).tagsLeaf},
		{word: "spec", name: "Spec", holder: "file, for next year", folios: (*binder).specLeaf},

		{word: "figures", name: "Figures", holder: "organiser", folios: (*binder).figuresAnnex, annex: true},
		{word: "strength", name: "Strength", holder: "organiser", folios: (*binder).strengthAnnex, annex: true},
		{word: "reckoning", name: "Reckoning", holder: "organiser", folios: (*binder).reckoningAnnex, annex: true},
		{word: "permission", name: "Permission", holder: "owner, authority", folios: (*binder).permissionAnnex, annex: true},
		{word: "neighbours", name: "To our neighbours", holder: "neighbours", folios: (*binder).neighboursAnnex, annex: true},
	}
}

// oldWords are the words of sheets whose place a leaf has taken: they answer with that.
var oldWords = map[string]string{"overview": "board", "safety": "board", "stake": "stakes", "arch": "raise", "raising": "raise", "cut": "stock", "shopping": "stock",
	"light": "lights", "circuit": "power", "steps": "day", "watch": "nights", "rebuild": "takedown"}

// leafNumber is the number of a leaf in the packet, the same whichever are printed.
func leafNumber(word string) int {
	return slices.IndexFunc(sheets(), func(s sheet) bool { return s.word == word }) + 1
}

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
	skies    // the plan
	spec     *spec.Spec
	size     paper.Rect
	date     time.Time
	twoSided bool
	plate    string       // four characters that tell this plan from another
	notes    []block.Note // what found no room on the leaves packed so far

	specWithTags bool // both are wanted, in front and behind: they may share a sheet of paper
}

// Bind makes the packet of a plan, and returns what found no room on its paper. The error says which sheet word is unknown.
func Bind(plan *layout.Plan, opt Options) (pdf.Document, []block.Note, error) {
	words, err := bundled(opt.For)
	if err != nil {
		return pdf.Document{}, nil, err
	}
	chosen, err := choose(append(words, opt.Sheets...), opt.Annex)
	if err != nil {
		return pdf.Document{}, nil, err
	}
	b, err := newBinder(plan, opt)
	if err != nil {
		return pdf.Document{}, nil, err
	}
	doc, notes := b.bind(chosen)
	if len(doc.Pages) == 0 {
		return doc, nil, fmt.Errorf("the spec has nothing for the sheet %s: it has no lights", strings.Join(append(words, opt.Sheets...), ", "))
	}
	return doc, notes, nil
}

// newBinder readies a packet.
func newBinder(plan *layout.Plan, opt Options) (*binder, error) {
	size, ok := paper.Sheet(plan.Spec.Paper)
	if !ok {
		return nil, fmt.Errorf("paper is %s, not %q", say.Or(spec.Papers()), plan.Spec.Paper)
	}
	return &binder{skies: skies{plan}, spec: plan.Spec, size: size, date: opt.Date, twoSided: !opt.OneSided,
		plate: plateOf(plan.Spec.Source)}, nil
}

// sides packs leaves side by side and returns their sides in order, and what found no room. The board is packed last, for it tells what found none.
func (b *binder) sides(chosen []sheet) (sides []set, notes []block.Note) {
	wanted := func(word string) int { return slices.IndexFunc(chosen, func(s sheet) bool { return s.word == word }) }
	b.specWithTags = b.twoSided && wanted("tags") >= 0 && wanted("spec") >= 0
	packed, left := make([][]set, len(chosen)), make([][]block.Note, len(chosen))
	pack := func(i int) {
		s := chosen[i]
		if s.word == "stakes" {
			s.name, s.holder = groundOf(b.plan).leaf, groundOf(b.plan).holder
		}
		packed[i], left[i] = b.pack(leafKind{word: s.word, name: s.name, holder: s.holder, make: s.folios}, leafNumber(s.word))
	}
	board := wanted("board")
	arch.SideBySide(len(chosen), func(i int) {
		if i != board {
			pack(i)
		}
	})
	b.notes = slices.Concat(left...)
	notes = b.notes
	if board >= 0 {
		pack(board)
		notes = append(slices.Clip(notes), left[board]...)
	}
	for i, leaf := range packed {
		follows := slices.ContainsFunc(packed[i+1:], func(next []set) bool { return len(next) > 0 })
		if n := len(leaf); b.twoSided && n%2 == 1 && follows { // the next begins on a front
			leaf = append(leaf, b.notesSide(leaf[n-1]))
		}
		sheetsCounted(leaf)
		sides = append(sides, leaf...)
	}
	return sides, notes
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

// choose picks the sheets by their words, in packet order; without any, all but the annex, unless it is wanted too.
func choose(words []string, annex bool) ([]sheet, error) {
	words = slices.Clone(words)
	for i, w := range words {
		if leaf, ok := oldWords[w]; ok {
			words[i] = leaf
			continue
		}
		if !slices.Contains(Words(), w) {
			return nil, fmt.Errorf("no sheet %q; the sheets are %s", w, strings.Join(Words(), ", "))
		}
	}
	return slices.DeleteFunc(sheets(), func(s sheet) bool {
		if s.annex && annex {
			return false
		}
		return !slices.Contains(words, s.word) && (s.annex || len(words) > 0)
	}), nil
}

// bind makes every sheet, numbers the pages and frames them.
func (b *binder) bind(chosen []sheet) (pdf.Document, []block.Note) {
	sides, notes := b.sides(chosen)
	doc := pdf.Document{
		Title: b.spec.Title + ": build packet", Subject: "Build packet of a walk-through light tunnel", Lang: "en", Date: b.date, TwoSided: b.twoSided,
		Attachments: b.attachments(),
	}
	for _, side := range sides {
		doc.Pages = append(doc.Pages, side.page)
		b.frameSide(side, len(doc.Pages), len(sides))
	}
	return doc, notes
}
