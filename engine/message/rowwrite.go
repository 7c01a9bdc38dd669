package message

import (
	"underpaint/engine/money"
	"underpaint/engine/strict"
)

func (a axis) write(w *strict.Writer) {
	w.Key("max_minor")
	w.Whole(a.max)
	w.Key("ticks")
	w.Array(func() {
		for _, t := range a.ticks {
			w.Object(func() {
				w.Key("at")
				w.Number(t.at)
				w.Member("text", t.text)
			})
		}
	})
}

// minor writes an amount in minor units.
func minor(w *strict.Writer, name string, m money.Minor) {
	w.Key(name)
	w.Whole(int64(m))
}

func (r *Row) write(w *strict.Writer, a axis) {
	w.Member("id", r.ID)
	w.Member("label", r.Label)
	w.Key("headline")
	w.Bool(r.Headline)
	w.Member("sentence_head", r.SentenceHead)
	w.Texts("sentence", r.Sentence[:])
	w.Member("spoken", "Of 10 cars like yours, "+r.Sentence[0]+", "+r.Sentence[1]+", "+r.Sentence[2]+".")
	w.Member("low_text", r.LowText)
	w.Member("half_text", r.HalfText)
	w.Member("set_aside_text", r.SetAsideText)
	w.Member("high_text", r.HighText)
	minor(w, "low_minor", r.Low)
	minor(w, "half_minor", r.Half)
	minor(w, "set_aside_minor", r.SetAside)
	minor(w, "high_minor", r.High)
	w.Member("set_aside_line", r.SetAsideLine)
	w.Member("reserve_line", r.ReserveLine)
	w.Member("good_to", r.GoodTo)
	w.Key("moved_line")
	if r.MovedLine == "" {
		w.Null()
	} else {
		w.String(r.MovedLine)
	}
	w.Key("dots")
	writeDots(w, packDots(r.Exact.Dots, a))
	w.Member("dots_text", r.DotsText)
	w.Member("hours_line", r.HoursLine)
	w.Member("weeks_line", r.WeeksLine)
	w.Key("zones")
	w.Array(func() { r.writeZones(w) })
	w.Key("kinds")
	w.Array(func() { r.writeKinds(w) })
	w.Member("kinds_note", r.KindsNote)
	w.Key("stage")
	writeStage(w, r.Stage)
	w.Member("allowance_line", r.AllowanceLine)
	w.Member("tax_line", r.TaxLine)
	w.Member("not_an_estimate", r.NotAnEstimate)
	w.Key("exact")
	w.Object(func() { r.writeExact(w) })
}

// writeExact gives the figures behind the rounded ones, for programs: money in
// minor units, hours in hours.
func (r *Row) writeExact(w *strict.Writer) {
	number := func(name string, v float64) {
		w.Key(name)
		w.Number(v)
	}
	number("p10_minor", r.Exact.Low)
	number("p50_minor", r.Exact.Half)
	number("p80_minor", r.Exact.SetAside)
	number("p90_minor", r.Exact.High)
	number("se_p10_minor", r.Exact.SELow)
	number("se_p90_minor", r.Exact.SEHigh)
	number("hours_p10", r.Exact.Hours.Low/1000)
	number("hours_p50", r.Exact.Hours.Half/1000)
	number("hours_p90", r.Exact.Hours.High/1000)
	w.Member("quantile_rule", "Hyndman and Fan (1996), definition 7")
}

// writeDots writes the twenty dots of a range.
func writeDots(w *strict.Writer, dots [20]dot) {
	w.Array(func() {
		for _, d := range dots {
			w.Object(func() {
				w.Key("at")
				w.Number(d.at)
				w.Key("column")
				w.Whole(int64(d.column))
				w.Key("stack")
				w.Whole(int64(d.stack))
				w.Key("inside")
				w.Bool(d.inside)
				minor(w, "minor", money.Minor(d.minor))
			})
		}
	})
}

func (r *Row) writeZones(w *strict.Writer) {
	for _, z := range r.Zones {
		w.Object(func() {
			w.Member("id", z.ID)
			w.Member("name", z.Name)
			w.Key("in_ten")
			w.Whole(int64(z.InTen))
			w.Member("line", z.Line)
			w.Member("behind", z.Behind)
			w.Key("items")
			w.Array(func() {
				for _, i := range z.Items {
					w.Object(func() {
						w.Member("id", i.ID)
						w.Member("name", i.Name)
						w.Key("in_ten")
						w.Whole(int64(i.InTen))
						w.Member("line", carsInTen(i.Share))
					})
				}
			})
		})
	}
}

func (r *Row) writeKinds(w *strict.Writer) {
	for _, k := range r.Kinds {
		w.Object(func() {
			w.Member("id", k.ID)
			w.Member("name", k.Name)
			w.Member("low_text", k.LowText)
			w.Member("half_text", k.HalfText)
			w.Member("high_text", k.HighText)
		})
	}
}

func writeStage(w *strict.Writer, s StageReply) {
	w.Object(func() {
		w.Member("name", "Strip and survey")
		w.Member("price_text", s.PriceText)
		minor(w, "price_minor", s.Price)
		w.Key("lines")
		w.Array(func() {
			for _, l := range s.Lines {
				w.Object(func() {
					w.Member("text", l.Text)
					w.Member("basis", l.Basis)
					w.Member("amount_text", l.AmountText)
				})
			}
		})
		w.Member("fixed_line", s.FixedLine)
		w.Member("get_line", s.GetLine)
		w.Member("stop_line", s.StopLine)
		w.Member("includes", s.Includes)
	})
}
