package pricing

import "underpaint/engine/car"

// Phase is one stage of a job. The job can stop at the end of each.
type Phase int

// The stages in working order. Each ends where a job can naturally stop (common practice,
// no published source).
const (
	PhaseStrip     Phase = iota // strip and survey, shell in primer
	PhaseStructure              // hidden and structural metal, with the access work
	PhaseOuter                  // outer metal
	PhasePaint                  // body and block, paint, materials
	PhaseAssembly               // assembly, work sent out, supplies
	Phases                      // number of stages
)

// PhaseOf returns the stage after the strip to which a line of work belongs. Labour and
// parts belong to the stage of their item, and access work to the structure.
func PhaseOf(b *car.Body, l Line) Phase {
	if l.Item < 0 || l.Trade == car.BodyWork || l.Trade == car.Paint {
		return phaseOfTrade(l.Trade)
	}
	return phaseOfPart(b.PartOf(l.Item))
}

// phaseOfTrade is the stage of work that belongs to no item, and of all paint.
func phaseOfTrade(trade car.Trade) Phase {
	switch trade {
	case car.BodyWork, car.Paint:
		return PhasePaint
	case car.Metal, car.Prep:
		return PhaseStructure
	}
	return PhaseAssembly
}

func phaseOfPart(p *car.Part) Phase {
	if p.Structural || p.Face != car.Outer {
		return PhaseStructure
	}
	return PhaseOuter
}
