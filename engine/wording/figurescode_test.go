package wording

import (
	"testing"

	"underpaint/engine/carfile"
	"underpaint/engine/rates"
	"underpaint/engine/session"
)

// TestOtherFiguresInWords: nothing to say without such a stage; with one, its date in the
// shop's words and both codes.
func TestOtherFiguresInWords(t *testing.T) {
	for _, c := range []struct {
		sample []byte
		date   string
	}{{rates.Sample(), "June 20, 2026"}, {rates.SampleUK(), "20 June 2026"}} {
		s, err := session.New(c.sample)
		if err != nil {
			t.Fatal(err)
		}
		text, err := For(s.Shop)
		if err != nil {
			t.Fatal(err)
		}
		want := "The figures of this program have changed since " + c.date + ": figures code 0a1b2 c3d4e then, " + session.FiguresCode() +
			" now. Every range here is worked out with today's figures, so an older letter may give another one."
		if got := text.OtherFigures(carfile.Stage{Stage: "survey", On: "2026-06-20", Figures: "0a1b2 c3d4e"}); got != want {
			t.Errorf("%q, want %q", got, want)
		}
		if got := text.OtherFigures(carfile.Stage{}); got != "" {
			t.Errorf("%q without a stage", got)
		}
	}
}
