package wording

import (
	"slices"
	"strings"

	"underpaint/engine/car"
	"underpaint/engine/session"
)

// Found says in words what is under the paint of one simulated car: the zones, worst
// first, with how many of the items given are in each.
func (t *Text) Found(b *car.Body, holed []int) string {
	if len(holed) == 0 {
		return "No place is rusted through."
	}
	zone, order := make([]int, len(b.Zones)), make([]int, len(b.Zones))
	for z := range order {
		order[z] = z
	}
	for _, i := range holed {
		zone[b.PartOf(i).Zone]++
	}
	slices.SortStableFunc(order, func(x, y int) int { return zone[y] - zone[x] })
	var names []string
	for _, z := range order[:min(3, len(order))] {
		if zone[z] > 0 {
			names = append(names, lowerFirst(t.In(b.Zones[z].Name))+" "+Grouped(int64(zone[z])))
		}
	}
	text := strings.Join(names, ", ")
	if len(holed) == 1 {
		return "1 place is rusted through or gone, in: " + strings.TrimSuffix(text, " 1") + "."
	}
	return Grouped(int64(len(holed))) + " places are rusted through or gone, most of them in: " + text + "."
}

// What is said of twenty such cars.
const (
	TwentyLine = "Same kind of car, same answers. These are twenty ways it could turn out."
	TwentyNote = "Imagined cars: made up from the odds, each with its own rust and its own price. None is the car in hand."
)

// EightOf says the ends of many simulated cars.
func (t *Text) EightOf(p session.Prices) string {
	e := p.Shown()
	return "8 in 10: " + t.span(e.Low, e.High) + "."
}

// What is said of the range as cars rust and of independent panels.
const (
	IndependentLabel = "Each panel on its own luck"
	TogetherLabel    = "As cars really rust"
	TwoWaysLine      = "Rust keeps company. That is where the width comes from."
	TwoWaysNote      = "How hard the work goes on the whole car is in both rows."
)

// TwoWays compares the two widths.
func TwoWays(independent, together session.Prices) string {
	ratio := independent.Width() / together.Width()
	if ratio > 0.96 {
		return "So much of this car is known that what keeps company no longer makes the range wider: what is left is in how the work goes and in what is still closed."
	}
	return "With every panel on its own luck the range would be " + widthWords(ratio, "it really is") + ": one bad panel would be made up for by another good one. The odds of each single panel are the same in both rows."
}

// What is said of one part taken as known.
const (
	AsKnownLabel = "As known now"
	IfSoLabel    = "If so"
	SupposeLine  = "One look tells about the places that share its water, and a little about the whole car."
)

// Supposed compares the width if so with the width now.
func Supposed(s *session.Supposed) string {
	return "Knowing that alone, the range would be " + widthWords(s.IfSo.Width()/s.Now.Width(), "now") + "."
}
