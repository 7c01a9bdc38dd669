package chance

// Hash is the n-th output, from 0, of the SplitMix64 generator with a seed (G. L. Steele,
// D. Lea and C. H. Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014).
// Any output can be had without those before it, so that each of many questions about one
// car has a random number of its own, whether or not the others are asked.
func Hash(seed, n uint64) uint64 {
	z := seed + uint64((n+1)*0x9E3779B97F4A7C15)
	z = uint64((z ^ z>>30) * 0xBF58476D1CE4E5B9)
	z = uint64((z ^ z>>27) * 0x94D049BB133111EB)
	return z ^ z>>31
}

// HashUniform is the same as a number strictly between 0 and 1.
func HashUniform(seed, n uint64) float64 { return openUniform(Hash(seed, n)) }
