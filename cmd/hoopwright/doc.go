// Command hoopwright turns a short written spec of a walk-through light tunnel into one printed build packet.
//
// Its verbs are packet, check, starter, sizes, keys, names, recover, completion and help; help.go says what each does, with examples. SPEC may be - for standard input,
// FILE - for standard output. What a verb makes goes to standard output or the file, every message to standard error.
package main
