package message

import (
	"strings"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/strict"
	"underpaint/engine/work"
)

func (s *Session) stageName(id string) string {
	switch id {
	case carfile.Told:
		return "Told"
	case carfile.WalkRound:
		return s.say("Walk-around", "Walk-round")
	case carfile.Survey:
		return "Strip and survey"
	case carfile.OpeningUp:
		return "Opening up"
	}
	return "Ways chosen"
}

// conditionKeys are the keys of the conditions: their first letters.
var conditionKeys = [car.Conditions]string{"s", "l", "h", "p", "r", "g"}

func (s *Session) writeScale(w *strict.Writer) {
	w.Objects("conditions", car.Conditions, func(k int) {
		w.Member("id", car.ConditionIDs[k])
		w.Member("key", conditionKeys[k])
		w.Member("name", s.common.Conditions[k].In(s.Rates.Words))
		w.Member("looks_like", s.common.LooksLike[k])
	})
	var item, whole []work.Finding
	for _, f := range work.Findings() {
		if f.PerCar {
			whole = append(whole, f)
		} else {
			item = append(item, f)
		}
	}
	w.Objects("findings", len(item), func(n int) {
		w.Member("id", item[n].ID)
		w.Member("key", item[n].Key)
		w.Member("name", item[n].Name.In(s.Rates.Words))
		w.Key("count")
		w.Bool(item[n].PerLeadJoint)
		w.Key("priced_only")
		w.Bool(item[n].Priced)
	})
	w.Objects("whole_car_findings", len(whole), func(n int) {
		w.Member("id", whole[n].ID)
		w.Member("name", whole[n].Name.In(s.Rates.Words))
	})
}

// line is one line of a part: its items left and right, or one without a side.
type line struct{ label, left, right, whole string }

// linesOf lays the items of a part out by side, front before rear.
func linesOf(b *car.Body, p *car.Part) (out []line) {
	index := map[string]int{}
	for _, i := range p.Items {
		it := &b.Items[i]
		key := placeWithoutSide(it)
		n, ok := index[key]
		if !ok || it.Side == car.NoSide {
			n = len(out)
			index[key] = n
			out = append(out, line{label: key})
		}
		switch it.Side {
		case car.Left:
			out[n].left = it.ID
		case car.Right:
			out[n].right = it.ID
		default:
			out[n].whole = it.ID
		}
	}
	return out
}

// placeWithoutSide is where an item sits among its likes on the same side.
func placeWithoutSide(it *car.Item) string {
	place := it.Place
	for _, side := range []string{"left", "right"} {
		for _, form := range []string{side + ", ", ", " + side, " " + side, side} {
			place = strings.Replace(place, form, "", 1)
		}
	}
	return place
}

func (s *Session) writeSheetZone(w *strict.Writer, b *car.Body, z int) {
	w.Member("id", b.Zones[z].ID)
	w.Member("name", b.Zones[z].Name.In(s.Rates.Words))
	w.Key("rows")
	w.Array(func() {
		for k := range b.Parts {
			p := &b.Parts[k]
			if p.Zone != z || len(p.Items) == 0 {
				continue
			}
			w.Object(func() {
				w.Member("part", p.ID)
				w.Member("name", p.Name.In(s.Rates.Words))
				lines := linesOf(b, p)
				w.Objects("lines", len(lines), func(n int) {
					w.Member("label", lines[n].label)
					w.Member("left", lines[n].left)
					w.Member("right", lines[n].right)
					w.Member("whole", lines[n].whole)
				})
			})
		}
	})
}

func (s *Session) writeSheetItem(w *strict.Writer, b *car.Body, i int) {
	p, it := b.PartOf(i), &b.Items[i]
	w.Member("name", b.ItemName(i, s.Rates.Words))
	w.Member("zone", b.Zones[p.Zone].ID)
	w.Key("closed")
	w.Bool(!p.SeenWhenStripped)
	box := ""
	if !p.SeenWhenStripped {
		box = b.Pockets[it.Pocket].ID
	}
	w.Member("box", box)
	w.Key("structural")
	w.Bool(p.Structural)
	w.Key("lead_joints")
	w.Whole(int64(p.LeadJoints))
	var found []string
	for _, f := range work.Findings() {
		if !f.PerCar && f.On(p) {
			found = append(found, f.ID)
		}
	}
	w.Texts("findings", found)
	w.Texts("behind", s.behindItem(b, i))
}

// behindItem are the items that tend to need metalwork with this one, on its
// side of the car.
func (s *Session) behindItem(b *car.Body, i int) (out []string) {
	for _, one := range s.common.Behind {
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
					out = append(out, b.Items[j].ID)
				}
			}
		}
	}
	return out
}

func (s *Session) writeBoxes(w *strict.Writer, b *car.Body) {
	var boxes []int
	for k := range b.Pockets {
		if len(carfile.ClosedItems(b, k)) > 0 {
			boxes = append(boxes, k)
		}
	}
	w.Objects("boxes", len(boxes), func(n int) {
		w.Member("id", b.Pockets[boxes[n]].ID)
		w.Member("name", s.pocketName(b, boxes[n]))
		var ids []string
		for _, i := range carfile.ClosedItems(b, boxes[n]) {
			ids = append(ids, b.Items[i].ID)
		}
		w.Texts("items", ids)
	})
}

// pocketName is the pocket in words, with its side where it has one.
func (s *Session) pocketName(b *car.Body, k int) string {
	p := &b.Pockets[k]
	name := b.Groups[p.Group].Name.In(s.Rates.Words)
	if dot := strings.IndexByte(p.ID, '.'); dot >= 0 {
		name += ", " + strings.ReplaceAll(p.ID[dot+1:], "_", " ")
	}
	return name
}

func (s *Session) writeStripTrades(w *strict.Writer, t *work.Table) {
	outlook := t.StripOutlook()
	var trades []int
	for k := range outlook {
		if outlook[k] != (car.Hours{}) {
			trades = append(trades, k)
		}
	}
	w.Objects("strip_trades", len(trades), func(n int) {
		h := outlook[trades[n]]
		low, high := roundOutward(h[0], h[2])
		w.Member("id", car.TradeIDs[trades[n]])
		w.Member("name", s.common.Trades[trades[n]].In(s.Rates.Words))
		w.Member("likely_text", "8 in 10: "+grouped(low)+" to "+grouped(high)+" hours")
	})
}
