package message

import (
	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/engine/estimate"
	"underpaint/engine/rates"
	"underpaint/engine/strict"
	"underpaint/engine/work"
)

// fitsCars is how many imagined cars each way of doing the job is held against.
const fitsCars = 2048

var scopeNames = map[string]car.Words{
	"whole_body":     {US: "whole body", UK: "whole body"},
	"outside_only":   {US: "outside only", UK: "outside only"},
	"metalwork_only": {US: "metalwork only", UK: "metalwork only"},
}

// fits says what a sum would cover: every standard and scope, on the same imagined
// cars, with the chance that it is enough.
func (s *Session) fits(id int64, f strict.Field) []byte {
	f.Keys("id", "ask", "sum")
	m, err := s.sumAsked(f)
	if err != nil {
		return refused(id, "sum", err)
	}
	if s.job == nil || len(s.job.runs) != 1 {
		return refused(id, "sum", &strict.Error{Path: "sum", Found: "no single range", Expected: "one body chosen first"})
	}
	lines, err := s.fitLines(int64(m))
	if err != nil {
		return refused(id, "sum", err)
	}
	w := strict.NewWriter()
	w.Object(func() {
		head(w, id, "fits")
		w.Member("sum_text", s.Rates.Currency.TextWhole(m))
		w.Texts("lines", lines)
		w.Member("note", "Chances on the same imagined cars. A smaller scope leaves rust where it is: outside only does not touch what lies behind, and metalwork only ends in primer.")
	})
	return w.Bytes()
}

func (s *Session) fitLines(sum int64) (lines []string, err error) {
	run := &s.job.runs[0]
	c := *s.job.car
	for _, scope := range rates.ScopeIDs {
		for _, standard := range car.Standards {
			c.Scope = scope
			t, err := s.table(&c, run.body, standard)
			if err != nil {
				return nil, err
			}
			within := 0
			estimate.Imagine(run.run.Model(), t, Seed, fitsCars, func(_ int, _ *damage.Car, b *work.Bill) {
				if int64(b.Total) <= sum {
					within++
				}
			})
			name := standardNames[standard] + ", " + scopeNames[scope].In(s.Rates.Words)
			lines = append(lines, name+": "+enoughIn(float64(within)/fitsCars)+".")
		}
	}
	return lines, nil
}

func enoughIn(share float64) string {
	switch {
	case share < 0.05:
		return "enough in fewer than 1 car of 20"
	case share > 0.95:
		return "enough in more than 19 cars of 20"
	}
	return "enough in about " + carsInTen(share)
}
