package main

import (
	"bytes"
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"

	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
	"hoopwright/packet"
)

// completionVerb writes what a shell needs to complete a call. It asks every verb for its own help, so it cannot fall behind.
func completionVerb(args []string, s streams) error {
	f := flags("completion", s)
	shell, err := parse(f, args)
	if err != nil {
		return err
	}
	options := map[string][]string{}
	for name, v := range verbs() {
		var help bytes.Buffer
		if name != "completion" {
			_ = v([]string{"--help"}, streams{s.in, &help, &help}) // help always ends with the error that it was help
		}
		options[name] = optionWord.FindAllString(help.String(), -1)
		slices.Sort(options[name])
		options[name] = slices.Compact(options[name])
	}
	switch shell {
	case "bash":
		fmt.Fprint(s.out, bashCompletion(options))
	case "zsh":
		fmt.Fprint(s.out, "autoload -U +X bashcompinit && bashcompinit\n"+bashCompletion(options))
	case "fish":
		fmt.Fprint(s.out, fishCompletion(options))
	default:
		return badCall("completion: name a shell, bash, zsh or fish%s", map[bool]string{true: fmt.Sprintf(", not %q", shell)}[shell != ""])
	}
	return nil
}

var optionWord = regexp.MustCompile(`--[a-z][a-z-]*`)

// optionValues are the words that some options take.
func optionValues() map[string][]string {
	return map[string][]string{"--sheets": packet.Words(), "--for": packet.Crews(), "--units": {"imperial", "metric"},
		"--paper": spec.Papers(), "--soil": {"firm", "soft", "sandy", "frozen"}, "--around": {"open", "suburban", "sheltered", "shore", "hilltop", "gap"}, "--gfci": {"yes", "no"}, "--buried": {"yes", "no"}}
}

// optionNames are the names of the catalog that some options take, blanks and all.
func optionNames() map[string][]string { return map[string][]string{"--pipe": spec.PipeNames()} }

func sections() (list []string) {
	for _, k := range spec.Keys(measure.Imperial) {
		if !strings.Contains(k.Path, ".") && !strings.HasSuffix(k.Path, "[]") {
			list = append(list, k.Path)
		}
	}
	return list
}

func bashCompletion(options map[string][]string) string {
	var b strings.Builder
	b.WriteString("_hoopwright() {\n  local cur=${COMP_WORDS[COMP_CWORD]} prev=${COMP_WORDS[COMP_CWORD-1]} words=\n  if [ \"$COMP_CWORD\" -eq 1 ]; then\n")
	fmt.Fprintf(&b, "    words='%s'\n  else\n    case $prev in\n", strings.Join(append(slices.Sorted(maps.Keys(options)), "help"), " "))
	for _, name := range slices.Sorted(maps.Keys(optionValues())) {
		fmt.Fprintf(&b, "      %s) words='%s' ;;\n", name, strings.Join(optionValues()[name], " "))
	}
	for _, name := range slices.Sorted(maps.Keys(optionNames())) {
		fmt.Fprintf(&b, "      %s) local IFS=$'\\n'; cur=${cur//\\\\/}; COMPREPLY=($(compgen -W '%s' -- \"$cur\")); COMPREPLY=(\"${COMPREPLY[@]// /\\\\ }\"); return ;;\n", name, strings.Join(optionNames()[name], "\n"))
	}
	fmt.Fprintf(&b, "      keys) words='%s' ;;\n      help) words='%s' ;;\n", strings.Join(sections(), " "), strings.Join(slices.Sorted(maps.Keys(options)), " "))
	b.WriteString("      completion) words='bash zsh fish' ;;\n      *) case $cur in -*) case ${COMP_WORDS[1]} in\n")
	for _, name := range slices.Sorted(maps.Keys(options)) {
		if len(options[name]) > 0 {
			fmt.Fprintf(&b, "        %s) words='%s' ;;\n", name, strings.Join(options[name], " "))
		}
	}
	b.WriteString("      esac ;; esac ;;\n    esac\n  fi\n  COMPREPLY=($(compgen -W \"$words\" -- \"$cur\"))\n}\ncomplete -o default -F _hoopwright hoopwright\n")
	return b.String()
}

func fishCompletion(options map[string][]string) string {
	var b strings.Builder
	for _, name := range slices.Sorted(maps.Keys(options)) {
		fmt.Fprintf(&b, "complete -c hoopwright -n __fish_use_subcommand -a %s\n", name)
		for _, option := range options[name] {
			fmt.Fprintf(&b, "complete -c hoopwright -n '__fish_seen_subcommand_from %s' -l %s", name, strings.TrimPrefix(option, "--"))
			if values := optionValues()[option]; values != nil {
				fmt.Fprintf(&b, " -x -a '%s'", strings.Join(values, " "))
			}
			if names := optionNames()[option]; names != nil {
				fmt.Fprintf(&b, " -x -a \"(printf '%%s\\n' '%s')\"", strings.Join(names, "' '"))
			}
			b.WriteString("\n")
		}
	}
	return b.String()
}
