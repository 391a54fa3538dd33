package packet

import (
	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
)

// permissionAnnex is for whoever must agree: the owner of the ground, the authority, the insurer. It states what is asked for and leaves the answer to them.
func (b *binder) permissionAnnex() []folio {
	footprint, ok := draw.NewFootprint(b.plan)
	if !ok {
		return nil
	}
	const least, best paper.Length = 60, 110
	picture := paper.Rect{W: b.bodyWidth(), H: best}
	scale := footprint.Scale(draw.Scales(b.spec.Units), picture)
	blocks := []block.Block{
		block.Paragraph("We ask the owner of the ground and the authority to let this stand. They may ask for more."),
		{Name: "footprint", Gap: 2, Body: block.Picture{Least: best, Paint: func(page *paper.Page, box paper.Rect) []string {
			footprint.Draw(page, box, scale)
			return nil
		}}, Short: block.Picture{Least: least, Paint: func(page *paper.Page, box paper.Rect) []string {
			footprint.Draw(page, box, footprint.Scale(draw.Scales(b.spec.Units), box))
			return nil
		}}},
		{Name: "what is asked for", Gap: 2, Body: block.Table{
			Table: place.Table{Columns: []place.Column{{Head: "What", Width: 46, Lettering: paper.Strong}, {Head: "This tunnel"}}}, Rows: b.permissionRows(footprint)}},
		block.Paragraph("Estimates to close early by. No engineer has judged wind, snow, ice or crowd."),
	}
	for _, who := range []string{"Owner of the ground", "Authority", "Organiser"} {
		blocks = append(blocks, block.Block{Name: who, Gap: 0.5, Body: block.Blanks{{Word: who + ", name"}, {Word: "signed"}, {Word: "date", Share: 0.6}}})
	}
	return []folio{{front: side{title: "Permission", toScale: true, blocks: append(blocks, block.Block{Name: "conditions", Gap: 0.5, Body: block.Blanks{{Word: "Conditions"}}})}}}
}
