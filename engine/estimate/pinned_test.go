package estimate

import (
	"crypto/sha256"
	"encoding/binary"
	"encoding/hex"
	"math"
	"slices"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/pricing"
	"underpaint/engine/rates"
)

// pinned is the checksum of everything below. A commit that changes these figures on
// purpose updates it and says so.
const pinned = "12fbe5cdf7e288e4"

// TestSameBytesDecided pins the results of a block of cars with chosen ways, findings and
// hours actually worked, to the bit. The same test runs as wasm.
func TestSameBytesDecided(t *testing.T) {
	plain := testRun(t, func(r *rates.Rates) { r.OldDamage.InRange = false })
	table := plain.rows[0].table
	n := len(table.Body.Items)
	d := pricing.Undecided()
	d.Way, d.Also = slices.Repeat([]int8{-1}, n), make([][]string, n)
	at := func(id string) int {
		i, ok := table.Body.ItemNamed(id)
		if !ok {
			t.Fatalf("no %s", id)
		}
		return i
	}
	d.Way[at("outer_sill.left")], d.Way[at("inner_sill.right")] = int8(car.Patch), int8(car.Section)
	d.Also[at("outer_sill.left")], d.WholeCar = []string{"brazed", "bad_weld"}, []string{"twist"}
	d.StripHours[car.Metal], d.StripHours[car.Prep], d.StripHours[car.Fit] = 14, 110.5, 80
	decided, err := table.With(d)
	if err != nil {
		t.Fatal(err)
	}
	r := NewRun(plain.model, []*pricing.Table{table, decided}, 1)
	r.Remember(true)
	r.Add()
	sum := sha256.New()
	write := func(v ...float64) {
		for _, x := range v {
			if err := binary.Write(sum, binary.LittleEndian, math.Float64bits(x)); err != nil {
				t.Fatal(err)
			}
		}
	}
	inTurns := NewRun(plain.model, []*pricing.Table{table, decided}, 1)
	inTurns.Add()
	for _, run := range []*Run{r, inTurns} {
		for k := range run.rows {
			for _, v := range run.Totals(k) {
				write(float64(v))
			}
		}
	}
	x := r.Difference(0, 1)
	write(x.Low, x.Half, x.High, x.Dearer, x.Same, x.WeeksHalf)
	for _, items := range [][]int{{3}, {3, 17, 40}} {
		w := r.IfLook(1, items, func(b byte) float64 { return (float64(b) + .5) / packs })
		write(w.Yes, w.WidthYes, w.WidthNo, w.Expected, w.Now, w.Effective)
	}
	for _, h := range table.StripOutlook() {
		write(h[:]...)
	}
	for _, c := range table.Card(at("quarter_skin.left"), 4).Ways {
		write(c.Hours[:]...)
	}
	if got := hex.EncodeToString(sum.Sum(nil)[:8]); got != pinned {
		t.Errorf("%s, pinned %s", got, pinned)
	}
}
