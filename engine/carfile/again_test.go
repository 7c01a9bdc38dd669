package carfile

import (
	"strings"
	"testing"

	"underpaint/engine/damage"
	"underpaint/engine/rates"
)

// surveyed is an invented car that lived in a dry place, surveyed in bare metal. Every
// part that shows then is sound, except for those named.
func surveyed(t *testing.T, but map[string]string) (*Car, *damage.Model) {
	t.Helper()
	c, err := Decode([]byte(strings.Replace(goodCar, "mild", "dry", 1)))
	if err != nil {
		t.Fatal(err)
	}
	b, err := c.OneBody()
	if err != nil {
		t.Fatal(err)
	}
	c.Stages = []Stage{{Stage: Survey, On: "2026-06-20"}}
	for i, item := range b.Items {
		if b.PartOf(i).SeenWhenStripped {
			r := Record{On: item.ID, Stage: Survey, Condition: "sound", LeadFailed: -1}
			if k, other := but[item.ID]; other {
				r.Condition = k
			}
			c.Survey = append(c.Survey, r)
		}
	}
	histories, err := c.Histories()
	if err != nil {
		t.Fatal(err)
	}
	m, err := c.ModelAt(b, histories, Survey, rates.NothingLearnt(), nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	return c, m
}

// TestLookAgain: a hole where the part has no cause of its own to make one, on a car
// that is sound all over, is listed; a hole in a battery tray, where acid makes them,
// is not. Once the estimator is sure, it is no longer listed. It counts as recorded
// either way.
func TestLookAgain(t *testing.T) {
	c, m := surveyed(t, map[string]string{"roof_skin.whole": "gone", "battery_tray.whole": "gone"})
	named := func() (out []string) {
		list, err := c.LookAgain(m.Body, m)
		if err != nil {
			t.Fatal(err)
		}
		for _, n := range list {
			out = append(out, c.Survey[n].On)
		}
		return out
	}
	if got := strings.Join(named(), " "); got != "roof_skin.whole" {
		t.Errorf("named: %q", got)
	}
	i, _ := m.Body.ItemNamed("roof_skin.whole")
	if p := m.ChancesOf(i).Holed(); p < .97 {
		t.Errorf("recorded as gone and rusted through in %.4f", p)
	}
	for n := range c.Survey {
		c.Survey[n].Sure = true
	}
	if got := named(); len(got) != 0 {
		t.Errorf("checked again, and still listed: %v", got)
	}
}
