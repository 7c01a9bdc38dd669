package message

import (
	"strings"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/evidence"
)

// TestSheetIsWhole: on every body the survey sheet has each item once and each closed
// item in one box, and the walk-around has every check that the body allows.
func TestSheetIsWhole(t *testing.T) {
	e := opened(t)
	for _, id := range car.BodyIDs {
		sheet := ask(t, e, `"sheet"`, strings.Replace(goodCar, "two_door_unitary", id, 1))
		b, err := car.Load(id)
		if err != nil {
			t.Fatal(err)
		}
		lines, boxes := map[string]int{}, map[string]int{}
		for _, z := range sheet["zones"].([]any) {
			for _, r := range z.(map[string]any)["rows"].([]any) {
				for _, l := range r.(map[string]any)["lines"].([]any) {
					line := l.(map[string]any)
					for side, on := range line {
						if on != "" && side != "label" {
							lines[on.(string)]++
						}
					}
					if left, right := line["left"].(string), line["right"].(string); left != "" && strings.Replace(left, "left", "right", 1) != right {
						t.Errorf("%s: %s beside %s", id, left, right)
					}
				}
			}
		}
		for _, x := range sheet["boxes"].([]any) {
			for _, on := range x.(map[string]any)["items"].([]any) {
				boxes[on.(string)]++
			}
		}
		for i := range b.Items {
			on := b.Items[i].ID
			if lines[on] != 1 {
				t.Errorf("%s: %s stands %d times on the sheet", id, on, lines[on])
			}
			if closed := !b.PartOf(i).SeenWhenStripped; closed != (boxes[on] == 1) {
				t.Errorf("%s: %s is in %d boxes", id, on, boxes[on])
			}
		}
		checkWalk(t, b, sheet)
	}
}

func checkWalk(t *testing.T, b *car.Body, sheet map[string]any) {
	t.Helper()
	got := map[string]int{}
	var order []string
	for _, s := range sheet["walk_round"].([]any) {
		section := s.(map[string]any)
		order = append(order, section["id"].(string))
		for _, l := range section["lines"].([]any) {
			got[l.(map[string]any)["look"].(string)]++
		}
	}
	for _, kind := range evidence.Kinds() {
		want := len(evidence.Items(b, kind.ID))
		if kind.BySide {
			want = 2
		}
		if got[kind.ID] != want {
			t.Errorf("%s: %d lines of %s, want %d", b.ID, got[kind.ID], kind.ID, want)
		}
	}
	if n := len(order); order[0] != "doors" || order[n-1] != "papers" || order[n-2] != "water" {
		t.Errorf("%s: walked in the order %v", b.ID, order)
	}
}
