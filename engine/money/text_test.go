package money

import (
	"math"
	"testing"
)

func currency(t *testing.T, code string) Currency {
	t.Helper()
	c, err := CurrencyOf(code)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// Codes and decimals: ISO 4217, published table of currencies and minor units.
func TestCurrencyDigits(t *testing.T) {
	published := map[int][]string{
		2: {"USD", "EUR", "GBP", "CAD", "AUD", "CHF", "SEK", "NOK", "DKK"},
		0: {"JPY", "KRW", "CLP", "ISK", "VND", "PYG", "XOF", "XAF", "XPF"},
		3: {"BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND"},
	}
	seen := 0
	for digits, codes := range published {
		for _, code := range codes {
			seen++
			if c := currency(t, code); c.Digits != digits || c.Code != code || c.Symbol == "" {
				t.Errorf("%s: %+v, want %d decimals and a symbol", code, c, digits)
			}
		}
	}
	if seen != len(currencies) {
		t.Errorf("%d currencies checked, the table has %d", seen, len(currencies))
	}
	for _, code := range []string{"", "usd", "USD ", "XXX", "$", "__proto__"} {
		if _, err := CurrencyOf(code); err == nil {
			t.Errorf("CurrencyOf(%q) succeeded, want an error", code)
		}
	}
}

func TestText(t *testing.T) {
	for _, row := range []struct {
		code        string
		m           Minor
		text, whole string
	}{
		{"USD", 11_400_00, "$11,400.00", "$11,400"},
		{"USD", 74_000_00, "$74,000.00", "$74,000"},
		{"USD", 74_000_50, "$74,000.50", "$74,000.50"},
		{"USD", 0, "$0.00", "$0"},
		{"USD", 5, "$0.05", "$0.05"},
		{"USD", 50, "$0.50", "$0.50"},
		{"USD", -3_20, "\u2212$3.20", "\u2212$3.20"},
		{"USD", 999_99, "$999.99", "$999.99"},
		{"USD", 1_000_000_00, "$1,000,000.00", "$1,000,000"},
		{"USD", math.MinInt64, "\u2212$92,233,720,368,547,758.08", "\u2212$92,233,720,368,547,758.08"},
		{"GBP", 1_240_50, "£1,240.50", "£1,240.50"},
		{"EUR", 100, "€1.00", "€1"},
		{"JPY", 11_400, "¥11,400", "¥11,400"},
		{"JPY", -7, "\u2212¥7", "\u2212¥7"},
		{"KWD", 1_234_567, "KWD\u00a01,234.567", "KWD\u00a01,234.567"},
		{"KWD", 1_000, "KWD\u00a01.000", "KWD\u00a01"},
		{"CHF", 1_240_50, "CHF\u00a01,240.50", "CHF\u00a01,240.50"},
		{"SEK", 1_240_50, "1,240.50\u00a0kr", "1,240.50\u00a0kr"},
		{"PYG", 1_240, "Gs.\u00a01,240", "Gs.\u00a01,240"},
		{"XOF", 1_240, "1,240\u00a0F CFA", "1,240\u00a0F CFA"},
	} {
		c := currency(t, row.code)
		if got := c.Text(row.m); got != row.text {
			t.Errorf("%s Text(%d) = %q, want %q", row.code, row.m, got, row.text)
		}
		if got := c.TextWhole(row.m); got != row.whole {
			t.Errorf("%s TextWhole(%d) = %q, want %q", row.code, row.m, got, row.whole)
		}
	}
}
