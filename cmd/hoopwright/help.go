package main

import (
	"cmp"
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/pflag"

	"hoopwright/layout/catalog"
)

// helpWidth is how wide help is set: a terminal's usual 80 columns.
const helpWidth = 80

const usage = `hoopwright turns a written spec of a walk-through light tunnel into a printed
build packet.

  hoopwright starter --ask           a spec from a few questions
  hoopwright packet                  the packet of the built-in example
  hoopwright packet yard.yaml        the packet of your own spec, yard.pdf

  packet [SPEC …]      the packet as a PDF
  check [SPEC]         figures, money, findings; --json, --assumed, --against OLD
  starter [FILE]       a spec to begin from; --ask, --form FILE.pdf
  sizes [SPEC]         what given sticks make over a range of spans
  keys [SECTION]       every key of a spec: what it takes, default, example
  names [WORDS]        what the catalog knows, with its sources
  recover PACKET       the spec back out of a packet
  completion SHELL     what bash, zsh or fish needs to complete a call
  help [VERB]          more of one of them; --version tells what this is

SPEC is a file, a packet for the spec in it, - for standard input, or left out
for the built-in example. Exit: 0 done, 1 done with "must fix" findings, 2 the
spec or the call is wrong, 3 it could not be written. ` + "`go run`" + ` prints these
codes and itself always exits 1.
`

var manual = map[string]struct {
	synopsis, does string
	examples       []string
}{
	"packet": {"packet [SPEC …] [-o FILE]", "Makes the build packet of each spec: a PDF that a crew can hold outdoors. An existing PDF is replaced only when it is a packet of the same title and season.",
		[]string{"packet yard.yaml", "packet yard.yaml -o out/ --sheets stakes,stock", "packet yard.yaml --for marking --one-sided"}},
	"check": {"check [SPEC] [--assumed | --shopping csv | --against OLD]", "Solves a spec and reports figures and findings; writes no packet.",
		[]string{"check yard.yaml", "check yard.yaml --assumed", "check yard.yaml --against lastyear.pdf"}},
	"starter": {"starter [FILE] [--ask | --width W --height H --length L …]\n       hoopwright starter --form FILE.pdf", "Writes a spec to begin from, tunnel.yaml unless told: a commented one, or one made from your answers. FILE - is standard output. Never overwrites.",
		[]string{"starter --ask", "starter yard.yaml --width \"9 ft\" --height \"8 ft\" --length \"30 ft\"", "starter --form visit.pdf"}},
	"sizes": {"sizes [SPEC]", "Tells what given sticks make over a range of spans or heights, or what a shed makes, to choose before buying.",
		[]string{"sizes --pipe \"pvc sch40 3/4 in\" --span \"6 to 9 ft\"", "sizes --height 7-9", "sizes --have \"40 x 10 ft\"", "sizes yard.yaml --csv"}},
	"names": {"names [WORDS]", "Lists what the catalog knows, with its sources: pipes, bars, cords and strings that hold all the words, in any order.",
		[]string{"names pipe", "names warm leds 100", "names soil"}},
	"keys": {"keys [SECTION]", "Lists every key of a spec, or those of a section: what it takes, its default, an example.",
		[]string{"keys", "keys site.outlets", "keys stake"}},
	"recover": {"recover PACKET [-o FILE]", "Gets the spec back out of a packet, byte for byte. Never overwrites.",
		[]string{"recover garden.pdf", "recover garden.pdf --filled -o built.yaml"}},
	"completion": {"completion bash | zsh | fish", "Prints what a shell needs to complete a call.",
		[]string{"completion bash > ~/.hoopwright-completion"}},
}

// flags starts a verb's flag set. Help goes to standard output; everything else is ours to say.
func flags(name string, s streams) *pflag.FlagSet {
	f := pflag.NewFlagSet(name, pflag.ContinueOnError)
	f.SortFlags = false
	f.SetOutput(s.out)
	f.Usage = func() {
		p := manual[name]
		fmt.Fprintf(s.out, "Usage: hoopwright %s\n\n%s\n", p.synopsis, wrapped(p.does, ""))
		if f.HasFlags() {
			fmt.Fprintf(s.out, "\n%s", f.FlagUsagesWrapped(helpWidth))
		}
		fmt.Fprintln(s.out, "\nExamples:")
		for _, e := range p.examples {
			fmt.Fprintln(s.out, "  hoopwright "+e)
		}
	}
	return f
}

// wrapped breaks a text at blanks into lines of at most helpWidth characters, each after the first with the margin before it.
func wrapped(text, margin string) string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		if line != "" && len([]rune(line))+1+len([]rune(word)) > helpWidth {
			lines, line = append(lines, line), margin
		}
		if strings.TrimSpace(line) != "" {
			line += " "
		}
		line += word
	}
	return strings.Join(append(lines, line), "\n")
}

// parseFlags reads a verb's arguments. An option without its value is no option: the shell had none to give.
func parseFlags(f *pflag.FlagSet, args []string) error {
	err := f.Parse(args)
	var unknown *pflag.NotExistError
	switch {
	case errors.As(err, &unknown):
		var names []string
		f.VisitAll(func(o *pflag.Flag) { names = append(names, o.Name) })
		hint := ""
		if near := catalog.Nearest(unknown.GetSpecifiedName(), names); near != "" {
			hint = "; did you mean --" + near + "?"
		}
		return badCall("%s: %v%s Try hoopwright help %s", f.Name(), err, cmp.Or(hint, "."), f.Name())
	case err != nil && !errors.Is(err, pflag.ErrHelp):
		return badCall("%s: %v. Try hoopwright help %s", f.Name(), err, f.Name())
	case err == nil:
		f.Visit(func(o *pflag.Flag) {
			if text := o.Value.String(); strings.Trim(text, " []") == "" {
				what, _ := pflag.UnquoteUsage(o)
				err = badCall("%s: --%s is given without anything; give it its %s, or leave it out", f.Name(), o.Name, what)
			}
		})
	}
	return err
}

func parse(f *pflag.FlagSet, args []string) (operand string, err error) {
	if err := parseFlags(f, args); err != nil {
		return "", err
	}
	if f.NArg() > 1 {
		return "", badCall("%s takes one name, and here are %d: %s; a name with blanks in it stands in quotes", f.Name(), f.NArg(), strings.Join(f.Args(), ", "))
	}
	return f.Arg(0), nil
}
