// Package examples holds the example specs and the starter, embedded so that the command can build a packet on a machine with nothing
// else. Every place, person and figure in them is invented.
package examples

import "embed"

// BuiltIn names the spec that `hoopwright packet` builds when it is given none.
const BuiltIn = "garden.yaml"

// Files holds the specs by file name.
//
//go:embed *.yaml
var Files embed.FS

// Starter is a commented spec to begin from; as it stands it builds a packet.
//
//go:embed starter.yaml
var Starter []byte
