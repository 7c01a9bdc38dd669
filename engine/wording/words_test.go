package wording

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"underpaint/engine/rates"
	"underpaint/engine/session"
)

// TestLeadMelts: the figures in the caution on lead, in both scales, are those of
// the CRC Handbook (pure lead, 327.5 °C) and of ASTM B32 Sn30 (70 lead 30 tin,
// 183 to 255 °C).
func TestLeadMelts(t *testing.T) {
	l, err := loadLists()
	if err != nil {
		t.Fatal(err)
	}
	figures := regexp.MustCompile(`\d{3}`)
	for _, c := range l.cautions {
		if c.ID != "lead" {
			continue
		}
		us, uk := figures.FindAllString(c.text.US, -1), figures.FindAllString(c.text.UK, -1)
		if len(us) != 3 || len(uk) != 3 {
			t.Fatalf("want three temperatures: %v %v", us, uk)
		}
		for k, celsius := range []float64{183, 255, 327.5} {
			f, _ := strconv.ParseFloat(us[k], 64)
			d, _ := strconv.ParseFloat(uk[k], 64)
			if math.Abs(d-celsius) > 0.5 || math.Abs(f-(celsius*1.8+32)) > 1 {
				t.Errorf("%s °F, %s °C, published %g °C", us[k], uk[k], celsius)
			}
		}
		return
	}
	t.Error("no caution on lead")
}

func sampleShop(t *testing.T) *session.Shop {
	t.Helper()
	shop, err := session.OpenShop(rates.Sample())
	if err != nil {
		t.Fatal(err)
	}
	return shop
}

func textOf(t *testing.T, shop *session.Shop) *Text {
	t.Helper()
	text, err := For(shop)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// TestAmountsAndShares: figures are written as worked out by hand here.
func TestAmountsAndShares(t *testing.T) {
	text := textOf(t, sampleShop(t))
	for got, want := range map[string]string{
		text.Amount(123456700): "$1,234,567", text.ToTheUnit(14950): "$150", text.Likely(1_234_567): "$12,500", text.signed(-500): "−$5",
		Grouped(16384): "16,384", Tick(50_000): "50k", Tick(2_000_000): "2m", Tick(500): "500", text.Date("2026-06-03"): "June 3, 2026", dateIn("uk", "2026-06-03"): "3 June 2026", text.Date(""): "",
		CarsInTen(0.04): "fewer than 1 car out of 20", CarsInTen(0.1): "1 car out of 10", CarsInTen(0.6): "6 cars out of 10", CarsInTen(0.96): "more than 19 cars out of 20",
		InTen(0.8): "8 out of 10", InTen(0.01): "fewer than 1 out of 20", InTen(0.97): "19 out of 20", widthWords(0.5, "now"): "about half as wide as now",
		tenths(9.94): "9.9", tenths(9.95): "10", percentOf(1.18, "more", "less"): "18% more", percentOf(0.95, "more", "less"): "5% less",
		counted(1, "box", "boxes"): "1 box", counted(2, "box", "boxes"): "2 boxes",
	} {
		if got != want {
			t.Errorf("%q, expected %q", got, want)
		}
	}
}

// TestUntested: until a shop publishes how its jobs came out, a range says how much wider
// the doubt makes it; after that the record speaks, and says so when too few came out
// inside.
func TestUntested(t *testing.T) {
	shop := sampleShop(t)
	text := textOf(t, shop)
	for ratio, want := range map[float64]string{1: "", 1.02: "", 1.05: "about a twentieth", 1.1: "about a tenth", 1.2: "about a fifth", 1.25: "about a quarter", 1.33: "about a third", 1.5: "about half as much", 3: "much"} {
		line := text.Untested(&session.Range{Wider: ratio})
		if want == "" && line != "" || want != "" && line != "This shop has not checked its figures against finished jobs yet. The range is "+want+" wider because of that." {
			t.Errorf("%g: %q", ratio, line)
		}
	}
	r := *shop.Rates
	for inside, narrow := range map[int]bool{10: true, 16: false} {
		r.Past = &rates.Past{Inside: inside, Above: 20 - inside, From: "2025-01-01", To: "2026-01-01"}
		told := textOf(t, &session.Shop{Rates: &r, Common: shop.Common})
		if line := told.Untested(&session.Range{Wider: 1.3}); line != "" {
			t.Errorf("beside a record: %q", line)
		}
		if got := strings.Contains(told.OwnRecord()[0], "fewer inside than we say"); got != narrow {
			t.Errorf("%d of 20: %q", inside, told.OwnRecord()[0])
		}
	}
}
