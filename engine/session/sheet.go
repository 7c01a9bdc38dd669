package session

import (
	"strings"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/pricing"
)

// Sheet holds everything that the survey sheet of a body needs and that recording does
// not change.
type Sheet struct {
	Body     *car.Body
	Walk     []WalkSection
	Boxes    []Box
	Strip    []TradeHours
	Bought   []bool   // by item: a panel or a section can be bought for it
	HitZones []string // where the survey records hits; nil for a shop that leaves old damage aside
}

// Box is a pocket with closed items, which show only when it is opened.
type Box struct {
	Pocket int   // index in Body.Pockets
	Items  []int // its closed items
}

// TradeHours are the hours of a trade in the strip and survey in 8 cars out of 10,
// rounded outward.
type TradeHours struct {
	Trade     int
	Low, High int64
}

// Sheet lays out the survey sheet of the car's only body.
func (s *Shop) Sheet(c *carfile.Car) (Sheet, error) {
	b, t, err := s.oneBody(c)
	if err != nil {
		return Sheet{}, err
	}
	sheet := Sheet{Body: b, Walk: walkOf(b, s.Rates.Reckoned() != nil)}
	if s.Rates.Reckoned() != nil {
		sheet.HitZones = zonesOf(b)
	}
	for k := range b.Pockets {
		if items := carfile.ClosedItems(b, k); len(items) > 0 {
			sheet.Boxes = append(sheet.Boxes, Box{k, items})
		}
	}
	for i := range b.Items {
		sheet.Bought = append(sheet.Bought, t.Bought(i))
	}
	for trade, h := range t.StripOutlook() {
		if h != (car.Hours{}) {
			low, high := RoundOutward(h[0], h[2])
			sheet.Strip = append(sheet.Strip, TradeHours{trade, low, high})
		}
	}
	return sheet, nil
}

// Line is one line of a part: its items left and right, or one without a side.
type Line struct{ Label, Left, Right, Whole string }

// LinesOf lays out the items of a part by side, front before rear.
func LinesOf(b *car.Body, p *car.Part) (out []Line) {
	index := map[string]int{}
	for _, i := range p.Items {
		it := &b.Items[i]
		key := placeWithoutSide(it)
		n, ok := index[key]
		if !ok || it.Side == car.NoSide {
			n = len(out)
			index[key] = n
			out = append(out, Line{Label: key})
		}
		switch it.Side {
		case car.Left:
			out[n].Left = it.ID
		case car.Right:
			out[n].Right = it.ID
		default:
			out[n].Whole = it.ID
		}
	}
	return out
}

// placeWithoutSide returns the place of an item without its side.
func placeWithoutSide(it *car.Item) string {
	place := it.Place
	for _, side := range []string{"left", "right"} {
		for _, form := range []string{side + ", ", ", " + side, " " + side, side} {
			place = strings.Replace(place, form, "", 1)
		}
	}
	return place
}

// FindingsOn returns the ids of the findings that a part can have.
func FindingsOn(p *car.Part) (ids []string) {
	for _, f := range pricing.Findings() {
		if !f.PerCar && f.On(p) {
			ids = append(ids, f.ID)
		}
	}
	return ids
}

// Behind returns the ids of the items on the same side of the car that tend to need
// metalwork together with item i.
func (s *Shop) Behind(b *car.Body, i int) (ids []string) {
	for _, one := range s.Common.Behind {
		if one.Part != b.PartOf(i).ID {
			continue
		}
		for _, n := range one.Neighbours {
			k, ok := b.PartNamed(n.Part)
			if !ok {
				continue
			}
			for _, j := range b.Parts[k].Items {
				if side := b.Items[j].Side; j != i && (side == b.Items[i].Side || side == car.NoSide || b.Items[i].Side == car.NoSide) {
					ids = append(ids, b.Items[j].ID)
				}
			}
		}
	}
	return ids
}
