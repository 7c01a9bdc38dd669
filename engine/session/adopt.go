package session

import (
	"slices"
	"strconv"
	"strings"

	"underpaint/engine/car"
	"underpaint/engine/rates"
	"underpaint/engine/strict"
)

// Chosen returns the figures named in use from what the jobs teach and, if publish is
// set, how the ranges came out. Both are nil when nothing is asked for. r are the rates
// in use, from whose doubt the jobs teach another.
func (p *PastJobs) Chosen(use []string, publish bool, r *rates.Rates, today string) (*rates.Own, *rates.Past, error) {
	if len(use) == 0 && !publish {
		return nil, nil, nil
	}
	if p.Jobs == nil || p.of != p.Jobs || len(p.again) < len(p.of.Jobs) {
		return nil, nil, &strict.Error{Path: "jobs", Found: "jobs that are not scored", Expected: "past jobs to be scored first"}
	}
	v, err := p.Scores(r, today)
	if err != nil {
		return nil, nil, err
	}
	own, err := only(v.Offered, use)
	if err != nil {
		return nil, nil, err
	}
	if !publish {
		return own, nil, nil
	}
	past := v.Summary.Past(p.of.CheckCode())
	if past == nil {
		found := strconv.Itoa(v.Summary.Scored) + " jobs"
		if v.Summary.Scored == 1 {
			found = "1 job"
		}
		return nil, nil, &strict.Error{Path: "record", Found: found, Expected: "at least 10 scored jobs, because fewer say too little"}
	}
	return own, past, nil
}

// only keeps the figures named in use. A name that is not offered is an error.
func only(all *rates.Own, use []string) (*rates.Own, error) {
	if len(use) == 0 {
		return nil, nil
	}
	own := rates.NothingLearnt()
	own.LearntOn, own.JobsCode = all.LearntOn, all.JobsCode
	for _, id := range use {
		kind, what, _ := strings.Cut(id, ".")
		trade := slices.Index(car.TradeIDs[:], what)
		group := slices.IndexFunc(all.Rust, func(r rates.OwnRust) bool { return r.Group == what })
		switch {
		case kind == "rust" && group >= 0:
			own.Rust = append(own.Rust, all.Rust[group])
		case kind == "hours" && trade >= 0 && all.Hours[trade].Jobs > 0:
			own.Hours[trade] = all.Hours[trade]
		case id == "spread" && all.Spread.Jobs > 0:
			own.Spread = all.Spread
		case id == "doubt" && all.Doubt != nil:
			own.Doubt = all.Doubt
		default:
			return nil, &strict.Error{Path: "use", Found: id, Expected: "one of the figures offered"}
		}
	}
	return own, nil
}
