package rates

import (
	"strings"
	"testing"
)

// TestWarnings: each slip gives one sentence, the right one. The samples themselves
// give none (TestSamples).
func TestWarnings(t *testing.T) {
	for _, c := range []struct {
		want    string
		changes []any
		uk      bool
	}{
		{"valid for more than two years", []any{"valid_until", "2028-06-04"}, false},
		{"run out on the day they begin", []any{"valid_until", "2026-06-03"}, false},
		{"An hour of paint has a price of 0", []any{"labour.paint.rate", "0"}, false},
		{"An hour of strip and prep has a price of 0", []any{"labour.prep.rate", "0"}, false},
		{"paint costs more than four times an hour of strip and prep", []any{"labour.paint.rate", "260.01"}, false},
		{"Consumables for an hour of metalwork: high is far above", []any{"consumables.money_per_metal_hour", []any{3, 4.5, 17}}, false},
		{"without methylene chloride has a price of 0", []any{"materials[0].price", "0"}, false},
		{"The price of quarter_skin (full): high is far above", []any{"parts.prices[0].price", []any{310, 520, 2181}}, false},
		{"by the hour without a ceiling", []any{"strip_and_survey.charged[5].no_more_than", missing}, false},
		{"Stopping after the survey has a price of 0", []any{"strip_and_survey.to_stop", "0"}, false},
		{"price of the strip and survey is set to 0", []any{"strip_and_survey.price", "0.00"}, false},
		{"lead-bearing waste: high is far above", []any{"sent_out.work[0].price", []any{120, 220, 1009}}, false},
		{"also a share of labour", []any{"labour.includes", []any{"supplies"}}, true},
		{"also a share of labor.", []any{"supplies", raw(`{"how":"share_of_labour","percent":3}`)}, false},
		{"does not name them", []any{"labour.includes", []any{}}, false},
		{"share of labour of 0 %", []any{"supplies.percent", "0"}, true},
		{"cap on supplies is 0", []any{"supplies.no_more_than", "0"}, true},
		{"Tax is not worked out", []any{"tax.on.parts", "not_sure"}, false},
		{"taxed, but at 0 %", []any{"tax.percent", "0"}, false},
		{"no kind of line is taxed", []any{"tax.on.materials", "no", "tax.on.parts", "no"}, false},
		{"some kinds of line are not taxed", []any{"tax.published", "with_tax"}, false},
		{"usually have to include tax", []any{"tax.published", "without_tax"}, true},
		{"Hours a week: high is far above", []any{"time.hours_a_week", []any{20, 25, 79}}, false},
		{"Weeks of waiting: high is far above", []any{"time.waits_weeks", []any{4, 8, 41}}, false},
		{"grows after the survey", []any{"allowance.after_percent", "7.01"}, false},
		{"more than 20 %", []any{"allowance.before_percent", "20.5"}, false},
		{"left or only treated although it has holes", []any{"what_is_done", ownWays(map[string]any{
			"driver/structural/pinholes": []any{0.1, 0, 0, 0, 0.9, 0}})}, false},
		{"left or only treated although it has holes", []any{"what_is_done", ownWays(map[string]any{
			"concours/structural_near_mounting/gone": []any{0, 0.1, 0, 0, 0.9, 0}})}, false},
	} {
		sample := Sample()
		if c.uk {
			sample = SampleUK()
		}
		got := decode(t, changed(t, sample, c.changes...)).Warnings("")
		if len(got) != 1 || !strings.Contains(got[0].Text, c.want) {
			t.Errorf("%v: want one warning with %q, got %q", c.changes, c.want, got)
		}
	}
}

// TestNoWarning: values just inside what the warnings allow.
func TestNoWarning(t *testing.T) {
	for _, changes := range [][]any{
		{"valid_until", "2028-06-03"},
		{"valid_until", "2026-06-04"},
		{"labour.paint.rate", "260.00"},
		{"consumables.money_per_metal_hour", nil},
		{"sent_out.work[0].price", []any{100, 200, 1000}}, // 5 = 2.5 × 2
		{"time.waits_weeks", missing},
		{"allowance.before_percent", "20"},
		{"tax.on", raw(`{"labour":"no","materials":"no","parts":"no","supplies":"no","sent_out":"no"}`), "tax.percent", "0"},
		{"what_is_done", ownWays(map[string]any{"show/outer/gone": []any{1, 0, 0, 0, 0, 0}, "show/structural/heavy_pitting": []any{0, 1, 0, 0, 0, 0}})},
	} {
		if got := decode(t, changed(t, Sample(), changes...)).Warnings(""); len(got) > 0 {
			t.Errorf("%v: %q", changes, got)
		}
	}
	withTax := []any{"tax.percent", "0"} // two slips, two sentences
	if got := decode(t, changed(t, SampleUK(), withTax...)).Warnings(""); len(got) != 2 || !strings.HasPrefix(got[1].Text, "Tax both ways") {
		t.Errorf("%v: %q", withTax, got)
	}
	none := raw("[]")
	if got := decode(t, changed(t, Sample(), "materials", none)).Warnings(""); len(got) != 2 {
		t.Errorf("no materials: %q", got)
	}
}
