package evidence

import (
	"slices"
	"strings"

	"underpaint/engine/car"
)

// place finds the items that a check is evidence on: one item, the items of a whole
// side, or the two of a part with one on either side.
func place(b *car.Body, n int, kind Kind, l Look) ([]int, error) {
	if kind.BySide {
		at := OnSide(b, kind.ID, l.On)
		if len(at) == 0 {
			return nil, refuse(n, "on", l.On, "left or right, because this check is for a whole side")
		}
		return at, nil
	}
	var at []int
	if left, right, either := eitherOf(l.On); either {
		i, okLeft := b.ItemNamed(left)
		k, okRight := b.ItemNamed(right)
		if !okLeft || !okRight {
			return nil, refuse(n, "on", l.On, "a part that this body has on either side")
		}
		if kind.AnswersTo != OfCondition {
			return nil, refuse(n, "on", l.On, "one side, because checks for an earlier repair are for a single part")
		}
		if l.By == ByShop {
			return nil, refuse(n, "on", l.On, "the side on which it was, because only a customer may not know which")
		}
		at = []int{min(i, k), max(i, k)}
	} else {
		i, ok := b.ItemNamed(l.On)
		if !ok {
			return nil, refuse(n, "on", l.On, "an item of this body, such as "+b.Items[0].ID)
		}
		at = []int{i}
	}
	if part := b.PartOf(at[0]).ID; !slices.Contains(kind.Parts, part) {
		return nil, refuse(n, "on", l.On, "a part that the check "+l.Look+" can be made on, which "+part+" is not")
	}
	return at, nil
}

// eitherOf reads a place such as outer_sill.either as the two items that it may mean.
func eitherOf(on string) (left, right string, ok bool) {
	dot := strings.LastIndexByte(on, '.')
	if dot < 0 || !strings.Contains(on[dot:], "either") {
		return "", "", false
	}
	on, where := on[:dot], on[dot:]
	return on + strings.Replace(where, "either", "left", 1), on + strings.Replace(where, "either", "right", 1), true
}

// Either is the place that means an item or its counterpart on the other side, "" if
// the item has no counterpart.
func Either(b *car.Body, item int) string {
	id := b.Items[item].ID
	dot := strings.LastIndexByte(id, '.')
	if side := b.Items[item].Side; side != car.NoSide && dot > 0 {
		on := id[:dot] + strings.Replace(id[dot:], side.String(), "either", 1)
		if Has(b, on) {
			return on
		}
	}
	return ""
}

// Has reports whether a body has the place that a check names.
func Has(b *car.Body, on string) bool {
	if left, right, either := eitherOf(on); either {
		_, okLeft := b.ItemNamed(left)
		_, okRight := b.ItemNamed(right)
		return okLeft && okRight
	}
	_, ok := b.ItemNamed(on)
	return ok || on == car.Left.String() || on == car.Right.String()
}

// OnSide are the items on a side that a check of a whole side is evidence on, nil if the
// body has none.
func OnSide(b *car.Body, look, side string) (out []int) {
	for _, i := range Items(b, look) {
		if s := b.Items[i].Side; s != car.NoSide && s.String() == side {
			out = append(out, i)
		}
	}
	return out
}
