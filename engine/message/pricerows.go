package message

import (
	"slices"
	"strings"

	"underpaint/engine/car"
	"underpaint/engine/columns"
	"underpaint/engine/money"
	"underpaint/engine/rates"
	"underpaint/engine/strict"
)

// priced finds parts, ways and bodies by id or by name.
type priced struct {
	parts, ways, bodies map[string]string
	done                map[string]bool // "part/way", and "body/part/way"
}

var hadNames = map[string]string{"whole panel made today": "made_today", "repair section only": "section_only", "must be found": "found", "none made: by hand": "by_hand", "by hand": "by_hand"}

func plainName(s string) string {
	return strings.Join(strings.FieldsFunc(strings.ToLower(s), func(r rune) bool { return r == ' ' || r == '_' || r == '-' || r == '\u00a0' }), " ")
}

func pricedParts() *priced {
	k := &priced{map[string]string{}, map[string]string{}, map[string]string{}, map[string]bool{}}
	bodies, parts := outlineParts()
	for i, id := range car.BodyIDs {
		for _, name := range []string{id, bodies[i].US, bodies[i].UK} {
			k.bodies[plainName(name)] = id
		}
	}
	twice := map[string]bool{}
	for _, p := range parts {
		for _, name := range []string{p.name.US, p.name.UK} {
			if own, there := k.parts[plainName(name)]; there && own != p.id {
				twice[plainName(name)] = true // two parts of one name: only the id will do
			}
			k.parts[plainName(name)] = p.id
		}
		for w, done := range p.done {
			if done {
				k.done[p.id+"/"+car.WayIDs[w]] = true
			}
		}
		for _, body := range p.bodies {
			k.done[body+"/"+p.id] = true
		}
	}
	for name := range twice {
		delete(k.parts, name)
	}
	for _, p := range parts {
		k.parts[plainName(p.id)] = p.id
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

// price reads one row; the refusal names the cell.
func (k *priced) price(row columns.Row) (p rates.PartPrice, refusal *columns.Refusal) {
	wrong := func(cell int, expected string) *columns.Refusal {
		return &columns.Refusal{Row: row.Number, Line: row.Line, Heading: priceHeadings[cell], Found: row.Cells[cell].Text, Expected: expected}
	}
	part, ok := k.parts[plainName(row.Cells[0].Text)]
	if !ok {
		return p, wrong(0, "the id or the name of a part, such as quarter_skin")
	}
	way := k.ways[plainName(row.Cells[1].Text)]
	if !k.done[part+"/"+way] {
		return p, wrong(1, "a way in which this part is mended with a bought part: patch, section, full or fabricate")
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
			return p, wrong(3, "a price, or how the part is had")
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
		return p, wrong(3, "low, likely and high, none below the one before it")
	}
	return p, nil
}

var priceHeadings = []string{"part", "way", "low", "likely", "high", "body", "had", "note"}

// repeated refuses a second price for one part and way.
func repeated(good []rates.PartPrice, p rates.PartPrice, row columns.Row) *columns.Refusal {
	if slices.ContainsFunc(good, func(o rates.PartPrice) bool { return o.Part == p.Part && o.Way == p.Way && o.Body == p.Body }) {
		return &columns.Refusal{Row: row.Number, Line: row.Line, Heading: "part", Found: p.Part, Expected: "one price for a part and way; there is one above"}
	}
	return nil
}

func writePrice(w *strict.Writer, p *rates.PartPrice) {
	w.Member("part", p.Part)
	w.Member("way", car.WayIDs[p.Way])
	w.MemberIf("body", p.Body)
	w.Key("price")
	if p.Priced {
		w.Array(func() {
			for _, v := range p.Published {
				w.JSON([]byte(v.String()))
			}
		})
	} else {
		w.Null()
	}
	w.Key("had")
	if p.Had == "" {
		w.Null()
	} else {
		w.String(p.Had)
	}
	w.MemberIf("note", p.Note)
	w.Member("source", "the shop's own figure")
}

// writePrices gives the shop's own part prices as a table for a spreadsheet.
func writePrices(id int64, f strict.Field) []byte {
	f.Keys("id", "ask", "rates", "separator")
	text, separator := f.Get("rates").Document(strict.MaxBytes), f.Get("separator").OneOf(",", ";", "tab")
	if f.Err() != nil {
		return refused(id, "request", f.Err())
	}
	r, err := rates.Decode([]byte(text))
	if err != nil {
		return refused(id, "rates", err)
	}
	sep, mark := separatorOf(separator)
	table, err := columns.NewWriter(sep, priceHeadings...)
	if err != nil {
		return refused(id, "table", err)
	}
	for _, p := range r.Parts.Prices {
		figures := make([]string, 3)
		if p.Priced {
			for k, v := range p.Published {
				figures[k] = columns.Figure(v.String(), mark)
			}
		}
		if err := table.Row(p.Part, car.WayIDs[p.Way], figures[0], figures[1], figures[2], p.Body, p.Had, p.Note); err != nil {
			return refused(id, "table", err)
		}
	}
	w := strict.NewWriter()
	w.Object(func() {
		head(w, id, "prices_written")
		w.Member("text", table.Text())
	})
	return w.Bytes()
}

// separatorOf is the separator with the decimal mark that goes with it: where
// spreadsheets cut at semicolons, decimals have a comma.
func separatorOf(name string) (byte, columns.Decimal) {
	switch name {
	case ";":
		return ';', columns.Comma
	case "tab":
		return '\t', columns.Point
	}
	return ',', columns.Point
}
