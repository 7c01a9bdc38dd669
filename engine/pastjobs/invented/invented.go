// Package invented makes finished jobs of a shop that does not exist: cars drawn from
// the model, surveyed and priced like any simulated car. It is for samples, tests and
// benchmarks; nothing in it is about a real car.
//
// Start with [Shop] and [Shop.Jobs]. Figures that the model does not know say what the
// shop's cars and hours are really like, so that a test can ask whether learning finds
// them.
package invented

import (
	"slices"
	"strconv"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/evidence"
	"underpaint/engine/money"
	"underpaint/engine/pastjobs"
	"underpaint/engine/pricing"
	"underpaint/engine/rates"
)

// Shop is an invented shop: its published rates, and the truth about its cars.
type Shop struct {
	Rates *rates.Rates
	Truth *rates.Own // nil = the starting figures are the truth
	Seed  uint64
	Year  int // in which the first job was finished
}

// choices are the answers of invented customers.
var (
	bodies    = []string{"two_door_unitary", "hardtop_on_frame", "convertible_unitary", "pickup", "open_two_seater", "four_door_saloon"}
	places    = []string{"dry", "mild", "damp", "salt"}
	kept      = []string{"driven_all_year", "driven_in_summer", "garage", "open_shed_or_outside"}
	roadYears = []string{"10_to_20", "20_to_35", carfile.NotSure}
	standards = []string{"driver", "show", "show", "concours"}
)

func pick(s *chance.Stream, from []string) string { return from[int(s.Uniform()*float64(len(from)))] }

// riseStream keeps how fast prices rise during a job apart from everything else about it.
const riseStream = 0x52500

// Jobs makes n finished jobs, each with answers, a part-by-part survey and a final
// price.
func (s Shop) Jobs(n int) (*pastjobs.Jobs, error) {
	out := &pastjobs.Jobs{Currency: s.Rates.Currency, Invented: true, Rates: []*rates.Rates{s.Rates}}
	common, err := car.LoadCommon()
	if err != nil {
		return nil, err
	}
	for k := range n {
		job, err := s.job(k, common)
		if err != nil {
			return nil, err
		}
		out.Jobs = append(out.Jobs, job)
	}
	return out, nil
}

func (s Shop) job(k int, common *car.Common) (job pastjobs.Job, err error) {
	stream := chance.NewStream(s.Seed, uint64(k))
	year, month := s.Year+k/12, k%12+1
	job = pastjobs.Job{Name: strconv.Itoa(year) + "-" + two(month), Finished: strconv.Itoa(year) + "-" + two(month) + "-15", Rates: s.Rates.CheckCode()}
	c := &carfile.Car{AskedIn: year, Bodies: []string{pick(&stream, bodies)}, Standard: pick(&stream, standards), Scope: "whole_body"}
	c.Made.Year = 1955 + int(stream.Uniform()*20)
	c.Life = []carfile.Life{{Place: pick(&stream, places), Kept: pick(&stream, kept), RoadYears: pick(&stream, roadYears)}}
	job.Car = c
	b, err := c.OneBody()
	if err != nil {
		return job, err
	}
	histories, err := c.Histories()
	if err != nil {
		return job, err
	}
	truth := s.Truth
	if truth == nil {
		truth = rates.NothingLearnt()
	}
	known, err := c.Known(b, histories, carfile.Told, truth, s.Rates.Reckoned())
	if err != nil {
		return job, err
	}
	m, err := damage.New(known, damage.CoarseGrids)
	if err != nil {
		return job, err
	}
	t, err := pricing.NewTable(b, common, s.Rates.With(truth), c.Standard, c.Scope)
	if err != nil {
		return job, err
	}
	if t, err = t.With(c.Decided(b, carfile.Told, false)); err != nil {
		return job, err
	}
	is := m.NewCar()
	m.Draw(&stream, is)
	u, bill := t.NewUniforms(), t.NewBill()
	u.Fill(&stream)
	rises := chance.NewStream(s.Seed, riseStream+uint64(k))
	u.Rise = rises.Uniform()
	parts := chance.NewStream(s.Seed+partsSeed, uint64(k))
	u.Supply.Fill(&parts)
	old := chance.NewStream(s.Seed+oldSeed, uint64(k))
	for n := range u.Old {
		u.Old[n] = old.Uniform()
	}
	t = t.Supplied(c.Supply(b, carfile.Told))
	t.Price(is, m.Histories[is.History].LastClimate, u, bill)
	survey(c, b, is, bill.Missing, &stream, job.Finished)
	if t.Reckoning() != nil {
		surveyOld(c, b, bill)
	}
	job.CameTo = bill.Total
	for trade := range job.Hours {
		job.Hours[trade] = float64(bill.StripHours[trade]+bill.AfterHours[trade]) / 1000
		if job.Hours[trade] < 0.1 {
			job.Hours[trade] = 0
		}
	}
	return job, nil
}

func two(n int) string { return string([]byte{'0' + byte(n/10), '0' + byte(n%10)}) }

// partsSeed keeps the streams of how parts come apart from those of the jobs.
const partsSeed = 0x9A27

// survey records every part of the bare metal, with the errors of any survey, and the parts
// that are missing.
func survey(c *carfile.Car, b *car.Body, is *damage.Car, missing []bool, stream *chance.Stream, on string) {
	c.Stages = []carfile.Stage{{Stage: carfile.Survey, On: on}}
	for i, e := range evidence.ImagineSurvey(b, is, false, stream) {
		r := carfile.Record{On: b.Items[i].ID, Stage: carfile.Survey, Condition: e.Condition, LeadFailed: -1, Dent: e.Dent}
		if e.Finding != "" && slices.Contains(damage.FindingIDs[:], e.Finding) {
			r.Finding = e.Finding
		}
		if missing[i] {
			r.Condition, r.Finding, r.Dent, r.Also = "", "", "", []string{pricing.Missing}
		}
		c.Survey = append(c.Survey, r)
	}
}

// oldSeed keeps old damage apart from the rust.
const oldSeed = 0x01D

// surveyOld records the old damage of a car: what is on bare metal, how each zone was
// mended, and whether the body is square.
func surveyOld(c *carfile.Car, b *car.Body, bill *pricing.Bill) {
	for n := range c.Survey {
		if i, ok := b.ItemNamed(c.Survey[n].On); ok && b.PartOf(i).SeenWhenStripped && !bill.Missing[i] {
			c.Survey[n].Also = bill.OldFound(i)
		}
	}
	old := bill.OldDamage()
	c.SurveyCar.Zones, c.SurveyCar.Square = old.Surveyed(b)
}

// Explained adds causes to the jobs that cost more than the middle of their range, so
// that a sample has some to show. The causes are as invented as the jobs.
func Explained(j *pastjobs.Jobs, middle []float64) {
	for n := range j.Jobs {
		job := &j.Jobs[n]
		over := float64(job.CameTo) - middle[n]
		if n%5 == 0 {
			extra := money.RoundNearest(money.Minor(float64(job.CameTo)/40), 100)
			job.More[pastjobs.ChangesAgreed] = extra
			job.CameTo += extra
		}
		if over <= 0 {
			continue
		}
		for cause, share := range [...]float64{pastjobs.RustFound: 0.6, pastjobs.MoreHours: 0.3, pastjobs.DearerParts: 0.1} {
			job.More[cause] = money.RoundNearest(money.Minor(over*share), 100)
		}
	}
}
