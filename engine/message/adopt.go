package message

import (
	"slices"
	"strings"

	"underpaint/engine/car"
	"underpaint/engine/rates"
	"underpaint/engine/record"
	"underpaint/engine/strict"
)

// adopt writes the figures that the shop has chosen to use into its rates, and how
// its ranges came out if it wants that published. Figures in use that are not
// named are taken out again; so undoing is adopting nothing.
func (e *Engine) adopt(id int64, f strict.Field) []byte {
	f.Keys("id", "ask", "rates", "use", "record", "today")
	text, today := []byte(f.Get("rates").Document(strict.MaxBytes)), f.Get("today").Date()
	var use []string
	for _, item := range f.Get("use").Items() {
		use = append(use, item.Text(60))
	}
	publish := f.Get("record").Bool()
	if f.Err() != nil {
		return refused(id, "request", f.Err())
	}
	own, past, err := e.chosen(use, publish, today)
	if err != nil {
		return refused(id, "jobs", err)
	}
	out, r, err := rates.Adopt(text, own, past)
	if err != nil {
		return refused(id, "rates", err)
	}
	w := strict.NewWriter()
	w.Object(func() {
		head(w, id, "adopted")
		w.Member("rates", string(out))
		w.Member("check_code", r.CheckCode())
	})
	return w.Bytes()
}

// chosen takes out of what the jobs teach the figures that are named.
func (e *Engine) chosen(use []string, publish bool, today string) (*rates.Own, *rates.Past, error) {
	if len(use) == 0 && !publish {
		return nil, nil, nil
	}
	s := e.scoring
	if e.jobs == nil || s == nil || s.of != e.jobs || len(s.scores) < len(s.of.Jobs) {
		return nil, nil, &strict.Error{Path: "jobs", Found: "jobs that are not scored", Expected: "past jobs to be scored first"}
	}
	taught, err := record.Learn(s.scores, record.EveryJob)
	if err != nil {
		return nil, nil, err
	}
	sum, err := s.of.Sum(s.scores)
	if err != nil {
		return nil, nil, err
	}
	own, err := only(taught.Own(today, s.of.CheckCode()), use)
	if err != nil {
		return nil, nil, err
	}
	if !publish {
		return own, nil, nil
	}
	past := sum.Past(s.of.CheckCode())
	if past == nil {
		return nil, nil, &strict.Error{Path: "record", Found: jobsText(sum.Scored), Expected: "at least 10 scored jobs: fewer are not published"}
	}
	return own, past, nil
}

// only keeps the figures named; a name that is not offered is an error.
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
		default:
			return nil, &strict.Error{Path: "use", Found: id, Expected: "a figure that is offered"}
		}
	}
	return own, nil
}
