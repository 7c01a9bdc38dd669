package chance

// Flat lists what [ThreePoint.At] reads: likely, h, m, m², h²−m² and the sign of the
// skew, in the letters of the formula there. It serves to write a table for another
// program.
func Flat(t ThreePoint) [6]float64 {
	return [6]float64{t.likely, t.h, t.m, t.m2, t.k, t.sign}
}
