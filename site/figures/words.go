package figures

import "strings"

type file struct{ path, id, title, about string }

// files in the order of the page: from where a car lived to what a shop charges.
var files = []file{
	{"exposure/data/climates.json", "climate", "Kinds of place", "How much of bare steel is lost in a year (in micrometres, thousandths of a millimetre) in each kind of place, and for how many years of a car's life."},
	{"exposure/data/kept.json", "kept", "How a car was kept", "The share of a year's weather that a car takes, on the road and put away."},
	{"exposure/data/eras.json", "eras", "When a car was made", "Thickness of sheet, life of paint and road salt by year, against those of about 1970."},
	{"exposure/data/history.json", "history", "What is not sure about a car's life", "Doubt about rates and years, and what an earlier restoration does to the years that count."},
	{"exposure/data/places.json", "places", "Places", "The kind of place taken for each state and country. Who knows better picks the kind."},
	{"damage/data/damage.json", "damage", "Hidden rust", "How depth becomes a condition, how much parts of one car share, and what earlier repairs hide."},
	{"evidence/data/looks.json", "looks", "Looks before the strip", "The chance of a yes by the true condition, soundest first."},
	{"evidence/data/reading.json", "reading", "What is written down in a survey", "How often a record of bare metal is right."},
	{"olddamage/data/olddamage.json", "old-damage", "Old accidents and earlier hands", "The chance of a hard hit and how it was mended, what earlier hands leave, and the hours that takes: low, likely, high. Rows of three are for no hit, one, two or more, or for a good, fair and poor hand."},
	{"pricing/data/work.json", "work", "Work", "What is done for which condition, and its hours: low, likely, high (1 job in 10 below, half, 1 in 10 above)."},
	{"pricing/data/parts.json", "parts", "Missing parts, and parts as they come", "How often a part is missing, what that costs, and how often a bought part does not fit or is a used one. Hours and weeks are low, likely, high."},
	{"car/data/common.json", "common", "What all bodies share", ""},
	{"car/data/two_door_unitary.json", "two-door", "Two-door in one shell", bodyAbout},
	{"car/data/hardtop_on_frame.json", "hardtop", "Two-door hardtop on a frame or chassis", bodyAbout},
	{"car/data/four_door_saloon.json", "four-door", "Four-door in one shell", bodyAbout},
	{"car/data/convertible_unitary.json", "convertible", "Convertible in one shell", bodyAbout},
	{"car/data/open_two_seater.json", "two-seater", "Open two-seater on a frame or chassis", bodyAbout},
	{"car/data/pickup.json", "pickup", "Pickup", bodyAbout},
	{"rates/data/doubt.json", "doubt-of-figures", "What the figures may have wrong", "How far the price of all work after the strip may be off because the figures themselves are: as a standard deviation of its logarithm, by stage. Growth comes on top: it is the shop's own figure."},
	{"rates/data/another_body.json", "another-body", "Another body", "What it takes to do the job on another body instead of mending this one: low, likely, high. Its price and the chance of finding one are the shop's own; without them no body is offered."},
	{"wording/data/words.json", "cautions", "Cautions and wording", "What is said wherever work can hurt someone, and what that rests on."},
	{"rates/data/sample.json", "sample", "The sample rates in dollars", "Of an invented shop. A shop that puts this page on its site has its own."},
	{"rates/data/sample_uk.json", "sample-uk", "The sample rates in pounds", "Of an invented shop, in other words and units."},
}

const bodyAbout = "The sources come first, each with what it covers; then the parts. Hours and prices are low / likely / high."

