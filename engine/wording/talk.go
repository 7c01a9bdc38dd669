package wording

import (
	"slices"
	"strings"

	"underpaint/engine/car"
	"underpaint/engine/session"
)

// Found says what is under the paint of one simulated car: the zones with most of the
// rusted-through items, worst first, and how many each has.
func (t *Text) Found(b *car.Body, holed []int) string {
	if len(holed) == 0 {
		return "No part is rusted through."
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
		return "1 part is rusted through or gone: " + strings.TrimSuffix(text, " 1") + "."
	}
	return Grouped(int64(len(holed))) + " parts are rusted through or gone. Most of them: " + text + "."
}

// The texts around twenty simulated cars.
const (
	TwentyLine = "Same kind of car, same answers. Here are twenty ways it could turn out."
	TwentyNote = "These are simulated cars: cars like yours that we make up from the odds, each with its own rust and its own price. None of them is your actual car."
)

// EightOf says between which amounts 8 in 10 of many simulated cars lie.
func (t *Text) EightOf(p session.Prices) string {
	e := p.Shown()
	return eightOutOfTen + t.span(e.Low, e.High) + "."
}

// The texts around the two ranges: as cars really rust, and as if each part rusted
// independently.
const (
	IndependentLabel = "If each part rusted on its own"
	TogetherLabel    = "As cars really rust"
	TwoWaysLine      = "Rust comes in groups: where one part has gone, the parts around it often have too. That is what makes the range wide."
	TwoWaysNote      = "Both rows allow for how well or badly the work goes on the car as a whole."
)

// TwoWays compares the widths of those two ranges.
func TwoWays(independent, together session.Prices) string {
	ratio := independent.Width() / together.Width()
	if ratio > 0.96 {
		return "We already know so much about this car that rust in groups no longer makes the range wider. What is left is how the work goes and what is still closed up."
	}
	return "If each part rusted on its own, the range would be " + widthWords(ratio, "it really is") + ", because good parts would make up for bad ones. The odds for each single part are the same in both rows."
}

// The texts around one part whose condition is supposed to be known.
const (
	AsKnownLabel = "As we know it now"
	IfSoLabel    = "If so"
	SupposeLine  = "One check tells you about the parts that share the same water, and a little about the whole car."
)

// Supposed compares the width if the supposition is true with the width now.
func Supposed(s *session.Supposed) string {
	return "If you knew just that, the range would be " + widthWords(s.IfSo.Width()/s.Now.Width(), "now") + "."
}
