package message

import (
	"encoding/json"
	"strings"
	"testing"

	"underpaint/engine/rates"
)

// shopWith opens a shop that offers another two-door at a price.
func shopWith(t *testing.T, sample []byte, price string) *Engine {
	t.Helper()
	return openedAt(t, []byte(strings.Replace(string(sample), `"own_figures":`,
		`"another_body": {"bodies": [{"body": "two_door_unitary", "price": `+price+`, "to_be_had": 0.6}]}, "own_figures":`, 1)))
}

// answering is goodCar with an answer about another body.
func answering(car, answer string) string {
	return strings.Replace(car, `"standard":`, `"another_body":"`+answer+`","standard":`, 1)
}

func firstRow(t *testing.T, reply map[string]any) map[string]any {
	t.Helper()
	return listIn(t, reply, "rows")[0]
}

// TestOfferChangesNoFigure: with a body at a million, taken or not, and with a cheap one
// that is not taken, the range is the one of a shop without an offer, to the byte, apart
// from the offer itself and the check code of the rates.
func TestOfferChangesNoFigure(t *testing.T) {
	plain := func(reply map[string]any) string {
		delete(reply, "check_code")
		delete(firstRow(t, reply), "another_body")
		text, err := json.Marshal(reply)
		if err != nil {
			t.Fatal(err)
		}
		return string(text)
	}
	want := ask(t, opened(t), `"range","effort":"rough"`, goodCar)
	if _, there := firstRow(t, want)["another_body"]; there {
		t.Fatal("the sample offers another body")
	}
	without := plain(want)
	for _, c := range []struct{ price, car string }{
		{"[1000000, 1000000, 1000000]", goodCar}, {"[1000000, 1000000, 1000000]", answering(goodCar, "another_is_all_right")},
		{"[4000, 9000, 20000]", goodCar}, {"[4000, 9000, 20000]", answering(goodCar, "this_one_only")}, {"[4000, 9000, 20000]", answering(goodCar, "not_sure")},
	} {
		reply := ask(t, shopWith(t, rates.Sample(), c.price), `"range","effort":"rough"`, c.car)
		if firstRow(t, reply)["another_body"] == nil {
			t.Fatalf("%s: nothing is offered", c.price)
		}
		if plain(reply) != without {
			t.Errorf("%s, %.60s: the range differs", c.price, c.car)
		}
	}
}

// TestOfferInWords: the sentences about another body before the strip, the answer that
// caps the range, and the line for the letter after the survey, in both sets of words.
func TestOfferInWords(t *testing.T) {
	e := shopWith(t, rates.Sample(), "[4000, 9000, 20000]")
	offerOf := func(e *Engine, car string) (row, offer map[string]any, lines string) {
		row = firstRow(t, ask(t, e, `"range","effort":"rough"`, car))
		offer, _ = row["another_body"].(map[string]any)
		for _, l := range offer["lines"].([]any) {
			lines += l.(string) + "\n"
		}
		return row, offer, lines
	}
	row, offer, lines := offerOf(e, goodCar)
	for _, want := range []string{"out of 10 like yours, we could find another sound body for clearly less than repairing this one.",
		"With everything to do with it, another body comes to $", "We would advise it once", "Ask us about this before you pay for stripping this one."} {
		if !strings.Contains(lines, want) {
			t.Errorf("no %q in %s", want, lines)
		}
	}
	if strings.Contains(lines, "all right") || offer["letter_line"] != "" || !strings.Contains(offer["caution"].(string), "legal identity") {
		t.Errorf("%v", offer)
	}
	taken, capped, told := offerOf(e, answering(goodCar, "another_is_all_right"))
	if !strings.Contains(told, "all right with you") || taken["high_minor"].(float64) >= row["high_minor"].(float64) || capped["exact"].(map[string]any)["taken"] != true {
		t.Errorf("another body is all right: %v %v against %v", told, taken["high_minor"], row["high_minor"])
	}
	for answer, want := range map[string]string{"this_one_only": "another body. The customer wishes this one.", "another_is_all_right": "another body. It is all right with the customer.",
		"not_sure": "another body. The customer has not decided, so the range keeps this one."} {
		_, offer, lines := offerOf(e, answering(seenCar, answer))
		if offer["letter_line"] != want || strings.Contains(lines, "before you pay") {
			t.Errorf("%s: %v", answer, offer)
		}
	}
	_, uk, lines := offerOf(shopWith(t, rates.SampleUK(), "[3000, 7000, 15000]"), goodCar)
	if !strings.Contains(lines, "mending this one") || !strings.Contains(lines, "£") || !strings.Contains(uk["caution"].(string), "DVLA") || strings.Contains(uk["caution"].(string), "USC") {
		t.Errorf("%s %v", lines, uk["caution"])
	}
}

// TestNoAnswerOfThatKind: another word than the three answers is refused with its path.
func TestNoAnswerOfThatKind(t *testing.T) {
	reply := ask(t, opened(t), `"range","effort":"rough"`, answering(goodCar, "any"))
	text, err := json.Marshal(reply)
	if err != nil || reply["kind"] != "refused" || !strings.Contains(string(text), "another_body") || !strings.Contains(string(text), "another_is_all_right") {
		t.Errorf("%s", text)
	}
}
