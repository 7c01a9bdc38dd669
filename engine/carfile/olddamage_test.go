package carfile

import (
	"reflect"
	"strings"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/olddamage"
)

// hitCar is the good car with more members.
func hitCar(t *testing.T, members string) (*Car, error) {
	t.Helper()
	return Decode([]byte(strings.Replace(goodCar, `"standard"`, members+`"standard"`, 1)))
}

const stagesBegun = `"stages":[{"stage":"walk_round","on":"2026-06-01"},{"stage":"survey","on":"2026-06-02"}],`

// TestHitReadAndWritten: the answer, the checks and the survey of old accidents are read
// and written unchanged, and a car without them has no such member.
func TestHitReadAndWritten(t *testing.T) {
	c, err := hitCar(t, `"hit":{"answer":"hard","where":["front","roof"]},`+stagesBegun+`"survey_car":{"zones":{"front":"roughly","left":"none"},"square":"not_measured"},`)
	if err != nil {
		t.Fatal(err)
	}
	again, err := Decode(c.Text())
	if err != nil || !reflect.DeepEqual(c, again) {
		t.Fatalf("%v: %s", err, c.Text())
	}
	b, err := c.OneBody()
	if err != nil {
		t.Fatal(err)
	}
	k := c.OldDamage(b, Survey)
	if k.Answer != "hard" || len(k.Where) != 2 || k.Zones[olddamage.Front] != "roughly" || k.Square != "not_measured" || k.RoadYears < 10 {
		t.Errorf("%+v", k)
	}
	if k = c.OldDamage(b, Told); k.Answer != "hard" || k.Zones[olddamage.Front] != "" || k.Square != "" {
		t.Errorf("before the survey: %+v", k)
	}
	plain, err := Decode([]byte(goodCar))
	if err != nil || strings.Contains(string(plain.Text()), "hit") || strings.Contains(string(plain.Text()), "survey_car") {
		t.Errorf("%v: %s", err, plain.Text())
	}
}

// TestTwistRead: the finding of older files is read as out of square.
func TestTwistRead(t *testing.T) {
	c, err := hitCar(t, stagesBegun+`"whole_car":["twist"],`)
	if err != nil || c.Measured() != olddamage.OutOfSquare || !strings.Contains(string(c.Text()), `"whole_car":["twist"]`) {
		t.Errorf("%v: %s", err, c.Text())
	}
}

// TestHitRefused: what cannot be so is refused by path, with what was found and expected.
func TestHitRefused(t *testing.T) {
	for members, want := range map[string]string{
		`"hit":{"answer":"never"},`:                                                  "hit.answer: expected one of ",
		`"hit":{"answer":"not_sure","where":["front"]},`:                             "hit.where: expected no place, because only a car that was hit lightly or hard has one, found a place, with the answer not_sure",
		`"hit":{"answer":"hard","where":["front","front"]},`:                         "hit.where[1]: expected each place once, found front twice",
		`"hit":{"answer":"hard","where":["bonnet"]},`:                                "hit.where[0]: expected one of ",
		`"survey_car":{"zones":{"front":"mended"}},`:                                 "survey_car.zones.front: expected one of ",
		`"survey_car":{"zones":{"front":"well","front":"well"}},`:                    "",
		`"survey_car":{"square":"yes"},`:                                             "survey_car.square: expected one of ",
		`"survey_car":{"square":"square"},`:                                          "survey_car: expected the survey stage with its date",
		stagesBegun + `"survey_car":{"zones":{"rear":"crooked"},"square":"square"},`: "survey_car.square: expected out, because a body with a crooked zone is out of square",
		stagesBegun + `"whole_car":["twist"],"survey_car":{"square":"square"},`:      "survey_car.square: expected only one of the two",
		`"looks":[{"look":"diagonals","on":"car","result":"yes","by":"customer"}],`:  "looks[0].by: expected shop, because only a shop can do the check diagonals, found customer",
		`"looks":[{"look":"lid_gap","on":"left","result":"yes","by":"shop"}],`:       "looks[0].on: expected one of front, rear for the check lid_gap",
		`"looks":[{"look":"ripples","on":"front","result":"yes","by":"shop"},{"look":"ripples","on":"front","result":"no","by":"shop"}],`: "looks[1].on: expected one answer to each check by the same person (entry 0 answers this check already)",
	} {
		c, err := hitCar(t, members)
		if err == nil {
			if wrong := c.Check(); len(wrong) > 0 {
				err = wrong[0]
			}
		}
		if err == nil || !strings.HasPrefix(err.Error(), want) {
			t.Errorf("%s: %v, expected %s", members, err, want)
		}
	}
	open, err := Decode([]byte(strings.Replace(strings.Replace(goodCar, "two_door_unitary", "convertible_unitary", 1), `"standard"`, `"looks":[{"look":"ripples","on":"roof","result":"yes","by":"shop"}],"standard"`, 1)))
	if err != nil {
		t.Fatal(err)
	}
	if wrong := open.Check(); len(wrong) != 1 || !strings.HasPrefix(wrong[0].Error(), "looks[0].on: expected a place of this body, which has no roof") {
		t.Errorf("%v", wrong)
	}
}

// TestOldLooksKeepPaths: a check of rust behind one of old damage is refused at its own
// place in the file.
func TestOldLooksKeepPaths(t *testing.T) {
	c, err := hitCar(t, `"looks":[{"look":"ripples","on":"front","result":"yes","by":"shop"},{"look":"tap","on":"nowhere","result":"yes","by":"shop"}],`)
	if err != nil {
		t.Fatal(err)
	}
	if wrong := c.Check(); len(wrong) != 1 || !strings.HasPrefix(wrong[0].Error(), "looks[1].on") {
		t.Errorf("%v", wrong)
	}
}

// TestHandSeen: a survey tells of the earlier hand by what it recorded on parts replaced
// and patched, and of blasting by the skins that it saw bare.
func TestHandSeen(t *testing.T) {
	b, err := car.Load("two_door_unitary")
	if err != nil {
		t.Fatal(err)
	}
	c, err := hitCar(t, stagesBegun+`"survey":[{"on":"hood.whole","stage":"survey","condition":"sound","finding":"replaced","also":["bad_panel","blast_warp"]},
{"on":"trunk_lid.whole","stage":"survey","condition":"sound"},{"on":"outer_sill.left","stage":"survey","condition":"gone","finding":"patch_over_rust","also":["brazed"]},
{"on":"inner_sill.left","stage":"survey","could_not_see":true}],`)
	if err != nil {
		t.Fatal(err)
	}
	k := c.OldDamage(b, Survey)
	if k.Skins != [2]int{1, 1} || len(k.Hand) != 2 || k.Hand[0].Patch == k.Hand[1].Patch {
		t.Errorf("%+v", k)
	}
	d := c.Decided(b, Survey, false)
	i, _ := b.ItemNamed("inner_sill.left")
	if n, _ := b.ItemNamed("hood.whole"); !d.Bare[n] || d.Bare[i] || !d.Unmeasured {
		t.Errorf("%v", d)
	}
}
