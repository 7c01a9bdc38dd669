package message

import (
	"underpaint/engine/carfile"
	"underpaint/engine/session"
	"underpaint/engine/wording"
)

func askWorth(o *openShop, q carRequest) (Reply, error) {
	v, err := o.CheckValues(q.car, q.whom)
	if err != nil {
		return nil, err
	}
	return NewWorth(o.text, v), nil
}

// NewWorth makes the reply with what stages and checks are worth.
func NewWorth(t *wording.Text, v session.CheckValues) *WorthReply {
	out := &WorthReply{State: string(v.State), Done: v.Done, Of: v.Of, ProgressLine: wording.WorthProgress(&v), NowLine: t.NowWide(v.Now), LooksNote: wording.ChecksNote}
	for _, s := range v.Stages {
		out.Stages = append(out.Stages, StageWorth{s.ID, t.Stage(s.ID), t.Likely(s.Width), t.StageWorth(s, v.Now)})
	}
	for k := range v.Checks {
		c := &v.Checks[k]
		out.Looks = append(out.Looks, LookWorth{Look: c.Kind.ID, On: c.On, Either: c.Either, Text: t.Check(v.Body, c),
			How: t.In(c.Kind.How), Needs: t.In(c.Kind.Needs), Caution: t.In(c.Kind.Caution), PlaceLine: wording.CheckTells(c), WholeLine: t.CheckNarrows(c)})
	}
	return out
}

func askWide(o *openShop, q carRequest) (Reply, error) {
	v, err := o.VarianceShares(q.car)
	if err != nil {
		return nil, err
	}
	return NewWide(o.text, v), nil
}

// NewWide makes the reply with what makes a range wide.
func NewWide(t *wording.Text, v session.VarianceShares) *WideReply {
	out := &WideReply{State: string(v.State), Done: v.Done, Of: v.Of, ProgressText: wording.WidthProgress(&v),
		RestText: wording.RestShare(&v), Rest: v.Rest, SharesNote: wording.SharesNote(&v), Known: v.Known, WorseNote: wording.WorseNote}
	for _, s := range v.Shares {
		name, why := t.Input(v.Body, s.Input)
		out.Shares = append(out.Shares, InputShare{name, why, wording.Percent(s.Percent), s.Share})
	}
	for k := range v.Worse {
		p := &v.Worse[k]
		out.Worse = append(out.Worse, WorsePart{p.Part.ID, t.In(p.Part.Name), wording.WorseLikely(p), t.WorseCost(p), t.WorseFind(p)})
	}
	return out
}

func askPlan(o *openShop, q carRequest) (Reply, error) {
	p, err := o.Plan(q.car)
	if err != nil {
		return nil, err
	}
	return NewPlan(o.text, p), nil
}

// NewPlan makes the reply with the job in stages.
func NewPlan(t *wording.Text, p session.Plan) *PlanReply {
	out := &PlanReply{SoFarLine: t.SoFar(&p), PromiseEndLine: t.PromiseEnd(p.Ends), Note: wording.PlanNote}
	for k := range p.Stages {
		s := &p.Stages[k]
		out.Stages = append(out.Stages, PlanStage{carfile.StepIDs[k], t.Step(k), t.Between(s.Money), wording.StepHours(s), t.StepWeeks(s), t.ByThen(s), t.StopAfter(&p, k), t.Actual(&p, k)})
	}
	return out
}

func askDecide(o *openShop, q carRequest) (Reply, error) {
	options, leftOut, err := o.Decide(q.car)
	if err != nil {
		return nil, err
	}
	return NewDecide(o.text, options, leftOut), nil
}

// NewDecide makes the reply with what each decision would change.
func NewDecide(t *wording.Text, options []session.Option, leftOut bool) *DecideReply {
	out := &DecideReply{Note: wording.DecideNote(leftOut)}
	for k := range options {
		name, note := t.Option(&options[k])
		d := options[k].Difference
		out.Options = append(out.Options, DecideOption{options[k].ID, name, t.Difference(d), wording.Saving(d), note})
	}
	return out
}
