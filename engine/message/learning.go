package message

import (
	"math"
	"slices"
	"strconv"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/money"
	"underpaint/engine/record"
	"underpaint/engine/scores"
	"underpaint/engine/strict"
)

// groupName is the name of a pocket group, of the first body that has it.
func (t *scoreText) groupName(id string) string {
	for _, body := range car.BodyIDs {
		b, err := car.Load(body)
		if err != nil {
			continue
		}
		for g := range b.Groups {
			if b.Groups[g].ID == id {
				return b.Groups[g].Name.In(t.s.Rates.Words)
			}
		}
	}
	return id
}

func (t *scoreText) tradeName(id string) string {
	return t.s.common.Trades[slices.Index(car.TradeIDs[:], id)].In(t.s.Rates.Words)
}

// percentOf says a factor as a difference: "18 % more", "5 % less".
func percentOf(factor float64, more, less string) string {
	n := int(math.Floor(float64(math.Abs(factor-1)*100) + 0.5))
	switch {
	case n == 0:
		return "no more and no less"
	case factor > 1:
		return strconv.Itoa(n) + " % " + more
	}
	return strconv.Itoa(n) + " % " + less
}

// bias says where the jobs differ from the figures by more than chance, in words a
// shop understands.
func (t *scoreText) bias() (out []string) {
	if t.sum.Scored < scores.LeastJobs {
		return nil
	}
	line := func(r scores.Ratio, subject, more, less, than string) {
		if r.Jobs >= record.LeastToUse && r.Known && (r.Low > 1.005 || r.High < 0.995) {
			out = append(out, subject+" "+percentOf(r.Ratio, more, less)+" than "+than+" ("+jobsText(r.Jobs)+"; 8 in 10: "+
				percentOf(r.Low, more, less)+" to "+percentOf(r.High, more, less)+").")
		}
	}
	for _, r := range t.sum.Rust {
		line(r, t.groupName(r.Group)+": the surveys found", "more damage", "less damage", "the figures of their day led one to expect")
	}
	for _, r := range t.sum.Hours {
		line(r, t.tradeName(r.Group)+" took", "more hours", "fewer hours", "expected once the survey was made")
	}
	if len(out) == 0 {
		out = append(out, "Nothing stands out: damage and hours came as expected, as far as these jobs can tell.")
	}
	return out
}

// writeStatistics is the closed section for the statistician.
func (t *scoreText) writeStatistics(w *strict.Writer) {
	type row struct{ name, text string }
	var rows []row
	if j := t.sum.Judged; j.Verdict != scores.TooFew {
		rows = append(rows, row{"Share inside the 80 % range", share(t.sum.First) + "; 95 % interval " + percent(j.Low) + " to " + percent(j.High) + " (Wilson); " +
			strconv.Itoa(j.Fewest) + " to " + strconv.Itoa(j.Most) + " inside agree with 80 % (exact binomial, 5 %)"},
			row{"Tails", strconv.Itoa(t.sum.First.Below) + " below, " + strconv.Itoa(t.sum.First.Above) + " above; up to " + strconv.Itoa(j.MostTail) + " on either side agree with 10 %"})
		if a := t.sum.JudgedAfter; a.Verdict != scores.TooFew {
			rows = append(rows, row{"Share inside after the survey", share(t.sum.AfterSurvey) + "; 95 % interval " + percent(a.Low) + " to " + percent(a.High)})
		}
		if t.sum.Modelled > 1 {
			rows = append(rows, row{"Mean CRPS", t.amount(t.sum.CRPS) + " ± " + t.amount(t.sum.CRPSError) + " (" + jobsText(t.sum.Modelled) + "; continuous ranked probability score, smaller is better)"},
				row{"Mean interval score", t.amount(t.sum.Interval) + " (Gneiting and Raftery 2007)"})
		}
		if p := t.sum.HoursPredictions; p.Known {
			rows = append(rows, row{"Hours predicted from the other jobs", "CRPS of the log " + three(p.Learnt) + ", on the starting figures " + three(p.Starting) +
				"; gain " + three(p.Gain) + " ± " + three(p.SE)})
		}
	}
	w.Objects("statistics", len(rows), func(i int) {
		w.Member("name", rows[i].name)
		w.Member("text", rows[i].text)
	})
	w.Key("pit")
	w.Array(func() {
		for _, n := range t.sum.PIT {
			w.Whole(int64(n))
		}
	})
	w.Member("pit_text", "Probability integral transform: where each job fell among the imagined cars of its own first range, in tenths. Even heights mean honest ranges. Of jobs whose ends alone are known, the lognormal distribution through them stands in.")
}

func share(c scores.Coverage) string {
	return strconv.Itoa(c.Inside) + " of " + strconv.Itoa(c.Jobs) + ", " + percent(float64(c.Inside)/float64(c.Jobs))
}

func percent(share float64) string {
	return strconv.Itoa(int(math.Floor(float64(share*100)+0.5))) + " %"
}

