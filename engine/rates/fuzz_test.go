package rates

import (
	"math"
	"testing"

	"underpaint/engine/strict"
)

// FuzzDecode: whatever the bytes, Decode either returns an error or rates within their
// bounds, and the same rates for the canonical form of the file.
func FuzzDecode(f *testing.F) {
	f.Add(Sample())
	f.Add(SampleUK())
	for _, c := range refused {
		sample := Sample()
		if c.uk {
			sample = SampleUK()
		}
		f.Add(changed(f, sample, c.at, c.value))
	}
	f.Add(changed(f, Sample(), "what_is_done", ownWays(nil)))
	// A short valid file lets the fuzzer try more inputs per second.
	f.Add(changed(f, Sample(), "materials", raw("[]"), "parts.prices", raw("[]"), "sent_out.work", raw("[]"), "terms", raw("[]"), "note", missing))
	f.Fuzz(func(t *testing.T, data []byte) {
		r, err := Decode(data)
		if (r == nil) == (err == nil) {
			t.Fatalf("rates %v beside error %v", r, err)
		}
		if err != nil {
			return
		}
		r.Warnings("")
		within(t, r)
		field, err := strict.Parse(data)
		if err != nil {
			t.Fatal(err)
		}
		if again := decode(t, strict.Canonical(field)); again.CheckCode() != r.CheckCode() || len(r.CheckCode()) != 11 {
			t.Fatalf("check code %q, of the canonical form %q", r.CheckCode(), again.CheckCode())
		}
	})
}

// within checks the bounds that other packages rely on.
func within(t *testing.T, r *Rates) {
	rising := func(what string, x [3]float64) {
		if !(x[0] > 0 && x[0] <= x[1] && x[1] <= x[2] && !math.IsInf(x[2], 1)) {
			t.Fatalf("%s: %v", what, x)
		}
	}
	for _, m := range r.Materials {
		if u := m.UnitsPerM2(); (m.How != PerCar) != (u > 0) || math.IsInf(u, 1) || m.Factor == [3]float64{} || m.Scopes == [3]bool{} {
			t.Fatalf("material %+v", m)
		}
	}
	for _, p := range r.Parts.Prices {
		if p.Priced {
			rising(p.Part, p.Price)
		}
	}
	for _, s := range r.SentOut.Work {
		rising(s.ID, s.Price)
	}
	if r.Consumables.Charged {
		rising("consumables", r.Consumables.PerMetalHour)
	}
	rising("hours a week", r.Time.HoursAWeek)
	for i, c := range r.Strip.Charged {
		if c.Step != StepIDs[i] || c.Capped != (c.NoMoreThan > 0) {
			t.Fatalf("step %+v", c)
		}
	}
}
