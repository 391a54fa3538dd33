package packet

import (
	"fmt"
	"strings"

	"hoopwright/draw"
	"hoopwright/draw/block"
	"hoopwright/draw/paper"
	"hoopwright/draw/place"
	"hoopwright/layout/measure"
	"hoopwright/layout/power"
	"hoopwright/layout/say"
)

// reckoningAnnex is how current, volts, cuts and money were figured, for whoever asks.
func (b *binder) reckoningAnnex() []folio {
	var blocks []block.Block
	if len(b.plan.Power.Feeders) > 0 {
		blocks = append(blocks, block.Heading("Circuits, cords, volts"), block.Paragraph(b.fewest()), b.carried(),
			block.Paragraph("A run's amps are those through its first plug, all that hangs behind it counted; of its volts all of the cords' and strings' wire is taken off, both ways, with every string's lamps at its far end. "+b.copper()), b.runVolts())
	}
	if e := b.evenings(); e != "" {
		blocks = append(blocks, block.Heading("Energy"), block.Paragraph(e))
	}
	if len(b.plan.Cuts.Bars) > 0 {
		blocks = append(blocks, block.Heading("Cuts"), block.Paragraph(b.proof()))
	}
	blocks = append(blocks, costs(b.plan)...)
	if all := remarksOf(b.plan.Findings); len(all) > 0 {
		blocks = append(blocks, block.Heading("Findings, all in full"))
		for _, r := range all {
			blocks = append(blocks, r.block(true))
		}
	}
	if lines := cureLines(b.plan.Findings); len(lines) > 0 {
		blocks = append(blocks, block.Heading("Changes to the spec, to paste"), block.Paragraph(strings.Join(lines, "\n")))
	}
	if len(blocks) == 0 {
		return nil
	}
	return []folio{{front: side{title: "Reckoning", blocks: blocks}}}
}

// fewest says how few circuits and cords would do, what of it is proven, and why more are used.
func (b *binder) fewest() string {
	p := b.plan.Power
	used := map[string]bool{}
	for _, d := range p.Feeders {
		used[d.Circuit] = true
	}
	proof := func(proven bool) string {
		if proven {
			return "proven"
		}
		return "not proven"
	}
	words := fmt.Sprintf("Fewest circuits for the amps: %d, %s", p.Fewest, proof(p.FewestProven))
	if n := len(used); n > p.Fewest {
		words += fmt.Sprintf("; %d are used, so that fewer cords do, none passes a way or no last bulb loses more than it need", n)
	}
	words += fmt.Sprintf(". Cords and three-ways: %d", p.Pieces())
	if p.PiecesProven {
		words += ", and no fewer do from these outlets, proven"
	}
	return words + "."
}

// carried is what each circuit carries of what it may for hours.
func (b *binder) carried() block.Block {
	t := block.Table{Table: place.Table{Head: paper.SmallHead, Columns: []place.Column{tableColumn("Circuit", false), tableColumn("Breaker", true), tableColumn("Lights", true),
		tableColumn("Other load", true), tableColumn("In all, of "+measure.Percent(b.spec.Power.Continuous)+" of the breaker", true), {}}}}
	for _, c := range b.plan.Power.Circuits {
		l := power.Limit{Kind: power.BreakerAmps, Have: float64(c.Amps), Of: float64(c.Allowed)}
		t.Rows = append(t.Rows, place.Row{Cells: []string{c.Name, measure.Amps(c.Spec.Breaker), measure.Amps(c.Lights), measure.Amps(c.Spec.OtherLoad), draw.LimitWords(l)}})
	}
	return block.Block{Name: "circuits", Gap: 1, Body: t}
}

// runVolts lists the runs with their amps and the volts at their last bulbs.
func (b *binder) runVolts() block.Block {
	t := block.Table{Table: place.Table{Head: paper.SmallHead, Columns: []place.Column{tableColumn("Run", false), tableColumn("Strings", false), tableColumn("Watts", true), tableColumn("Amps", true),
		tableColumn("Last bulb", true), tableColumn("Lost", true), {}}}}
	for _, c := range b.plan.Power.Chains {
		if c.Feeder == "" {
			continue
		}
		t.Rows = append(t.Rows, place.Row{Cells: []string{c.Name, strings.Join(c.Strings, ", "), measure.Watts(c.Watts), measure.Amps(c.Amps), measure.Volts(c.EndVolts), measure.Percent(measure.Share(c.Drop))}})
	}
	return block.Block{Name: "runs of strings", Gap: 1, Body: t}
}

// evenings says what the season burns; nothing where the spec does not say how long.
func (b *binder) evenings() string {
	e := b.spec.Power.Evenings
	if e == nil || b.plan.Power.Watts == 0 {
		return ""
	}
	return fmt.Sprintf("%s for %g h on %s: %.0f kWh.", measure.Watts(b.plan.Power.Watts), e.Hours, say.Count(e.Nights, "night"), b.plan.Power.KWh)
}

// copper says what the volts are figured at, by the run that loses most.
func (b *binder) copper() string {
	var worst power.Chain
	for _, c := range b.plan.Power.Chains {
		if c.Feeder != "" && c.Drop > worst.Drop {
			worst = c
		}
	}
	if worst.Name == "" {
		return ""
	}
	return fmt.Sprintf("Cords are as warm as they get. Run %s loses most: %s, %.1f %%; with all copper at %s, %.1f %%.",
		worst.Name, measure.Volts(worst.EndVolts), 100*worst.Drop, b.spec.Units.Temperature(b.spec.Weather.Cold), 100*(1-float64(worst.ColdVolts/worst.Of)))
}
