//go:build !js

package tests

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"slices"
	"testing"
)

// publishedCheck is one published figure about rust, checks or estimates, and how far
// the model may be from it.
type publishedCheck struct {
	ID, What, Published, Source, Seen, Trust string
	Use                                      string // test, warning or context
	Band                                     *[2]float64
	Count                                    string // the name of the model's figure in publishedCounts; empty = it has none
	Setting                                  publishedSetting
	Missed                                   *struct {
		Model float64
		Why   string
	}
	Note string
}

// publishedSetting is the situation that the figure describes. The car was made Age
// before Asked; without an age, Asked is the year of make.
type publishedSetting struct {
	Place          string
	Age            float64
	Asked          int     `json:"asked_in"`
	FleetMean      float64 `json:"fleet_mean"` // mean age of cars of 3 to 16 years
	Parts          []string
	MM, M, B, Life float64
	Splash         float64
}

// missedWithin is how far the model may be from what a missed check says about it: four
// standard errors of the counted cars, and a little for changes made for other reasons.
const missedWithin = 0.02

// verdict compares the model with a published figure, and says whether the result is a
// fault.
func (c *publishedCheck) verdict(model float64) (said string, fault bool) {
	inside := c.Band == nil || model >= c.Band[0] && model <= c.Band[1]
	switch {
	case c.Use != "test" && inside:
		return "inside", false
	case c.Use != "test":
		return "outside (" + c.Use + ")", false
	case inside && c.Missed != nil:
		return "inside, though marked as missed: take the mark away", true
	case inside:
		return "inside", false
	case c.Missed == nil:
		return "outside", true
	case math.Abs(model-c.Missed.Model) > missedWithin:
		return fmt.Sprintf("missed, and no longer at the %.3f that is told", c.Missed.Model), true
	}
	return "missed: " + c.Missed.Why, false
}

func publishedChecks(t *testing.T) (out []publishedCheck) {
	t.Helper()
	text, err := os.ReadFile("testdata/published.json")
	must(t, err)
	var file struct{ Checks []publishedCheck }
	must(t, json.Unmarshal(text, &file))
	return file.Checks
}

// TestPublishedRust prints every published check beside the model and enforces those
// that are tests. The model's first figure is by rust alone, before any earlier repair;
// where parts are counted, the one with causes of their own follows.
func TestPublishedRust(t *testing.T) {
	checks := publishedChecks(t)
	tests := 0
	for n := range checks {
		c := &checks[n]
		if !slices.Contains([]string{"test", "warning", "context"}, c.Use) || c.Source == "" || c.Seen == "" || c.Trust == "" || c.Published == "" {
			t.Errorf("%s: not told what it is for, or where it is from", c.ID)
		}
		if c.Use == "test" && (c.Band == nil || c.Count == "") {
			t.Errorf("%s: a test without a band or a count", c.ID)
		}
		if c.Count == "" {
			t.Logf("%-4s %s: published %s; %s", c.ID, c.What, c.Published, c.Note)
			continue
		}
		count, known := publishedCounts[c.Count]
		if !known {
			t.Errorf("%s: no count %s", c.ID, c.Count)
			continue
		}
		model, also := count(t, &c.Setting)
		said, fault := c.verdict(model)
		line := fmt.Sprintf("%-4s %s: published %s, band %.3g to %.3g; model %.4f", c.ID, c.What, c.Published, c.Band[0], c.Band[1], model)
		if also != nil {
			line += fmt.Sprintf(" (with causes of their own %.4f)", *also)
		}
		if line += "; " + said; fault {
			t.Error(line)
		} else {
			t.Log(line)
		}
		if c.Use == "test" {
			tests++
		}
	}
	if tests < 8 || len(checks) < 25 {
		t.Errorf("only %d checks, %d of them tests", len(checks), tests)
	}
}

// TestPublishedRustCanFail: the test detects figures outside its band, and a mark of a
// miss where there is none, or another one.
func TestPublishedRustCanFail(t *testing.T) {
	test := publishedCheck{Use: "test", Band: &[2]float64{.1, .2}}
	missed := test
	missed.Missed = &struct {
		Model float64
		Why   string
	}{.3, "told"}
	for _, one := range []struct {
		c     publishedCheck
		model float64
		fault bool
	}{{test, .15, false}, {test, .09, true}, {test, .21, true}, {missed, .3, false}, {missed, .15, true}, {missed, .35, true}, {publishedCheck{Use: "warning", Band: test.Band}, .9, false}} {
		if _, fault := one.c.verdict(one.model); fault != one.fault {
			t.Errorf("%+v at %g: fault %v", one.c, one.model, fault)
		}
	}
	// A body that never met salt does not match one of the early 1970s that did.
	for n, checks := 0, publishedChecks(t); n < len(checks); n++ {
		if c := checks[n]; c.ID == "D1" {
			flat := publishedSetting{Splash: 0}
			at, _ := publishedCounts["salt_ratio"](t, &flat)
			told, _ := publishedCounts["salt_ratio"](t, &c.Setting)
			if at >= told {
				t.Error("road salt makes no difference to what is splashed")
			}
		}
	}
}
