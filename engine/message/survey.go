package message

import "underpaint/engine/wording"

func askTally(o *openShop, q carRequest) (Reply, error) {
	n, err := o.Tally(q.car)
	if err != nil {
		return nil, err
	}
	items := len(n.Body.Items)
	out := &TallyReply{
		Canonical: n.Canonical, AnswersLine: wording.Answers(n.Answers),
		WalkRound:       TallyStep{n.Walked, n.Walk, o.text.Walked(n.Walked)},
		Survey:          TallyStep{n.Recorded, items, wording.Surveyed(n.Recorded, items)},
		OpeningUp:       TallyStep{n.Opened, n.Closed, wording.Opened(n.Opened, n.Closed)},
		ToDo:            TallyLine{wording.UndecidedCount(n.Undecided)},
		NotOpenedLine:   wording.NotOpened(n.Shut),
		MeasuredLine:    wording.Measured(n.Measured),
		NotRecordedLine: wording.NotRecorded(items - n.Recorded),
	}
	for _, f := range n.Faults {
		out.Faults = append(out.Faults, TallyFault{textFault(f.Err), f.On})
	}
	for z, one := range n.Zones {
		left := len(one.Rest)
		out.Zones = append(out.Zones, TallyZone{n.Body.Zones[z].ID, TallyStep{one.Recorded, one.Of, wording.NumberOf(one.Recorded, one.Of)}, left, wording.RestSound(left), one.Rest})
	}
	return out, nil
}

func askLookAgain(o *openShop, q carRequest) (Reply, error) {
	b, items, err := o.LookAgain(q.car)
	if err != nil {
		return nil, err
	}
	out := &LookAgainReply{}
	for _, i := range items {
		out.LookAgain = append(out.LookAgain, LookAgain{b.Items[i].ID, b.ItemName(i, o.Rates.Words), wording.LookAgain})
	}
	return out, nil
}

func askOdds(o *openShop, q carRequest) (Reply, error) {
	v, err := o.Odds(q.car, q.on)
	if err != nil {
		return nil, err
	}
	return &OddsReply{q.on, wording.ComparedWith(&v), wording.OddsBefore(&v), wording.OddsNow(&v)}, nil
}
