package message

import (
	"sort"
	"strings"

	"underpaint/engine/car"
	"underpaint/engine/money"
	"underpaint/engine/rates"
	"underpaint/engine/work"
)

// ZoneRow says how often anything in a zone is rusted through.
type ZoneRow struct {
	ID, Name, Line, Behind string
	InTen                  int
	Items                  []ItemRow
}

// ItemRow says how often one item is.
type ItemRow struct {
	ID, Name string
	InTen    int
	Share    float64
}

// zones lists the zones of a body, the likeliest rusted through first.
func (s *Session) zones(b *bodyRun) (out []ZoneRow) {
	for z := range b.body.Zones {
		share := b.run.ZoneHoled(z)
		row := ZoneRow{ID: b.body.Zones[z].ID, Name: b.body.Zones[z].Name.In(s.Rates.Words), InTen: tenths(share)}
		row.Line = "In " + carsInTen(share) + " at least one part here is rusted through"
		if b.run.ZoneOwnCause(z) > 0.5 {
			row.Line += ", mostly by a cause of its own (a leak, acid, a blocked drain)"
		}
		row.Line += "."
		row.Behind = s.behind(b, z, share)
		for i := range b.body.Items {
			if b.body.PartOf(i).Zone == z {
				p := b.run.Holed(i)
				row.Items = append(row.Items, ItemRow{b.body.Items[i].ID, b.body.ItemName(i, s.Rates.Words), tenths(p), p})
			}
		}
		out = append(out, row)
	}
	sort.SliceStable(out, func(i, k int) bool { return out[i].InTen > out[k].InTen })
	return out
}

// behind names the hidden parts most often rusted through where the zone is:
// those in at least three of ten such cars, at most three of them.
func (s *Session) behind(b *bodyRun, z int, share float64) string {
	type found struct {
		name  string
		share float64
	}
	var hidden []found
	for p := range b.body.Parts {
		part := &b.body.Parts[p]
		if part.Zone != z || part.Face == car.Outer || share == 0 {
			continue
		}
		if v := b.run.PartHoled(p) / share; v >= 0.3 {
			hidden = append(hidden, found{lowerFirst(part.Name.In(s.Rates.Words)), v})
		}
	}
	sort.SliceStable(hidden, func(i, k int) bool { return hidden[i].share > hidden[k].share })
	var names []string
	for _, h := range hidden[:min(3, len(hidden))] {
		names = append(names, h.name)
	}
	if len(names) == 0 {
		return ""
	}
	return "Usually found with it: " + strings.Join(names, "; ") + "."
}

func lowerFirst(s string) string {
	if s == "" {
		return s
	}
	return strings.ToLower(s[:1]) + s[1:]
}

// StageReply is the strip and survey as the customer reads it.
type StageReply struct {
	Price                                             money.Minor
	PriceText, FixedLine, GetLine, StopLine, Includes string
	Lines                                             []StageLineReply
}

// StageLineReply is one step of it.
type StageLineReply struct{ Text, Basis, AmountText string }

func (s *Session) stage(t *work.Table) StageReply {
	st := t.StagePrice()
	out := StageReply{Price: st.Likely, PriceText: s.wholeText(st.Likely), Includes: s.Rates.Strip.Includes}
	var each, hourly, cost []string
	var ceiling money.Minor
	for _, l := range st.Lines {
		name := l.Name.In(s.Rates.Words)
		line := StageLineReply{Text: name, Basis: "fixed", AmountText: s.wholeText(l.Likely)}
		switch l.How {
		case rates.EachOne:
			line.Basis = grouped(int64(l.Each)) + " at a price each"
			each = append(each, lowerFirst(name))
		case rates.ByTheHour:
			line.Basis = "by the hour"
			if l.Ceiling > 0 {
				line.Basis += ", no more than " + s.wholeText(l.Ceiling)
				ceiling += l.Ceiling
			}
			hourly = append(hourly, lowerFirst(name))
		case rates.AtCost:
			line.Basis = "at cost"
			cost = append(cost, lowerFirst(name))
		}
		out.Lines = append(out.Lines, line)
	}
	if s.Rates.Strip.PriceSet {
		out.Lines = fixedTogether(out.Lines)
	} else if st.Materials > 0 {
		out.Lines = append(out.Lines, StageLineReply{"Materials of this stage", "fixed", s.wholeText(st.Materials)})
	}
	out.FixedLine = s.fixedLine(s.wholeText(st.Fixed), each, hourly, cost, ceiling, st.SentOut)
	out.GetLine = "You get the shell in primer and every part's condition in writing."
	out.StopLine = "To stop there: " + s.wholeText(st.ToStop) + "."
	return out
}

// fixedTogether blanks single amounts where the shop has one price for all.
func fixedTogether(lines []StageLineReply) []StageLineReply {
	for i := range lines {
		if lines[i].Basis == "fixed" || strings.HasSuffix(lines[i].Basis, "each") {
			lines[i].AmountText = ""
		}
	}
	return lines
}

func (s *Session) fixedLine(fixed string, each, hourly, cost []string, ceiling money.Minor, sentOut bool) string {
	line := fixed + " of it is fixed."
	if len(each) > 0 {
		line += " At a price each, in that sum: " + strings.Join(each, "; ") + "."
	}
	if len(hourly) > 0 {
		line += " By the hour: " + strings.Join(hourly, "; ")
		if ceiling > 0 {
			line += "; those with a ceiling no more than " + s.wholeText(ceiling) + " together"
		}
		line += "."
	}
	if len(cost) > 0 || sentOut {
		line += " At cost: " + strings.Join(append(cost, sentOutWords(sentOut)...), "; ") + "."
	}
	return line
}

func sentOutWords(yes bool) []string {
	if yes {
		return []string{"work sent out"}
	}
	return nil
}

// wholeText writes the parts of a stage to the nearest whole unit of money: they
// are worked out from likely hours, and cents would claim more than is known.
func (s *Session) wholeText(m money.Minor) string {
	major := money.Minor(1)
	for range s.Rates.Currency.Digits {
		major *= 10
	}
	return s.Rates.Currency.TextWhole(money.RoundNearest(m, major))
}