// labels are what members of the data files are called on the page, where their own
// name with spaces would not do.
var labels = map[string]string{
	"air_um": "loss in the air, micrometres in the first year", "splash_um": "loss in the road's spray, micrometres in the first year",
	"paint_life_factor": "life of paint, times", "share": "share", "splash": "in the road's spray",
	"if_not_sure": "share when not sure", "road_years_times": "years on the road, times", "rates_times": "rates, times",
	"doubt": "Doubt about a place", "least_years": "Fewest years of rusting", "youngest_years": "Youngest car, years",
	"shore_not_sure": "How near the sea, when not sure", "place_not_sure": "The place, when not sure", "road_years_not_sure": "Years on the road, when not sure",
	"made_in_decade": "The year, when only the decade is known", "made_not_sure": "The year, when nothing is known",
	"loss_below": "Depth at which a condition ends", "first_step_on_hidden": "first step on a hidden face",
	"shares": "What the parts of one car share", "sigma": "spread of the depth (log)", "own": "the part's own", "group": "parts that share their water", "customer_can": "a customer can do it", "susp_mount": "suspension mount", "brace_datum": "brace and datum points",
	"earlier_repairs": "Earlier repairs", "elsewhere_times": "elsewhere, times", "answer_about_earlier_work": "The answer about earlier work",
	"failed_lead_joint": "A leaded joint that has failed", "weights": "Whose look it is", "further": "each further look", "sellers_word": "the seller's word",
	"yes_by_condition": "chance of a yes by condition", "yes_by_finding": "chance of a yes by what is hidden", "seen": "seen bare", "closed_box_from_outside": "a closed box, from outside",
	"finding_right": "what was found, right", "slip": "a slip of the key", "look_again_below": "asked to look again below",
	"false_yes_by": "chance of a yes where there is no hole, by who looks", "good_when_covered_times": "a good result on a freshly covered car counts, times",
	"bad_counts_whole": "a yes counts in full, whoever looks", "tells_of_cover": "tells of fresh undercoat", "fresh_undercoat": "Fresh undercoat is found",
	"own_cause": "Causes of a part's own", "hurt": "has one", "spared": "Kept from rust", "leak": "A leak of its own", "covered": "Freshly painted or undercoated",
	"thoroughly": "A thorough restoration", "local": "A part that lives by causes of its own", "age_of_full_chance": "age at which the chance holds, years", "most_times": "at most, times", "standards": "Standards", "whole_car": "How hard the whole car goes", "metal": "metalwork", "prep": "strip and prep",
	"body": "body and block / filling and flatting", "fit": "fitting and assembly", "other_trades": "the other trades", "seam_credit": "Seams opened once",
	"what_is_done": "What is done for which condition", "opened_because": "Opened because of something else", "getting_in": "Getting in (once)",
	"lead_joint": "Leaded joint", "take_out": "taking it out, hours", "findings": "What is found", "strip_and_survey": "Strip and survey", "after_survey": "After the survey",
	"behind": "What lies behind", "area_m2": "area, square metres", "gauge": "sheet, gauge number", "mm": "sheet, millimetres", "trap": "how well it holds water, of 5",
	"rust": "rust law", "m": "times the place's rate", "b": "power of the years", "life": "years until paint fails", "had": "how it is had", "full": "full panel", "fabricate": "made by hand", "treat": "treat pitting",
	"stage_factor": "Hours of strip and survey, times", "after_survey_factor": "hours after the survey, times",
	"dry_um": "dry film, micrometres", "per_m2": "a square metre", "per_car": "a car",
	"money_per_metal_hour": "money an hour of metalwork", "no_more_than": "no more than, hours", "on": "charged on", "waits_weeks": "waits, weeks",
	"before_percent": "before the strip, percent", "after_percent": "after the survey, percent", "hidden_open": "hidden, open", "hidden_closed": "hidden, closed box", "outside_only_share": "share reached inside when only the outside is done", "base_share": "share that is the tin of base",
	"per_lead_joint": "hours a leaded joint", "volume_solids": "solids by volume", "seen_when_stripped": "seen once stripped", "near_mounting": "near a mounting", "lead_joints": "leaded joints",
	"not_sure": "not sure", "bolted_on_parts": "Parts that are bolted on", "missing_work": "The work on a missing part", "metal_times_welded_in": "metalwork where it was welded in, times",
	"by_hand_times_with_nothing_to_copy": "metalwork by hand with nothing to copy, times", "search": "Finding a missing part", "in_pieces": "In pieces", "assembly_times": "hours of assembly, times",
	"new_made": "New-made panels", "from": "Where they come from", "needs_work_times": "hours where one needs work, times", "wrong_fit": "a wrong one, hours of fitting", "wrong_weeks": "a wrong one, weeks lost",
	"used": "Used parts", "no_good": "share that are no good", "always_prep": "always, hours of strip and prep", "patching_metal": "patching, hours of metalwork", "patching_prep": "patching, hours of strip and prep", "no_good_weeks": "one that is no good, weeks lost",
	"its_metal": "Metalwork that it needs itself", "its_prep": "Its strip and prep after the survey", "dearer_by_percent": "dearer by, percent", "advised": "When it is advised",
	"made_from": "on cars made from", "outside_only": "outside only, times", "floor_pans": "floor parts", "pinholes": "pinholes (rust)",
}

// unshown are members that hold no figure: names, wording, ties between parts.
var unshown = map[string]bool{
	"name": true, "sources": true, "why": true, "if": true, "when": true, "when_front": true, "when_rear": true, "items": true, "covered_by": true,
	"covers": true, "because_of": true, "raise": true, "unless": true, "terms": true, "contact": true, "drilled_from_above": true,
}

// unread are members that hold no figure when they are texts, or lists of texts.
var unread = map[string]bool{
	"id": true, "format": true, "source": true, "about": true, "note": true, "how": true, "needs": true, "caution": true, "key": true, "zone": true,
	"group": true, "face": true, "table": true, "where": true, "country": true, "href": true, "looks_like": true, "parts": true, "part": true, "way": true,
	"step": true, "for": true, "customer_does": true, "currency": true, "units": true, "words": true,
}

// values are what words in the place of a figure are called, where their own name
// with spaces would not do.
var values = map[string]string{"full": "full panel", "fabricate": "made by hand", "treat": "treat pitting", "metal": "metalwork", "prep": "strip and prep", "body": "body and block / filling and flatting", "fit": "fitting and assembly"}

// label is what a member of a data file is called.
func label(key string) string {
	if l, ok := labels[key]; ok {
		return l
	}
	return strings.ReplaceAll(key, "_", " ")
}

// nameOf is what an object calls itself, in both sets of words where they differ.
func nameOf(n *node, otherwise string) string {
	if name := n.get("name"); name != nil {
		us, uk := name.get("us").text(), name.get("uk").text()
		if us == uk {
			return us
		}
		return us + " / " + uk
	}
	if id := n.get("id").text(); id != "" {
		return upper(label(id))
	}
	if part := n.get("part").text(); part != "" {
		return upper(label(part) + ", " + label(n.get("way").text()))
	}
	if step := n.get("step").text(); step != "" {
		return upper(label(step))
	}
	return upper(otherwise)
}

func upper(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}
