package message

import (
	"strings"
	"testing"

	"underpaint/engine/rates"
)

// TestWithoutOldDamage: a shop that leaves old damage out of its range answers what every
// shop answered before the range counted it, to the byte. Only its check code differs,
// because its file does.
func TestWithoutOldDamage(t *testing.T) {
	text := aside(string(rates.Sample()))
	r, err := rates.Decode([]byte(text))
	if err != nil || r.OldDamage.InRange || r.Reckoned() != nil {
		t.Fatal(err)
	}
	sample, err := rates.Decode(rates.Sample())
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range withoutOldDamage {
		reply := strings.ReplaceAll(c.rough(t, openedAt(t, []byte(text))), r.CheckCode(), sample.CheckCode())
		if got := digest(reply); got != c.sum {
			t.Errorf("%s %s: %s, before %s", c.body, c.standard, got, c.sum)
		}
	}
}

// aside makes a shop leave old damage out of its range.
func aside(rates string) string {
	return strings.Replace(rates, `"own_figures":`, `"hidden_history": {"in_range": false}, "own_figures":`, 1)
}

var withoutOldDamage = []pinned{
	{"two_door_unitary", "show", "7c7bb47fe36ebb24"},
	{"hardtop_on_frame", "driver", "7584feb6e34ca649"},
	{"pickup", "concours", "6b02ce9c018b8858"},
	{"open_two_seater", "not_sure", "5ddeb35dfa5c4e72"},
	{"convertible_unitary", "show", "bc533bdca037bd3b"},
	{"four_door_saloon", "show", "576fdfa3cbe09aa3"},
}
