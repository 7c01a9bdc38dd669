package main

import (
	"bytes"
	"fmt"

	"underpaint/engine/message"
	"underpaint/engine/session"
	"underpaint/engine/wording"
)

func (q question) why(out *bytes.Buffer) (message.Reply, error) {
	v, err := settled(func() (session.VarianceShares, error) { return q.s.VarianceShares(q.car) }, func(v session.VarianceShares) session.State { return v.State })
	if err != nil {
		return nil, err
	}
	t := q.t
	fmt.Fprintln(out, "What makes it wide:")
	for _, s := range v.Shares {
		name, why := t.Input(v.Body, s.Input)
		fmt.Fprintf(out, "  %5s  %s. %s\n", wording.Percent(s.Percent), name, why)
	}
	fmt.Fprintf(out, "  %s\n%s\n\nWhat could make it worse:\n", wording.RestShare(&v), wording.SharesNote(&v))
	for n := range v.Worse {
		p := &v.Worse[n]
		fmt.Fprintf(out, "%d. %s\n   %s\n   %s\n   %s\n", n+1, t.In(p.Part.Name), wording.WorseLikely(p), t.WorseCost(p), t.WorseFind(p))
	}
	fmt.Fprintln(out, wording.WorseNote)
	return message.NewWide(t, v), nil
}

func (q question) plan(out *bytes.Buffer) (message.Reply, error) {
	p, err := q.s.Plan(q.car)
	if err != nil {
		return nil, err
	}
	t := q.t
	for k := range p.Stages {
		s := &p.Stages[k]
		fmt.Fprintf(out, "%d. %s: %s, %s, %s\n   %s %s\n", k+1, t.Step(k), t.Between(s.Money), wording.StepHours(s), t.StepWeeks(s), t.ByThen(s), t.StopAfter(&p, k))
		if actual := t.Actual(&p, k); actual != "" {
			fmt.Fprintf(out, "   %s\n", actual)
		}
	}
	if soFar := t.SoFar(&p); soFar != "" {
		fmt.Fprintln(out, soFar)
	}
	if ends := t.PromiseEnd(p.Ends); ends != "" {
		fmt.Fprintln(out, ends)
	}
	fmt.Fprintln(out, wording.PlanNote)
	return message.NewPlan(t, p), nil
}

func (q question) decide(out *bytes.Buffer) (message.Reply, error) {
	options, leftOut, err := q.s.Decide(q.car)
	if err != nil {
		return nil, err
	}
	for k := range options {
		d := options[k].Difference
		name, note := q.t.Option(&options[k])
		fmt.Fprintf(out, "%s: %s; %s.\n", name, q.t.Difference(d), wording.Saving(d))
		if note != "" {
			fmt.Fprintf(out, "  %s\n", note)
		}
	}
	fmt.Fprintln(out, wording.DecideNote(leftOut))
	return message.NewDecide(q.t, options, leftOut), nil
}
