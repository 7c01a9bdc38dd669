package message

import (
	"underpaint/engine/columns"
	"underpaint/engine/money"
	"underpaint/engine/rates"
	"underpaint/engine/strict"
)

// priceColumns are those of a table of part prices. Part, way, body and how a part
// is had may be ids or names, in either vocabulary.
func priceColumns(decimal columns.Decimal, marks []string) []columns.Column {
	figure := func(name string, also ...string) columns.Column {
		return columns.Column{Name: name, Also: also, Kind: columns.Number, Low: 0.01, High: 1e9, Marks: marks, Decimal: decimal, Blank: true}
	}
	return []columns.Column{
		{Name: "part"}, {Name: "way", Also: []string{"what to do"}},
		figure("low"), figure("likely", "price"), figure("high"),
		{Name: "body", Optional: true, Blank: true}, {Name: "had", Also: []string{"how it is had"}, Optional: true, Blank: true}, {Name: "note", Optional: true, Blank: true},
	}
}

var decimals = map[string]columns.Decimal{"": columns.Unknown, "point": columns.Point, "comma": columns.Comma}

// readPrices turns a pasted table into entries of the rates file. Good rows and
// refused ones are kept apart; nothing is guessed.
func readPrices(id int64, f strict.Field) []byte {
	f.Keys("id", "ask", "text", "decimal", "words", "currency")
	text, decimal := f.Get("text").Document(columns.MaxBytes), decimals[f.Get("decimal").OneOf("", "point", "comma")]
	f.Get("words").OneOf("us", "uk")
	var marks []string
	if f.Has("currency") {
		code := f.Get("currency").Text(3)
		if c, err := money.CurrencyOf(code); err == nil {
			marks = []string{c.Symbol, c.Code}
		}
	}
	if f.Err() != nil {
		return refused(id, "request", f.Err())
	}
	table, err := columns.Read(text, priceColumns(decimal, marks))
	if err != nil {
		return refused(id, "table", err)
	}
	known := pricedParts()
	var good []rates.PartPrice
	for _, row := range table.Rows {
		price, refusal := known.price(row)
		if refusal == nil {
			refusal = repeated(good, price, row)
		}
		if refusal != nil {
			table.Refuse(refusal)
			continue
		}
		good = append(good, price)
	}
	w := strict.NewWriter()
	w.Object(func() {
		head(w, id, "prices_read")
		w.Objects("prices", len(good), func(i int) { writePrice(w, &good[i]) })
		writeTableFaults(w, &table)
	})
	return w.Bytes()
}

func writeTableFaults(w *strict.Writer, t *columns.Table) {
	w.Key("refused")
	w.Whole(int64(t.Refused))
	w.Objects("refusals", len(t.Refusals), func(i int) {
		r := &t.Refusals[i]
		w.Key("row")
		w.Whole(int64(r.Row))
		w.Key("column")
		w.Whole(int64(r.Column))
		w.Member("heading", r.Heading)
		w.Member("found", r.Found)
		w.Member("expected", r.Expected)
		w.Member("text", r.Error())
	})
	w.Objects("questions", len(t.Questions), func(i int) {
		q := &t.Questions[i]
		w.Member("heading", q.Heading)
		w.Key("row")
		w.Whole(int64(q.Row))
		w.Member("found", q.Found)
		w.Member("as_point", q.AsPoint)
		w.Member("as_comma", q.AsComma)
		w.Member("text", questionText(q))
	})
	w.Texts("ignored", t.Ignored)
}

func questionText(q *columns.Question) string {
	if q.OtherFound != "" {
		return "The column " + q.Heading + " holds both " + q.Found + " and " + q.OtherFound + ", which use different decimal marks. Which mark is meant?"
	}
	return "In the column " + q.Heading + ", is " + q.Found + " " + q.AsPoint + " or " + q.AsComma + "?"
}
