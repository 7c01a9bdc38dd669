package session

import (
	"slices"
	"strings"

	"underpaint/engine/car"
	"underpaint/engine/columns"
	"underpaint/engine/money"
	"underpaint/engine/rates"
)

// pricedParts finds parts, ways and bodies by id or by name.
type pricedParts struct {
	parts, ways, bodies map[string]string
	done                map[string]bool // "part/way", and "body/part/way"
}

var hadNames = map[string]string{"whole panel made today": "made_today", "repair section only": "section_only", "must be found": "found", "none made: by hand": "by_hand", "by hand": "by_hand"}

func plainName(s string) string {
	return strings.Join(strings.FieldsFunc(strings.ToLower(s), func(r rune) bool { return r == ' ' || r == '_' || r == '-' || r == '\u00a0' }), " ")
}

func newPricedParts() *pricedParts {
	k := &pricedParts{map[string]string{}, map[string]string{}, map[string]string{}, map[string]bool{}}
	bodies, parts := outlineParts()
	for i, id := range car.BodyIDs {
		for _, name := range []string{id, bodies[i].US, bodies[i].UK} {
			k.bodies[plainName(name)] = id
		}
	}
	twice := map[string]bool{}
	for _, p := range parts {
		for _, name := range []string{p.Name.US, p.Name.UK} {
			if own, there := k.parts[plainName(name)]; there && own != p.ID {
				twice[plainName(name)] = true // two parts share this name, so it needs the id
			}
			k.parts[plainName(name)] = p.ID
		}
		for w, done := range p.Done {
			if done {
				k.done[p.ID+"/"+car.WayIDs[w]] = true
			}
		}
		for _, body := range p.Bodies {
			k.done[body+"/"+p.ID] = true
		}
	}
	for name := range twice {
		delete(k.parts, name)
	}
	for _, p := range parts {
		k.parts[plainName(p.ID)] = p.ID
	}
	common, err := car.LoadCommon()
	if err != nil {
		panic("engine: internal error: " + err.Error())
	}
	for w, id := range car.WayIDs {
		for _, name := range []string{id, common.Ways[w].US, common.Ways[w].UK} {
			k.ways[plainName(name)] = id
		}
	}
	return k
}

// price reads one row. The refusal names the cell.
func (k *pricedParts) price(row columns.Row) (p rates.PartPrice, refusal *columns.Refusal) {
	wrong := func(cell int, expected string) *columns.Refusal {
		return &columns.Refusal{Row: row.Number, Line: row.Line, Heading: priceHeadings[cell], Found: row.Cells[cell].Text, Expected: expected}
	}
	part, ok := k.parts[plainName(row.Cells[0].Text)]
	if !ok {
		return p, wrong(0, "the id or the name of a part, such as quarter_skin")
	}
	way := k.ways[plainName(row.Cells[1].Text)]
	if !k.done[part+"/"+way] {
		return p, wrong(1, "a way to repair this part with a bought part: patch, section, full or fabricate")
	}
	p.Part, p.Way = part, car.Way(slices.Index(car.WayIDs[:], way))
	if body := row.Cells[5]; !body.Blank {
		if p.Body = k.bodies[plainName(body.Text)]; p.Body == "" || !k.done[p.Body+"/"+part] {
			return p, wrong(5, "a body that has this part, or nothing for all bodies")
		}
	}
	if had := row.Cells[6]; !had.Blank {
		p.Had = plainName(had.Text)
		if id, ok := hadNames[p.Had]; ok {
			p.Had = id
		}
		p.Had = strings.ReplaceAll(p.Had, " ", "_")
		if !slices.Contains([]string{"made_today", "section_only", "found", "by_hand", "specialist"}, p.Had) {
			return p, wrong(6, "made_today, section_only, found, by_hand or specialist")
		}
	}
	p.Note = row.Cells[7].Text
	if row.Cells[3].Blank {
		if p.Had == "" || !row.Cells[2].Blank || !row.Cells[4].Blank {
			return p, wrong(3, "a price, or where the part comes from")
		}
		return p, nil
	}
	var published [3]money.Decimal
	for at, cell := range []int{2, 3, 4} {
		if row.Cells[cell].Blank {
			cell = 3
		}
		var err error
		if published[at], err = money.Parse(row.Cells[cell].Text); err != nil {
			return p, wrong(cell, "a price with at most 6 decimals")
		}
	}
	if !p.SetPrice(published) {
		return p, wrong(3, "low, likely and high, none of them below the one before it")
	}
	return p, nil
}

var priceHeadings = []string{"part", "way", "low", "likely", "high", "body", "had", "note"}

// repeated refuses a second price for one part and way.
func repeated(good []rates.PartPrice, p rates.PartPrice, row columns.Row) *columns.Refusal {
	if slices.ContainsFunc(good, func(o rates.PartPrice) bool { return o.Part == p.Part && o.Way == p.Way && o.Body == p.Body }) {
		return &columns.Refusal{Row: row.Number, Line: row.Line, Heading: "part", Found: p.Part, Expected: "one price for each part and way (there is one above)"}
	}
	return nil
}
