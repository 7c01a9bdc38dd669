package carfile

import (
	"reflect"
	"strings"
	"testing"
)

// told is the good car with other members in place of its answer about earlier work.
func told(t *testing.T, members string) (*Car, error) {
	t.Helper()
	return Decode([]byte(strings.Replace(goodCar, `"earlier_work":"not_known_of"`, members, 1)))
}

// TestKept: the five ways and "not sure" are read and written unchanged, and the words
// of older files as the ways they meant; any other word is refused.
func TestKept(t *testing.T) {
	read := map[string]string{"mostly_garaged": "garage", "mostly_outside": "open_shed_or_outside"}
	for _, id := range append([]string{NotSure}, KeptIDs...) {
		read[id] = id
	}
	for said, want := range read {
		c, err := Decode([]byte(strings.Replace(goodCar, "driven_all_year", said, 1)))
		if err != nil {
			t.Errorf("%s: %v", said, err)
			continue
		}
		if c.Life[0].Kept != want || !strings.Contains(string(c.Text()), `"kept":"`+want+`"`) {
			t.Errorf("%s: read as %s, written as %s", said, c.Life[0].Kept, c.Text())
		}
		if _, err := c.Histories(); err != nil {
			t.Errorf("%s: no history: %v", said, err)
		}
	}
	for _, said := range []string{`"in_a_barn"`, `""`, `7`, `null`} {
		_, err := Decode([]byte(strings.Replace(goodCar, `"driven_all_year"`, said, 1)))
		if err == nil || !strings.HasPrefix(err.Error(), "life[0].kept: expected one of ") || strings.Contains(err.Error(), "mostly_garaged") {
			t.Errorf("%s: %v", said, err)
		}
	}
}

// TestWorkYear: the year may be any from the year the car was made, or the first of its
// decade, to the year of asking, and only beside work that has a year.
func TestWorkYear(t *testing.T) {
	for _, c := range []struct{ name, made, work, year, refused string }{
		{"the year it was made", `{"year":1967}`, "patched_here_and_there", "1967", ""},
		{"the year of asking", `{"year":1967}`, "stripped_and_restored", "2026", ""},
		{"before it was made", `{"year":1967}`, "stripped_and_restored", "1966", "a year from 1967, when the car was made, to 2026, when the questions were answered, found 1966"},
		{"after asking", `{"year":1967}`, "stripped_and_restored", "2027", "a year from 1967, when the car was made, to 2026, when the questions were answered, found 2027"},
		{"first year of the decade", `{"decade":1960}`, "stripped_and_restored", "1960", ""},
		{"before the decade", `{"decade":1960}`, "stripped_and_restored", "1959", "a year from 1960, when the car was made, to 2026"},
		{"made in a year nobody knows", `{"not_sure":true}`, "patched_here_and_there", "1931", ""},
		{"before any car of the list", `{"not_sure":true}`, "patched_here_and_there", "1919", "a whole number from 1920 to 2200"},
		{"half a year", `{"year":1967}`, "patched_here_and_there", "1990.5", "a whole number"},
		{"as text", `{"year":1967}`, "patched_here_and_there", `"1990"`, "a whole number"},
		{"no known repairs", `{"year":1967}`, "not_known_of", "1990", "no year here"},
		{"not sure of repairs", `{"year":1967}`, "not_sure", "1990", "no year here"},
	} {
		text := strings.Replace(goodCar, `{"year":1967}`, c.made, 1)
		text = strings.Replace(text, `"earlier_work":"not_known_of"`, `"earlier_work":"`+c.work+`","earlier_work_year":`+c.year, 1)
		got, err := Decode([]byte(text))
		switch {
		case c.refused == "" && (err != nil || !strings.Contains(string(got.Text()), `"earlier_work_year":`+c.year)):
			t.Errorf("%s: %v", c.name, err)
		case c.refused != "" && (err == nil || !strings.HasPrefix(err.Error(), "earlier_work_year: expected ") || !strings.Contains(err.Error(), c.refused)):
			t.Errorf("%s: %v", c.name, err)
		}
	}
	if _, err := told(t, `"earlier_work_year":1990`); err == nil || !strings.Contains(err.Error(), "no year here") {
		t.Errorf("a year of work that was not asked for: %v", err)
	}
}

// TestCovered: the three answers are accepted, and no answer at all; nothing else is.
func TestCovered(t *testing.T) {
	for _, said := range []string{"yes", "no", "not_sure"} {
		c, err := told(t, `"covered":"`+said+`"`)
		if err != nil || c.Covered != said || !strings.Contains(string(c.Text()), `"covered":"`+said+`"`) {
			t.Errorf("%s: %v", said, err)
		}
	}
	for _, said := range []string{`"maybe"`, `true`, `""`} {
		if _, err := told(t, `"covered":`+said); err == nil || !strings.HasPrefix(err.Error(), "covered: expected one of ") {
			t.Errorf("%s: %v", said, err)
		}
	}
	c, err := told(t, `"scope":"whole_body"`)
	if err != nil || strings.Contains(string(c.Text()), "covered") {
		t.Errorf("an answer that nobody gave: %v", err)
	}
}

// TestNotes: a file says what is not known of the car and what was read in other words;
// a file with every answer has no notes.
func TestNotes(t *testing.T) {
	covered := `"covered":"no"`
	for _, c := range []struct {
		name, from, to, members string
		paths                   []string
		says                    string
	}{
		{"everything told", "driven_all_year", "garage", `"earlier_work":"stripped_and_restored","earlier_work_year":1990,` + covered, nil, ""},
		{"not asked about paint", "driven_all_year", "garage", `"earlier_work":"not_sure"`, []string{"covered"}, "painted, or coated underneath, in the last ten years"},
		{"restored, nobody knows when", "driven_all_year", "garage", `"earlier_work":"stripped_and_restored",` + covered, []string{"earlier_work_year"}, "stripped and restored, but we don't know when"},
		{"patched, nobody knows when", "driven_all_year", "garage", `"earlier_work":"patched_here_and_there",` + covered, nil, ""},
		{"earlier word for a garage", "driven_all_year", "mostly_garaged", covered, []string{"life[0].kept"}, "we read “mostly put away in a garage” as “mostly in an ordinary garage”"},
		{"earlier word in an earlier place", `"driven_all_year"}`, `"garage"},{"place":"salt","kept":"mostly_garaged","years":5}`, covered, []string{"life[1].kept"}, "garage”. Change it if that isn't right"},
		{"earlier word for what is called the same today", "driven_all_year", "mostly_outside", covered, nil, ""},
		{"all at once", "driven_all_year", "mostly_garaged", `"earlier_work":"stripped_and_restored"`, []string{"life[0].kept", "earlier_work_year", "covered"}, "Saved with an earlier version"},
	} {
		text := strings.Replace(goodCar, c.from, c.to, 1)
		got, err := Decode([]byte(strings.Replace(text, `"earlier_work":"not_known_of"`, c.members, 1)))
		if err != nil {
			t.Fatal(c.name, err)
		}
		var paths []string
		said := ""
		for _, n := range got.Notes() {
			paths = append(paths, n.Path)
			said += n.Text + "\n"
		}
		if !reflect.DeepEqual(paths, c.paths) || !strings.Contains(said, c.says) {
			t.Errorf("%s: %v\n%s", c.name, paths, said)
		}
		again, err := Decode(got.Text())
		if err != nil {
			t.Fatal(c.name, err)
		}
		for _, n := range again.Notes() {
			if strings.HasSuffix(n.Path, "kept") {
				t.Errorf("%s: the file as it is written now is still in earlier words", c.name)
			}
		}
	}
}
