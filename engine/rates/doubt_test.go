package rates

import (
	"math"
	"strings"
	"testing"
)

// withDoubt is the sample with a member "doubt".
func withDoubt(doubt string) []byte {
	return []byte(strings.Replace(string(Sample()), `"own_figures":`, `"doubt": `+doubt+`, "own_figures":`, 1))
}

// row is one figure for every stage.
func row(told, rest string) string {
	return `{"told": ` + told + `, "walk_round": ` + rest + `, "survey": ` + rest + `, "opening_up": ` + rest + `, "ways": ` + rest + `}`
}

// TestDoubtIsRefused: what cannot be is refused with its path, and no rates are returned.
func TestDoubtIsRefused(t *testing.T) {
	good := row("0.1", "0.05")
	for doubt, path := range map[string]string{
		`{"shared": ` + good + `, "own": ` + row("0.05", "0.1") + `}`:                      "doubt.own.walk_round",
		`{"shared": ` + row("0.6", "0.1") + `, "own": ` + good + `}`:                       "doubt.shared.told",
		`{"shared": ` + row("-0.1", "0") + `, "own": ` + good + `}`:                        "doubt.shared.told",
		`{"shared": ` + good + `}`:                                                         "doubt.own",
		`{"shared": {"told": 0.1}, "own": ` + good + `}`:                                   "doubt.shared.walk_round",
		`{"shared": ` + good + `, "own": ` + good + `, "growth": 3}`:                       "doubt: expected one of",
		`{"shared": ` + good + `, "own": ` + strings.Replace(good, "0.1", "null", 1) + `}`: "doubt.own.told",
	} {
		r, err := Decode(withDoubt(doubt))
		if r != nil || err == nil || !strings.HasPrefix(err.Error(), path) {
			t.Errorf("%s: %v, expected the path %s", doubt, err, path)
		}
	}
}

// TestDoubtOfAFile: a file that says nothing has the starting figures and its check code
// of before; one that states its own has those.
func TestDoubtOfAFile(t *testing.T) {
	r, err := Decode(changed(t, Sample(), "prices_over_time", missing)) // it came later
	if err != nil || r.Doubt != StartingDoubt() || r.Doubt.Stated || !r.Allowance.InRange || r.CheckCode() != "10d43 0c88d" {
		t.Fatalf("%v: %+v, %s", err, r.Doubt, r.CheckCode())
	}
	r, err = Decode(withDoubt(`{"shared": ` + row("0.1", "0.05") + `, "own": ` + row("0.2", "0") + `}`))
	if err != nil || !r.Doubt.Stated || r.Doubt.Shared["told"] != 0.1 || r.Doubt.Own["ways"] != 0 {
		t.Fatalf("%v: %+v", err, r)
	}
}

// TestGrowth: before the survey the first allowance counts, from it on the second, and
// neither where the shop names it beside the range.
func TestGrowth(t *testing.T) {
	in, err := Decode(Sample())
	if err != nil {
		t.Fatal(err)
	}
	apart, err := Decode([]byte(strings.Replace(string(Sample()), `"before_percent": "5",`, `"before_percent": "5", "in_range": false,`, 1)))
	if err != nil {
		t.Fatal(err)
	}
	for n, id := range DoubtStages {
		want := []float64{5, 5, 3, 3, 3}[n]
		if got := in.Growth(id); got != want || apart.GrowthAllowed(id) != want {
			t.Errorf("%s: %g %%, expected %g", id, got, want)
		}
		if got := apart.Growth(id); got != 0 {
			t.Errorf("%s: %g, although it is apart", id, got)
		}
	}
}

// TestStartingDoubtReachesItsClasses: with the modelled spread of the samples, the
// starting doubt is near the middle of the accuracy classes of AACE International's
// recommended practice 18R-97 that a car reaches: the geometric mean of classes 5 and 4
// when told, of 4 and 3 after a walk-around, of 3 and 2 after the survey. The classes'
// ends are at 80 % confidence (table from memory).
func TestStartingDoubtReachesItsClasses(t *testing.T) {
	// Low and high ends of a class are ranges; the middle of each is taken.
	sd := func(low, high float64) float64 { return math.Log((1+high)/(1-low)) / 2 / 1.2815515655446004 }
	class := map[int]float64{5: sd(.35, .65), 4: sd(.225, .35), 3: sd(.15, .20), 2: sd(.10, .125)}
	// Standard deviations of the log of the modelled price: medians over the samples.
	modelled := map[string]float64{"told": 0.234, "walk_round": 0.138, "survey": 0.097}
	between := map[string][2]int{"told": {5, 4}, "walk_round": {4, 3}, "survey": {3, 2}}
	d := StartingDoubt()
	for id, own := range modelled {
		whole := math.Sqrt(own*own + d.Shared[id]*d.Shared[id] + d.Own[id]*d.Own[id])
		want := math.Sqrt(class[between[id][0]] * class[between[id][1]])
		if math.Abs(whole/want-1) > 0.2 {
			t.Errorf("%s: %.3f with the doubt, %.3f between the classes", id, whole, want)
		}
	}
}
