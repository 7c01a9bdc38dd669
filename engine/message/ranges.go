package message

import (
	"underpaint/engine/carfile"
	"underpaint/engine/estimate"
	"underpaint/engine/money"
	"underpaint/engine/session"
	"underpaint/engine/strict"
	"underpaint/engine/wording"
)

// rangeView says how the page wants to show the range.
type rangeView struct {
	axisAtLeast int64
	before      *wording.Before
}

func askRange(o *openShop, f strict.Field) (Reply, error) {
	f.Keys("id", "ask", "car", "effort", "axis_at_least", "before", "quiet")
	effort := f.Get("effort").OneOf("rough", "settle")
	view := rangeView{}
	if f.Has("axis_at_least") {
		view.axisAtLeast = int64(f.Get("axis_at_least").Number(0, 1e15))
	}
	if f.Has("before") {
		b := f.Get("before")
		b.Keys("low_minor", "high_minor", "answer")
		view.before = &wording.Before{Low: money.Minor(b.Get("low_minor").Number(0, 1e15)), High: money.Minor(b.Get("high_minor").Number(0, 1e15)), Answer: b.Get("answer").Text(200)}
	}
	quiet := f.Has("quiet") && f.Get("quiet").Bool()
	c := carfile.Read(f.Get("car"))
	if err := f.Err(); err != nil {
		return nil, refuse("car", err)
	}
	if err := o.Open(c); err != nil {
		return nil, refuse("car", err)
	}
	state := session.Rough
	if effort == "settle" {
		state = o.Step()
	} else {
		state = o.Rough()
	}
	if quiet && state == session.Refining {
		return &RangeGoesOnReply{string(session.Refining)}, nil
	}
	return newRange(o, o.Ranges(state), view), nil
}

// NewRange makes the reply with the ranges of the open car, in the plain view.
func NewRange(s *session.Session, t *wording.Text, r session.Ranges) *RangeReply {
	return newRange(&openShop{s, t}, r, rangeView{})
}

func newRange(o *openShop, r session.Ranges, view rangeView) *RangeReply {
	t := o.text
	a := session.NewAxis(o.Rates.Currency, r.MostDot(), view.axisAtLeast)
	work := o.OpenWork()
	out := &RangeReply{
		State: string(r.State), ImaginedCarsText: wording.Grouped(int64(r.Cars)), Seed: session.Seed, CheckCode: o.Rates.CheckCode(),
		CarLine: t.Car(&r), HeldLine: t.Held(), PromiseLine: t.Promise(), Axis: newAxis(a),
		NotInIt: t.NotInRange(&r), Cautions: customersCautions(t, &work), HowSure: t.HowSure(&r), OwnRecord: t.OwnRecord(), Warnings: t.Warnings(&r), KnownLimits: t.KnownLimits(),
	}
	for k := range r.Rows {
		row := rangeRow(o, &r.Rows[k], a, view.before)
		row.AnotherBody = newAnotherBody(t, &r.Rows[k], r.Car)
		out.Rows = append(out.Rows, row)
	}
	return out
}

func rangeRow(o *openShop, r *session.Range, a session.Axis, before *wording.Before) RangeRow {
	t, x := o.text, &r.Exact
	row := RangeRow{
		ID: r.Body.ID + "/" + r.Standard, Label: t.Label(r), Headline: r.Headline,
		SentenceHead: wording.SentenceHead, Sentence: t.Sentence(r), Spoken: t.Spoken(r),
		UntestedLine: t.Untested(r), RiseLine: t.Rise(r), FittingLine: t.Fitting(r), OldDamageLine: t.OldDamage(r),
		LowText: t.Amount(r.Shown.Low), HalfText: t.Amount(r.Shown.Half), SetAsideText: t.Amount(r.Shown.SetAside), HighText: t.Amount(r.Shown.High),
		LowMinor: r.Shown.Low, HighMinor: r.Shown.High, SetAsideLine: t.SetAside(r), ReserveLine: t.Reserve(r),
		Dots: newDots(x.Dots, a), DotsText: wording.Dots, HoursLine: t.Hours(x), WeeksLine: t.Weeks(x), KindsNote: wording.KindsNote,
		Stage: stripStage(o, &r.Strip), AllowanceLine: t.Allowance(r), TaxLine: t.Tax(x), NotAnEstimate: wording.NotAnEstimate,
		Exact: ExactFigures{x.Low, x.Half, x.SetAside, x.High, x.SELow, x.SEHigh, x.Hours.Low / 1000, x.Hours.Half / 1000, x.Hours.High / 1000},
	}
	if moved := t.Moved(r, before); moved != "" {
		row.MovedLine = &moved
	}
	for k := range r.Zones {
		row.Zones = append(row.Zones, zoneRow(t, r, &r.Zones[k]))
	}
	for kind, q := range x.Kinds {
		if q.High != 0 {
			low, half, high := t.KindAmounts(q)
			row.Kinds = append(row.Kinds, KindRow{estimate.KindIDs[kind], t.Kind(estimate.Kind(kind)), low, half, high})
		}
	}
	return row
}

func zoneRow(t *wording.Text, r *session.Range, z *session.ZoneShare) ZoneRow {
	zone := &r.Body.Zones[z.Zone]
	row := ZoneRow{ID: zone.ID, Name: t.In(zone.Name), InTen: session.Tenths(z.Share), Line: t.Zone(z), Behind: t.BehindZone(r, z)}
	for _, i := range z.Items {
		row.Items = append(row.Items, ItemRow{r.Body.Items[i.Item].ID, t.Item(r.Body, i.Item), session.Tenths(i.Share), wording.CarsInTen(i.Share)})
	}
	return row
}

func newAxis(a session.Axis) Axis {
	out := Axis{MaxMinor: a.Max}
	for _, t := range a.Ticks {
		out.Ticks = append(out.Ticks, Tick{t.At, wording.Tick(t.Major)})
	}
	return out
}

func newDots(values [20]float64, a session.Axis) (out []Dot) {
	for _, d := range session.PackDots(values, a) {
		out = append(out, Dot(d))
	}
	return out
}

// askCover says for how many cars out of ten an amount would be enough.
func askCover(o *openShop, f strict.Field) (Reply, error) {
	amount, err := readAmount(o, f)
	if err != nil {
		return nil, err
	}
	share, err := o.Cover(amount)
	if err != nil {
		return nil, refuse("sum", err)
	}
	return &CoverReply{o.text.Cover(amount, share)}, nil
}

func askFits(o *openShop, f strict.Field) (Reply, error) {
	amount, err := readAmount(o, f)
	if err != nil {
		return nil, err
	}
	fits, err := o.Fits(amount)
	if err != nil {
		return nil, refuse("sum", err)
	}
	out := &FitsReply{SumText: o.text.Amount(amount), Note: wording.FitsNote}
	for _, one := range fits {
		out.Lines = append(out.Lines, wording.Fit(one))
	}
	return out, nil
}

func readAmount(o *openShop, f strict.Field) (money.Minor, error) {
	f.Keys("id", "ask", "sum")
	text := f.Get("sum").Decimal()
	if f.Err() != nil {
		return 0, refuse("sum", f.Err())
	}
	amount, err := o.Amount(text)
	if err != nil {
		return 0, refuse("sum", err)
	}
	return amount, nil
}
