// Command hoopwright turns a short written spec of a walk-through light tunnel into one printed build packet.
//
// Its verbs are packet, check, starter, sizes, keys, names, recover, completion and help; help.go says what each does, with examples. SPEC may be - for standard input,
// FILE - for standard output. What a verb makes goes to standard output or the file, every message to standard error.
package main

import (
	"os"
	"runtime/debug"
)

// heapGrowth is the share, in percent, that the heap may grow by before it is cleaned. A packet is made once and the program ends: cleaning as often as
// usual (100) takes a sixth of its time, never cleaning takes three times the memory and longer.
const heapGrowth = 400

func main() {
	debug.SetGCPercent(heapGrowth)
	os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}
