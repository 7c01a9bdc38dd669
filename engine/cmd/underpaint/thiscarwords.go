package main

import (
	"bytes"
	"fmt"
	"strings"

	"underpaint/engine/message"
	"underpaint/engine/pricing"
	"underpaint/engine/session"
	"underpaint/engine/wording"
)

func (q question) stages(out *bytes.Buffer) (message.Reply, error) {
	v, err := settled(func() (session.StageRanges, error) { return q.s.StageRanges(q.car) }, func(v session.StageRanges) session.State { return v.State })
	if err != nil {
		return nil, err
	}
	t, b := q.t, v.Tally.Body
	fmt.Fprintf(out, "%s\n\n", strings.Join(t.StagesHeadline(v.Rows), "\n"))
	for k := range v.Rows {
		row := &v.Rows[k]
		if !row.Done {
			fmt.Fprintf(out, "%-18s not done yet\n", t.Stage(row.ID))
			continue
		}
		e := row.Shown
		fmt.Fprintf(out, "%-18s %12s to %12s   middle %12s   %s   %s\n", t.Stage(row.ID), t.Amount(e.Low), t.Amount(e.High), t.Amount(e.Half), t.Wide(e), t.Date(row.On))
		if wider := wording.Wider(v.Rows, k); wider != "" {
			fmt.Fprintf(out, "%-18s %s\n", "", wider)
		}
	}
	fmt.Fprintln(out)
	worse, better := t.MovedPockets(b, v.Moved)
	for _, line := range append(worse, better...) {
		fmt.Fprintln(out, line)
	}
	fmt.Fprintf(out, "%s\n\n", wording.Unseen(&v.Tally))
	if line := t.OtherFigures(v.Other); line != "" {
		fmt.Fprintf(out, "%s\n\n", line)
	}
	for _, m := range v.Items {
		fmt.Fprintf(out, "  %-56s %s\n", t.Item(b, m.Item), wording.MovedItem(m))
	}
	fmt.Fprintf(out, "%s\n", wording.NotALimit)
	return message.NewBeforeAfter(q.s, t, v), nil
}

func (q question) worth(out *bytes.Buffer) (message.Reply, error) {
	v, err := settled(func() (session.CheckValues, error) { return q.s.CheckValues(q.car, q.whom) }, func(v session.CheckValues) session.State { return v.State })
	if err != nil {
		return nil, err
	}
	t := q.t
	fmt.Fprintln(out, t.NowWide(v.Now))
	for _, s := range v.Stages {
		fmt.Fprintln(out, t.StageWorth(s, v.Now))
	}
	fmt.Fprintln(out)
	for n := range v.Checks {
		c := &v.Checks[n]
		fmt.Fprintf(out, "%d. %s\n", n+1, t.Check(v.Body, c))
		for _, line := range []string{t.In(c.Kind.How), "Needs: " + t.In(c.Kind.Needs), t.In(c.Kind.Caution), wording.CheckTells(c), t.CheckNarrows(c)} {
			if line != "" {
				fmt.Fprintf(out, "   %s\n", line)
			}
		}
	}
	fmt.Fprintln(out, wording.ChecksNote)
	return message.NewWorth(t, v), nil
}

func (q question) ways(out *bytes.Buffer) (message.Reply, error) {
	v, err := q.s.ToDo(q.car)
	if err != nil {
		return nil, err
	}
	t := q.t
	for k := range v.Cards {
		d := &v.Cards[k]
		fmt.Fprintln(out, t.DecisionTitle(v.Body, d))
		for n := range d.Ways {
			q.way(out, &v, &d.Ways[n])
		}
		for _, line := range append(t.OpenedFor(v.Body, d), t.ChosenBy(d), t.CoveredBy(v.Body, d), wording.CannotLeave(d), wording.MountingCaution(d.Part)) {
			if line != "" {
				fmt.Fprintf(out, "  %s\n", line)
			}
		}
	}
	for _, line := range append(t.GettingIn(v.Shared), wording.Undecided(v.Undecided)) {
		fmt.Fprintln(out, line)
	}
	return message.NewToDo(t, v), nil
}

func (q question) way(out *bytes.Buffer, v *session.ToDo, w *pricing.WayCard) {
	fmt.Fprintf(out, "  %-14s %s\n", q.t.Way(w.Way), q.t.WaySentence(w))
	for _, line := range append(q.t.WayOpens(v.Body, w), q.t.WayCovers(v.Body, w)) {
		if line != "" {
			fmt.Fprintf(out, "  %-14s   %s\n", "", line)
		}
	}
}
