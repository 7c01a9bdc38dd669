package money

import (
	"strings"
	"testing"
)

// TestLess: nothing is below itself, and the order is that of the amounts.
func TestLess(t *testing.T) {
	rising := []string{"-2", "-1.000001", "-1", "0", "0.000001", "1", "2"}
	for i, a := range rising {
		for k, b := range rising {
			if got := dec(t, a).Less(dec(t, b)); got != (i < k) {
				t.Errorf("%s below %s: %v", a, b, got)
			}
		}
	}
}

// TestQuoteCuts: forty characters are shown of what was found, whatever they are.
func TestQuoteCuts(t *testing.T) {
	for text, want := range map[string]string{
		strings.Repeat("9x", 20):           `"` + strings.Repeat("9x", 20) + `"`,
		strings.Repeat("9x", 20) + "y":     `"` + strings.Repeat("9x", 20) + `…"`,
		strings.Repeat("ü", 41):            `"` + strings.Repeat("ü", 40) + `…"`,
		"<b>\u202e\n" + "\x00" + `"\` + "": `"<b>\u202e\n\x00\"\\"`,
	} {
		if got := quote(text); got != want {
			t.Errorf("%q: %s, want %s", text, got, want)
		}
	}
}
