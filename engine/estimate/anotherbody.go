package estimate

// AnotherBody says what doing the job on another body would take, on the simulated cars.
// Money is in minor units; quantiles follow definition 7 of Hyndman and Fan (1996).
type AnotherBody struct {
	Offered bool       // the shop has a price for another body of this kind; the rest is 0 if not
	Taken   bool       // the totals of the run are those on another body where it is advised
	Had     float64    // share of cars for which one can be found
	Advised float64    // share for which the shop would then advise it
	Other   Quantiles  // everything to do with another body, its own metalwork included
	Crosses float64    // the price of metalwork and its parts from which the shop would advise it
	SE      OtherError // standard errors, from the spread over the randomisations
}

// OtherError holds standard errors: of both ends of Other in minor units, and of Advised.
type OtherError struct{ Low, High, Advised float64 }

// AnotherBody works it out for the k-th table from the cars so far. Other counts every
// car, whether one can be found or not: it is what one would have to pay.
func (r *Run) AnotherBody(k int) (out AnotherBody) {
	one := &r.rows[k]
	if out.Offered, out.Taken = one.table.OffersAnotherBody(), one.table.TakesAnotherBody(); !out.Offered || len(one.weighed) == 0 {
		return out
	}
	others := make([]int64, len(one.weighed))
	var advised [Randomisations]float64 // share, by randomisation
	n := float64(len(others))
	for i, w := range one.weighed {
		others[i] = int64(w.Other)
		if w.Had {
			out.Had++
		}
		if w.Advised {
			out.Advised++
			advised[i/r.replicates%Randomisations]++
		}
	}
	for j := range advised {
		advised[j] /= n / Randomisations
	}
	out.SE.Low, out.SE.High = endErrors(others, r.replicates)
	out.SE.Advised = standardError(advised[:])
	out.Had, out.Advised = out.Had/n, out.Advised/n
	out.Other = quantiles(others)
	out.Crosses = one.table.AdvisedTimes() * out.Other.Half
	return out
}
