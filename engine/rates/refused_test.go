package rates

import (
	"slices"
	"strings"
)

// refused are wrong values, each with what the error must say.
var refused = []struct {
	at       string
	value    any
	path     string // "" = at; "top" = the whole file
	expected string
	uk       bool
}{
	{at: "format", value: "underpaint rates 2", expected: "underpaint rates 1"},
	{at: "zzz", value: 1, path: "top", expected: "one of"},
	{at: "curency", value: "USD", path: "top", expected: `"currency"`},
	{at: "shop.name", value: "", expected: "1 to 80"},
	{at: "shop.name", value: strings.Repeat("é", 81), expected: "at most 80"},
	{at: "shop.town", value: "a\nb", expected: "one line"},
	{at: "shop.invented", value: "yes", expected: "true or false"},
	{at: "shop.contact.href", value: "javascript:alert(1)", expected: "begins with https://"},
	{at: "shop.contact.href", value: "https://a\"b", expected: "without blanks or quotes"},
	{at: "shop.contact.href", value: "tel:", expected: "begins with"},
	{at: "currency", value: "usd", expected: "three capital letters"},
	{at: "currency", value: "XXX", expected: "currency this tool knows"},
	{at: "words", value: "en", expected: `"us"`},
	{at: "units", value: "feet", expected: `"metric"`},
	{at: "country", value: "UK", expected: "ISO 3166"},
	{at: "country", value: "U", expected: "ISO 3166"},
	{at: "country", value: "D US", expected: "ISO 3166"},
	{at: "rates_of", value: "2026-02-29", expected: "date"},
	{at: "rates_of", value: "3 June 2026", expected: "date"},
	{at: "valid_until", value: "2026-06-02", expected: "not before rates_of, 2026-06-03"},

	{at: "labour.metal.rate", value: "-0.01", expected: "a price from 0 to 1000000"},
	{at: "labour.metal.rate", value: "1000000.01", expected: "a price from 0 to 1000000"},
	{at: "labour.metal.rate", value: "abc", expected: "a plain amount"},
	{at: "labour.metal.rate", value: raw("1e2"), expected: "a plain amount"},
	{at: "labour.metal.rate", value: "85.0000001", expected: "a plain amount"},
	{at: "labour.metal.rate", value: "$85", expected: "a plain amount"},
	{at: "labour.fit.pace", value: 0.29, expected: "0.3 to 3"},
	{at: "labour.fit.pace", value: 3.01, expected: "0.3 to 3"},
	{at: "labour.includes", value: []any{"supplies", "supplies"}, path: "labour.includes[1]", expected: "only once"},
	{at: "labour.includes", value: []any{"tea"}, path: "labour.includes[0]", expected: `"booth"`},
	{at: "labour.least_charge_hours", value: 41, expected: "0 to 40"},
	{at: "labour.glass", value: map[string]any{}, path: "labour", expected: "one of"},

	{at: "materials[1].id", value: "stripper", expected: "a different id"},
	{at: "materials[1].id", value: "Blast Media", expected: "a word"},
	{at: "materials[1].id", value: "", expected: "a word"},
	{at: "materials[1].unit", value: "gallon", expected: `"litre"`},
	{at: "materials[7].unit", value: "kilogram", expected: "film of paint"},
	{at: "materials[1].price", value: "-1", expected: "a price"},
	{at: "materials[1].how", value: map[string]any{}, expected: "exactly one"},
	{at: "materials[1].how.per_car", value: map[string]any{"quantity": 1}, path: "materials[1].how", expected: "exactly one"},
	{at: "materials[1].how.per_m2.quantity", value: 0, expected: "0.0001 to 10000"},
	{at: "materials[0].how.per_car.quantity", value: 10001, expected: "0.0001 to 10000"},
	{at: "materials[7].how.film.coats", value: 0, expected: "0.5 to 12"},
	{at: "materials[7].how.film.dry_um", value: 2001, expected: "1 to 2000"},
	{at: "materials[7].how.film.volume_solids", value: 45, expected: "0.02 to 1"},
	{at: "materials[7].how.film.volume_solids", value: 0, expected: "0.02 to 1"},
	{at: "materials[7].how.film.transfer", value: 65, expected: "0.1 to 1"},
	{at: "materials[7].how.film.base_share", value: 0, expected: "0.05 to 1"},
	{at: "materials[7].how.film.base_share", value: 1.5, expected: "0.05 to 1"},
	{at: "materials[7].area", value: "replaced", expected: "no part is replaced before the survey"},
	{at: "materials[7].area", value: "none", expected: "an area with any other"},
	{at: "materials[0].area", value: "outer", expected: `"none" with a quantity for the car`},
	{at: "materials[7].stage", value: "before", expected: `"strip"`},
	{at: "materials[7].standards", value: []any{}, expected: "at least 1"},
	{at: "materials[7].standards", value: []any{"show"}, expected: "all three"},
	{at: "materials[22].standards", value: []any{"gold"}, path: "materials[22].standards[0]", expected: `"driver"`},
	{at: "materials[7].factor", value: map[string]any{"driver": 1}, expected: "no factor for the strip stage"},
	{at: "materials[22].factor.driver", value: 1, expected: "only standards that use"},
	{at: "materials[22].factor.concours", value: 0, expected: "0.05 to 20"},
	{at: "materials[22].factor.gold", value: 1, path: "materials[22].factor", expected: `"driver"`},
	{at: "materials[22].scopes", value: []any{}, expected: "at least 1"},
	{at: "materials[1].source", value: "", expected: "1 to 300"},
	{at: "materials[1].name.uk", value: "", expected: "1 to 120"},
	{at: "consumables.money_per_metal_hour", value: []any{0, 1, 2}, path: "consumables.money_per_metal_hour[0]", expected: "0.01"},
	{at: "consumables.money_per_metal_hour", value: []any{1, 2}, expected: "3 numbers"},
	{at: "consumables.money_per_metal_hour", value: []any{3, 2, 4}, expected: "none below the one before"},

	{at: "parts.price_factor", value: "0", expected: "a factor from 0.01"},
	{at: "parts.handling_percent", value: "100.5", expected: "a percentage from 0 to 100"},
	{at: "parts.handling_percent", value: -1, expected: "a percentage from 0 to 100"},
	{at: "parts.prices[0].body", value: "van", expected: `"pickup"`},
	{at: "parts.prices[0].part", value: "flux_box", expected: "the id of a part"},
	{at: "parts.prices[0].body", value: "pickup", path: "parts.prices[0].part", expected: "the id of a part"},
	{at: "parts.prices[0].way", value: "treat", expected: `"section"`},
	{at: "parts.prices[0].part", value: "door_lower", path: "parts.prices[0].way", expected: "a way in which this part is repaired"},
	{at: "parts.prices[0].price", value: []any{500, 400, 900}, expected: "none below"},
	{at: "parts.prices[0].price", value: []any{500, 600, 550}, expected: "none below"},
	{at: "parts.prices[0].price", value: []any{0, 600, 700}, path: "parts.prices[0].price[0]", expected: "0.01"},
	{at: "parts.prices[0].price", value: []any{500, 600.1234567, 700}, path: "parts.prices[0].price[1]", expected: "a plain amount"},
	{at: "parts.prices[0].price", value: raw(`[5e2, 600, 700]`), path: "parts.prices[0].price[0]", expected: "a plain amount"},
	{at: "parts.prices[0].price", value: []any{"500", 600, 700}, path: "parts.prices[0].price[0]", expected: "a number"},
	{at: "parts.prices[0].had", value: "by_hand", path: "parts.prices[0].price", expected: "null, because a part made by hand"},
	{at: "parts.prices[0].had", value: "section_only", path: "parts.prices[0].price", expected: "only a repair section"},
	{at: "parts.prices[0].had", value: "shelf", expected: `"made_today"`},
	{at: "parts.prices[2].had", value: nil, path: "parts.prices[2]", expected: "or both"},
	{at: "parts.prices[3]", value: raw(`{"part":"fender_upper","way":"full","price":null,"had":"found"}`), expected: "one entry for a part"},
	{at: "parts.prices[3]", value: raw(`{"part":"fender_upper","way":"section","price":null,"had":"specialist"}`), path: "parts.prices[3].had", expected: `"found"`},

	{at: "what_is_done", value: 1, expected: "group"},
	{at: "what_is_done", value: map[string]any{}, path: "what_is_done.driver", expected: "this entry"},

	{at: "strip_and_survey.charged[0].step", value: "tea", expected: `"check_in"`},
	{at: "strip_and_survey.charged[1].step", value: "check_in", expected: "only once"},
	{at: "strip_and_survey.charged", value: []any{}, expected: "missing: check_in, make_safe"},
	{at: "strip_and_survey.charged[0].how", value: "hourly", expected: `"by_the_hour"`},
	{at: "strip_and_survey.charged[0].no_more_than", value: 3, expected: "by the hour"},
	{at: "strip_and_survey.charged[5].no_more_than", value: 0, expected: "0.1 to 1000"},
	{at: "strip_and_survey.price", value: "-1", expected: "an amount from 0"},
	{at: "strip_and_survey.price", value: "11400.005", expected: "at most 2 decimals"},
	{at: "strip_and_survey.to_stop", value: "1000000001", expected: "an amount from 0"},
	{at: "strip_and_survey.includes", value: "", expected: "1 to 2000"},

	{at: "prices_over_time.labour_percent_a_year", value: []any{0, 1, 2}, path: "prices_over_time.labour_percent_a_year[0]", expected: "write 0.1"},
	{at: "prices_over_time.parts_percent_a_year", value: []any{-1, 1, 2}, path: "prices_over_time.parts_percent_a_year[0]", expected: "more than 0"},
	{at: "prices_over_time.parts_percent_a_year", value: []any{1, 2, 51}, path: "prices_over_time.parts_percent_a_year[2]", expected: "-100 to 50"},
	{at: "prices_over_time.materials_percent_a_year", value: []any{3, 2, 4}, expected: "none below"},
	{at: "prices_over_time.materials_percent_a_year", value: []any{3, 4}, expected: "3 numbers"},
	{at: "prices_over_time.promise.how", value: "held", expected: `"not_held"`},
	{at: "prices_over_time.promise.months", value: 61, expected: "1 to 60"},
	{at: "prices_over_time.promise.months", value: raw("1.5"), expected: "whole number"},
	{at: "prices_over_time.promise.on", value: []any{}, expected: "at least 1"},
	{at: "prices_over_time.promise.on", value: []any{"parts"}, path: "prices_over_time.promise.on[0]", expected: `"materials"`},
	{at: "prices_over_time.promise.on", value: []any{"labour", "labour"}, path: "prices_over_time.promise.on[1]", expected: "only once"},
	{at: "prices_over_time.promise.until", value: "2026-12-31", expected: `except with "held_until"`},
	{at: "prices_over_time.promise.from", value: "today", expected: `"strip_begins"`},
	{at: "prices_over_time.promise", value: raw(`{"how":"held_until","until":"2026-06-02","on":["labour"]}`), path: "prices_over_time.promise.until", expected: "not before rates_of, 2026-06-03"},
	{at: "prices_over_time.promise", value: raw(`{"how":"held_until","on":["labour"]}`), path: "prices_over_time.promise.until", expected: "this entry"},
	{at: "prices_over_time.promise", value: raw(`{"how":"held_for_the_whole_job"}`), path: "prices_over_time.promise.on", expected: "this entry"},
	{at: "prices_over_time.promise", value: raw(`{"how":"held_for_the_whole_job","months":3,"on":["labour"]}`), path: "prices_over_time.promise.months", expected: `except with "held_months"`},
	{at: "prices_over_time.promise", value: raw(`{"how":"not_held","on":["labour"]}`), path: "prices_over_time.promise.on", expected: "no price is held"},
	{at: "prices_over_time.promise", value: raw(`{"how":"not_held","from":"strip_begins"}`), path: "prices_over_time.promise.from", expected: `except with "held_months"`},

	{at: "sent_out.handling_percent", value: "101", expected: "a percentage"},
	{at: "sent_out.work[1].id", value: "waste_disposal", expected: "a different id"},
	{at: "sent_out.work[0].price", value: []any{300, 220, 450}, expected: "none below"},
	{at: "sent_out.work[0].price", value: []any{1, 2, 1000000000.5}, path: "sent_out.work[0].price[2]", expected: "1000000000"},
	{at: "sent_out.work[0].standards", value: []any{"show"}, expected: "all three"},
	{at: "sent_out.work[0].scopes", value: []any{}, expected: "at least 1"},
	{at: "sent_out.work[0].scopes", value: []any{"everything"}, path: "sent_out.work[0].scopes[0]", expected: `"whole_body"`},
	{at: "sent_out.work[0].stage", value: "later", expected: `"after"`},

	{at: "supplies.how", value: "both", expected: `"in_the_rate"`},
	{at: "supplies.percent", value: "3", expected: "in the rate"},
	{at: "supplies.no_more_than", value: "3", expected: "in the rate"},
	{at: "supplies.percent", value: "100.01", expected: "a percentage", uk: true},
	{at: "supplies.no_more_than", value: "1.001", expected: "at most 2 decimals", uk: true},

	{at: "tax.percent", value: "101", expected: "a percentage"},
	{at: "tax.on.labour", value: "maybe", expected: `"not_sure"`},
	{at: "tax.on.labor", value: "yes", path: "tax.on", expected: `"labour"`},
	{at: "tax.published", value: "gross", expected: `"with_tax"`},
	{at: "time.hours_a_week", value: []any{25, 20, 30}, expected: "none below"},
	{at: "time.hours_a_week", value: []any{0.5, 20, 30}, path: "time.hours_a_week[0]", expected: "1 to 400"},
	{at: "time.weeks_until_start", value: 521, expected: "0 to 520"},
	{at: "time.waits_weeks", value: []any{0, 1, 2}, path: "time.waits_weeks[0]", expected: "0.1"},
	{at: "allowance.before_percent", value: "100.1", expected: "a percentage"},
	{at: "allowance.after_percent", value: "x", expected: "a plain amount"},
	{at: "terms[0]", value: "", expected: "1 to 2000"},
	{at: "terms[0]", value: strings.Repeat("x", 2001), expected: "at most 2000"},
	{at: "terms", value: slices.Repeat([]any{"x"}, 41), expected: "at most 40"},
	{at: "own_figures", value: map[string]any{}, path: "own_figures.learnt_on", expected: "this entry"},
	{at: "own_figures", value: ownFigures("rust", []any{map[string]any{"group": "engine", "factor": 1.1, "jobs": 4}}), path: "own_figures.rust[0].group", expected: `"floor"`},
	{at: "own_figures", value: ownFigures("rust", []any{learnt("floor", 1.1), learnt("floor", 1.2)}), path: "own_figures.rust[1].group", expected: "each group once"},
	{at: "own_figures", value: ownFigures("rust", []any{learnt("floor", 2.6)}), path: "own_figures.rust[0].factor", expected: "0.4 to 2.5"},
	{at: "own_figures", value: ownFigures("hours", map[string]any{"metal": map[string]any{"factor": 1.1, "jobs": 0}}), path: "own_figures.hours.metal.jobs", expected: "1 to 100000"},
	{at: "own_figures", value: ownFigures("hours", map[string]any{"glass": map[string]any{"factor": 1.1, "jobs": 1}}), path: "own_figures.hours", expected: "metal"},
	{at: "record", value: pastOf(2, 6, 1), expected: "at least 10 jobs; fewer say too little"},
}

// ownFigures returns learned figures with one member changed.
func ownFigures(member string, value any) map[string]any {
	own := map[string]any{"learnt_on": "2026-06-01", "jobs_code": "0123a bc4d5", "rust": []any{learnt("floor", 1.2)},
		"hours": map[string]any{"metal": map[string]any{"factor": 1.1, "jobs": 12}}, "spread": map[string]any{"factor": 0.9, "jobs": 12}}
	own[member] = value
	return own
}

func learnt(group string, factor float64) map[string]any {
	return map[string]any{"group": group, "factor": factor, "jobs": 12}
}

func pastOf(below, inside, above int) map[string]any {
	return map[string]any{"below": below, "inside": inside, "above": above, "from": "2024-02-01", "to": "2026-05-30", "jobs_code": "0123a bc4d5"}
}
