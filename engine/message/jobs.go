package message

import (
	"underpaint/engine/columns"
	"underpaint/engine/money"
	"underpaint/engine/pastjobs"
	"underpaint/engine/rates"
	"underpaint/engine/session"
	"underpaint/engine/strict"
	"underpaint/engine/wording"
)

func openJobs(e *Engine, f strict.Field) (Reply, error) {
	f.Keys("id", "ask", "jobs")
	text := f.Get("jobs").Document(pastjobs.MostBytes)
	if f.Err() != nil {
		return nil, f.Err()
	}
	j, faults := e.jobs.Open([]byte(text))
	out := &JobsCheckedReply{OK: j != nil, Faults: textFaults(faults)}
	if j == nil {
		return out, nil
	}
	out.Jobs, out.CheckCode = len(j.Jobs), j.CheckCode()
	for n := range j.Jobs {
		job, one := &j.Jobs[n], JobAmounts{CameToText: j.Currency.TextWhole(j.Jobs[n].CameTo)}
		if job.Said != nil {
			one.SaidText = wording.EndsIn(j.Currency, float64(job.Said.Low), float64(job.Said.High))
		}
		out.Sums = append(out.Sums, one)
	}
	return out, nil
}

func scoreJobs(e *Engine, f strict.Field) (Reply, error) {
	f.Keys("id", "ask", "rates", "today")
	ratesText, today := f.Get("rates").Document(strict.MaxBytes), f.Get("today").Date()
	if f.Err() != nil {
		return nil, f.Err()
	}
	r, err := rates.Decode([]byte(ratesText))
	if err != nil {
		return nil, refuse("rates", err)
	}
	at, worked, err := e.jobs.Step()
	if err != nil {
		return nil, refuse("jobs", err)
	}
	if worked {
		return &ScoresGoOnReply{string(session.Refining), at.Scored + at.Again, 2 * at.Jobs, wording.JobsProgress(at)}, nil
	}
	v, err := e.jobs.Scores(r, today)
	if err != nil {
		return nil, refuse("jobs", err)
	}
	o, err := openAt(r)
	if err != nil {
		return nil, refuse("rates", err)
	}
	return NewScores(o.text, v), nil
}

func readJobs(_ *Engine, f strict.Field) (Reply, error) {
	f.Keys("id", "ask", "text", "decimal", "currency")
	text, decimal := f.Get("text").Document(columns.MaxBytes), decimals[f.Get("decimal").OneOf("", "point", "comma")]
	c, err := money.CurrencyOf(f.Get("currency").Text(3))
	if f.Err() != nil {
		return nil, f.Err()
	}
	if err != nil {
		return nil, &strict.Error{Path: "currency", Expected: "the letters of a currency, such as USD"}
	}
	jobs, table, err := pastjobs.ReadTable(text, decimal, c)
	if err != nil {
		return nil, refuse("table", err)
	}
	out := &JobsReadReply{TableFaults: tableFaults(&table)}
	for n := range jobs {
		out.Jobs = append(out.Jobs, rawJSON(jobs[n].Text(c)))
	}
	return out, nil
}

func writeJobs(e *Engine, f strict.Field) (Reply, error) {
	f.Keys("id", "ask", "separator")
	separator, mark := separatorOf(f.Get("separator").OneOf(",", ";", "tab"))
	if f.Err() != nil {
		return nil, f.Err()
	}
	if e.jobs.Jobs == nil {
		return nil, refuse("jobs", session.NoJobs())
	}
	text, err := e.jobs.Jobs.WriteTable(separator, mark)
	if err != nil {
		return nil, refuse("table", err)
	}
	return &JobsWrittenReply{text}, nil
}

// adopt writes into the rates the figures that the shop chose and, if the shop wants
// that published, how its ranges came out. It removes figures in use that the request
// does not name, so adopting nothing undoes everything.
func adopt(e *Engine, f strict.Field) (Reply, error) {
	f.Keys("id", "ask", "rates", "use", "record", "today")
	text, today := []byte(f.Get("rates").Document(strict.MaxBytes)), f.Get("today").Date()
	var use []string
	for _, item := range f.Get("use").Items() {
		use = append(use, item.Text(60))
	}
	publish := f.Get("record").Bool()
	if f.Err() != nil {
		return nil, f.Err()
	}
	inUse, err := rates.Decode(text)
	if err != nil {
		return nil, refuse("rates", err)
	}
	own, past, err := e.jobs.Chosen(use, publish, inUse, today)
	if err != nil {
		return nil, refuse("jobs", err)
	}
	out, r, err := rates.Adopt(text, own, past)
	if err != nil {
		return nil, refuse("rates", err)
	}
	return &AdoptedReply{string(out), r.CheckCode()}, nil
}
