package message

import (
	"underpaint/engine/car"
	"underpaint/engine/pricing"
	"underpaint/engine/session"
	"underpaint/engine/wording"
)

func askBeforeAfter(o *openShop, q carRequest) (Reply, error) {
	v, err := o.StageRanges(q.car)
	if err != nil {
		return nil, err
	}
	if q.effort == "rough" && v.State == session.Refining {
		v.State = session.Rough
	}
	return newBeforeAfter(o.Session, o.text, v, q.least), nil
}

// NewBeforeAfter makes the reply with the range of each stage.
func NewBeforeAfter(s *session.Session, t *wording.Text, v session.StageRanges) *BeforeAfterReply {
	return newBeforeAfter(s, t, v, 0)
}

func newBeforeAfter(s *session.Session, t *wording.Text, v session.StageRanges, least int64) *BeforeAfterReply {
	a, b := session.NewAxis(s.Rates.Currency, max(v.MostDot, 1), least), v.Tally.Body
	out := &BeforeAfterReply{State: string(v.State), Axis: newAxis(a), UnseenLine: wording.Unseen(&v.Tally), OtherFiguresLine: t.OtherFigures(v.Other), NotALimit: wording.NotALimit}
	for k := range v.Rows {
		r := &v.Rows[k]
		row := StageRow{ID: r.ID, Name: t.Stage(r.ID), DateText: t.Date(r.On), Done: r.Done}
		if r.Done {
			row.StageRange = &StageRange{t.Amount(r.Shown.Low), t.Amount(r.Shown.Half), t.Amount(r.Shown.High), t.Wide(r.Shown),
				newDots(r.Exact.Dots, a), t.EightInTen(r.Shown), wording.Wider(v.Rows, k)}
		}
		out.Rows = append(out.Rows, row)
	}
	if v.State == session.Settled {
		out.Headline = t.StagesHeadline(v.Rows)
		out.Worse, out.Better = t.MovedPockets(b, v.Moved)
	}
	for _, m := range v.Items {
		out.Items = append(out.Items, MovedItem{b.Items[m.Item].ID, t.Item(b, m.Item), wording.InTen(m.Before), wording.InTen(m.Now), wording.MovedItem(m)})
	}
	return out
}

func askToDo(o *openShop, q carRequest) (Reply, error) {
	v, err := o.ToDo(q.car)
	if err != nil {
		return nil, err
	}
	return NewToDo(o.text, v), nil
}

// NewToDo makes the reply with every decision.
func NewToDo(t *wording.Text, v session.ToDo) *ToDoReply {
	out := &ToDoReply{UndecidedLine: wording.Undecided(v.Undecided), Shared: t.GettingIn(v.Shared)}
	for k := range v.Cards {
		d := &v.Cards[k]
		card := ToDoCard{On: v.Body.Items[d.Item].ID, Title: t.DecisionTitle(v.Body, d), ChosenText: t.ChosenBy(d), CannotLeave: wording.CannotLeave(d),
			CoveredBy: t.CoveredBy(v.Body, d), Opened: t.OpenedFor(v.Body, d), Caution: wording.MountingCaution(d.Part)}
		if d.Chosen != nil {
			card.Chosen = d.Chosen.Way
		}
		for n := range d.Ways {
			card.Ways = append(card.Ways, toDoWay(t, v.Body, &d.Ways[n], t.WayPrice(d.Likely[n])))
		}
		out.Cards = append(out.Cards, card)
	}
	return out
}

func toDoWay(t *wording.Text, b *car.Body, w *pricing.WayCard, price string) ToDoWay {
	return ToDoWay{ID: car.WayIDs[w.Way], Name: t.Way(w.Way), HoursText: wording.WayHours(w), PriceText: price, Sentence: t.WaySentence(w),
		CoversText: t.WayCovers(b, w), Opens: t.WayOpens(b, w), Allowed: true}
}

func askCompareWays(o *openShop, q carRequest) (Reply, error) {
	v, err := o.CompareWays(q.car, q.on)
	if err != nil {
		return nil, err
	}
	out := &CompareWaysReply{On: q.on, HowSure: wording.ComparedOn()}
	for _, w := range v.Ways {
		out.Ways = append(out.Ways, WayLine{car.WayIDs[w.Way], o.text.WayDifference(w.Difference, o.text.Against(&v))})
	}
	return out, nil
}
