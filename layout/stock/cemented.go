package stock

import (
	"slices"

	"hoopwright/layout/finding"
	"hoopwright/layout/lights"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// cement makes one piece of the sticks of each leg that couplings join, and of each such arch bent over whole, where it is wanted in one.
func cement(in Input, all []Piece, wanted func(Piece) bool) (list []Piece) {
	for i := 0; i < len(all); {
		sticks := all[i : i+max(1, all[i].ID.Of)]
		if i += len(sticks); len(sticks) > 1 {
			if whole := joined(in, sticks); wanted(whole) {
				sticks = []Piece{whole}
			}
		}
		list = append(list, sticks...)
	}
	return list
}

// joined is some sticks of one leg with the couplings between them.
func joined(in Input, sticks []Piece) Piece {
	whole := sticks[0]
	var lengths []measure.Length
	for _, p := range sticks {
		lengths = append(lengths, p.Length)
	}
	whole.ID.Of, whole.Joined = 1, true
	whole.Length = measure.RoundUp(in.Spec.ArchOf(whole.ID.Part.Number).Pipe.Joined(lengths), in.Spec.Units.Grid())
	return whole
}

// fromLastYear makes one piece of the sticks of each leg that the shed holds cemented, and returns which those legs are.
func fromLastYear(in Input, all []Piece) ([]Piece, map[lights.Part]bool) {
	came := map[lights.Part]bool{}
	if in.Spec.Arch.Joints != spec.Glued {
		return all, came
	}
	s := shelf{bench{spec: in.Spec}, slices.Clone(in.Spec.Stock.Own)}
	list := cement(in, all, func(p Piece) bool {
		_, lacks, _ := s.take(woundLeg{pieces: []Piece{p}})
		if lacks == 0 {
			for _, leg := range legsOf(p.ID.Part) {
				came[leg] = true
			}
		}
		return lacks == 0
	})
	return list, came
}

// asKept are the pieces as they go to the shed: legs that were cemented do in one.
func asKept(in Input, all []Piece) []Piece {
	return cement(in, all, func(Piece) bool { return in.Spec.Arch.Joints == spec.Glued })
}

// uncemented is what may be sawn of what the shed holds: through a cemented leg that is over a coupling goes.
func uncemented(in Input, own []spec.Owned, kept []Piece) []spec.Owned {
	b := bench{spec: in.Spec}
	return slices.DeleteFunc(own, func(o spec.Owned) bool {
		return o.Length > 0 && slices.ContainsFunc(kept, func(p Piece) bool { return p.Joined && sameItem(o.Item, p.Item) && b.up(p.Length) == b.down(o.Length) })
	})
}

// legsOf are the legs of a part: both of an arch.
func legsOf(part lights.Part) []lights.Part {
	if part.IsLeg() {
		return []lights.Part{part}
	}
	return []lights.Part{lights.Leg(spec.Left, part.Number), lights.Leg(spec.Right, part.Number)}
}

// cementNote says so where joints are glued and there is nothing to cement.
func cementNote(in Input, kept []Piece) []finding.Finding {
	if in.Spec.Arch.Joints != spec.Glued || slices.ContainsFunc(kept, func(p Piece) bool { return p.Joined }) {
		return nil
	}
	return []finding.Finding{{Level: finding.Note, Code: "nothing-to-cement", Key: "arch.joints", Cure: []finding.Change{{Key: "arch.joints", Value: spec.Dry.String()}},
		Text: "Cement holds the couplings within legs, and here each leg is one stick: nothing is cemented. Crowns and ridge stay dry, so that arches come apart to be kept."}}
}
