package main

import (
	"errors"
	"fmt"
	"io"
	"maps"
	"runtime/debug"
	"slices"

	"github.com/spf13/pflag"

	"hoopwright/layout/catalog"
)

// Exit codes. They are part of the interface and do not change.
const (
	exitDone     = 0 // done
	exitMustFix  = 1 // done, with findings that must be fixed before building
	exitBadCall  = 2 // the spec or the call is wrong
	exitNoOutput = 3 // it could not be written
)

const usage = `hoopwright turns a written spec of a walk-through light tunnel into a printed build packet.

  hoopwright packet                       the packet of the built-in example, garden.pdf
  hoopwright packet myyard.yaml -o my.pdf the packet of your own spec

Usage:
  hoopwright packet [SPEC …] [-o FILE] [--sheets LIST] [--for CREWS] [--paper SIZE] [--units SYSTEM] [--date DAY]
  hoopwright check [SPEC] [--json | --shopping csv] [--units SYSTEM] [--against OLD]
  hoopwright recover PACKET [-o FILE]
  hoopwright starter [FILE] | --form FILE.pdf
  hoopwright sizes [SPEC] [--pipe NAME] [--sticks LENGTHS] [--span RANGE] [--stake BAR] [--arches N] [--spacing LENGTH] [--units SYSTEM] [--csv]
  hoopwright names [WORDS]
  hoopwright completion bash | zsh | fish
  hoopwright VERB --help | --version

SPEC is a file (a packet too, for the spec in it), - for standard input, or left out for the built-in example.
Exit: 0 done, 1 done with "must fix" findings, 2 the spec or the call is wrong, 3 it could not be written.
`

// streams are the three standard streams of one call.
type streams struct {
	in       io.Reader
	out, err io.Writer
}

// verb is one thing the command does.
type verb func(args []string, s streams) error

// verbs are the things the command does, by their words.
func verbs() map[string]verb {
	return map[string]verb{"packet": packetVerb, "check": checkVerb, "starter": starterVerb, "sizes": sizesVerb, "names": namesVerb,
		"recover": recoverVerb, "completion": completionVerb}
}

// exitError carries an exit code with its message. An empty message prints nothing.
type exitError struct {
	code int
	msg  string
}

func (e exitError) Error() string { return e.msg }

// badCall reports a wrong call.
func badCall(format string, args ...any) error {
	return exitError{exitBadCall, "hoopwright: " + fmt.Sprintf(format, args...)}
}

// run is the whole command: arguments and streams in, exit code out.
func run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	err := dispatch(args, streams{stdin, stdout, stderr})
	if err == nil {
		return exitDone
	}
	var e exitError
	if !errors.As(err, &e) {
		e = exitError{exitNoOutput, "hoopwright: " + err.Error()}
	}
	if e.msg != "" {
		fmt.Fprintln(stderr, e.msg)
	}
	return e.code
}

func dispatch(args []string, s streams) error {
	if len(args) == 0 {
		return exitError{exitBadCall, usage}
	}
	switch args[0] {
	case "-h", "--help", "help":
		fmt.Fprint(s.out, usage)
		return nil
	case "--version":
		fmt.Fprint(s.out, version())
		return nil
	}
	v, ok := verbs()[args[0]]
	if !ok {
		hint := ""
		if near := catalog.Nearest(args[0], slices.Sorted(maps.Keys(verbs()))); near != "" {
			hint = fmt.Sprintf("did you mean %s? ", near)
		}
		return badCall("no verb %q; %stry hoopwright --help", args[0], hint)
	}
	err := v(args[1:], s)
	if errors.Is(err, pflag.ErrHelp) {
		return nil
	}
	return err
}

// version names the program, and on a second line what built it.
func version() string {
	text := "hoopwright (spec format 1)\n"
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return text
	}
	text += info.GoVersion
	for _, kv := range info.Settings {
		if kv.Key == "vcs.revision" {
			text += " " + kv.Value
		}
	}
	return text + "\n"
}

// flags starts a verb's flag set. Help goes to standard output; everything else is ours to say.
func flags(name, synopsis string, s streams) *pflag.FlagSet {
	f := pflag.NewFlagSet(name, pflag.ContinueOnError)
	f.SortFlags = false
	f.SetOutput(s.out)
	f.Usage = func() {
		fmt.Fprintf(s.out, "Usage: hoopwright %s\n\n%s", synopsis, f.FlagUsages())
	}
	return f
}

// parseFlags reads a verb's arguments.
func parseFlags(f *pflag.FlagSet, args []string) error {
	err := f.Parse(args)
	if err != nil && !errors.Is(err, pflag.ErrHelp) {
		return badCall("%s: %v. Try hoopwright %s --help", f.Name(), err, f.Name())
	}
	return err
}

// parse reads a verb's arguments and allows at most one operand.
func parse(f *pflag.FlagSet, args []string) (operand string, err error) {
	if err := parseFlags(f, args); err != nil {
		return "", err
	}
	if f.NArg() > 1 {
		return "", badCall("%s takes one file, not %d: %v", f.Name(), f.NArg(), f.Args())
	}
	return f.Arg(0), nil
}
