// The parts of laying one line of cord: its calls, tools, states and moves. liner.go lays it.

package power

import (
	"cmp"

	"hoopwright/layout/catalog"
	"hoopwright/layout/measure"
)

// mark is what one way to lay cords costs, in the order of the aims.
type mark struct {
	over   int32 // ways passed
	pieces int32 // cords and three-ways
	low    int32 // joints and open sockets low down
	cents  int64 // of what has a price, assumed where the spec has none
}

func (a mark) better(b mark) bool {
	return cmp.Or(cmp.Compare(a.over, b.over), cmp.Compare(a.pieces, b.pieces), cmp.Compare(a.low, b.low), cmp.Compare(a.cents, b.cents)) < 0
}

func (a mark) plus(b mark) mark {
	return mark{a.over + b.over, a.pieces + b.pieces, a.low + b.low, a.cents + b.cents}
}

func (a mark) minus(b mark) mark {
	return mark{a.over - b.over, a.pieces - b.pieces, a.low - b.low, a.cents - b.cents}
}

// call is a foot in the order that a line of cord comes to it, with what is to be plugged in there.
type call struct {
	gap   measure.Length // of the way from the call before, the first from the outlet
	over  int            // ways passed on it
	wants int            // sockets
	up    bool           // its one want hangs high, and a plain cord that ends the line leads right up to it
}

// tools are what a line of cord is made of: cords of one kind, cords with several sockets of that kind, and three-ways.
type tools struct {
	cordKind
	fans  int   // sockets of a three-way; 0 for none
	tap   int64 // what one costs
	price func(measure.Length) int64
	past  int32 // what a way passed counts for, see site
}

// deed is a step in laying a line.
type deed struct {
	cords  []measure.Length // plain cords laid to the call, if any
	inline *catalog.Inline  // or a cord with several sockets laid to it, if any
	skip   int              // sockets of that cord that lie free before the one that comes to it
	next   int              // or so many sockets along that cord the next that is used
	serves int              // wants served here
	tap    bool             // by a three-way
	leaf   []measure.Length // of that three-way, a cord to the next call, which it serves; the line passes on
	spare  int              // sockets of the cord that stay free after this one
	call   int              // where
}

// ahead is a call, or with no wants the outlet, and all that comes after it: what is best from there on hangs on nothing before, so that lines share it.
type ahead struct {
	next  *place // nil after the last
	gap   uint64 // bits of the length to the next: places are looked up very often, and plain words are found fastest
	over  int32  // ways passed to the next
	wants int16
	up    int16 // 1 for a call that is led up to
}

// place is what is known of what lies ahead.
type place struct {
	ahead
	gap   measure.Length // to the next
	plain plainLaid      // over it
	known []found        // by wants and kind of socket; at the outlet by kind
}

// on returns the place so many steps on.
func (p *place) on(step int8) *place {
	for ; step > 0; step-- {
		p = p.next
	}
	return p
}

// state is where the laying of a line stands: one free socket at a place.
type state struct {
	wants int16 // still to serve there
	kind  int16 // plain, tapped, or 2 and more: a cord with several sockets and how many are left on it
}

// The kinds of free socket.
const (
	plainSocket  = iota // of a cord's end
	tappedSocket        // of a three-way, which takes no other three-way
	passedSocket        // the same, with the next call served from that three-way
	inlineSocket        // the first of a cord with several sockets, see liner.base
)

// liner lays lines of one kind of cord past calls, each with the best mark: a dynamic program over what is left to serve and what socket is at hand.
type liner struct {
	tools  tools
	base   []int // of each cord with several sockets: the state kind with none left
	kinds  int
	places map[ahead]*place
	plain  map[measure.Length]plainLaid // by gap
}

// begun is a line laid from an outlet.
type begun struct {
	*liner
	from *place
	kind int16 // of the outlet's socket
}

// found is what is known of a state.
type found struct {
	mark mark
	move move
	done bool
}

// plainLaid is plain cords over a gap.
type plainLaid struct {
	lay  []measure.Length
	mark mark
}

// move is the best thing to do in a state: a deed in few bytes, for there are many states.
type move struct {
	to     state
	step   int8 // places that it goes on
	end    bool
	plain  bool // lays plain cords
	tap    bool
	leaf   bool
	inline int8 // 1 and more: lays that cord with several sockets
	skip   int16
	serves int16
	next   int16
	spare  int16
}

// none is the mark of what cannot be.
var none = mark{over: 1 << 20, pieces: 1 << 20}
