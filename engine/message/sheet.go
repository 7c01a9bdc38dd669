package message

import (
	"strings"

	"underpaint/engine/car"
	"underpaint/engine/strict"
	"underpaint/engine/work"
)

// sheet is the reply that holds everything the page "This car" needs and that
// recording does not change.
func (s *Session) sheet(id int64, c *Car) ([]byte, error) {
	b, t, err := s.oneBody(c)
	if err != nil {
		return nil, err
	}
	w := strict.NewWriter()
	w.Object(func() {
		head(w, id, "sheet")
		member(w, "body", b.ID)
		member(w, "body_name", b.Name.In(s.Rates.Words))
		member(w, "drawing", b.ID)
		s.writeScale(w)
		w.Key("zones")
		w.Array(func() {
			for z := range b.Zones {
				w.Object(func() { s.writeSheetZone(w, b, z) })
			}
		})
		w.Key("items")
		w.Object(func() {
			for i := range b.Items {
				w.Key(b.Items[i].ID)
				w.Object(func() { s.writeSheetItem(w, b, i) })
			}
		})
		s.writeBoxes(w, b)
		s.writeWalk(w, b)
		eachOf(w, "stages", len(StageIDs), func(i int) {
			member(w, "id", StageIDs[i])
			member(w, "name", s.stageName(StageIDs[i]))
		})
		s.writeStripTrades(w, t)
		s.writeCautions(w)
	})
	return w.Bytes(), nil
}

// oneBody loads the only body of the car, with a table for it.
func (s *Session) oneBody(c *Car) (*car.Body, *work.Table, error) {
	if len(c.Bodies) != 1 {
		return nil, nil, &strict.Error{Path: "bodies", Found: strings.Join(c.Bodies, ", "), Expected: "one body: what is seen is recorded on one"}
	}
	b, err := car.Load(c.Bodies[0], ownOptions(c.Bodies[0], c.Options)...)
	if err != nil {
		return nil, nil, err
	}
	standard := c.Standard
	if standard == NotSure {
		standard = "show"
	}
	t, err := work.NewTable(b, s.common, s.Rates, standard, c.Scope)
	return b, t, err
}

func (s *Session) stageName(id string) string {
	switch id {
	case Told:
		return "Told"
	case WalkRound:
		return s.say("Walk-around", "Walk-round")
	case Survey:
		return "Strip and survey"
	case OpeningUp:
		return "Opening up"
	}
	return "Ways chosen"
}

// conditionKeys are the keys of the conditions: their first letters.
var conditionKeys = [car.Conditions]string{"s", "l", "h", "p", "r", "g"}

func (s *Session) writeScale(w *strict.Writer) {
	eachOf(w, "conditions", car.Conditions, func(k int) {
		member(w, "id", car.ConditionIDs[k])
		member(w, "key", conditionKeys[k])
		member(w, "name", s.common.Conditions[k].In(s.Rates.Words))
		member(w, "looks_like", s.common.LooksLike[k])
	})
	var item, whole []work.Finding
	for _, f := range work.Findings() {
		if f.PerCar {
			whole = append(whole, f)
		} else {
			item = append(item, f)
		}
	}
	eachOf(w, "findings", len(item), func(n int) {
		member(w, "id", item[n].ID)
		member(w, "key", item[n].Key)
		member(w, "name", item[n].Name.In(s.Rates.Words))
		w.Key("count")
		w.Bool(item[n].PerLeadJoint)
		w.Key("priced_only")
		w.Bool(item[n].Priced)
	})
	eachOf(w, "whole_car_findings", len(whole), func(n int) {
		member(w, "id", whole[n].ID)
		member(w, "name", whole[n].Name.In(s.Rates.Words))
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
	member(w, "id", b.Zones[z].ID)
	member(w, "name", b.Zones[z].Name.In(s.Rates.Words))
	w.Key("rows")
	w.Array(func() {
		for k := range b.Parts {
			p := &b.Parts[k]
			if p.Zone != z || len(p.Items) == 0 {
				continue
			}
			w.Object(func() {
				member(w, "part", p.ID)
				member(w, "name", p.Name.In(s.Rates.Words))
				lines := linesOf(b, p)
				eachOf(w, "lines", len(lines), func(n int) {
					member(w, "label", lines[n].label)
					member(w, "left", lines[n].left)
					member(w, "right", lines[n].right)
					member(w, "whole", lines[n].whole)
				})
			})
		}
	})
}

func (s *Session) writeSheetItem(w *strict.Writer, b *car.Body, i int) {
	p, it := b.PartOf(i), &b.Items[i]
	member(w, "name", b.ItemName(i, s.Rates.Words))
	member(w, "zone", b.Zones[p.Zone].ID)
	w.Key("closed")
	w.Bool(!p.SeenWhenStripped)
	box := ""
	if !p.SeenWhenStripped {
		box = b.Pockets[it.Pocket].ID
	}
	member(w, "box", box)
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
	list(w, "findings", found)
	list(w, "behind", s.behindItem(b, i))
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
		if len(closedItems(b, k)) > 0 {
			boxes = append(boxes, k)
		}
	}
	eachOf(w, "boxes", len(boxes), func(n int) {
		member(w, "id", b.Pockets[boxes[n]].ID)
		member(w, "name", s.pocketName(b, boxes[n]))
		var ids []string
		for _, i := range closedItems(b, boxes[n]) {
			ids = append(ids, b.Items[i].ID)
		}
		list(w, "items", ids)
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
	eachOf(w, "strip_trades", len(trades), func(n int) {
		h := outlook[trades[n]]
		low, high := roundOutward(h[0], h[2])
		member(w, "id", car.TradeIDs[trades[n]])
		member(w, "name", s.common.Trades[trades[n]].In(s.Rates.Words))
		member(w, "likely_text", "8 in 10: "+grouped(low)+" to "+grouped(high)+" hours")
	})
}
