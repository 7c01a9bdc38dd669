package chance

import "math"

// gauss12 holds the positive abscissas and weights of 12-point Gauss-Legendre
// quadrature (M. Abramowitz and I. A. Stegun, Handbook of Mathematical
// Functions, Table 25.4; 1964). Negative abscissas mirror them.
var gauss12 = [6][2]float64{
	{0.125233408511468915472, 0.249147045813402785001},
	{0.367831498998180193753, 0.233492536538354808761},
	{0.587317954286617447297, 0.203167426723065921749},
	{0.769902674194304687037, 0.160078328543346226335},
	{0.904117256370474856678, 0.106939325995318430960},
	{0.981560634246719250691, 0.047175336386511827195},
}

// Moments returns the mean and the variance, by Gauss-Legendre quadrature over the
// normal deviate. The relative error of each is about 1e-12 for high/low up to 1000.
// Either is +Inf if a float64 cannot hold it.
func (t ThreePoint) Moments() (mean, variance float64) {
	if t.h == 0 {
		return t.likely, 0
	}
	// Panels of width 1, out to where even the integrand of the second moment, which
	// peaks near 2·slope, is negligible.
	slope := (t.h + math.Sqrt(t.k)) / z90
	end := math.Ceil(float64(2*slope)) + 9
	// The square root bends within |z| ≤ bend of the middle, so halve the panels down to
	// that width.
	bend := float64(z90 * t.m / math.Sqrt(t.k)) // +Inf if lognormal: no bend
	var first, second float64
	add := func(a, b float64) {
		d1, d2 := t.panel(a, b)
		first += d1
		second += d2
	}
	for z := 1.0; z < end; z++ {
		add(z, z+1)
	}
	edge := 1.0
	for t.m > 0 && edge > bend && edge > 0x1p-24 {
		next := float64(edge / 2)
		add(next, edge)
		edge = next
	}
	add(0, edge)
	if math.IsInf(second, 1) {
		return float64(t.likely * (1 + first)), second
	}
	return float64(t.likely * (1 + first)), float64(t.likely * t.likely * (second - float64(first*first)))
}

// panel integrates d and d², with d = Q/likely − 1, against the normal density
// over a ≤ |z| ≤ b.
func (t ThreePoint) panel(a, b float64) (first, second float64) {
	centre, half := float64((a+b)/2), float64((b-a)/2)
	for _, node := range gauss12 {
		for _, x := range [2]float64{node[0], -node[0]} {
			z := centre + float64(half*x)
			weight := float64(half * node[1] * oneOverRoot2Pi * Exp(float64(-0.5*z*z)))
			if weight == 0 {
				continue
			}
			s := z / z90
			up := t.At(s)/t.likely - 1
			down := t.At(-s)/t.likely - 1
			first += float64(weight * (up + down))
			second += float64(weight * (float64(up*up) + float64(down*down)))
		}
	}
	return first, second
}
