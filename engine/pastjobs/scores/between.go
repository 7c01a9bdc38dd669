package scores

import "math"

// Pooled is a mean of figures that each have a variance of their own.
type Pooled struct {
	Mean, SE float64
	// Extra is the variance by which the figures differ beyond their own.
	Extra float64
}

// Pool returns the random-effects mean of figures with known variances and the
// moment estimate of the variance between them (R. DerSimonian and N. Laird,
// "Meta-analysis in clinical trials", Controlled Clinical Trials 7, 1986):
// max(0, (Q − (n−1)) / (Σw − Σw²/Σw)), w = 1/variance. It is chosen over
// restricted maximum likelihood because it needs no iteration, so it cannot fail
// to converge and gives the same bits everywhere. One figure has no Extra.
func Pool(figure, variance []float64) Pooled {
	if len(figure) == 0 || len(figure) != len(variance) {
		panic("engine: internal error: pooled mean without figures")
	}
	mean, weight := weightedMean(figure, variance, 0)
	q, squares := 0.0, 0.0
	for i, y := range figure {
		q += float64((y-mean)*(y-mean)) / variance[i]
		squares += 1 / float64(variance[i]*variance[i])
	}
	p := Pooled{Mean: mean, SE: 1 / math.Sqrt(weight)}
	if len(figure) < 2 {
		return p
	}
	extra := (q - float64(len(figure)-1)) / (weight - squares/weight)
	if extra > 0 {
		p.Extra = extra
		p.Mean, weight = weightedMean(figure, variance, extra)
		p.SE = 1 / math.Sqrt(weight)
	}
	return p
}

// weightedMean weights figures by 1/(variance + extra) and also returns the sum of the
// weights.
func weightedMean(figure, variance []float64, extra float64) (mean, weight float64) {
	for i, y := range figure {
		w := 1 / (variance[i] + extra)
		weight += w
		mean += float64(w * y)
	}
	return mean / weight, weight
}
