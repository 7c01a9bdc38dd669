package message

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/estimate"
	"underpaint/engine/money"
	"underpaint/engine/strict"
	"underpaint/engine/work"
)

// gettingIn names the work that is charged once for all ways that ask for it.
func (s *Session) gettingIn(cards []doCard) (out []string) {
	for _, one := range cards {
		for _, w := range one.card.Ways {
			if one.chosen == nil || car.WayIDs[w.Way] != one.chosen.Way {
				continue
			}
			for _, g := range w.GettingIn {
				if line := "Getting in (once): " + lowerFirst(g.In(s.Rates.Words)); !slices.Contains(out, line) {
					out = append(out, line)
				}
			}
		}
	}
	return out
}

func (s *Session) writeCard(w *strict.Writer, b *car.Body, cards []doCard, n int) {
	one := &cards[n]
	p := b.PartOf(one.item)
	w.Member("on", b.Items[one.item].ID)
	w.Member("title", b.ItemName(one.item, s.Rates.Words)+": "+lowerFirst(s.common.Conditions[one.condition].In(s.Rates.Words)))
	way, by, text := "", "", "Not decided: what is usually done stands, with its odds."
	if one.chosen != nil {
		way, by = one.chosen.Way, one.chosen.By
		text = "Chosen by the " + by + "."
	}
	w.Member("chosen", way)
	w.Member("chosen_by", by)
	w.Member("chosen_text", text)
	w.Objects("ways", len(one.card.Ways), func(k int) { s.writeWay(w, b, one.card.Ways[k]) })
	stay := ""
	if !slices.ContainsFunc(one.card.Ways, func(c work.WayCard) bool { return c.Way == car.Leave }) {
		stay = "Metal in this condition is not left as it is."
		if p.Structural && one.condition >= heavyPitting {
			stay = "Structural metal at heavy pitting or worse is not left."
		}
	}
	w.Member("cannot_leave", stay)
	covered, opened := s.throughOthers(b, cards, one.item)
	w.Member("covered_by", covered)
	w.Texts("opened", opened)
	caution := ""
	if p.NearMounting {
		caution = "Seat belt, steering or suspension is fastened here: work and inspection by people qualified for it, to the rules of the place."
	}
	w.Member("caution", caution)
}

func (s *Session) writeWay(w *strict.Writer, b *car.Body, c work.WayCard) {
	w.Member("id", car.WayIDs[c.Way])
	w.Member("name", s.common.Ways[c.Way].In(s.Rates.Words))
	hours := hoursText(c.Hours)
	part := ""
	if c.HasPart {
		part = "part " + s.Rates.Currency.TextWhole(c.Price[1]) + ", 8 in 10 between " + s.Rates.Currency.TextWhole(c.Price[0]) + " and " + s.Rates.Currency.TextWhole(c.Price[2])
	}
	w.Member("hours_text", hours)
	w.Member("part_text", part)
	w.Member("price_text", "about "+s.moneyWidth(float64(s.likelyPrice(c))))
	w.Member("sentence", strings.TrimSuffix(hours+"; "+part, "; "))
	var covers, opens []string
	for _, i := range c.Covers {
		covers = append(covers, lowerFirst(b.ItemName(i, s.Rates.Words)))
	}
	for _, o := range c.Opens {
		opens = append(opens, lowerFirst(b.ItemName(o.Item, s.Rates.Words))+" ("+lowerFirst(s.common.Ways[o.To].In(s.Rates.Words))+"): "+lowerFirst(o.Why.In(s.Rates.Words)))
	}
	covered := ""
	if len(covers) > 0 {
		covered = "Covers " + strings.Join(covers, "; ") + "."
	}
	w.Member("covers_text", covered)
	w.Texts("opens", opens)
	w.Key("allowed")
	w.Bool(true)
}

func hoursText(h car.Hours) string {
	if h == (car.Hours{}) {
		return "no hours of its own"
	}
	return tenthHours(h[1]) + " hours, 8 in 10 between " + tenthHours(h[0]) + " and " + tenthHours(h[2])
}

// tenthHours writes hours to a tenth below ten, to whole hours above.
func tenthHours(h float64) string {
	if h < 9.95 {
		return strconv.FormatFloat(math.Floor(float64(h*10)+0.5)/10, 'f', -1, 64)
	}
	return grouped(int64(h + 0.5))
}

