// Command hoopwright turns a short written spec of a walk-through light tunnel into one printed build packet.
//
// Its verbs are listed in help.go, each with what it does and examples. SPEC may be - for standard input, FILE - for standard output. Product output goes to standard output
// or the file, every message to standard error.
package main
