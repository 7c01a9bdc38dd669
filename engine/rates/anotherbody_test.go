package rates

import (
	"strings"
	"testing"
)

// withAnother is a sample with a member "another_body".
func withAnother(member string) []byte {
	return []byte(strings.Replace(string(Sample()), `"own_figures":`, `"another_body": `+member+`, "own_figures":`, 1))
}

const offered = `{"body": "two_door_unitary", "price": [4000, 9000, 20000], "to_be_had": 0.6}`

// TestAnotherBodyIsRefused: what cannot be is refused with its path and with what was
// expected, here and in the schema alike, and no rates are returned.
func TestAnotherBodyIsRefused(t *testing.T) {
	s := schema(t)
	for member, want := range map[string]string{
		`{}`:             "another_body.bodies: ",
		`{"bodies": []}`: "another_body.bodies: ",
		`{"bodies": [` + offered + `, ` + offered + `]}`:                                                                     "another_body.bodies[1].body: ",
		`{"bodies": [` + strings.Replace(offered, `, "to_be_had": 0.6`, "", 1) + `]}`:                                        "another_body.bodies[0].to_be_had: ",
		`{"bodies": [` + strings.Replace(offered, `"price": [4000, 9000, 20000], `, "", 1) + `]}`:                            "another_body.bodies[0].price: ",
		`{"bodies": [` + strings.Replace(offered, "0.6", "1.01", 1) + `]}`:                                                   "another_body.bodies[0].to_be_had: ",
		`{"bodies": [` + strings.Replace(offered, "0.6", "-0.1", 1) + `]}`:                                                   "another_body.bodies[0].to_be_had: ",
		`{"bodies": [` + strings.Replace(offered, "9000", "900", 1) + `]}`:                                                   "another_body.bodies[0].price: ",
		`{"bodies": [` + strings.Replace(offered, "4000", "0", 1) + `]}`:                                                     "another_body.bodies[0].price[0]: ",
		`{"bodies": [` + strings.Replace(offered, "two_door_unitary", "van", 1) + `]}`:                                       "another_body.bodies[0].body: ",
		`{"bodies": [` + offered + `], "advise_when_dearer_by_percent": -1}`:                                                 "another_body.advise_when_dearer_by_percent: ",
		`{"bodies": [` + offered + `], "advise_when_dearer_by_percent": 101}`:                                                "another_body.advise_when_dearer_by_percent: ",
		`{"bodies": [` + offered + `], "its_prep_times": 1.5}`:                                                               "another_body.its_prep_times: ",
		`{"bodies": [` + offered + `], "its_metal_hours": [60, 50, 420]}`:                                                    "another_body.its_metal_hours: ",
		`{"bodies": [` + offered + `], "moving_across_hours": {"fit": [1, 2, 3]}}`:                                           "another_body.moving_across_hours.metal: ",
		`{"bodies": [` + offered + `], "search_hours": {"fit": [1, 2, 3], "metal": [1, 2, 3]}}`:                              "another_body.search_hours: ",
		`{"bodies": [` + strings.Replace(offered, `"to_be_had"`, `"weeks": [0, 1, 2], "to_be_had"`, 1) + `], "source": "x"}`: "another_body.bodies[0].weeks[0]: ",
		`{"bodies": [` + offered + `], "chance": 0.6}`:                                                                       "another_body: ",
	} {
		r, err := Decode(withAnother(member))
		if r != nil || err == nil || !strings.HasPrefix(err.Error(), want) || !strings.Contains(err.Error(), "expected") {
			t.Errorf("%s: %v, expected the path %s", member, err, want)
		}
		order := strings.Contains(member, "900,") || strings.Contains(member, "50, 420") || strings.Count(member, "two_door") > 1
		if fault := fits(t, s, s, tree(t, withAnother(member))); fault == "" && !order {
			t.Errorf("the schema takes %s", member)
		}
	}
}

// TestAnotherBodyOfAFile: a file that says nothing offers no body; one with a price alone
// has the starting figures for the rest; one that states all has its own. The order of
// members does not change the check code, a figure does.
func TestAnotherBodyOfAFile(t *testing.T) {
	none, err := Decode(Sample())
	if err != nil {
		t.Fatal(err)
	}
	if _, found := none.AnotherBody.Find("two_door_unitary"); found || none.AnotherBody != nil {
		t.Error("the sample offers another body")
	}
	own := `{"bodies": [{"body": "two_door_unitary", "to_be_had": 0.25, "price": [1, 2, 3], "weeks": [1, 2, 4]}], "search_hours": {"fit": [1, 2, 3]},
		"moving_across_hours": {"fit": [2, 3, 4], "metal": [3, 4, 5]}, "papers": [5, 6, 7], "its_metal_hours": [6, 7, 8], "its_prep_times": 0.5,
		"advise_when_dearer_by_percent": 20, "source": "ours"}`
	file := func(member string) *Rates {
		r, err := Decode(withAnother(member))
		if err != nil {
			t.Fatal(err)
		}
		if fault := fits(t, schema(t), schema(t), tree(t, withAnother(member))); fault != "" {
			t.Errorf("the schema refuses %s: %s", member, fault)
		}
		return r
	}
	short, full := file(`{"bodies": [`+offered+`]}`), file(own)
	start := StartingAnotherBody()
	if a := short.AnotherBody; a.Search != start.Search || a.Papers != start.Papers || a.PapersStated || a.DearerByPercent != start.DearerByPercent || a.Offered[0].Weeks[1] <= 0 {
		t.Errorf("%+v", a)
	}
	one, found := full.AnotherBody.Find("two_door_unitary")
	if a := full.AnotherBody; !found || one.ToBeHad != 0.25 || one.Price != [3]float64{1, 2, 3} || one.Weeks != [3]float64{1, 2, 4} || a.Search != [3]float64{1, 2, 3} ||
		a.MovingFit != [3]float64{2, 3, 4} || a.MovingMetal != [3]float64{3, 4, 5} || a.Papers != [3]float64{5, 6, 7} || !a.PapersStated ||
		a.ItsMetal != [3]float64{6, 7, 8} || a.PrepTimes != 0.5 || a.DearerByPercent != 20 || a.Source != "ours" {
		t.Errorf("%+v", a)
	}
	if _, found := full.AnotherBody.Find("pickup"); found {
		t.Error("a body that is not listed is offered")
	}
	turned := file(`{"bodies": [{"to_be_had": 0.6, "price": [4000, 9000, 20000], "body": "two_door_unitary"}]}`)
	if turned.CheckCode() != short.CheckCode() || short.CheckCode() == none.CheckCode() || full.CheckCode() == short.CheckCode() {
		t.Error("check codes do not follow the figures")
	}
}
