package rates

import (
	"testing"

	"underpaint/engine/car"
)

// TestOwnFigures: learned figures are read with the jobs behind them, and a figure that
// was not learned is the starting figure.
func TestOwnFigures(t *testing.T) {
	plain := decode(t, Sample())
	if plain.Own.RustFactor("floor") != 1 || plain.Own.Hours[car.Metal].Factor != 1 || plain.Own.Spread.Factor != 1 || plain.Past != nil {
		t.Errorf("nothing was learnt: %+v %v", plain.Own, plain.Past)
	}
	r := decode(t, changed(t, Sample(), "own_figures", ownFigures("source", "the shop's past jobs"), "record", pastOf(2, 19, 3)))
	if got := r.Own.RustFactor("floor"); got != 1.2 {
		t.Errorf("floor %v", got)
	}
	if r.Own.RustFactor("sill") != 1 || r.Own.Hours[car.Metal] != (OwnFigure{1.1, 12}) || r.Own.Hours[car.Paint].Factor != 1 || r.Own.Spread.Factor != 0.9 {
		t.Errorf("%+v", r.Own)
	}
	if r.Past.Jobs() != 24 || r.Past.Above != 3 || r.CheckCode() == plain.CheckCode() {
		t.Errorf("%+v, check code %s", r.Past, r.CheckCode())
	}
	if w := r.Warnings(""); len(w) > 0 {
		t.Errorf("warnings %v", w)
	}
}

// TestCheckAll: a form gets the first fault of every section at once.
func TestCheckAll(t *testing.T) {
	_, faults := Check(changed(t, Sample(), "labour.metal.rate", "x", "tax.percent", "101", "terms[0]", "", "currency", "EURO", "record", pastOf(1, 1, 1)))
	if len(faults) != 5 {
		t.Errorf("want 5 faults, got %v", faults)
	}
	r, faults := Check(Sample())
	if r == nil || len(faults) > 0 {
		t.Error(faults)
	}
	for _, text := range []string{"", "{", `{"format":"underpaint rates 2"}`, `{"format":"underpaint car 1"}`, "<html>"} {
		if _, faults := Check([]byte(text)); len(faults) != 1 {
			t.Errorf("%q: %v", text, faults)
		}
	}
}

// TestStillSample: a shop that is not invented learns which figures are still those of
// the sample.
func TestStillSample(t *testing.T) {
	if got := decode(t, Sample()).StillSample(); got != nil {
		t.Errorf("the sample itself: %v", got)
	}
	own := decode(t, changed(t, Sample(), "shop.invented", false, "labour.metal.rate", "92.5"))
	for _, path := range own.StillSample() {
		if path == "labour.metal.rate" {
			t.Error("a changed rate is called the sample's")
		}
	}
	if n := len(own.StillSample()); n < 10 {
		t.Errorf("only %d figures of the sample found", n)
	}
	w := own.Warnings("2028-01-01")
	if len(w) != 2 || w[0].Path != "valid_until" || w[1].Path != "" {
		t.Errorf("warnings %v", w)
	}
}

// TestAdopt: what past jobs taught goes into the file and can be read back unchanged;
// nothing else changes, and removing it restores the rates.
func TestAdopt(t *testing.T) {
	plain := decode(t, Sample())
	want := decode(t, changed(t, Sample(), "own_figures", ownFigures("source", "x"), "record", pastOf(2, 19, 3)))
	with, _, err := Adopt(Sample(), want.Own, want.Past)
	if err != nil {
		t.Fatal(err)
	}
	got := decode(t, with)
	if got.Own.RustFactor("floor") != 1.2 || got.Own.Hours != want.Own.Hours || got.Own.Spread != want.Own.Spread || *got.Past != *want.Past {
		t.Errorf("%+v %+v", got.Own, got.Past)
	}
	out, _, err := Adopt(with, nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	if back := decode(t, out); back.CheckCode() != plain.CheckCode() {
		t.Error("taking the figures out left something behind")
	}
	if _, _, err := Adopt([]byte(`{"format":"underpaint rates 1"}`), nil, nil); err == nil {
		t.Error("a broken file was taken")
	}
}
