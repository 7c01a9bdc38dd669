package message

import (
	"encoding/json"
	"strings"
	"testing"

	"underpaint/engine/carfile"
)

// TestLookAgainReply: the reply names an entry that nothing else on the car explains, and
// no longer does once the estimator is sure. The range is the same either way.
func TestLookAgainReply(t *testing.T) {
	e := opened(t)
	c, err := carfile.Decode([]byte(strings.Replace(goodCar, "mild", "dry", 1)))
	if err != nil {
		t.Fatal(err)
	}
	b, err := c.OneBody()
	if err != nil {
		t.Fatal(err)
	}
	c.Stages = []carfile.Stage{{Stage: carfile.Survey, On: "2026-06-20"}}
	for i, item := range b.Items {
		r := carfile.Record{On: item.ID, Stage: carfile.Survey, Condition: "sound", LeadFailed: -1}
		if item.ID == "roof_skin.whole" {
			r.Condition = "gone"
		}
		if b.PartOf(i).SeenWhenStripped {
			c.Survey = append(c.Survey, r)
		}
	}
	range1, again := ask(t, e, `"range","effort":"rough"`, string(c.Text())), ask(t, e, `"look_again"`, string(c.Text()))
	list := listIn(t, again, "look_again")
	if len(list) != 1 || list[0]["on"] != "roof_skin.whole" || list[0]["text"] != "Very unlike the rest of this car. Check it again?" {
		t.Errorf("%v", again)
	}
	for n := range c.Survey {
		c.Survey[n].Sure = true
	}
	range2, again := ask(t, e, `"range","effort":"rough"`, string(c.Text())), ask(t, e, `"look_again"`, string(c.Text()))
	if len(listIn(t, again, "look_again")) != 0 {
		t.Errorf("still named: %v", again)
	}
	one, _ := json.Marshal(range1["rows"])
	two, _ := json.Marshal(range2["rows"])
	if string(one) != string(two) {
		t.Error("being sure moved the range")
	}
	if got := ask(t, e, `"look_again"`, goodCar); len(listIn(t, got, "look_again")) != 0 {
		t.Errorf("before any survey: %v", got)
	}
}
