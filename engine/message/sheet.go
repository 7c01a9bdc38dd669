package message

import (
	"slices"
	"strconv"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/olddamage"
	"underpaint/engine/pricing"
	"underpaint/engine/session"
	"underpaint/engine/wording"
)

// conditionKeys are the keys to press for the conditions: their first letters.
var conditionKeys = [car.Conditions]string{"s", "l", "h", "p", "r", "g"}

func askSheet(o *openShop, q carRequest) (Reply, error) {
	v, err := o.Sheet(q.car)
	if err != nil {
		return nil, err
	}
	b, t := v.Body, o.text
	out := &SheetReply{Body: b.ID, BodyName: t.In(b.Name), Drawing: b.ID, Cautions: customersCautions(t, nil)}
	for k, id := range car.ConditionIDs {
		out.Conditions = append(out.Conditions, SheetCondition{id, conditionKeys[k], t.Condition(k), t.ConditionLooks(k)})
	}
	for _, f := range pricing.Findings() {
		if f.PerCar {
			if v.HitZones != nil {
				continue // recorded with the hits
			}
			out.WholeCarFindings = append(out.WholeCarFindings, IDName{f.ID, t.In(f.Name)})
		} else {
			out.Findings = append(out.Findings, SheetFinding{f.ID, f.Key, t.In(f.Name), f.PerLeadJoint, f.Priced})
		}
	}
	out.Hits = sheetHits(t, v.HitZones)
	for z := range b.Zones {
		out.Zones = append(out.Zones, sheetZone(t, b, z))
	}
	for i := range b.Items {
		out.Items = append(out.Items, entry[SheetItem]{b.Items[i].ID, sheetItem(o, b, i, v.Bought[i])})
	}
	for _, x := range v.Boxes {
		box := SheetBox{ID: b.Pockets[x.Pocket].ID, Name: t.Pocket(b, x.Pocket)}
		for _, i := range x.Items {
			box.Items = append(box.Items, b.Items[i].ID)
		}
		out.Boxes = append(out.Boxes, box)
	}
	out.WalkRound, out.Tools = walkRound(t, b, v.Walk)
	for _, id := range carfile.StageIDs {
		out.Stages = append(out.Stages, IDName{id, t.Stage(id)})
	}
	for _, h := range v.Strip {
		out.StripTrades = append(out.StripTrades, StripTrade{car.TradeIDs[h.Trade], t.Trade(h.Trade), wording.TradeHours(h)})
	}
	return out, nil
}

// sheetHits is the card of hits and squareness, nil for a shop that leaves them aside.
func sheetHits(t *wording.Text, zones []string) *SheetHits {
	if zones == nil {
		return nil
	}
	out := &SheetHits{}
	for _, id := range zones {
		out.Zones = append(out.Zones, IDName{id, t.HitZone(id)})
	}
	for _, id := range olddamage.MannerIDs {
		out.Manners = append(out.Manners, IDName{id, t.Manner(id)})
	}
	for _, id := range olddamage.SquareIDs {
		out.Square = append(out.Square, IDName{id, t.Square(id)})
	}
	return out
}

func sheetZone(t *wording.Text, b *car.Body, z int) SheetZone {
	zone := SheetZone{ID: b.Zones[z].ID, Name: t.In(b.Zones[z].Name)}
	for k := range b.Parts {
		p := &b.Parts[k]
		if p.Zone != z || len(p.Items) == 0 {
			continue
		}
		row := SheetRow{Part: p.ID, Name: t.In(p.Name)}
		for _, l := range session.LinesOf(b, p) {
			row.Lines = append(row.Lines, SheetLine(l))
		}
		zone.Rows = append(zone.Rows, row)
	}
	return zone
}

func sheetItem(o *openShop, b *car.Body, i int, bought bool) SheetItem {
	p := b.PartOf(i)
	item := SheetItem{Name: o.text.Item(b, i), Zone: b.Zones[p.Zone].ID, Closed: !p.SeenWhenStripped, Structural: p.Structural,
		LeadJoints: p.LeadJoints, Bought: bought, Findings: session.FindingsOn(p), Behind: o.Behind(b, i)}
	if item.Closed {
		item.Box = b.Pockets[b.Items[i].Pocket].ID
	}
	return item
}

// walkRound lists the checks of the walk-around, with the tools that they need.
func walkRound(t *wording.Text, b *car.Body, walk []session.WalkSection) (sections []WalkSection, tools []WalkTool) {
	var names []string
	var lines []int
	for _, s := range walk {
		section := WalkSection{ID: s.ID, Name: t.WalkSection(s.ID)}
		for _, l := range s.Lines {
			needs := t.In(l.Kind.Needs)
			k := slices.Index(names, needs)
			if k < 0 {
				k, names, lines = len(names), append(names, needs), append(lines, 0)
			}
			lines[k]++
			section.Lines = append(section.Lines, WalkLine{Look: l.Kind.ID, On: l.On, Text: t.WalkCheck(b, l), Place: t.WalkPlace(b, l), Name: t.In(l.Kind.Name),
				How: t.In(l.Kind.How), Needs: needs, Caution: t.In(l.Kind.Caution), Tool: "tool_" + strconv.Itoa(k), BesideLead: wording.BesideLead(b, l)})
		}
		sections = append(sections, section)
	}
	for k, name := range names {
		tools = append(tools, WalkTool{"tool_" + strconv.Itoa(k), name, wording.ToolLines(name, lines[k])})
	}
	return sections, tools
}
