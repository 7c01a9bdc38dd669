package damage

import "underpaint/engine/network"

// groupSums is the joint message of those pockets of a group whose items all share the
// same part of the car and group factors. t is the same for all of them, so their logs are
// added at its points and read once for every state above.
type groupSums struct {
	b       *base
	pockets []*pocketSums
}

var _ network.Summed = (*groupSums)(nil)

// LogSums writes the logs of the products of the pockets' sums over their levels.
func (s *groupSums) LogSums(levels int, dst []float64) {
	perLevel := len(s.b.carTerm[open]) * levels
	for n := range s.b.alive {
		a := &s.b.alive[n]
		logs := make([]float64, a.points)
		for repair := range RepairStates {
			clear(logs)
			for _, pocket := range s.pockets {
				for t, v := range pocket.logSums(n, repair) {
					logs[t] += v
				}
			}
			for of, level := range a.levels {
				for k := range s.b.carTerm[open] {
					places := a.at[of*perLevel+k*levels : of*perLevel+(k+1)*levels]
					root := (level*len(s.b.carTerm[open])+k)*RepairStates + repair
					to := dst[root*levels : (root+1)*levels]
					for p := range places {
						to[p] = places[p].read(logs)
					}
				}
			}
		}
	}
}