// throughOthers says what the chosen ways of other items do to an item.
func (s *Session) throughOthers(b *car.Body, cards []doCard, item int) (covered string, opened []string) {
	for k := range cards {
		other := &cards[k]
		if other.chosen == nil || other.item == item {
			continue
		}
		name := lowerFirst(b.ItemName(other.item, s.Rates.Words))
		for _, w := range other.card.Ways {
			if car.WayIDs[w.Way] != other.chosen.Way {
				continue
			}
			if slices.Contains(w.Covers, item) {
				covered = "Already covered by the " + name + "."
			}
			for _, o := range w.Opens {
				if o.Item == item {
					opened = append(opened, "Opened because of the "+name+": "+lowerFirst(o.Why.In(s.Rates.Words)))
				}
			}
		}
	}
	return covered, opened
}

// compared is how many imagined cars two ways are compared on: the differences
// are taken car by car, so far fewer do than for a range (assumption).
const compared = 2 * estimate.Block

// compareWays sets every way of an item against what stands now, on the same
// imagined cars.
func (s *Session) compareWays(id int64, c *carfile.Car, on string) ([]byte, error) {
	j, err := s.openStages(c)
	if err != nil {
		return nil, err
	}
	i, ok := j.body.ItemNamed(on)
	if !ok || c.RecordedCondition(on) <= 0 {
		return nil, &strict.Error{Path: "on", Found: on, Expected: "an item recorded in a condition other than sound"}
	}
	_, now := j.lastTwo()
	if err := j.need(now); err != nil {
		return nil, err
	}
	base := c.Decided(j.body, c.LastStage(), true)
	against := "what is usually done"
	if base.Way != nil && base.Way[i] >= 0 {
		against = lowerFirst(s.common.Ways[base.Way[i]].In(s.Rates.Words))
	}
	ways := j.plain.Allowed(i, c.RecordedCondition(on))
	tables := make([]*work.Table, 0, len(ways)+1)
	for k := -1; k < len(ways); k++ {
		d := base
		if k >= 0 {
			d.Way = fixed(base.Way, len(j.body.Items), i, ways[k])
		}
		t, err := j.plain.With(d)
		if err != nil {
			return nil, err
		}
		tables = append(tables, t)
	}
	run := estimate.NewRun(now.model, tables, Seed)
	for run.Cars() < compared {
		run.Add()
	}
	w := strict.NewWriter()
	w.Object(func() {
		head(w, id, "compare_ways")
		w.Member("on", on)
		w.Member("against", against)
		w.Objects("ways", len(ways), func(k int) {
			w.Member("id", car.WayIDs[ways[k]])
			w.Member("line", s.differenceLine(run.Difference(0, k+1), against))
		})
		w.Member("how_sure", "On the same "+grouped(compared)+" imagined cars, "+eachPriced+", with everything else as it stands.")
	})
	return w.Bytes(), nil
}

// fixed is a copy of the chosen ways with one item set.
func fixed(ways []int8, items, i int, way car.Way) []int8 {
	out := make([]int8, items)
	for n := range out {
		out[n] = -1
	}
	copy(out, ways)
	out[i] = int8(way)
	return out
}

func (s *Session) differenceLine(d estimate.Difference, against string) string {
	if d.Same > 0.999 {
		return "No difference."
	}
	e := roundEnds(d.Low, d.Half, 0, d.High)
	line := s.signed(e.low) + " to " + s.signed(e.high) + " against " + against
	if e.low == e.high {
		line = s.signed(e.half) + " against " + against
	}
	if weeks := weeksWords(d.WeeksHalf); weeks != "" {
		line += ", " + weeks
	}
	return line + "; dearer in " + inTen(d.Dearer) + " cars."
}

// signed writes an amount with its sign.
func (s *Session) signed(m money.Minor) string {
	switch {
	case m < 0:
		return "−" + s.Rates.Currency.TextWhole(-m)
	case m > 0:
		return "+" + s.Rates.Currency.TextWhole(m)
	}
	return "nothing"
}

func weeksWords(weeks float64) string {
	more := "more"
	if weeks < 0 {
		weeks, more = -weeks, "less"
	}
	switch {
	case weeks < 0.15:
		return ""
	case weeks < 0.75:
		return "about half a week " + more
	case weeks < 1.5:
		return "about a week " + more
	}
	return "about " + strconv.Itoa(int(weeks+0.5)) + " weeks " + more
}
