package damage

import (
	"math/rand/v2"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/chance"
)

// TestOwnCauseIsTheWorseOfTwo holds the constant matrix to drawing out every pair of
// rust and cause, its adjoint to it, and drawn items to both.
func TestOwnCauseIsTheWorseOfTwo(t *testing.T) {
	fig, err := loadFigures()
	if err != nil {
		t.Fatal(err)
	}
	b, r := body(t, "two_door_unitary"), rand.New(rand.NewPCG(8, 1))
	for _, id := range []string{"battery_tray.whole", "door_bottom.left", "roof_skin.whole"} {
		i, _ := b.ItemNamed(id)
		full := fig.cause.of(b.PartOf(i))
		times := 1.1
		o := full.after(times)
		var rust, seen byCondition
		for k := range rust {
			rust[k], seen[k] = r.Float64(), r.Float64()
		}
		got, want := o.apply(rust), afterCauses(full, times, rust)
		pulled := o.pull(seen)
		left, right := 0.0, 0.0
		for k := range got {
			near(t, id+" "+car.ConditionIDs[k], got[k], want[k], 1e-14)
			left += got[k] * seen[k]
			right += rust[k] * pulled[k]
		}
		near(t, id+": the adjoint", right, left, 1e-13)
		drawnCauses(t, id, &o)
	}
}

// drawnCauses holds shares of drawn conditions to the matrix, and shares of holes with
// a cause of their own to [ownCause.shareOf], within five standard errors.
func drawnCauses(t *testing.T, id string, o *ownCause) {
	t.Helper()
	const draws = 200_000
	rust := byCondition{.5, .2, .1, .05, .1, .05}
	want := o.apply(rust)
	var count, own byCondition
	s := chance.NewStream(5, 5)
	for range draws {
		k, due := o.draw(pick(&rust, s.Uniform()), s.Uniform())
		count[k] += 1.0 / draws
		if due {
			own[k] += 1.0 / draws
		}
	}
	for k := range count {
		near(t, id+" drawn "+car.ConditionIDs[k], count[k], want[k], 5*0.5/447)
		near(t, id+" due to a cause "+car.ConditionIDs[k], own[k], want[k]*o.shareOf(k, &rust), 5*0.5/447)
	}
}

// TestOldAndNewCars: at 25 years a cause of its own is half as likely as at 50, and from
// 60 years on it stays (data/damage.json).
func TestOldAndNewCars(t *testing.T) {
	fig, err := loadFigures()
	if err != nil {
		t.Fatal(err)
	}
	for years, want := range map[float64]float64{25: .5, 50: 1, 60: 1.2, 90: 1.2} {
		near(t, "times", fig.cause.times(years), want, 1e-15)
	}
}

// TestEveryPartHasACause: no part of a body is without a chance of its own.
func TestEveryPartHasACause(t *testing.T) {
	fig, err := loadFigures()
	if err != nil {
		t.Fatal(err)
	}
	for _, id := range car.BodyIDs {
		b := body(t, id)
		for p := range b.Parts {
			if o := fig.cause.of(&b.Parts[p]); !(o.hurt > 0) {
				t.Errorf("%s: %s has no chance of a cause of its own", id, b.Parts[p].ID)
			}
		}
	}
}
