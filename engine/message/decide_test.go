package message

import (
	"strings"
	"testing"
)

// offeredIn returns the ids of the options in a reply to decide.
func offeredIn(t *testing.T, reply map[string]any) (ids []string) {
	t.Helper()
	for _, o := range listIn(t, reply, "options") {
		ids = append(ids, o["id"].(string))
	}
	return ids
}

// TestDecideAfterTheStrip: once the strip has begun, the reply leaves out options that
// would change it, and says so. After a walk-around it still has them.
func TestDecideAfterTheStrip(t *testing.T) {
	const all, left = "standard.driver standard.concours unseen scope.outside_only scope.metalwork_only own_disassembly",
		"standard.driver standard.concours unseen scope.metalwork_only"
	const note = "The strip and survey has begun"
	walked := strings.Replace(goodCar, `"standard":"show"`, `"standard":"show","stages":[{"stage":"walk_round","on":"2026-06-04"}]`, 1)
	stripped := strings.Replace(goodCar, `"standard":"show"`, `"standard":"show","stages":[{"stage":"survey","on":"2026-06-20"}],"strip_hours":{"fit":70}`, 1)
	for _, c := range []struct{ name, car, want string }{{"told", goodCar, all}, {"walked round", walked, all}, {"stripped", stripped, left}, {"opened up", seenCar, left}} {
		reply := ask(t, opened(t), `"decide"`, c.car)
		if got := strings.Join(offeredIn(t, reply), " "); got != c.want {
			t.Errorf("%s: %s offered, want %s", c.name, got, c.want)
		}
		if said := strings.Contains(reply["note"].(string), note); said != (c.want == left) {
			t.Errorf("%s: %s", c.name, reply["note"])
		}
	}
}
