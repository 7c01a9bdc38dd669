package money

import "testing"

// percent and rate build values that must be valid.
func percent(t *testing.T, text string) Percent {
	t.Helper()
	p, err := NewPercent(dec(t, text))
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// Rule: Streamlined Sales and Use Tax Agreement, section 324, as enacted for
// example in R.I. Gen. Laws 44-18.1-25 and RCW 82.08.054: carry to the third
// decimal, round up when it exceeds four. No official worked numbers were
// found; these follow from the rule and were recomputed by hand.
var salesTax = []struct {
	amount Minor
	rate   string
	want   Minor
}{
	{1000, "6.25", 63},      // .625000: half to even would give .62
	{1450, "7", 102},        // 1.0150
	{1741, "6", 104},        // 1.0446: rounding twice would give 1.05
	{1742, "6", 105},        // 1.0452
	{7, "7", 0},             // .0049: rounding twice would give .01
	{1500, "6.35", 95},      // .952500
	{4237, "9.1", 386},      // 6.5 % + 2.6 % together, 3.85567
	{4237, "6.5", 275},      // separately they give 2.75 + 1.10 = 3.85
	{4237, "2.6", 110},      //
	{1999, "7.25", 145},     // item by item: 1.45 + .33 + .53 + 9.42 = 11.73
	{449, "7.25", 33},       //
	{725, "7.25", 53},       //
	{12995, "7.25", 942},    //
	{16168, "7.25", 1172},   // the same four on one invoice: 11.721800
	{-1741, "6", -104},      // a credit is the mirror image
	{1000, "-6.25", -63},    //
	{1131, "20", 226},       // UK VAT, a hall-hire help page: ten lines of 11.31,
	{11310, "20", 2262},     // by line 22.60, on the total 22.62
	{11310, "0", 0},         //
	{123456, "100", 123456}, //
}

func TestPercentSalesTax(t *testing.T) {
	for _, row := range salesTax {
		if got := percent(t, row.rate).Of(row.amount); got != row.want {
			t.Errorf("%d at %s %%: got %d, want %d", row.amount, row.rate, got, row.want)
		}
	}
}

// UK VAT on ten lines of 11.31 at 20 %: 135.70 rounded by line, 135.72 on the total
// (worked figure of a public hall-hire help page; HMRC manual VATREC12010 allows either
// basis).
func TestVATByLineAndBySum(t *testing.T) {
	p, byLine := percent(t, "20"), Minor(0)
	for range 10 {
		byLine += 1131 + p.Of(1131)
	}
	if bySum := 11310 + p.Of(11310); byLine != 13570 || bySum != 13572 {
		t.Errorf("by line %d, on the total %d; want 13570, 13572", byLine, bySum)
	}
}

// VAT included in a gross price, gross × rate / (100 + rate), by Share.
// Expected values recomputed with exact fractions.
func TestVATWithinGross(t *testing.T) {
	for _, row := range []struct {
		gross      Minor
		thousandth int64 // of the rate
		want       Minor
	}{{100_00, 20_000, 1667}, {119_99, 20_000, 2000}, {59_99, 17_500, 893}} {
		if got := Share(row.gross, []int64{100_000, row.thousandth})[1]; got != row.want {
			t.Errorf("VAT in %d at %d: got %d, want %d", row.gross, row.thousandth, got, row.want)
		}
	}
}

func TestNewRateAndPercentBounds(t *testing.T) {
	for _, text := range []string{"0", "1000000", "0.000001", "1.500000", "85"} {
		if _, err := of(2).NewRate(dec(t, text)); err != nil {
			t.Errorf("NewRate(%s): %v", text, err)
		}
	}
	for _, text := range []string{"-0.01", "1000000.000001", "999999999999"} {
		if _, err := of(2).NewRate(dec(t, text)); err == nil {
			t.Errorf("NewRate(%s) succeeded, want an error", text)
		}
	}
	for _, text := range []string{"0", "-100", "1000", "7.25", "0.000001"} {
		if _, err := NewPercent(dec(t, text)); err != nil {
			t.Errorf("NewPercent(%s): %v", text, err)
		}
	}
	for _, text := range []string{"-100.000001", "1000.000001", "999999999999"} {
		if _, err := NewPercent(dec(t, text)); err == nil {
			t.Errorf("NewPercent(%s) succeeded, want an error", text)
		}
	}
	_, err := of(2).NewRate(dec(t, "-5"))
	if want := `expected a price from 0 to 1000000 with at most 6 decimals, found "-5"`; err == nil || err.Error() != want {
		t.Errorf("NewRate(-5): %v, want %s", err, want)
	}
}

// A product of 2^64 − 1 (2^32 − 1 by 2^32 + 1): adding the half carries into the
// upper word. 4294.967295 × 4294967.297 = 18446744073.709551615, by hand.
func TestRateOfLongProduct(t *testing.T) {
	r, err := of(2).NewRate(dec(t, "4294.967295"))
	if err != nil {
		t.Fatal(err)
	}
	if got := r.Of(1<<32 + 1); got != 1844674407371 {
		t.Errorf("got %d", got)
	}
}

func TestRateRefusesWhatDoesNotFit(t *testing.T) {
	r, err := of(2).NewRate(dec(t, "1000000"))
	if err != nil {
		t.Fatal(err)
	}
	mustPanic(t, "Of", func() { r.Of(1 << 62) })
	mustPanic(t, "Of", func() { percent(t, "1000").Of(1 << 62) })
	if got := (Rate{}).Of(1 << 62); got != 0 {
		t.Errorf("zero Rate: %d", got)
	}
}
