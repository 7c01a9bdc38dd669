package pastjobs

import (
	"underpaint/engine/carfile"
	"underpaint/engine/money"
	"underpaint/engine/strict"
)

// Text writes one job as it is in the file, with its members in their usual order.
func (job *Job) Text(c money.Currency) []byte {
	w := strict.NewWriter()
	w.Object(func() {
		w.Member("name", job.Name)
		w.Member("finished", job.Finished)
		w.MemberIf("rates", job.Rates)
		if job.Car != nil {
			w.Key("car")
			w.JSON(job.Car.Text())
		}
		if job.Said != nil {
			w.Key("said")
			w.Object(func() {
				w.Member("low", c.Plain(job.Said.Low))
				w.Member("high", c.Plain(job.Said.High))
			})
		}
		w.Member("came_to", c.Plain(job.CameTo))
		carfile.WriteHours(w, "hours", job.Hours)
		if job.More != [Causes]money.Minor{} {
			w.Key("more_because")
			w.Object(func() {
				for k, m := range job.More {
					if m > 0 {
						w.Member(CauseIDs[k], c.Plain(m))
					}
				}
			})
		}
	})
	return w.Bytes()
}

// Text writes the file. rates holds the text of each rates file, in the order of
// j.Rates.
func (j *Jobs) Text(rates [][]byte) []byte {
	w := strict.NewWriter()
	w.Object(func() {
		w.Member("format", Format)
		if j.Invented {
			w.Key("invented")
			w.Bool(true)
		}
		w.Member("currency", j.Currency.Code)
		w.Key("rates")
		w.Array(func() {
			for _, text := range rates {
				w.JSON(text)
			}
		})
		w.Key("jobs")
		w.Array(func() {
			for n := range j.Jobs {
				w.JSON(j.Jobs[n].Text(j.Currency))
			}
		})
	})
	return w.Bytes()
}
