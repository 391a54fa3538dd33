// Command hoopwright turns a short written spec of a walk-through light tunnel into one printed build packet.
//
//	hoopwright packet [SPEC] [-o FILE]   the packet as a PDF; without SPEC the built-in example
//	hoopwright check  [SPEC] [--json]    solve and report figures and findings; no PDF
//	hoopwright check  [SPEC] --against OLD   what changed from an older spec or packet
//	hoopwright recover PACKET [-o FILE]      the spec back out of a packet
//	hoopwright starter [FILE]            write a commented spec to begin from; never overwrites
//	hoopwright starter --form FILE.pdf   write a blank form to measure a yard with; never overwrites
//	hoopwright names  [WORDS]            catalog names and what stands behind them
//
// SPEC may be - for standard input, FILE - for standard output. Product output goes to standard output or the file, every
// message to standard error.
package main
