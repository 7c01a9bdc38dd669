package session

import (
	"testing"

	"underpaint/engine/carfile"
	"underpaint/engine/damage"
	"underpaint/engine/evidence"
)

// TestOpeningUpTakesTheSurveysPlace: on a simulated car, what is found in an open box
// replaces what the survey read from outside. Everything else from the survey stays.
func TestOpeningUpTakesTheSurveysPlace(t *testing.T) {
	s := opened(t)
	j, err := s.openChecks(decoded(t, goodCar), "shop")
	if err != nil {
		t.Fatal(err)
	}
	o, err := newOutcome(j.stages, j.now, j.table, 0)
	if err != nil {
		t.Fatal(err)
	}
	for ; j.ahead[o.stage] != carfile.OpeningUp; o.stage++ {
		if err := o.simulate(j.stages, j.now, j.ahead[o.stage], 0); err != nil {
			t.Fatal(err)
		}
	}
	surveyed, shut, stream := o.known.Seen, o.shut.Seen, o.stream
	if err := o.simulate(j.stages, j.now, carfile.OpeningUp, 0); err != nil {
		t.Fatal(err)
	}
	b, moved := j.stages.body, 0
	found := evidence.ImagineSurvey(b, o.truth, true, &stream)
	for i := range b.Items {
		want := surveyed[i]
		if !b.PartOf(i).SeenWhenStripped {
			read, err := evidence.Reading(b.PartOf(i), found[i])
			if err != nil {
				t.Fatal(err)
			}
			want = evidence.Joined(shut[i], read)
			if !same(want, surveyed[i]) && !same(want, evidence.Joined(surveyed[i], read)) {
				moved++
			}
		}
		if !same(o.known.Seen[i], want) {
			t.Errorf("%s: another likelihood than that of what stands", b.Items[i].ID)
		}
	}
	if moved < 3 {
		t.Errorf("only %d boxes could tell the two apart", moved)
	}
}

func same(a, b *damage.Likelihood) bool { return a == b || a != nil && b != nil && *a == *b }
