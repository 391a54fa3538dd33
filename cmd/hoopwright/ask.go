package main

import (
	"bufio"
	"cmp"
	"fmt"
	"os"
	"strings"

	"hoopwright/layout/finding"
	"hoopwright/layout/measure"
	"hoopwright/layout/say"
	"hoopwright/layout/wish"
)

// asking makes a spec from answers, given as options or asked for.
type asking struct {
	units measure.System
	given map[string]string // by the questions' names
	name  string            // of the spec to write; empty for the usual one, - for standard output
	quiet bool
}

func (a asking) make(ask bool, s streams) error {
	target := cmp.Or(a.name, ownSpec)
	if _, err := os.Stat(target); err == nil && target != "-" {
		return isThere(target, ownSpec)
	}
	lines := bufio.NewScanner(s.in)
	if ask {
		fmt.Fprintf(s.err, "Each question has an answer in brackets: press Enter to take it. ? is as good as %s.\n", wish.DontKnow)
		if err := a.askAll(lines, s); err != nil {
			return err
		}
	}
	made, err := wish.Make(a.units, a.given)
	if err != nil {
		return badCall("starter: --%v", err)
	}
	if err := begin(a.name, made.Source, true, s); err != nil {
		return err
	}
	if !a.quiet {
		a.sayMade(target, made, s)
	}
	if ask && target != "-" && yesTo(lines, "Make the packet now?", s) {
		return packetVerb([]string{target}, s)
	}
	return verdict(made.Plan)
}

// askAll asks each question that no option has answered, again until its answer can be read. At the end of the input the rest take their defaults.
func (a asking) askAll(lines *bufio.Scanner, s streams) error {
	for i, q := range wish.Questions(a.units) {
		if _, ok := a.given[q.Name]; ok {
			continue
		}
		fmt.Fprintf(s.err, "\n%d. %s\n   %s\n", i+1, q.Ask, q.Why)
		for {
			fmt.Fprintf(s.err, "   [%s] ", q.Default)
			if !lines.Scan() {
				fmt.Fprintln(s.err)
				return lines.Err()
			}
			text := lines.Text()
			err := wish.Check(a.units, a.given, q.Name, text)
			if err == nil {
				a.given[q.Name] = text
				break
			}
			fmt.Fprintf(s.err, "   %v\n", err)
		}
	}
	return nil
}

func (a asking) sayMade(target string, made wish.Made, s streams) {
	p, u := made.Plan, a.units
	if target != "-" {
		fmt.Fprintf(s.err, "wrote %s\n", target)
	}
	k := p.Kinds[0]
	fmt.Fprintf(s.err, "%s of %s, %s wide and %s high.", say.Count(len(p.Arches), "arch"), p.Spec.Arch.Pipe.Name, u.Room(k.Span), u.Room(k.Crown))
	if made.Chosen != "" {
		fmt.Fprintf(s.err, " The pipe was chosen: it stands with the least to look at.")
	}
	fmt.Fprintln(s.err)
	for _, f := range p.Findings {
		if f.Level == finding.LookAt || f.Level == finding.MustFix {
			fmt.Fprintf(s.err, "%s: %s\n", f.Level, f.Text)
		}
	}
	if target != "-" {
		fmt.Fprintf(s.err, "next: hoopwright packet %s\n", target)
	}
}

// yesTo asks whether something is wanted; no answer is a no.
func yesTo(lines *bufio.Scanner, question string, s streams) bool {
	fmt.Fprintf(s.err, "\n%s yes or no [no] ", question)
	if !lines.Scan() {
		fmt.Fprintln(s.err)
		return false
	}
	return strings.HasPrefix(strings.ToLower(strings.TrimSpace(lines.Text())), "y")
}
