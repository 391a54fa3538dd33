// Package arch turns the builder's arch (sticks, fittings, stakes, lights) into an elastic rod, has it solved, and says in
// the builder's terms how it stands.
package arch
