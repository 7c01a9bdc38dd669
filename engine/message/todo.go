package message

import (
	"cmp"
	"slices"
	"strconv"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/money"
	"underpaint/engine/strict"
	"underpaint/engine/work"
)

// doCard is one damaged item with the ways that its condition allows.
type doCard struct {
	item, condition int
	card            work.Card
	chosen          *carfile.Choice
	worth           money.Minor // of its dearest way, for the order
}

func (s *Session) doCards(c *carfile.Car, b *car.Body, t *work.Table) (out []doCard) {
	for _, i := range damagedItems(c, b, t) {
		k := c.RecordedCondition(b.Items[i].ID)
		one := doCard{item: i, condition: k, card: t.Card(i, k)}
		if n := slices.IndexFunc(c.Ways, func(w carfile.Choice) bool { return w.On == b.Items[i].ID }); n >= 0 {
			one.chosen = &c.Ways[n]
		}
		for _, w := range one.card.Ways {
			one.worth = max(one.worth, s.likelyPrice(w))
		}
		out = append(out, one)
	}
	slices.SortStableFunc(out, func(x, y doCard) int { return cmp.Compare(y.worth, x.worth) })
	return out
}

// heavyPitting is the mildest condition at which structural metal is not left.
const heavyPitting = 2

// likelyPrice is a way at its likely hours and the likely price of its part.
func (s *Session) likelyPrice(w work.WayCard) (sum money.Minor) {
	for t, h := range w.ByTrade {
		sum += s.Rates.Labour.Trades[t].Rate.Of(int64(float64(h[1]*1000) + 0.5))
	}
	return sum + w.Price[1]
}

// toDo is the reply with every decision that the recorded conditions ask for.
func (s *Session) toDo(id int64, c *carfile.Car) ([]byte, error) {
	b, t, err := s.oneBody(c)
	if err != nil {
		return nil, err
	}
	if wrong := c.Faults(b, t); len(wrong) > 0 {
		return nil, wrong[0].Err
	}
	cards := s.doCards(c, b, t)
	w := strict.NewWriter()
	w.Object(func() {
		head(w, id, "to_do")
		w.Key("cards")
		w.Array(func() {
			for k := range cards {
				w.Object(func() { s.writeCard(w, b, cards, k) })
			}
		})
		undecided := len(cards) - decidedOf(c, b, t)
		w.Member("undecided_line", strconv.Itoa(undecided)+" undecided: for these the odds of what is usually done stand")
		w.Texts("shared", s.gettingIn(cards))
	})
	return w.Bytes(), nil
}
