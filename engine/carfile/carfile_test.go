package carfile

import (
	_ "embed"
	"strings"
	"testing"
)

// goodCar is a car as the customer describes it, seenCar one with records at every
// stage. Both are invented.
var (
	//go:embed testdata/told.json
	goodCar string
	//go:embed testdata/seen.json
	seenCar string
)

// TestCarFileRoundTrip: reading the text of a car and writing it again gives the same
// text.
func TestCarFileRoundTrip(t *testing.T) {
	c, err := Decode([]byte(goodCar))
	if err != nil {
		t.Fatal(err)
	}
	again, err := Decode(c.Text())
	if err != nil {
		t.Fatal(err)
	}
	if string(again.Text()) != string(c.Text()) {
		t.Errorf("%s\n%s", c.Text(), again.Text())
	}
}

// TestRecordedRoundTrip: every record is read back as it was written.
func TestRecordedRoundTrip(t *testing.T) {
	c, err := Decode([]byte(seenCar))
	if err != nil {
		t.Fatal(err)
	}
	if wrong := c.Check(); len(wrong) > 0 {
		t.Fatal(wrong)
	}
	text := string(c.Text())
	for _, kept := range []string{`"earlier_work_year":2004`, `"covered":"no"`, `"sure":true`, `"answers_checked":"2026-06-04"`, `"rates":"ab12c de34f"`, `"dent":true`, `"also":["brazed"]`, `"note":"two plates"`, `"photo":"12"`,
		`"was":[{"condition":"light_pitting","at":"2026-06-20T14:02"}]`, `"could_not_see":true`, `"box":"sill.left"`, `"whole_car":["twist"]`,
		`"strip_hours":{"prep":120.5}`, `"ways":[{"on":"outer_sill.left","way":"section","by":"customer"}]`, `"came_to":{"strip_and_survey":"16500.00"}`} {
		if !strings.Contains(text, kept) {
			t.Errorf("lost: %s", kept)
		}
	}
	again, err := Decode([]byte(text))
	if err != nil || string(again.Text()) != text {
		t.Errorf("reading back: %v\n%s\n%s", err, text, again.Text())
	}
}

func FuzzDecode(f *testing.F) {
	f.Add([]byte(goodCar))
	f.Add([]byte(strings.Replace(goodCar, "mild", "salt", 1)))
	f.Add([]byte(seenCar))
	f.Add([]byte(strings.Replace(goodCar, "driven_all_year", "mostly_garaged", 1)))
	f.Add([]byte(strings.Replace(goodCar, `"not_known_of"`, `"patched_here_and_there","earlier_work_year":1967,"covered":"not_sure"`, 1)))
	f.Add([]byte(`{"format":"underpaint car 1"`))
	f.Fuzz(func(t *testing.T, text []byte) {
		c, err := Decode(text)
		if (c == nil || err != nil) && err == nil {
			t.Fatal("neither a car nor a reason")
		}
		if err != nil {
			return
		}
		if again, err := Decode(c.Text()); err != nil || string(again.Text()) != string(c.Text()) {
			t.Fatalf("read back differently: %s", c.Text())
		}
	})
}

// TestNewerFile: a file of a later version is said to be one, whatever members it has that
// are not known here.
func TestNewerFile(t *testing.T) {
	newer := strings.NewReplacer("car 1", "car 2", `"made":`, `"brought_on":1,"made":`).Replace(goodCar)
	_, err := Decode([]byte(newer))
	if want := `format: expected "underpaint car 1" (this file was made by a newer version`; err == nil || !strings.HasPrefix(err.Error(), want) {
		t.Errorf("%v, want %s", err, want)
	}
}

// TestAnotherBodyAnswer: the three answers are read and written back; a file without one
// has none written, so the text of an older file stays what it was.
func TestAnotherBodyAnswer(t *testing.T) {
	const plain = `{"format":"underpaint car 1","asked_in":2026,"bodies":["two_door_unitary"],"made":{"year":1967},"life":[{"place":"mild","kept":"garage","road_years":"not_sure"}],"standard":"show","scope":"whole_body"}`
	read := func(text string) *Car {
		c, err := Decode([]byte(text))
		if err != nil {
			t.Fatal(err)
		}
		return c
	}
	if c := read(plain); string(c.Text()) != plain || c.TakesAnotherBody() {
		t.Errorf("%s", c.Text())
	}
	for _, answer := range AnotherBodyAnswers {
		text := strings.Replace(plain, `"scope":"whole_body"`, `"scope":"whole_body","another_body":"`+answer+`"`, 1)
		if c := read(text); string(c.Text()) != text || c.TakesAnotherBody() != (answer == "another_is_all_right") {
			t.Errorf("%s: %s", answer, c.Text())
		}
	}
	if _, err := Decode([]byte(strings.Replace(plain, `"scope"`, `"another_body":"yes","scope"`, 1))); err == nil || !strings.HasPrefix(err.Error(), "another_body: ") {
		t.Errorf("an answer of another kind: %v", err)
	}
}
