package session

import (
	"cmp"
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/money"
	"underpaint/engine/pricing"
)

// ToDo lists the decisions that the recorded conditions ask for, the most expensive
// first.
type ToDo struct {
	Body      *car.Body
	Cards     []Decision
	Undecided int
	Shared    []car.Words // work charged once for all chosen ways that need it
}

// Decision is one damaged item with the ways that its condition allows.
type Decision struct {
	pricing.Card
	Part        *car.Part
	Likely      []money.Minor    // what each of the card's ways is likely to cost
	Chosen      *carfile.Choice  // nil: not decided
	Missing     bool             // the part is not on the car
	CannotLeave bool             // metal in this condition cannot stay as it is
	Structural  bool             // because it carries load
	CoveredBy   int              // the item whose chosen way covers this one, or −1
	OpenedFor   []pricing.Opened // Item is the one whose chosen way opens this one
}

// heavyPitting is the mildest condition in which structural metal cannot stay as it is.
const heavyPitting = 2

// ToDo lays out every decision. The first fault of the car is an error with its path.
func (s *Shop) ToDo(c *carfile.Car) (ToDo, error) {
	b, t, err := s.faultless(c)
	if err != nil {
		return ToDo{}, err
	}
	out := ToDo{Body: b, Undecided: undecided(c, b)}
	for _, i := range damagedItems(c, b) {
		out.Cards = append(out.Cards, s.decision(c, b, t, i))
	}
	slices.SortStableFunc(out.Cards, func(x, y Decision) int {
		return cmp.Compare(slices.Max(append(y.Likely, 0)), slices.Max(append(x.Likely, 0)))
	})
	for k := range out.Cards {
		out.Cards[k].throughOthers(out.Cards)
	}
	out.Shared = gettingIn(out.Cards)
	return out, nil
}

func (s *Shop) decision(c *carfile.Car, b *car.Body, t *pricing.Table, i int) Decision {
	k := c.RecordedCondition(b.Items[i].ID)
	card := t.Card(i, max(k, 0))
	missing := c.RecordedMissing(b.Items[i].ID)
	if missing {
		card = t.CardMissing(i)
	}
	d := Decision{Card: card, Missing: missing, Part: b.PartOf(i), Chosen: chosenWay(c, b.Items[i].ID), CoveredBy: -1}
	for _, w := range d.Ways {
		d.Likely = append(d.Likely, s.likelyPrice(w))
	}
	d.CannotLeave = !slices.ContainsFunc(d.Ways, func(w pricing.WayCard) bool { return w.Way == car.Leave })
	d.Structural = d.Part.Structural && k >= heavyPitting
	return d
}

// likelyPrice prices a way at its likely hours and the likely price of its part.
func (s *Shop) likelyPrice(w pricing.WayCard) (sum money.Minor) {
	for t, h := range w.ByTrade {
		sum += s.Rates.Labour.Trades[t].Rate.Of(int64(float64(h[1]*1000) + 0.5))
	}
	return sum + w.Price[1]
}

// chosenCards returns the card of the chosen way, or none.
func (d *Decision) chosenCards() []pricing.WayCard {
	if d.Chosen == nil {
		return nil
	}
	var out []pricing.WayCard
	for _, w := range d.Ways {
		if car.WayIDs[w.Way] == d.Chosen.Way {
			out = append(out, w)
		}
	}
	return out
}

// throughOthers records what the chosen ways of other items do to this one.
func (d *Decision) throughOthers(all []Decision) {
	for k := range all {
		other := &all[k]
		if other.Item == d.Item {
			continue
		}
		for _, w := range other.chosenCards() {
			if slices.Contains(w.Covers, d.Item) {
				d.CoveredBy = other.Item
			}
			for _, o := range w.Opens {
				if o.Item == d.Item {
					o.Item = other.Item
					d.OpenedFor = append(d.OpenedFor, o)
				}
			}
		}
	}
}

// gettingIn lists the work that is charged once for all chosen ways that need it.
func gettingIn(cards []Decision) (out []car.Words) {
	for k := range cards {
		for _, w := range cards[k].chosenCards() {
			for _, g := range w.GettingIn {
				if !slices.Contains(out, g) {
					out = append(out, g)
				}
			}
		}
	}
	return out
}
