package packet

import (
	"fmt"
	"strings"

	"hoopwright/draw/paper"
	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/power"
)

// limitWords says what a limit is of, and what there is of it.
func limitWords(l power.Limit) string {
	of := func(name string, print func(float64) string) string {
		return fmt.Sprintf("%s %s of %s", name, print(l.Have), print(l.Of))
	}
	amps := func(v float64) string { return measure.Amps(measure.Current(v)) }
	watts := func(v float64) string { return measure.Watts(measure.Power(v)) }
	count := func(v float64) string { return fmt.Sprint(int(v)) }
	switch l.Kind {
	case power.LabelCount:
		return of("strings by the label", count)
	case power.LabelWatts:
		return of("plug of a run", watts)
	case power.SupplyWatts:
		return of("supply", watts)
	case power.Together:
		return of("strings behind one plug", count)
	case power.CordAmps:
		return of("cord", amps)
	case power.BreakerAmps:
		return of("breaker, for hours", amps)
	case power.TimerAmps:
		return of("timer", amps)
	case power.VoltsLost:
		return of("volts lost", func(v float64) string { return measure.Percent(measure.Share(v)) })
	}
	return ""
}

// linkWords lists the chain of limits at an outlet behind its breaker, which has a bar of its own, with what each carries and may.
func linkWords(links []power.Limit) string {
	var words []string
	for _, l := range links[min(1, len(links)):] {
		words = append(words, limitWords(l))
	}
	return strings.Join(words, " · ")
}

// fewest says how few circuits and cords would do, what of it is proven, and why more are used.
func (b *binder) fewest() string {
	p := b.plan.Power
	used := map[string]bool{}
	for _, d := range p.Feeders {
		used[d.Circuit] = true
	}
	proof := "proven"
	if !p.FewestProven {
		proof = "not proven"
	}
	words := fmt.Sprintf("Fewest circuits for the amps: %d, %s", p.Fewest, proof)
	if n := len(used); n > p.Fewest {
		words += fmt.Sprintf("; %d are used so that no cord passes a way and no last bulb loses more than it need", n)
	}
	words += fmt.Sprintf(". Cords and three-ways: %d", p.Pieces())
	if p.PiecesProven {
		words += ", and no fewer do from these outlets, proven"
	}
	return words + "."
}

// evenings says what the season burns; nothing where the spec does not say how long.
func (b *binder) evenings() string {
	e := b.spec.Power.Evenings
	if e == nil {
		return ""
	}
	words := fmt.Sprintf("%s for %g h on %d nights: %.0f kWh", measure.Watts(b.plan.Power.Watts), e.Hours, e.Nights, b.plan.Power.KWh)
	if b.plan.Power.Cost > 0 {
		words += strings.TrimRight(fmt.Sprintf(", %.2f %s", b.plan.Power.Cost, b.spec.Currency), " ")
	}
	return words + ". "
}

// copper says what the volts are figured at, by the chain that loses most.
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
	return fmt.Sprintf("Volts are for cords as warm as they get. Chain %s loses most: %s, %.1f %%, with its copper warm, %.1f %% at %s.",
		worst.Name, measure.Volts(worst.EndVolts), 100*worst.Drop, 100*(1-float64(worst.ColdVolts/worst.Of)), b.spec.Units.Temperature(b.spec.Weather.Cold))
}

// figuredHeight is room enough for what figured says.
const figuredHeight paper.Length = 40

// figured tells what the organiser asks: how few would do, what it burns, at what the volts are figured.
func (f *flow) figured() {
	f.heading("How this was figured", 16)
	f.text(f.b.fewest()+" "+f.b.evenings()+f.b.copper(), paper.Body)
}

// powerNotes prints the notes on what this crew deals with: leaks that trip, and supplies.
func (f *flow) powerNotes() {
	for _, x := range f.b.plan.Findings {
		if x.Level == finding.Note && (x.Code == "rcd-standing-leakage" || x.Code == "supply-input") {
			f.text(x.Text, paper.Body)
		}
	}
}
