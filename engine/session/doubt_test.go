package session

import (
	"math"
	"testing"

	"underpaint/engine/carfile"
	"underpaint/engine/pricing"
)

// TestDoubtOfTheStage: every stage is priced with its own doubt. That of chosen ways
// begins only when a way is chosen for every damaged part.
func TestDoubtOfTheStage(t *testing.T) {
	s := opened(t)
	c := decoded(t, seenCar)
	stages, err := s.openStages(c)
	if err != nil {
		t.Fatal(err)
	}
	of := func(stage string, chosen bool) pricing.Doubt {
		return doubted(s.Rates, stages.plain, c, stages.body, stage, chosen).Doubt()
	}
	for _, id := range append([]string{carfile.Told}, carfile.StageIDs...) {
		if got, want := of(id, false), pricing.DoubtAt(s.Rates, id); got != want || got.SD == 0 {
			t.Errorf("%s: %+v, expected %+v", id, got, want)
		}
	}
	if undecided(c, stages.body) == 0 {
		t.Fatal("everything is decided on this car")
	}
	if got, want := of(carfile.Survey, true), pricing.DoubtAt(s.Rates, carfile.Survey); got != want {
		t.Errorf("with some ways chosen: %+v, expected %+v", got, want)
	}
	for _, i := range damagedItems(c, stages.body) {
		if id := stages.body.Items[i].ID; chosenWay(c, id) == nil {
			c.Ways = append(c.Ways, carfile.Choice{On: id, Way: "section"})
		}
	}
	if got, want := of(carfile.Survey, true), pricing.DoubtAt(s.Rates, pricing.WaysStage); got != want {
		t.Errorf("with every way chosen: %+v, expected %+v", got, want)
	}
}

// TestDoubtAddsUp: the doubt of a stage is that of the shop and that of the car together,
// as independent standard deviations add up (ISO/IEC Guide 98-3:2008, 5.1.2), and the
// growth is the shop's own per cent. The totals are those that the doubt was set by.
func TestDoubtAddsUp(t *testing.T) {
	s := opened(t)
	for id, want := range map[string]float64{"told": .150, "walk_round": .108, "survey": .078, "opening_up": .071, "ways": .064} {
		if got := pricing.DoubtAt(s.Rates, id); math.Abs(got.SD-want) > 0.0006 {
			t.Errorf("%s: %.4f, expected %.3f", id, got.SD, want)
		}
	}
	if got := math.Exp(pricing.DoubtAt(s.Rates, "told").Growth); math.Abs(got-1.05) > 1e-12 {
		t.Errorf("grows by %.4f, expected 1.05", got)
	}
}
