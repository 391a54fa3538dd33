package packet

import (
	"fmt"
	"strings"

	"hoopwright/draw/paper"
	"hoopwright/layout/finding"
	"hoopwright/layout/say"
)

// remark is something the overview says of the plan, in versions from the fullest to the shortest.
type remark struct {
	code     string // of the finding, if it is one
	head     string
	versions []string
}

const remarkGap paper.Length = 1.2

// said gathers what the overview says of the plan: must fix and look at, each code once, then what was accepted and by whom, then what the
// spec left open.
func (b *binder) said() []remark {
	var list []remark
	seen := map[string]int{}
	for _, f := range b.plan.Findings {
		if f.AcceptedBy == "" && f.Level == finding.Note {
			continue
		}
		seen[f.Code]++
		if seen[f.Code] > 1 {
			continue
		}
		list = append(list, remarkOn(f))
	}
	for i, r := range list {
		if n := seen[r.code]; n > 1 {
			list[i].head += fmt.Sprintf(" (%d)", n)
		}
	}
	if words := b.assumed(); len(words) > 0 {
		r := remark{head: "Not in the spec, so assumed:", versions: []string{strings.Join(words, ", ") + "."}}
		if n := len(words) - 1; n > 0 {
			r.versions = append(r.versions, fmt.Sprintf("%s, and %d more.", words[0], n))
		}
		list = append(list, r)
	}
	return list
}

func remarkOn(f finding.Finding) remark {
	first, _, _ := strings.Cut(f.Text, ". ")
	r := remark{f.Code, say.Capital(f.Level.String()) + ": " + f.Code, []string{f.Text, strings.TrimSuffix(first, ".") + ".", ""}}
	if cure := cureWords(f.Cure); cure != "" {
		r.versions = []string{f.Text + " " + cure, f.Text, cure, ""}
	}
	if f.AcceptedBy != "" {
		r.head = "Accepted: " + f.Code
		r.versions = []string{fmt.Sprintf("%s. %s, signed ____________", strings.TrimSuffix(f.AcceptedAs, "."), f.AcceptedBy), f.AcceptedBy + ", signed ____________"}
	}
	return r
}

var remarkHead = paper.Strong.Sized(11)

// height is the height of a remark with a text.
func (r remark) height(text string, width paper.Length) paper.Length {
	lines := len(remarkHead.Wrap(r.head, width))
	if text != "" {
		lines += len(paper.Floor.Wrap(text, width))
	}
	return paper.Length(lines)*paper.Floor.Leading() + remarkGap
}

// shortest is a remark's last version.
func (r remark) shortest() string { return r.versions[len(r.versions)-1] }

// setHeight is the height of all remarks in full.
func setHeight(list []remark, width paper.Length) paper.Length {
	h := paper.Floor.Leading() // of the line that says there is nothing
	for _, r := range list {
		h += r.height(r.versions[0], width)
	}
	return h
}

// drawSaid sets the remarks in a box: all in full where they fit; else the last ones shorter, and where even that is too long the last ones
// not at all, with a line that says how many.
func (b *binder) drawSaid(page *paper.Page, box paper.Rect) {
	box = head(page, box, "Before building")
	list := b.said()
	if len(list) == 0 {
		page.Paragraph(box, "Nothing to fix, nothing to decide: the plan has no findings.", paper.Floor)
		return
	}
	texts := fitRemarks(list, box)
	for i, text := range texts {
		box.Y = page.Paragraph(box, list[i].head, remarkHead)
		if text != "" {
			box.Y = page.Paragraph(box, text, paper.Floor)
		}
		box.Y += remarkGap
	}
	if n := len(list) - len(texts); n > 0 {
		page.Paragraph(box, fmt.Sprintf("And %d more in `hoopwright check`.", n), paper.Floor)
	}
}

// fitRemarks returns the texts of the remarks that fit the box: as many remarks as can be told by their heads, the first ones as fully as
// there is room.
func fitRemarks(list []remark, box paper.Rect) []string {
	left := box.H
	for _, r := range list {
		left -= r.height(r.shortest(), box.W)
	}
	shown, more := len(list), paper.Length(0) // more: the line that says how many are not shown
	for ; shown > 0 && left < more; shown-- {
		more = paper.Floor.Leading()
		left += list[shown-1].height(list[shown-1].shortest(), box.W)
	}
	left -= more
	texts := make([]string, shown)
	for i, r := range list[:shown] {
		texts[i] = r.fullest(box.W, left)
		left -= r.height(texts[i], box.W) - r.height(r.shortest(), box.W)
	}
	return texts
}

// fullest returns the fullest version that takes no more than extra over the shortest, else as many lines of the last but one as that leaves.
func (r remark) fullest(width, extra paper.Length) string {
	for _, text := range r.versions {
		if r.height(text, width)-r.height(r.shortest(), width) <= extra {
			if text != "" || len(r.versions) < 2 {
				return text
			}
			lines := paper.Floor.Wrap(r.versions[len(r.versions)-2], width)
			if n := int(extra / paper.Floor.Leading()); n > 0 {
				lines[n-1] = clip(lines[n-1]+" …", paper.Floor, width)
				return strings.Join(lines[:n], " ")
			}
		}
	}
	return r.shortest()
}
