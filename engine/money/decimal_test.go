package money

import (
	"math"
	"strings"
	"testing"
)

// TestLess checks that no amount is below itself, that the order is that of the amounts,
// and that amounts written differently can be equal.
func TestLess(t *testing.T) {
	rising := []string{"-2", "-1.000001", "-1", "0", "0.000001", "1", "2"}
	for i, a := range rising {
		for k, b := range rising {
			if got := dec(t, a).Less(dec(t, b)); got != (i < k) {
				t.Errorf("%s below %s: %v", a, b, got)
			}
			if got := dec(t, a).Equal(dec(t, b)); got != (i == k) {
				t.Errorf("%s the same as %s: %v", a, b, got)
			}
		}
	}
	if !dec(t, "85").Equal(dec(t, "085.00")) || !dec(t, "-0").Equal(Decimal{}) || !dec(t, "-0.000").IsZero() || dec(t, "0.000001").IsZero() {
		t.Error("85 is not 085.00, or minus zero is not zero")
	}
}

// TestQuoteCuts checks that an error shows at most forty characters of the text found.
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

// TestPlain checks the form used in files: exactly the decimals of the currency, and
// readable by Parse.
func TestPlain(t *testing.T) {
	for _, c := range []struct {
		digits int
		minor  Minor
		want   string
	}{
		{0, 11400, "11400"}, {0, 0, "0"}, {0, -7, "-7"}, {2, 1140000, "11400.00"}, {2, -320, "-3.20"}, {2, 5, "0.05"}, {2, -5, "-0.05"},
		{3, 1, "0.001"}, {3, 1000, "1.000"}, {2, math.MaxInt64, "92233720368547758.07"}, {2, math.MinInt64, "-92233720368547758.08"},
	} {
		if got := of(c.digits).Plain(c.minor); got != c.want {
			t.Errorf("%d with %d decimals: %s, want %s", c.minor, c.digits, got, c.want)
		}
	}
}