func three(v float64) string { return strconv.FormatFloat(v, 'f', 3, 64) }

// amount writes a figure that is not exact to about a twentieth of itself.
func (t *scoreText) amount(minor float64) string {
	m := money.Minor(math.Floor(math.Abs(minor) + 0.5))
	return t.c.TextWhole(money.RoundNearest(m, max(1, money.OutwardStep(m))))
}

// writeLearning offers what the jobs teach, figure by figure. Nothing is used
// unless the shop says so.
func (t *scoreText) writeLearning(w *strict.Writer) {
	w.Key("learning")
	w.Object(func() {
		w.Key("lines")
		w.Array(func() { t.writeLines(w) })
		w.Member("learnt_on", t.today)
		w.Member("jobs_code", t.jobs.CheckCode())
		w.Member("compared", t.compared())
		w.Member("note", "Each figure is drawn towards the starting figure, the more so the fewer the jobs. A figure is offered from "+
			strconv.Itoa(record.LeastToUse)+" jobs on, the spread from "+strconv.Itoa(scores.LeastJobs)+". Depth is learnt only from surveys that record every part of a group that bare metal shows. Jobs with changes agreed on top teach nothing about hours, for theirs cannot be told apart. Parts of a car share its luck, so groups can move together by chance.")
	})
}

func (t *scoreText) writeLines(w *strict.Writer) {
	for _, l := range t.taught.Rust {
		factor := t.ownText.RustFactor(l.Group)
		t.writeLine(w, "rust."+l.Group, t.groupName(l.Group), l, factor, t.inUse.RustFactor(l.Group), "rust goes", "deeper", "less deep")
	}
	for _, l := range t.taught.Hours {
		k := slices.Index(car.TradeIDs[:], l.Group)
		t.writeLine(w, "hours."+l.Group, t.tradeName(l.Group), l, t.ownText.Hours[k].Factor, t.inUse.Hours[k].Factor, "it takes", "more hours", "fewer hours")
	}
	if s := t.taught.Spread; s.Jobs > 0 {
		w.Object(func() {
			w.Member("id", "spread")
			w.Member("name", "How much cars differ")
			w.Member("text", "Cars that are told alike differ by "+percentOf(s.Factor, "more", "less")+" than the starting figures say (8 in 10: "+
				percentOf(s.Low, "more", "less")+" to "+percentOf(s.High, "more", "less")+").")
			t.writeFigure(w, s.Jobs, s.Jobs >= scores.LeastJobs, t.ownText.Spread.Factor, t.inUse.Spread.Factor, s.Share)
		})
	}
}

func (t *scoreText) writeLine(w *strict.Writer, id, name string, l scores.Learnt, factor, inUse float64, subject, more, less string) {
	w.Object(func() {
		w.Member("id", id)
		w.Member("name", name)
		alone := percentOf(chance.Exp(l.Plain), more, less)
		_, low, high := l.Factor()
		w.Member("text", "By these jobs alone "+subject+" "+alone+" than the starting figures say. Drawn towards them: "+percentOf(chance.Exp(l.Shift), more, less)+
			" (8 in 10: "+percentOf(low, more, less)+" to "+percentOf(high, more, less)+").")
		t.writeFigure(w, l.Jobs, l.Jobs >= record.LeastToUse, factor, inUse, l.Share)
	})
}

func (t *scoreText) writeFigure(w *strict.Writer, jobs int, offered bool, factor, inUse, own float64) {
	w.Member("jobs_text", jobsText(jobs))
	w.Key("jobs")
	w.Whole(int64(jobs))
	w.Key("offered")
	w.Bool(offered)
	w.Key("factor")
	w.Number(factor)
	w.Member("factor_text", "× "+strconv.FormatFloat(factor, 'f', 2, 64))
	w.Member("in_use_text", "× "+strconv.FormatFloat(inUse, 'f', 2, 64))
	w.Member("share_text", percent(own)+" the shop's own")
}

// compared says whether what the others taught would have helped.
func (t *scoreText) compared() string {
	i := t.again
	if i.Jobs < scores.LeastJobs {
		return "Too few jobs with a car to say whether learning helps."
	}
	text := "Tried on each of " + jobsText(i.Jobs) + " with what the other jobs teach: the ranges miss by " + t.amount(i.Taught) + " on the average, on the starting figures by " + t.amount(i.Starting) + " (CRPS; gain " + signed(t, i.Gain) + " ± " + t.amount(i.Error) + "). "
	switch {
	case i.Gain > 2*i.Error:
		return text + "Learning helps."
	case i.Gain < -2*i.Error:
		return text + "Learning makes it worse: leave the starting figures."
	}
	return text + "The difference is within chance."
}

func signed(t *scoreText, minor float64) string {
	if minor < 0 {
		return "\u2212" + t.amount(minor)
	}
	return t.amount(minor)
}
