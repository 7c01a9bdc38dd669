package network

// batches is working space for several root states at once.
type batches struct {
	v     []extFloat
	level []float64 // the levels of the first state, then those of the next
	plain []bool    // by state: every value stayed within the plain bounds
}

func newBatches(width, states int) batches {
	return batches{v: make([]extFloat, states), level: make([]float64, states*width), plain: make([]bool, states)}
}

// messages sums weight × likelihoods over the levels of the pocket and multiplies the
// sum into v, for each root state from r on whose v is not already zero. It returns the
// index of the first leaf whose likelihoods are unusable, or -1.
func (pocket *pocketPosterior) messages(r, p int, v []extFloat, b *batches, s *scratch) (leaf int) {
	width := len(pocket.prior)
	level := b.level[:len(v)*width]
	pocket.plainBatch(r, p, level, b.plain[:len(v)])
	for n := range v {
		switch {
		case v[n].zero():
		case b.plain[n]:
			total := 0.0
			for _, w := range level[n*width : (n+1)*width] {
				total += w
			}
			v[n] = v[n].times(toExt(total))
		default:
			sum, leaf := pocket.careful(r+n, p, s)
			if leaf >= 0 {
				return leaf
			}
			v[n] = v[n].times(sum)
		}
	}
	return -1
}

// plainBatch is plain for several root states. plain[n] is false where it gave up.
func (pocket *pocketPosterior) plainBatch(r, p int, dst []float64, plain []bool) {
	width := len(pocket.prior)
	for n := range plain {
		copy(dst[n*width:], pocket.prior)
		plain[n] = true
	}
	for k, leaf := range pocket.leaves {
		if one := pocket.batchLeaves[k]; one != nil {
			one.MultiplyBatch(r, len(plain), p, dst)
		} else {
			for n := range plain {
				leaf.Multiply(r+n, p, dst[n*width:(n+1)*width])
			}
		}
		left := false
		for n := range plain {
			plain[n] = plain[n] && within(dst[n*width:(n+1)*width])
			left = left || plain[n]
		}
		if !left {
			return
		}
	}
}

// within reports whether every value is between the plain bounds.
func within(values []float64) bool {
	for _, v := range values {
		if !(v >= plainLow && v <= plainHigh) {
			return false
		}
	}
	return true
}
