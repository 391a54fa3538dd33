// Package stock lists what the tunnel is made of, cuts it from what stores sell and the shed holds, and writes the
// shopping list. Make does all of it; lengths are mm, on the grid of the saw, money in the spec's currency.
package stock

import (
	"slices"

	"hoopwright/layout/finding"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/practice"
)

// Piece is one length of pipe or bar with its place in the tunnel. On a bar it carries where its cut comes.
type Piece struct {
	ID     PieceID        `json:"name"`
	Length measure.Length `json:"mm"` // on the cutting grid, never short

	Item   string         `json:"-"` // material, a catalog name
	Mark   measure.Length `json:"-"` // running saw mark from the bar's left end, kerf in; the bar's length for a piece that needs no cut
	Joined bool           `json:"-"` // of several sticks, their couplings cemented
}

// Bar is one stock length with its cuts.
type Bar struct {
	Item   string         `json:"item"`
	Stock  measure.Length `json:"stock_mm"`
	Owned  bool           `json:"owned"`
	Pieces []Piece        `json:"pieces"`
	Offcut measure.Length `json:"offcut_mm"`

	Wrapped bool `json:"-"` // in a leg that comes out of the shed wrapped: not even a name is written on it
}

// entry returns the first of a list that is the same, or one more at its end.
func entry[T any](list *[]T, one T, same func(T) bool) *T {
	k := slices.IndexFunc(*list, same)
	if k < 0 {
		k = len(*list)
		*list = append(*list, one)
	}
	return &(*list)[k]
}

// Cuts is the whole cut plan. Cost and Bound are in the spec's currency, or in millimetres of stock where no prices are given.
type Cuts struct {
	Cost   float64 `json:"cost"`
	Bound  float64 `json:"bound"`
	Proven bool    `json:"proven"`
	Bars   []Bar   `json:"bars"`

	ByLength  bool    `json:"-"` // cost is length of stock, for want of prices
	OneLength bool    `json:"-"` // every material is sold in one length only, so that least cost is fewest bars
	Least     float64 `json:"-"` // cost of the cheapest bar sold
}

// Item is one line of the shopping list.
type Item struct {
	Item  string  `json:"item"`
	Need  int     `json:"need"`
	Own   int     `json:"own"`
	Buy   int     `json:"buy"`
	Price float64 `json:"price"` // of one, in the spec's currency; zero where nothing is known

	Kind     Kind             `json:"-"`
	Spare    int              `json:"-"` // of Need: over what the plan uses
	Wrapped  int              `json:"-"` // of Own: on legs that come out of the shed wrapped, and no loose ones
	Unit     Unit             `json:"-"`
	Of       string           `json:"-"`             // material of what goes by its length, a stick, bar, ready stake or cord; pipe that a fitting is for
	Length   measure.Length   `json:"-"`             // of one of it
	Lengths  []measure.Length `json:"-"`             // of cord covers, each
	Ropes    []Rope           `json:"-"`             // what guy line or webbing is cut into
	Rows     BoardRows        `json:"-"`             // what each row of sole boards is made of
	StandIns []StandIn        `json:"-"`             // longer ones of the shed that serve, counted in Own
	Where    string           `json:"-"`             // pipe, steel, lights, electrical, sundries
	Sockets  int              `json:"-"`             // of a cord with several in line, else 0
	Amps     measure.Current  `json:"-"`             // that a timer carries, at least
	Plugs    int              `json:"-"`             // that a timer has sockets for, at least
	Priced   bool             `json:"-"`             // Price is known or assumed
	Assumed  bool             `json:"price_assumed"` // by us, for want of one in the spec
}

// LongestRope is the longest that is cut of line and webbing.
func (l List) LongestRope() (long measure.Length) {
	for _, i := range l.Shopping {
		for _, r := range i.Ropes {
			long = max(long, r.Length)
		}
	}
	return long
}

// Screws counts the wood screws of boards' joints and of the sockets on them.
func (l List) Screws() (n int) {
	for _, i := range l.Shopping {
		switch i.Kind {
		case PlateScrew:
			n += i.Need
		case BarSocket:
			n += practice.SocketScrews * i.Need
		}
	}
	return n
}

// List is what the tunnel is made of and what to buy.
type List struct {
	Pieces   []Piece
	Cuts     Cuts
	Kept     []Piece              // as they go to the shed
	Wrapped  Wrapped              // the legs that the shed can hold wrapped, whether the spec says so or not
	Keep     []Lot                // for the shed once all is cut
	Cemented map[lights.Part]bool // legs that come out of the shed with their couplings cemented
	Shopping []Item
	Total    float64 // of what is bought
	Assumed  float64 // of that, at prices assumed
	Findings []finding.Finding
}
