package wording

import (
	"encoding/json"
	"regexp"
	"slices"
	"strings"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/pricing"
	"underpaint/engine/rates"
)

// mostWords is how long a caution may be (assumption: what somebody at a bench reads).
const mostWords = 45

// rulesOf find rules and agencies of one country. Source: names of agencies and codes as
// the cautions' own sources have them; limits in pounds per square inch and the half hour
// of a fire watch are those of 29 CFR 1910.242(b) and 1910.252(a)(2)(iii)(B).
var rulesOf = struct{ us, uk *regexp.Regexp }{
	regexp.MustCompile(`\b(OSHA|CFR|EPA|NFPA|U\.S\.C\.|psi|half an hour|fire code|licensed|United States)\b`),
	regexp.MustCompile(`\b(HSE|DVLA|MOT|COSHH|LOLER|REACH|Great Britain|licence|insurer|dichloromethane)\b`),
}

func loaded(t *testing.T) *lists {
	t.Helper()
	l, err := loadLists()
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// TestCautionTexts: every caution is short, says for whom it is and what it rests on, and
// names no rule of the other country. Its work is work that a price can have.
func TestCautionTexts(t *testing.T) {
	var raw struct {
		Cautions []struct {
			ID, For, Source string
			BecauseOf       map[string][]string `json:"because_of"`
			Text            struct{ US, UK string }
		}
	}
	if err := json.Unmarshal(wordsFile, &raw); err != nil {
		t.Fatal(err)
	}
	seen := map[string]bool{}
	for _, c := range raw.Cautions {
		if strings.TrimSpace(c.Source) == "" || c.For != "customer" && c.For != "shop" {
			t.Errorf("%s: for %q, source %q", c.ID, c.For, c.Source)
		}
		if c.For == "shop" && len(c.BecauseOf) == 0 {
			t.Errorf("%s: no work shows it", c.ID)
		}
		for key := range c.BecauseOf {
			if !slices.ContainsFunc(causeKeys, func(k struct {
				key  string
				kind pricing.WorkKind
			}) bool {
				return k.key == key
			}) {
				t.Errorf("%s: no work is called %q", c.ID, key)
			}
		}
		for _, text := range []string{c.Text.US, c.Text.UK} {
			if n := len(strings.Fields(text)); n > mostWords || n < 8 {
				t.Errorf("%s: %d words", c.ID, n)
			}
		}
		if rule := rulesOf.uk.FindString(c.Text.US); rule != "" {
			t.Errorf("%s: the US text has %q", c.ID, rule)
		}
		if rule := rulesOf.us.FindString(c.Text.UK); rule != "" {
			t.Errorf("%s: the UK text has %q", c.ID, rule)
		}
		if seen[c.ID] || seen[c.Text.US] {
			t.Errorf("%s is there twice", c.ID)
		}
		seen[c.ID], seen[c.Text.US] = true, true
	}
	if len(raw.Cautions) < 33 {
		t.Errorf("only %d cautions", len(raw.Cautions))
	}
}

// needed says which cautions each work needs; an empty list means none. Source: the
// topics of HSE's pages on motor vehicle repair (dust and lead, welding, fire, noise,
// lifting, paint, chemicals, airbags) and the subjects of 29 CFR 1910 subparts G, H, I,
// O, P, Q and Z, laid over the work by hand.
var needed = map[pricing.WorkKind]map[string]string{
	pricing.StripStep: {
		"check_in": "numbers", "make_safe": "fuel", "disassemble": "airbags asbestos refrigerant springs", "running_gear": "lifting refrigerant springs",
		"rotisserie": "lifting", "body_lift": "lifting", "undercoat": "asbestos", "sealer": "asbestos", "mask_plug": "numbers",
		"skins": "chromate noise stripper warp", "lead": "fire_watch lead", "blast_shell": "bare_steel blasting chromate noise numbers warp",
		"blast_loose": "bare_steel blasting chromate noise warp", "purge_1": "compressed_air", "purge_2": "compressed_air", "purge_3": "compressed_air",
		"wire_wheel": "chromate fire_watch noise", "pits": "acid_in_seams phosphoric", "survey": "bare_steel", "meet": "", "measure": "", "flash": "bare_steel",
		"wipe": "bare_steel chlorinated rags", "epoxy": "epoxy", "waste": "lead",
	},
	pricing.WayOfRepair: {
		"leave": "", "treat": "acid_in_seams phosphoric", "patch": "arc_light chlorinated fire_watch fuel noise shielding_gas zinc",
		"section":   "arc_light chlorinated fire_watch fuel noise numbers shielding_gas zinc",
		"full":      "arc_light chlorinated fire_watch fuel noise numbers shielding_gas zinc",
		"fabricate": "arc_light chlorinated fire_watch fuel noise numbers shielding_gas zinc",
	},
	pricing.FoundWork: {
		"patch_over_rust": "", "filler_over_hole": "", "replaced": "", "filler_over_dent": "", "cracked_lead": "lead", "brazed": "zinc", "stress_crack": "",
		"bad_panel": "", "blast_warp": "warp", "bad_weld": "", "bonded": "", "packed": "foam", "missing": "", "twist": "structure",
	},
	pricing.Access: {
		"brace_datum": "arc_light fire_watch noise structure", "open_plenum": "fire_watch noise", "hang_gap": "springs", "tank_axle": "fuel lifting springs",
		"body_off": "lifting structure zinc", "captive_nut": "arc_light fire_watch noise zinc", "other_chassis": "arc_light fire_watch lifting noise numbers structure",
	},
	pricing.AfterSurvey: {
		"block": "paint rags", "seal": "rags", "paint_in": "paint rags", "paint_out": "paint rags", "assemble": "springs", "glass": "", "trim": "airbags springs", "wiring": "airbags",
	},
	pricing.MaterialUsed: {
		"stripper": "stripper", "blast_media": "blasting", "strip_discs": "", "strip_masking": "", "pit_wash": "acid_in_seams phosphoric", "wipe_solvent": "chlorinated rags",
		"wipe_cloths": "rags", "epoxy_primer": "epoxy", "epoxy_new_panels": "epoxy", "chassis_paint": "epoxy paint", "weld_through": "zinc", "seam_sealer": "", "filler": "rags", "high_build": "paint", "block_paper": "",
		"sealer": "paint", "basecoat": "paint", "inside_color": "paint", "clear": "paint", "stone_guard": "", "cavity_wax": "", "paint_masking": "", "polish": "",
	},
	pricing.WorkSentOut: {"waste_disposal": "chromate lead", "transport": "", "powder_coat": ""},
}

// TestEveryWorkHasItsCautions: every line that a price can have, of every body, standard
// and scope at both sample rates, has the cautions above, and nothing else is named in
// the data.
func TestEveryWorkHasItsCautions(t *testing.T) {
	l := loaded(t)
	of := func(line pricing.WorkLine) string {
		var ids []string
		for k := range l.cautions {
			if l.cautions[k].causedBy(line) {
				ids = append(ids, l.cautions[k].ID)
			}
		}
		slices.Sort(ids)
		return strings.Join(ids, " ")
	}
	lines := pricedLines(t)
	for line := range lines {
		want, ok := needed[line.Kind][line.ID]
		if got := of(line); !ok || got != want {
			t.Errorf("%v %s: cautions %q, needed %q (%v)", line.Kind, line.ID, got, want, ok)
		}
	}
	if len(lines) < 82 {
		t.Errorf("only %d lines", len(lines))
	}
	for k := range l.cautions {
		for kind, ids := range l.cautions[k].because {
			for _, id := range ids {
				if !lines[pricing.WorkLine{Kind: kind, ID: id}] {
					t.Errorf("%s: no price has %q", l.cautions[k].ID, id)
				}
			}
		}
	}
}

// pricedLines are all lines that prices at the sample rates can have, without names.
func pricedLines(t *testing.T) map[pricing.WorkLine]bool {
	t.Helper()
	common, err := car.LoadCommon()
	if err != nil {
		t.Fatal(err)
	}
	out := map[pricing.WorkLine]bool{}
	for _, sample := range [][]byte{rates.Sample(), rates.SampleUK()} {
		r, err := rates.Decode(sample)
		if err != nil {
			t.Fatal(err)
		}
		for _, id := range car.BodyIDs {
			b, err := car.Load(id)
			if err != nil {
				t.Fatal(err)
			}
			for _, standard := range car.Standards {
				for _, scope := range rates.ScopeIDs {
					table, err := pricing.NewTable(b, common, r, standard, scope)
					if err != nil {
						t.Fatal(err)
					}
					for _, one := range []*pricing.Table{table, allChosen(t, table)} {
						ways := one.WaysInRange(slices.Repeat([]int{-1}, len(b.Items)))
						for _, w := range slices.Concat(ways...) {
							out[pricing.WorkLine{Kind: pricing.WayOfRepair, ID: car.WayIDs[w]}] = true
						}
						for _, line := range slices.Concat(one.StripWork(), one.CarWork(ways)) {
							out[pricing.WorkLine{Kind: line.Kind, ID: line.ID}] = true
						}
					}
				}
			}
		}
	}
	for _, f := range pricing.Findings() {
		out[pricing.WorkLine{Kind: pricing.FoundWork, ID: f.ID}] = true
	}
	return out
}

// allChosen is the table with the most work chosen on every part that can be patched, as
// a survey of a smaller job may end.
func allChosen(t *testing.T, table *pricing.Table) *pricing.Table {
	t.Helper()
	d := pricing.Undecided()
	for i := range table.Body.Items {
		d.Way = append(d.Way, -1)
		for _, w := range table.Allowed(i, car.Conditions-1) {
			d.Way[i] = int8(w)
		}
	}
	out, err := table.With(d)
	if err != nil {
		t.Fatal(err)
	}
	return out
}
