package damage

import "math"

// toAUnit is the number of points of t per unit.
const toAUnit = 16

// around is the number of points read around a place.
const around = 8

// alive are levels of the history that differ only in their rates.
type alive struct {
	levels []int
	shift  []float64 // by level in levels: amount added to every depth of the first
	low    float64   // the first point of t
	points int
	at     []place // [index in levels][k][p] position of t among the points
}

// place is a position among points, with the weights of the points around it.
type place struct {
	first int
	w     [around]float64
}

// livesAlike groups the levels of the history that differ only in their rates.
func (b *base) livesAlike() (out []alive) {
	of := map[string]int{}
	for n := range b.Histories {
		life := b.Histories[n].Life()
		at, known := of[life]
		if !known {
			at, of[life] = len(out), len(out)
			out = append(out, alive{})
		}
		a := &out[at]
		a.levels = append(a.levels, n)
		a.shift = append(a.shift, b.mu[n][0][0]-b.mu[a.levels[0]][0][0])
	}
	for n := range out {
		out[n].layOut(b)
	}
	return out
}

// layOut chooses the points of t, with some beyond the last place on either side.
func (a *alive) layOut(b *base) {
	carTerm, groupTerm := b.carTerm[open], b.groupTerm[open]
	low, high := math.Inf(1), math.Inf(-1)
	for _, shift := range a.shift {
		low, high = min(low, shift), max(high, shift)
	}
	low += carTerm[0] + groupTerm[0]
	high += carTerm[len(carTerm)-1] + groupTerm[len(groupTerm)-1]
	a.low = float64(math.Floor(low*toAUnit)/toAUnit) - around/2.0/toAUnit
	a.points = int(math.Ceil((high-a.low)*toAUnit)) + around
	for _, shift := range a.shift {
		for _, k := range carTerm {
			for _, p := range groupTerm {
				a.at = append(a.at, a.place(shift+k+p))
			}
		}
	}
}

// place finds t among the points, with Lagrange's weights.
func (a *alive) place(t float64) (out place) {
	u := float64((t - a.low) * toAUnit)
	n := int(u)
	out.first = n - (around/2 - 1)
	x := u - float64(out.first)
	for i := range out.w {
		w := 1.0
		for j := range out.w {
			if j != i {
				w *= (x - float64(j)) / float64(i-j)
			}
		}
		out.w[i] = w
	}
	return out
}

// read reads a table of logs at a place.
func (p *place) read(logs []float64) (v float64) {
	for n, w := range p.w {
		v += float64(w * logs[p.first+n])
	}
	return v
}
