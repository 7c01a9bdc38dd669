package damage

import "sort"

// Source is what a uniform of [Model.Draw] decides.
type Source struct {
	What  What
	Group int // of the body, for OfGroup
}

// What a uniform decides.
type What int

// What uniforms decide, in the order in which they are drawn first.
const (
	OfRoot   What = iota // history, car factor, state of the repairs
	OfGroup              // where in a pocket group rust is worse, down to single items
	OfRepair             // traces of earlier work on an item, cracked lead joints
)

// sharedSources are those of the shared factors, which Draw takes first.
func (m *Model) sharedSources() (out []Source) {
	out = append(out, Source{What: OfRoot})
	groups := m.given[0].nested.Groups // each conditioning takes the same uniforms
	for g := range groups {
		out = append(out, Source{OfGroup, g})
		for _, p := range groups[g].Pockets {
			out = append(out, Source{OfGroup, g})
			if p.Inner > 0 {
				out = append(out, Source{OfGroup, g})
			}
		}
	}
	return out
}

// Sources lists what the uniforms of Draw decide, in their order.
func (m *Model) Sources() []Source {
	out := m.sharedSources()
	for g := range m.Body.Groups {
		for _, pocket := range m.Body.Groups[g].Pockets {
			for range m.Body.Pockets[pocket].Items {
				out = append(out, Source{OfGroup, g}, Source{OfGroup, g}, Source{What: OfRepair}, Source{What: OfRepair}, Source{What: OfRepair})
			}
		}
	}
	for i := range m.Body.Items {
		for range m.Body.PartOf(i).LeadJoints {
			out = append(out, Source{What: OfRepair})
		}
	}
	return out
}

// RootUniform converts three uniforms, for the history, for the car factor given the
// history, and for the earlier repairs given both, to the one that makes Draw pick the
// same root state.
func (m *Model) RootUniform(history, luck, repairs float64) float64 {
	p, states := m.root, m.states()
	perLevel := len(m.carTerm[open]) * states
	at := pickBlock(p, perLevel, history)
	at += pickBlock(p[at:at+perLevel], states, luck)
	at += pickBlock(p[at:at+states], 1, repairs)
	before := 0.0
	for _, v := range p[:at] {
		before += v
	}
	return middle(before, p[at])
}

// pickState is the state of the row of weighRoot that a uniform picks: the first whose
// running sum is above it.
func (m *Model) pickState(u float64) int {
	return min(len(m.upTo)-1, sort.Search(len(m.upTo), func(n int) bool { return u < m.upTo[n] }))
}

// middle is the middle of the uniforms that pick a root state with the given chance, where
// before is the total chance of the states before it.
func middle(before, chance float64) float64 { return min(1-0x1p-53, before+float64(chance/2)) }

// pickBlock picks a block of a list by the sums of its blocks and returns its first index.
func pickBlock(p []float64, size int, u float64) int {
	sum := 0.0
	for _, v := range p {
		sum += v
	}
	u *= sum
	last := 0
	for at := 0; at < len(p); at += size {
		block := 0.0
		for _, v := range p[at : at+size] {
			block += v
		}
		if block == 0 {
			continue
		}
		if last = at; u < block {
			break
		}
		u -= block
	}
	return last
}
