package estimate

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"slices"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/evidence"
	"underpaint/engine/exposure"
	"underpaint/engine/rates"
	"underpaint/engine/work"
)

// workedCase is a case of the independent calculation, as far as hours go: what is
// known of the car, and the hours that follow. The package damage holds its chances.
type workedCase struct {
	Answer   string `json:"earlier_work_answer"`
	Body     string `json:"body_pattern"`
	Standard string
	ThisYear int `json:"this_year"`
	Lived    []struct {
		Chance  float64
		Periods []struct {
			Place, Kept string
			Years       float64
			RoadYears   float64 `json:"road_years"`
		}
	} `json:"where_it_lived"`
	Tests     []workedLook
	SideTests []workedLook `json:"side_tests"`
	Survey    map[string]struct {
		Condition string
		Findings  []string
		Lead      *int `json:"failed_lead_joints"`
	}
	Expect struct {
		Hours struct {
			All   workedHours `json:"all_hours"`
			Metal workedHours `json:"metal_hours_after_the_strip"`
		}
	}
}

type workedLook struct{ Item, Side, Test, Result, Who string }

// workedHours are ends of hours with their standard errors.
type workedHours struct {
	Ends [4]float64 `json:"P10_P50_P80_P90"`
	SE   [4]float64 `json:"standard_error"`
}

func readWorked(t *testing.T, name string) (w workedCase) {
	t.Helper()
	text, err := os.ReadFile("../damage/testdata/" + name)
	if err == nil {
		err = json.Unmarshal(text, &w)
	}
	if err != nil {
		t.Fatal(err)
	}
	if w.Expect.Hours.All.Ends[0] == 0 || w.Expect.Hours.Metal.SE[3] == 0 {
		t.Fatal("the case has no hours")
	}
	return w
}

// known is what the case says of the car.
func (w workedCase) known(t *testing.T, b *car.Body) damage.Known {
	t.Helper()
	var lived []exposure.Alternative
	for _, l := range w.Lived {
		a := exposure.Alternative{Chance: l.Chance}
		for _, p := range l.Periods {
			one := exposure.Period{Climate: p.Place, Years: p.Years, Kept: p.Kept}
			if p.RoadYears > 0 {
				a.Periods = append(a.Periods, exposure.Period{Climate: p.Place, Years: p.RoadYears, Kept: p.Kept, Use: exposure.OnRoad})
				one.Years, one.Use = p.Years-p.RoadYears, exposure.OffRoad
			}
			a.Periods = append(a.Periods, one)
		}
		lived = append(lived, a)
	}
	levels, err := exposure.Exact(lived, exposure.Asked{Year: w.ThisYear})
	if err != nil {
		t.Fatal(err)
	}
	k := damage.Known{Body: b, Levels: levels, EarlierWork: w.Answer, LeadFailed: slices.Repeat([]int{-1}, len(b.Items))}
	w.look(t, &k)
	for id, r := range w.Survey {
		i, ok := b.ItemNamed(id)
		if !ok {
			t.Fatalf("no item %s", id)
		}
		e := evidence.SurveyEntry{Condition: r.Condition}
		switch {
		case len(r.Findings) == 1:
			e.Finding = r.Findings[0]
		case r.Findings != nil:
			e.Finding = damage.FindingIDs[damage.NoFinding]
		}
		read, err := evidence.Reading(b.PartOf(i), e)
		if err != nil {
			t.Fatal(err)
		}
		k.Seen[i] = evidence.Joined(k.Seen[i], read)
		if k.Cover.Seen != nil {
			k.Cover.Seen[i] = evidence.Joined(k.Cover.Seen[i], read)
		}
		if r.Lead != nil {
			k.LeadFailed[i] = *r.Lead
		}
	}
	return k
}

// look adds the looks of the case. It has a customer make some that the program leaves
// to the shop, good ones at a whole side: their log likelihood counts .6.
func (w workedCase) look(t *testing.T, k *damage.Known) {
	t.Helper()
	results := map[string]string{"bad": evidence.Yes, "good": evidence.No, "could not check": evidence.CouldNot}
	var looks []evidence.Look
	var byCustomers []damage.Worst
	for _, l := range slices.Concat(w.Tests, w.SideTests) {
		kind, _ := evidence.KindOf(l.Test)
		switch {
		case l.Who == evidence.ByShop || kind.CustomerCan:
			looks = append(looks, evidence.Look{Look: l.Test, On: l.Item + l.Side, Result: results[l.Result], By: l.Who})
		case l.Result == "good":
			side := damage.Worst{Items: evidence.OnSide(k.Body, l.Test, l.Side)}
			for c := range side.Likely {
				side.Likely[c] = math.Pow(1-kind.ChanceOfYes(c, damage.NoFinding, false), .6)
			}
			byCustomers = append(byCustomers, side)
		case results[l.Result] != evidence.CouldNot:
			t.Fatalf("%s by a customer: %s", l.Test, l.Result)
		}
	}
	seen, err := evidence.FromLooks(k.Body, looks)
	if err != nil {
		t.Fatal(err)
	}
	k.Seen, k.Worst = seen.Items, append(seen.Worst, byCustomers...)
	k.Cover = damage.Cover{Fresh: seen.Cover, Seen: seen.CoveredItems, Worst: seen.CoveredWorst}
	if k.Cover.Worst != nil {
		k.Cover.Worst = append(k.Cover.Worst, byCustomers...)
	}
}

// workedBlocks is how many blocks of cars the hours of a case are taken from.
const workedBlocks = 16

// run imagines cars of the case, done at so many of the data files' hours.
func (w workedCase) run(t *testing.T, pace float64) *Run {
	t.Helper()
	must := func(err error) {
		if err != nil {
			t.Helper()
			t.Fatal(err)
		}
	}
	b, err := car.Load(w.Body)
	must(err)
	common, err := car.LoadCommon()
	must(err)
	r, err := rates.Decode(rates.Sample())
	must(err)
	allAt(pace)(r)
	table, err := work.NewTable(b, common, r, w.Standard, "whole_body")
	must(err)
	// The calculation knows of no panels that are fitted whole because their pieces
	// would cost more, so old metal is kept here.
	keeps := work.Undecided()
	keeps.KeepOldMetal = true
	table, err = table.With(keeps)
	must(err)
	model, err := damage.New(w.known(t, b), damage.StandardGrids)
	must(err)
	run := NewRun(model, []*work.Table{table}, 1)
	for range workedBlocks {
		run.Add()
	}
	return run
}

// against lists the ends of a run's hours, in thousandths, that are not those of the case.
func (h workedHours) against(t *testing.T, what string, hours []int64) (faults []string) {
	t.Helper()
	for n, p := range []float64{.1, .5, .8, .9} {
		var of [Randomisations]float64
		for j := range of {
			var part []int64
			for at := j * Turns; at < len(hours); at += Randomisations * Turns {
				part = append(part, hours[at:at+Turns]...)
			}
			slices.Sort(part)
			of[j] = chance.QuantileMinor(part, p) / 1000
		}
		all := slices.Clone(hours)
		slices.Sort(all)
		got, se := chance.QuantileMinor(all, p)/1000, math.Hypot(standardError(of[:]), h.SE[n])
		line := fmt.Sprintf("%s, P%.0f: %.1f, independently %.1f, standard error of both %.1f", what, 100*p, got, h.Ends[n], se)
		if t.Log(line); math.Abs(got-h.Ends[n]) > 4*se {
			faults = append(faults, line)
		}
	}
	return faults
}
