package wording

import (
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/pricing"
	"underpaint/engine/rates"
	"underpaint/engine/session"
)

// TestPaintInTins: 10.38 liters mixed one to one are about 10 liters, half of them
// activator; mixed four to one, a fifth is.
func TestPaintInTins(t *testing.T) {
	epoxy := car.Words{US: "Epoxy primer, ready to spray", UK: "Epoxy primer, ready to spray"}
	for _, c := range []struct {
		sample []byte
		paints []pricing.Paint
		want   string
	}{
		{rates.Sample(), []pricing.Paint{{Name: epoxy, Litres: 10.38, Base: .5}}, "Materials for this stage, with about 10 liters of epoxy primer, ready to spray, half of it activator"},
		{rates.SampleUK(), []pricing.Paint{{Name: epoxy, Litres: 1.2, Base: .8}}, "Materials for this stage, with about 1 litre of epoxy primer, ready to spray, 20% of it activator"},
		{rates.Sample(), nil, "Materials for this stage"},
	} {
		s, err := session.New(c.sample)
		if err != nil {
			t.Fatal(err)
		}
		text, err := For(s.Shop)
		if err != nil {
			t.Fatal(err)
		}
		lines := text.StripLines(&pricing.Stage{Materials: 100, Paints: c.paints})
		if got := lines[len(lines)-1].Text; got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
