package exposure

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/strict"
)

// worked reads a worked case of an independent calculation.
func worked(t *testing.T, name string) strict.Field {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("testdata", name))
	if err != nil {
		t.Fatal(err)
	}
	f, err := strict.Parse(text)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// workedPeriods are the told periods of a case; road years split one in two.
func workedPeriods(f strict.Field) (out []Period) {
	for _, p := range f.Items() {
		one := Period{p.Get("place").Text(20), p.Get("years").Number(0, 200), p.Get("kept").Text(40), Whole}
		if p.Has("road_years") {
			road, off := one, one
			road.Use, off.Use = OnRoad, OffRoad
			road.Years = min(p.Get("road_years").Number(0, 200), one.Years)
			off.Years -= road.Years
			out = append(out, road, off)
			continue
		}
		out = append(out, one)
	}
	return out
}

// historyPeriods are the periods of a history in the case's notation, with the use after
// the way of keeping.
func historyPeriods(f strict.Field) (out []Period) {
	for _, p := range f.Items() {
		kept, use, _ := strings.Cut(p.Get("kept").Text(40), "/")
		uses := map[string]Use{"": Whole, "on_road": OnRoad, "off_road": OffRoad}
		out = append(out, Period{p.Get("place").Text(20), p.Get("years").Number(0, 200), kept, uses[use]})
	}
	return out
}

// TestWorkedCases compares the alternatives of three histories, and μ of ten items of a
// body in each of them and in each reading, to all nine digits.
func TestWorkedCases(t *testing.T) {
	for _, name := range []string{"worked_01.json", "worked_05.json", "worked_06.json"} {
		f := worked(t, name)
		body, err := car.Load(f.Get("body").Text(40))
		if err != nil {
			t.Fatal(err)
		}
		told := f.Get("where_it_lived").Items()[0]
		histories, err := Exact([]Alternative{{told.Get("chance").Number(0, 1), workedPeriods(told.Get("periods"))}},
			Asked{Year: f.Get("this_year").Whole(1900, 2200)})
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		want := f.Get("history_levels").Items()
		if len(histories) != len(want) || len(want) != 3 {
			t.Fatalf("%s: %d histories, want %d", name, len(histories), len(want))
		}
		for k, w := range want {
			l := historyOf(t, histories, w.Get("rates_times").Number(0, 2))
			if l.Weight != w.Get("weight").Number(0, 1) || l.AgeYears != f.Get("age_years").Number(0, 200) {
				t.Errorf("%s: history %d is %+v", name, k, l)
			}
			periods := historyPeriods(w.Get("periods"))
			if len(periods) != len(l.Periods) {
				t.Fatalf("%s: history %d has periods %v, want %v", name, k, l.Periods, periods)
			}
			for i := range periods {
				if periods[i] != l.Periods[i] {
					t.Errorf("%s: history %d has periods %v, want %v", name, k, l.Periods, periods)
				}
			}
			items := f.Get("mu").Names()
			if len(items) != 10 {
				t.Errorf("%s: %d items", name, len(items))
			}
			for _, item := range items {
				n, ok := body.ItemNamed(item)
				if !ok {
					t.Fatalf("%s: no item %s", name, item)
				}
				p := body.PartOf(n)
				got := l.Medians(p.Rust.M, p.Rust.B, p.Rust.Life, p.Splash, p.MM)
				for r, levelled := range f.Get("mu").Get(item).Items() {
					if mu := levelled.Numbers(3, -20, 20)[k]; math.Abs(got[r]-mu) > 1e-9 {
						t.Errorf("%s, %s, history %d, reading %d: μ = %.10f, want %.9f", name, item, k, r, got[r], mu)
					}
				}
			}
		}
		if f.Err() != nil {
			t.Fatal(f.Err())
		}
	}
}

// historyOf finds the history whose rates are multiplied by the given number.
func historyOf(t *testing.T, histories []History, times float64) History {
	t.Helper()
	for _, l := range histories {
		if l.RatesTimes == times {
			return l
		}
	}
	t.Fatalf("no history with rates times %g", times)
	return History{}
}
