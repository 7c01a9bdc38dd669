package exposure

import (
	"errors"
	"strings"
	"testing"

	"underpaint/engine/strict"
)

// perCountry is the number of places each country must have: the states and the District
// of Columbia (51), provinces and territories (10 + 3), the nine regions of England and
// three nations, states and mainland territories.
var perCountry = []struct {
	country string
	n       int
}{{"United States", 51}, {"Canada", 13}, {"United Kingdom", 12}, {"Ireland", 1}, {"Europe", 30}, {"Australia", 8}, {"New Zealand", 2}}

func TestPlaces(t *testing.T) {
	seen, count, at := map[string]bool{}, map[string]int{}, 0
	last := ""
	for _, p := range Places() {
		if seen[p.ID] {
			t.Errorf("%s twice", p.ID)
		}
		seen[p.ID] = true
		if _, clash := ClimateOf(p.ID); clash || p.ID == NotSure {
			t.Errorf("%s is also a climate", p.ID)
		}
		if p.Country != perCountry[at].country {
			at++
			last = ""
			if at >= len(perCountry) || p.Country != perCountry[at].country {
				t.Fatalf("%s: %q out of order", p.ID, p.Country)
			}
		}
		if p.Name.US <= last {
			t.Errorf("%s: %q does not come after %q", p.ID, p.Name.US, last)
		}
		last = p.Name.US
		count[p.Country]++
		if len(p.Source) < 20 || !strings.Contains(p.Source, "assumption") && !strings.Contains(p.Source, "ISO") {
			t.Errorf("%s: source %q", p.ID, p.Source)
		}
		if got, ok := PlaceOf(p.ID); !ok || got != p {
			t.Errorf("PlaceOf does not find %s", p.ID)
		}
	}
	for _, c := range perCountry {
		if count[c.country] != c.n {
			t.Errorf("%s: %d places, want %d", c.country, count[c.country], c.n)
		}
	}
}

// TestNoPlaceWithoutSource checks that every source in the file is used and that every
// figure in the other files has one.
func TestNoPlaceWithoutSource(t *testing.T) {
	f, err := strict.Parse(placesFile)
	if err != nil {
		t.Fatal(err)
	}
	used := map[string]bool{}
	for _, p := range f.Get("places").Items() {
		used[p.Get("source").Text(40)] = true
	}
	for _, name := range f.Get("sources").Names() {
		if !used[name] {
			t.Errorf("no place uses source %s", name)
		}
	}
	if f.Err() != nil {
		t.Fatal(f.Err())
	}
	for _, file := range []struct {
		text         []byte
		rows, groups []string
	}{
		{climatesFile, []string{"climates"}, []string{"place_not_sure", "shore_not_sure"}},
		{keptFile, []string{"kept", "road_years_answers"}, []string{"road_years_not_sure"}},
		{erasFile, nil, []string{"thickness", "paint_life", "road_salt"}},
		{historyFile, nil, []string{"doubt", "least_years", "restoration", "made_in_decade", "made_not_sure", "youngest"}},
	} {
		g, err := strict.Parse(file.text)
		if err != nil {
			t.Fatal(err)
		}
		g.Keys(append(append([]string{"format", "about"}, file.rows...), file.groups...)...)
		for _, list := range file.rows {
			for _, row := range g.Get(list).Items() {
				sourced(t, row)
			}
		}
		for _, group := range file.groups {
			sourced(t, g.Get(group))
		}
		if g.Err() != nil {
			t.Fatal(g.Err())
		}
	}
}

// sourced checks that a source says where figures come from, or that they are assumed.
func sourced(t *testing.T, f strict.Field) {
	t.Helper()
	source := f.Get("source").Text(800)
	for _, word := range []string{"assumption", "ISO", "definition"} {
		if strings.Contains(strings.ToLower(source), strings.ToLower(word)) {
			return
		}
	}
	t.Errorf("%s: source %q", f.Path(), source)
}

