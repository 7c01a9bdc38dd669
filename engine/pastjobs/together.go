package pastjobs

import (
	"crypto/sha256"

	"underpaint/engine/strict"
)

// Together combines several records into one, for example those of several years. Names
// must differ, and the currency must be the same.
func Together(all []*Jobs) (*Jobs, error) {
	if len(all) == 1 {
		return all[0], nil
	}
	out := &Jobs{}
	sum := sha256.New()
	names := map[string]bool{}
	for n, j := range all {
		if n == 0 {
			out.Currency = j.Currency
		}
		if j.Currency.Code != out.Currency.Code {
			return nil, &strict.Error{Path: "currency", Found: j.Currency.Code, Expected: out.Currency.Code + ", as in the first file"}
		}
		out.Invented = out.Invented || j.Invented
		for _, r := range j.Rates {
			if out.RatesOf(&Job{Rates: r.CheckCode()}) == nil {
				out.Rates = append(out.Rates, r)
			}
		}
		for _, job := range j.Jobs {
			if names[job.Name] {
				return nil, &strict.Error{Path: "jobs", Found: job.Name + " in two files", Expected: "each job in one file"}
			}
			names[job.Name] = true
			out.Jobs = append(out.Jobs, job)
		}
		sum.Write([]byte(j.code))
	}
	out.code = strict.CheckCode(sum)
	return out, nil
}
