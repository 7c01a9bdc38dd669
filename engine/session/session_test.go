package session

import (
	"os"
	"testing"

	"underpaint/engine/carfile"
	"underpaint/engine/rates"
)

// goodCar is a car with the customer's answers only, seenCar one with records at every
// stage. Both are invented.
var (
	goodCar = fileText("../carfile/testdata/told.json")
	seenCar = fileText("../carfile/testdata/seen.json")
)

func fileText(name string) string {
	text, err := os.ReadFile(name)
	if err != nil {
		panic(err)
	}
	return string(text)
}

func opened(t testing.TB) *Session {
	t.Helper()
	s, err := New(rates.Sample())
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func decoded(t testing.TB, text string) *carfile.Car {
	t.Helper()
	c, err := carfile.Decode([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// TestSettles: a range reaches its stated accuracy, and its ends are in order.
func TestSettles(t *testing.T) {
	s := opened(t)
	if err := s.Open(decoded(t, goodCar)); err != nil {
		t.Fatal(err)
	}
	if state := s.Settle(); state != Settled {
		t.Fatalf("state %s", state)
	}
	r := s.Ranges(Settled).Rows[0]
	if e := r.Shown; !(0 < e.Low && e.Low < e.Half && e.Half < e.SetAside && e.SetAside < e.High) {
		t.Errorf("ends out of order: %+v", e)
	}
	if float64(r.Shown.Low) > r.Exact.Low || float64(r.Shown.High) < r.Exact.High {
		t.Error("an end was rounded inward")
	}
	if w := r.Exact.High - r.Exact.Low; max(r.Exact.SELow, r.Exact.SEHigh) > s.Accuracy.ShareOfWidth*w {
		t.Error("settled without the accuracy asked for")
	}
}

// stageRangesOf asks until the answer is settled. inPart counts the answers at which the
// odds of the last stage were partly worked out.
func stageRangesOf(t *testing.T, s *Session, text string) (out StageRanges, inPart int) {
	t.Helper()
	c := decoded(t, text)
	for range 200 {
		out, err := s.StageRanges(c)
		if err != nil {
			t.Fatal(err)
		}
		if out.State != Refining {
			return out, inPart
		}
		if _, now := s.stages.lastTwo(); now.pieces != nil {
			inPart++
		}
	}
	t.Fatal("never settled")
	return out, 0
}

// TestStageRangesInPieces: another request waits for one pocket, not for all odds. A car
// with answers only has no earlier stage, so no odds are worked out for it.
func TestStageRangesInPieces(t *testing.T) {
	s := opened(t)
	out, inPart := stageRangesOf(t, s, seenCar)
	if inPart < 10 {
		t.Errorf("the odds came in %d pieces", inPart)
	}
	for _, r := range out.Rows {
		if !r.Done {
			t.Errorf("the stage %s is not done", r.ID)
		}
	}
	if _, inPart := stageRangesOf(t, s, goodCar); inPart != 0 || s.stages.runs[0].chances != nil {
		t.Error("odds of a car that was only told were worked out")
	}
}

// TestCheckValues: before anyone has seen the car, every stage to come leaves less width
// than the one before it, or about as much.
func TestCheckValues(t *testing.T) {
	s, c := opened(t), decoded(t, goodCar)
	var out CheckValues
	for n := 0; out.State != Settled; n++ {
		if n > 2*3*outcomes+1 { // the odds and the cars of three stages
			t.Fatal("never settled")
		}
		var err error
		if out, err = s.CheckValues(c, "customer"); err != nil {
			t.Fatal(err)
		}
	}
	if out.Done != outcomes || len(out.Stages) != 3 || len(out.Checks) == 0 {
		t.Fatalf("%+v", out)
	}
	now := s.checks.now.run.Width(0)
	if w := out.Stages; w[0].Width > 0.9*now || w[1].Width > w[0].Width || w[2].Width > 1.1*w[1].Width {
		t.Errorf("now %.0f, then %+v", now, w)
	}
}
