package packet

import (
	"fmt"
	"math"
	"slices"

	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/crew"
	"hoopwright/layout/say"
)

// phaseWords are how a crew's job is called on paper, and what its people bring.
var phaseWords = map[crew.Phase]string{
	crew.Marking: "Marking", crew.Driving: "Driving stakes", crew.Cutting: "Cutting", crew.Wrapping: "Testing and wrapping",
	crew.Raising: "Raising", crew.Hanging: "Hanging and walking through", crew.Powering: "Power",
}

const (
	stepGap paper.Length = 1.6 // between two steps
	jobGap  paper.Length = 3   // before a crew's next job
)

// buildSteps prints the work in its order: the day's plan, then each crew's steps to be read, done and ticked, with hold points where someone
// measures and signs.
func (b *binder) buildSteps() []leaf {
	f := b.newFlow("Read a step aloud, do it, tick it. Thick box: nobody goes on before it is signed.", "this sheet on a clipboard, a pencil, a watch.")
	plan := b.plan.Crew
	if len(plan.Steps) == 0 {
		f.text("There is nothing to build yet: no step has its figures.", paper.Body)
		return f.leaves
	}
	b.dayPlan(f)
	f.gap(jobGap)
	b.stopAndAsk(f)
	seen := map[crew.Phase]bool{}
	for _, block := range plan.Blocks {
		if len(b.phases) > 0 && !slices.Contains(b.phases, block.Phase) {
			continue
		}
		title := phaseWords[block.Phase]
		if seen[block.Phase] {
			title += ", again"
		}
		b.stepBlock(f, block, title, !seen[block.Phase])
		seen[block.Phase] = true
	}
	return f.leaves
}

// dayPlan sets the crews' jobs with their times.
func (b *binder) dayPlan(f *flow) {
	plan := b.plan.Crew
	var rows []place.Row
	seen := map[crew.Phase]bool{}
	for _, block := range plan.Blocks {
		name := phaseWords[block.Phase]
		if seen[block.Phase] {
			name += ", again"
		}
		seen[block.Phase] = true
		begin, end := plan.At(block.Begin), plan.At(block.End)
		if block.Phase == crew.Marking {
			begin, end = "days before", ""
			if d := b.spec.Dates.Mark; !d.IsZero() {
				begin = d.Format("Mon 2 Jan")
			}
		}
		rows = append(rows, place.Row{Cells: []string{name, stepRange(block), fmt.Sprint(block.People), minutes(block.End - block.Begin), begin, end}})
	}
	table := place.Table{Columns: []place.Column{
		{Head: "Job", Lettering: paper.Strong}, {Head: "Steps"}, {Head: "People", Align: paper.AtRight, Lettering: paper.CellSmall},
		{Head: "Takes", Align: paper.AtRight}, {Head: "From", Align: paper.AtRight, Lettering: paper.CellSmall}, {Head: "Until", Align: paper.AtRight, Lettering: paper.CellSmall}}}
	day := "The day"
	if d := b.spec.Crew.Date; !d.IsZero() {
		day = d.Format("Monday 2 January 2006")
	}
	f.heading(fmt.Sprintf("%s, with %s and the organiser", day, say.Count(b.spec.Crew.Helpers, "helper")), 30)
	f.table(table, rows)
}

// stepRange is a block's first and last step numbers.
func stepRange(block crew.Block) string {
	first, last := block.Steps[0].Number, block.Steps[len(block.Steps)-1].Number
	if first == last {
		return fmt.Sprint(first)
	}
	return fmt.Sprintf("%d–%d", first, last)
}

// minutes prints a time to take, to five minutes from half an hour on.
func minutes(m float64) string {
	switch whole := int(math.Round(m)); {
	case whole < 1:
		return "at once"
	case whole < 30:
		return fmt.Sprintf("%d min", whole)
	case whole < 58:
		return fmt.Sprintf("%d min", (whole+2)/5*5)
	default:
		whole = (whole + 2) / 5 * 5
		return fmt.Sprintf("%d h %02d", whole/60, whole%60)
	}
}

// stepBlock sets one crew's job: its head, what to bring, its steps.
func (b *binder) stepBlock(f *flow, block crew.Block, title string, bring bool) {
	f.gap(jobGap)
	times := fmt.Sprintf("%s, %s", people(block.People), minutes(block.End-block.Begin))
	if block.Phase != crew.Marking {
		if from := b.plan.Crew.At(block.Begin); from != "" {
			times += ", from " + from
		}
	}
	sheet := stepSheet{flow: f, title: title}
	first := sheet.least(block.Steps[0], sheet.strips(block.Steps[0]))
	tools := ""
	if bring {
		tools = b.tools(block.Phase)
	}
	toolLines := 0
	if tools != "" {
		tools = "Bring: " + tools
		toolLines = len(paper.Body.Wrap(tools, f.room.W))
	}
	f.need(blockHead + 1.5 + paper.Length(toolLines)*paper.Body.Leading() + stepGap + min(first, f.freshHeight()/2))
	sheet.blockHead(title, times)
	f.gap(1.5)
	if tools != "" {
		f.text(tools, paper.Body)
	}
	f.gap(stepGap)
	for _, step := range block.Steps {
		sheet.set(step)
	}
}

// people prints how many do it.
func people(n int) string {
	if n == 1 {
		return "1 person"
	}
	return fmt.Sprintf("%d people", n)
}

// stopAndAsk says when nobody goes on without asking.
func (b *binder) stopAndAsk(f *flow) {
	box := framed{"Stop and ask", "A hold point that does not come out. A stake that will not go down or moves. A crack or a white line in a pipe. Gusts of " +
		b.insideWords() + ", thunder, ice. An outlet that fails its test, a plug that is warm. A line in the ground or overhead that nobody has told you of."}
	box.draw(f.page, f.take(box.height(f.room.W)))
}