// TestChancesAddUp checks that every list of alternatives in the data adds up to 1.
func TestChancesAddUp(t *testing.T) {
	sums := map[string]float64{}
	add := func(name string, c chances) {
		for _, v := range c {
			sums[name] += v.chance
		}
	}
	add("doubt", data().doubt)
	add("road years", data().roadYearsTimes)
	add("decade", data().decade)
	add("made not sure", data().notSure)
	for id, c := range data().roadYears {
		add(id, c)
	}
	for _, w := range data().placeNotSure {
		sums["place"] += w.Chance
	}
	for _, w := range data().shoreNotSure {
		sums["shore"] += w.Chance
	}
	for _, k := range data().kept {
		sums["kept"] += k.ifNotSure
	}
	if len(sums) != 11 {
		t.Errorf("%d lists, want 11", len(sums))
	}
	for name, sum := range sums {
		if sum < 1-1e-12 || sum > 1+1e-12 {
			t.Errorf("%s adds to %g", name, sum)
		}
	}
}

func TestClimateAt(t *testing.T) {
	for _, c := range []struct{ place, shore, want, path string }{
		{"us_ohio", "", "salt", ""}, {"us_ohio", "inland", "salt", ""}, {"us_ohio", NotSure, "salt", ""},
		{"us_ohio", "shore", "", "shore"}, {"us_ohio", "near", "", "shore"},
		{"us_california", "inland", "mild", ""}, {"us_california", "near", "damp", ""}, {"us_california", "shore", "sea", ""},
		{"au_western_australia", "near", "damp", ""}, {"us_maine", "near", "salt", ""}, {"ca_newfoundland_and_labrador", "near", "sea", ""},
		{"dry", "", "dry", ""}, {"dry", "near", "damp", ""}, {"salt", "shore", "sea", ""},
		{"us_atlantis", "", "", "place"}, {"us_ohio", "beach", "", "shore"},
	} {
		got, err := ClimateAt(c.place, c.shore)
		var wrong *strict.Error
		if errors.As(err, &wrong) != (c.path != "") || wrong != nil && wrong.Path != c.path || got != c.want {
			t.Errorf("%s %s: %q %v", c.place, c.shore, got, err)
		}
	}
}

func TestClimatesAt(t *testing.T) {
	for _, c := range []struct {
		place, shore string
		want         []Weighted
	}{
		{"us_ohio", "", []Weighted{{"salt", 1}}},
		{"us_ohio", NotSure, []Weighted{{"salt", 1}}},
		{"mild", NotSure, []Weighted{{"mild", 1}}},
		{"us_california", NotSure, []Weighted{{"mild", .8}, {"damp", .15}, {"sea", .05}}},
		{"us_maine", NotSure, []Weighted{{"salt", .8 + .15}, {"sea", .05}}},
		{NotSure, "", []Weighted{{"dry", .2}, {"mild", .2}, {"damp", .2}, {"salt", .2}, {"sea", .2}}},
		{NotSure, "near", []Weighted{{"damp", .2 + .2 + .2}, {"salt", .2}, {"sea", .2}}},
	} {
		got, err := ClimatesAt(c.place, c.shore)
		if err != nil || len(got) != len(c.want) {
			t.Errorf("%s %s: %v %v", c.place, c.shore, got, err)
			continue
		}
		for i := range got {
			if got[i].ID != c.want[i].ID || got[i].Chance < c.want[i].Chance-1e-12 || got[i].Chance > c.want[i].Chance+1e-12 {
				t.Errorf("%s %s: %v, want %v", c.place, c.shore, got, c.want)
				break
			}
		}
	}
	if _, err := ClimatesAt("us_atlantis", ""); err == nil {
		t.Error("accepted an unknown place")
	}
	got, _ := ClimatesAt(NotSure, "")
	got[0].Chance = 9
	if again, _ := ClimatesAt(NotSure, ""); again[0].Chance != .2 {
		t.Error("the answer is shared with the caller")
	}
}
