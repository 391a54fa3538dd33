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
	"hoopwright/layout/spec"
)

// Exit codes. They are part of the interface and do not change.
const (
	exitDone     = 0 // done
	exitMustFix  = 1 // done, with findings that must be fixed before building
	exitBadCall  = 2 // the spec or the call is wrong
	exitNoOutput = 3 // it could not be written
)

// schema is the version of the JSON that the command prints.
const schema = 1

// streams are the three standard streams of one call.
type streams struct {
	in       io.Reader
	out, err io.Writer
}

type verb func(args []string, s streams) error

func verbs() map[string]verb {
	return map[string]verb{"packet": packetVerb, "check": checkVerb, "starter": starterVerb, "sizes": sizesVerb, "names": namesVerb, "keys": keysVerb,
		"recover": recoverVerb, "completion": completionVerb}
}

// exitError carries an exit code with its message, without the program's name. An empty message prints nothing.
type exitError struct {
	code int
	msg  string
	spec spec.Errors // what is wrong with a spec, in the place of a message
}

func (e exitError) Error() string {
	if len(e.spec) > 0 {
		return e.spec.Error()
	}
	return e.msg
}

func badCall(format string, args ...any) error {
	return exitError{code: exitBadCall, msg: fmt.Sprintf(format, args...)}
}

func cannotPut(format string, args ...any) error {
	return exitError{code: exitNoOutput, msg: fmt.Sprintf(format, args...)}
}

func badSpec(err error) error {
	var list spec.Errors
	if errors.As(err, &list) {
		return exitError{code: exitBadCall, spec: list}
	}
	return exitError{code: exitBadCall, msg: err.Error()}
}

// run is the whole command: arguments and streams in, exit code out.
func run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	err := guarded(func() error { return dispatch(args, streams{stdin, stdout, stderr}) })
	if err == nil {
		return exitDone
	}
	e := asExit(err)
	e.say(stderr, "")
	return e.code
}

// say prints the message, after whom it concerns; what is wrong with a spec names its file itself.
func (e exitError) say(w io.Writer, whom string) {
	switch {
	case len(e.spec) > 0:
		fmt.Fprintln(w, e)
	case e.msg != "":
		fmt.Fprintln(w, "hoopwright: "+whom+e.msg)
	}
}

func asExit(err error) exitError {
	var e exitError
	if !errors.As(err, &e) {
		e = exitError{code: exitNoOutput, msg: err.Error()}
	}
	return e
}

func dispatch(args []string, s streams) error {
	if len(args) == 0 {
		fmt.Fprint(s.err, usage)
		return exitError{code: exitBadCall}
	}
	word, rest := args[0], args[1:]
	switch word {
	case "help", "-h", "--help":
		if len(rest) == 0 {
			fmt.Fprint(s.out, usage)
			return nil
		}
		word, rest = rest[0], []string{"--help"}
	case "version", "--version":
		fmt.Fprint(s.out, version())
		return nil
	}
	v, ok := verbs()[word]
	if !ok {
		hint := ""
		if near := catalog.Nearest(word, append(slices.Sorted(maps.Keys(verbs())), "help", "--help", "--version")); near != "" {
			hint = fmt.Sprintf("did you mean %s? ", near)
		}
		return badCall("no verb %q; %stry hoopwright --help", word, hint)
	}
	err := v(rest, s)
	if errors.Is(err, pflag.ErrHelp) {
		return nil
	}
	return err
}

// version names the program, what it was built from and by what.
func version() string {
	text, commit, changed := "hoopwright", "", ""
	info, ok := debug.ReadBuildInfo()
	if ok {
		for _, kv := range info.Settings {
			switch {
			case kv.Key == "vcs.revision":
				commit = ", commit " + kv.Value
			case kv.Key == "vcs.modified" && kv.Value == "true":
				changed = " with changes"
			}
		}
		if info.Main.Version != "" {
			text += " " + info.Main.Version
		}
		text += commit + changed + "\n" + info.GoVersion + ", "
	} else {
		text += "\n"
	}
	return text + fmt.Sprintf("spec format 1, JSON schema %d\n", schema)
}
