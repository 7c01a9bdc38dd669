package wording

import (
	"underpaint/engine/pastjobs"
	"underpaint/engine/rates"
	"underpaint/engine/session"
)

// Untested says that no finished jobs have checked the shop's figures, and how much wider
// the range is because of that. It is empty once the shop publishes how its jobs came
// out or uses what they taught about the doubt, and where it doubts nothing.
func (t *Text) Untested(r *session.Range) string {
	if t.rates.Past != nil || t.rates.Own.Doubt != nil || r.Wider < 1.03 {
		return ""
	}
	return t.say("This shop has", "This workshop has") + " not checked its figures against finished jobs yet. The range is " + wider(r.Wider) + " wider because of that."
}

// wider says a ratio of two widths in words.
func wider(ratio float64) string {
	for _, one := range []struct {
		below float64
		text  string
	}{{1.075, "about a twentieth"}, {1.14, "about a tenth"}, {1.225, "about a fifth"}, {1.29, "about a quarter"}, {1.42, "about a third"}, {1.75, "about half as much"}} {
		if ratio < one.below {
			return one.text
		}
	}
	return "much"
}

// recordJudged follows the record of finished jobs where it disagrees with what the
// ranges promise.
func recordJudged(p *rates.Past) string {
	if pastjobs.RangesWereNarrow(p) {
		return " That is fewer inside than we say."
	}
	return ""
}
