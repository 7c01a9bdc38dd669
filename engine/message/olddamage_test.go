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
	{"two_door_unitary", "show", "1ecdbba7c727ee4a"},
	{"hardtop_on_frame", "driver", "ca578c094240b2e3"},
	{"pickup", "concours", "fdcc85970359c188"},
	{"open_two_seater", "not_sure", "2c8b7e9a3ae8fff0"},
	{"convertible_unitary", "show", "66d801b2395f46e0"},
	{"four_door_saloon", "show", "9b982ce5e55370cf"},
}
