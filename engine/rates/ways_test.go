package rates

import (
	"strings"
	"testing"

	"underpaint/engine/car"
)

// ownWays is a complete table of what is done: a full panel on everything worse than
// sound, except for the rows given as "standard/kind/condition".
func ownWays(rows map[string]any) map[string]any {
	table := map[string]any{}
	for _, standard := range car.Standards {
		kinds := map[string]any{}
		for _, kind := range Kinds {
			conditions := map[string]any{}
			for i, condition := range car.ConditionIDs {
				conditions[condition] = []any{0, 0, 0, 0, 1, 0}
				if i == 0 {
					conditions[condition] = []any{1, 0, 0, 0, 0, 0}
				}
				if row, there := rows[standard+"/"+kind+"/"+condition]; there {
					conditions[condition] = row
				}
			}
			kinds[kind] = conditions
		}
		table[standard] = kinds
	}
	return table
}

func TestWhatIsDone(t *testing.T) {
	if r := decode(t, Sample()); r.WhatIsDone != nil {
		t.Error("the sample has starting figures, but a table was read")
	}
	row := []any{0, 0, 0.15, 0.5, 0.33, 0.02}
	r := decode(t, changed(t, Sample(), "what_is_done", ownWays(map[string]any{"show/hidden/rusted_through": row})))
	got := r.WhatIsDone.Chance[1][1][4]
	if got != [car.Ways]float64{0, 0, 0.15, 0.5, 0.33, 0.02} {
		t.Errorf("show, hidden, rusted through: %v", got)
	}
	if got := r.WhatIsDone.Chance[2][3][0]; got != [car.Ways]float64{1} {
		t.Errorf("concours, near a mounting, sound: %v", got)
	}
	thirds := []any{0.333333, 0.333333, 0.333333, 0, 0, 0}
	decode(t, changed(t, Sample(), "what_is_done", ownWays(map[string]any{"show/hidden/pinholes": thirds})))
}

func TestWhatIsDoneRefused(t *testing.T) {
	at := "what_is_done.show.outer.pinholes"
	for _, c := range []struct {
		row      any
		path     string
		expected string
	}{
		{[]any{0, 0, 0.55, 0.35, 0.1, 0.1}, at, "six chances that add to 1"},
		{[]any{0, 0, 0.55, 0.35, 0.0999, 0}, at, "six chances that add to 1"},
		{[]any{0, 0, 0.55, 0.35, 0.1}, at, "6 numbers"},
		{[]any{-0.1, 0, 0.65, 0.35, 0.1, 0}, at + "[0]", "from 0 to 1"},
		{[]any{0, 0, raw("1e308"), 0, 0, 0}, at + "[2]", "from 0 to 1"},
	} {
		file := changed(t, Sample(), "what_is_done", ownWays(map[string]any{"show/outer/pinholes": c.row}))
		if _, err := Decode(file); err == nil || !strings.HasPrefix(err.Error(), c.path+": ") || !strings.Contains(err.Error(), c.expected) {
			t.Errorf("%v: expected %q at %s, got %v", c.row, c.expected, c.path, err)
		}
	}
	for _, gone := range []string{"what_is_done.show", "what_is_done.show.outer", "what_is_done.show.outer.pinholes"} {
		complains(t, gone, gone, changed(t, Sample(), "what_is_done", ownWays(nil), gone, missing), "left out")
		complains(t, gone, gone[:strings.LastIndex(gone, ".")], changed(t, Sample(), "what_is_done", ownWays(nil), gone+"x", 1), "an unknown name")
	}
}

func TestPartsFind(t *testing.T) {
	row := func(body, price, had string) string {
		return `{` + body + `"part":"door_skin","way":"full","price":` + price + `,"had":` + had + `}`
	}
	here := `"body":"pickup",`
	for _, rows := range []string{
		row("", "[1,2,3]", `"found"`) + "," + row(here, "null", `"by_hand"`),
		row(here, "null", `"by_hand"`) + "," + row("", "[1,2,3]", `"found"`),
	} {
		p := decode(t, changed(t, Sample(), "parts.prices", raw("["+rows+"]"))).Parts
		if one, ok := p.Find("two_door_unitary", "door_skin", car.Full); !ok || one.Price != [3]float64{1, 2, 3} || one.Had != "found" {
			t.Errorf("two-door: %+v %v", one, ok)
		}
		if one, ok := p.Find("pickup", "door_skin", car.Full); !ok || one.Priced || one.Had != "by_hand" {
			t.Errorf("pickup: %+v %v", one, ok)
		}
		if _, ok := p.Find("pickup", "door_skin", car.Section); ok {
			t.Error("a price for a way without one")
		}
		if got := p.HadAs("pickup", "door_skin") + " " + p.HadAs("four_door_saloon", "door_skin") + " " + p.HadAs("pickup", "hood"); got != "by_hand found " {
			t.Errorf("had as %q", got)
		}
	}
	// A price for this body alone leaves it to the general entry to say where the part
	// comes from.
	p := decode(t, changed(t, Sample(), "parts.prices", raw("["+row(here, "[1,2,3]", "null")+","+row("", "[1,2,3]", `"found"`)+"]"))).Parts
	if got := p.HadAs("pickup", "door_skin"); got != "found" {
		t.Errorf("had as %q", got)
	}
	// Of two ways to repair one part, only one has to say where it comes from.
	section := `{"part":"door_skin","way":"section","price":[1,2,3],"had":null}`
	p = decode(t, changed(t, Sample(), "parts.prices", raw("["+row("", "[1,2,3]", `"found"`)+","+section+"]"))).Parts
	if got := p.HadAs("pickup", "door_skin"); got != "found" {
		t.Errorf("had as %q", got)
	}
}
