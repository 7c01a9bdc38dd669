package session

import (
	"underpaint/engine/car"
	"underpaint/engine/columns"
	"underpaint/engine/money"
	"underpaint/engine/rates"
)

// priceColumns are the columns of a table of part prices. Part, way, body and where a
// part comes from may be ids or names, in US or UK words.
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

// ReadPrices turns a pasted table into part prices. It returns the good rows, and the
// table with the refused ones; it never guesses. currency (its letters, or empty) says
// which currency signs may stand beside a figure.
func ReadPrices(text string, decimal columns.Decimal, currency string) ([]rates.PartPrice, *columns.Table, error) {
	var marks []string
	if c, err := money.CurrencyOf(currency); err == nil {
		marks = []string{c.Symbol, c.Code}
	}
	table, err := columns.Read(text, priceColumns(decimal, marks))
	if err != nil {
		return nil, nil, err
	}
	known := newPricedParts()
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
	return good, &table, nil
}

// WritePrices writes the shop's own part prices as a table for a spreadsheet.
func WritePrices(r *rates.Rates, separator byte, mark columns.Decimal) (string, error) {
	table, err := columns.NewWriter(separator, priceHeadings...)
	if err != nil {
		return "", err
	}
	for _, p := range r.Parts.Prices {
		figures := make([]string, 3)
		if p.Priced {
			for k, v := range p.Published {
				figures[k] = columns.Figure(v.String(), mark)
			}
		}
		if err := table.Row(p.Part, car.WayIDs[p.Way], figures[0], figures[1], figures[2], p.Body, p.Had, p.Note); err != nil {
			return "", err
		}
	}
	return table.Text(), nil
}
