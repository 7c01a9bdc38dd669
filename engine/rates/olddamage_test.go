package rates

import (
	"strings"
	"testing"

	"underpaint/engine/olddamage"
)

func withOldDamage(member string) (*Rates, error) {
	return Decode([]byte(strings.Replace(string(Sample()), `"own_figures":`, `"hidden_history": `+member+`, "own_figures":`, 1)))
}

// TestOldDamageOverride: a shop replaces any part of the figures, and the rest stay the
// starting ones. Left out, the figures are the starting ones, and the check code is that
// of the file without the member.
func TestOldDamageOverride(t *testing.T) {
	plain, err := Decode(Sample())
	if err != nil || plain.OldDamage.Figures != olddamage.Starting() || plain.OldDamage.Stated || plain.Reckoned() == nil {
		t.Fatal(err, plain.OldDamage)
	}
	r, err := withOldDamage(`{"hit": {"hard_hits_a_road_year": 0.012}, "hours": {"crooked": {"metal": [10, 25, 60]}}, "sent_out": [500, 1000, 2000], "source": "our own jobs"}`)
	if err != nil {
		t.Fatal(err)
	}
	own, start := r.OldDamage, olddamage.Starting()
	if own.HitsAYear != 0.012 || own.Lines[olddamage.MadeCrooked][0] != [3]float64{10, 25, 60} || !own.IsSentOut || !own.Stated || own.Source != "our own jobs" {
		t.Errorf("%+v", own)
	}
	if own.Mended != start.Mended || own.Lines[olddamage.MadeCrooked][4] != start.Lines[olddamage.MadeCrooked][4] || own.Zones != start.Zones || start.HitsAYear != 0.008 {
		t.Error("other figures moved")
	}
	if r, err = withOldDamage(`{"in_range": false}`); err != nil || r.Reckoned() != nil {
		t.Error("set aside and reckoned with", err)
	}
}

// TestOldDamageRefused: bad figures are refused by path, with what was found and expected.
func TestOldDamageRefused(t *testing.T) {
	for member, want := range map[string]string{
		`{"hit": {"hard_hits_a_road_year": 2}}`: "hidden_history.hit.hard_hits_a_road_year: expected a number from 0 to 0.1",
		`{"hit": {"mended": {"untouched": [0.5, 0.5, 0.1], "patched": [1, 0, 0], "looks": [1, 0, 0], "thorough": [1, 0, 0]}}}`: "hidden_history.hit.mended.untouched: expected chances adding up to 1, found chances adding up to 1.1",
		`{"hit": {"zones": {"front": 0.5, "rear": 0.5}}}`:                                                                      "hidden_history.hit.zones.left: ",
		`{"hours": {"crooked": {"metal": [8, 5, 50]}}}`:                                                                        "hidden_history.hours.crooked.metal: expected low, likely and high, above 0 and in that order",
		`{"hours": {"crooked": {"metal": [0, 5, 50]}}}`:                                                                        "hidden_history.hours.crooked.metal: expected low, likely and high, above 0 and in that order",
		`{"hours": {"crooked": {"paint": [1, 5, 50]}}}`:                                                                        "hidden_history.hours.crooked: expected one of \"metal\", \"fit\"",
		`{"answer": {"hard": [0.9, 0.25, 0.45]}}`:                                                                              "hidden_history.answer: expected chances adding up to 1",
		`{"sagged": {"closed": 1.5}}`:                                                                                          "hidden_history.sagged.closed: ",
		`{"looks": []}`:                                                                                                        "hidden_history: expected one of ",
		`{"in_range": "no"}`:                                                                                                   "hidden_history.in_range: ",
	} {
		if _, err := withOldDamage(member); err == nil || !strings.HasPrefix(err.Error(), want) {
			t.Errorf("%s: %v, expected %s", member, err, want)
		}
	}
}
