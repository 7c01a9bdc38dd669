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
	{"two_door_unitary", "show", "5a1eec1490ec1ffc"},
	{"hardtop_on_frame", "driver", "ca4e692df1ba4b18"},
	{"pickup", "concours", "92747ef96caebba8"},
	{"open_two_seater", "not_sure", "0255dd1783d108c8"},
	{"convertible_unitary", "show", "9a039b769659599e"},
	{"four_door_saloon", "show", "583aab3e58b8a8a2"},
}
