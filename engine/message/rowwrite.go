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
				member(w, "text", t.text)
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
	member(w, "id", r.ID)
	member(w, "label", r.Label)
	w.Key("headline")
	w.Bool(r.Headline)
	member(w, "sentence_head", r.SentenceHead)
	list(w, "sentence", r.Sentence[:])
	member(w, "spoken", "Of 10 cars like yours, "+r.Sentence[0]+", "+r.Sentence[1]+", "+r.Sentence[2]+".")
	member(w, "low_text", r.LowText)
	member(w, "half_text", r.HalfText)
	member(w, "set_aside_text", r.SetAsideText)
	member(w, "high_text", r.HighText)
	minor(w, "low_minor", r.Low)
	minor(w, "half_minor", r.Half)
	minor(w, "set_aside_minor", r.SetAside)
	minor(w, "high_minor", r.High)
	member(w, "set_aside_line", r.SetAsideLine)
	member(w, "good_to", r.GoodTo)
	w.Key("moved_line")
	if r.MovedLine == "" {
		w.Null()
	} else {
		w.String(r.MovedLine)
	}
	w.Key("dots")
	writeDots(w, packDots(r.Exact.Dots, a))
	member(w, "dots_text", r.DotsText)
	member(w, "hours_line", r.HoursLine)
	member(w, "weeks_line", r.WeeksLine)
	w.Key("zones")
	w.Array(func() { r.writeZones(w) })
	w.Key("kinds")
	w.Array(func() { r.writeKinds(w) })
	member(w, "kinds_note", r.KindsNote)
	w.Key("stage")
	writeStage(w, r.Stage)
	member(w, "allowance_line", r.AllowanceLine)
	member(w, "tax_line", r.TaxLine)
	member(w, "not_an_estimate", r.NotAnEstimate)
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
	member(w, "quantile_rule", "Hyndman and Fan (1996), definition 7")
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
			member(w, "id", z.ID)
			member(w, "name", z.Name)
			w.Key("in_ten")
			w.Whole(int64(z.InTen))
			member(w, "line", z.Line)
			member(w, "behind", z.Behind)
			w.Key("items")
			w.Array(func() {
				for _, i := range z.Items {
					w.Object(func() {
						member(w, "id", i.ID)
						member(w, "name", i.Name)
						w.Key("in_ten")
						w.Whole(int64(i.InTen))
						member(w, "line", carsInTen(i.Share))
					})
				}
			})
		})
	}
}

func (r *Row) writeKinds(w *strict.Writer) {
	for _, k := range r.Kinds {
		w.Object(func() {
			member(w, "id", k.ID)
			member(w, "name", k.Name)
			member(w, "low_text", k.LowText)
			member(w, "half_text", k.HalfText)
			member(w, "high_text", k.HighText)
		})
	}
}

func writeStage(w *strict.Writer, s StageReply) {
	w.Object(func() {
		member(w, "name", "Strip and survey")
		member(w, "price_text", s.PriceText)
		minor(w, "price_minor", s.Price)
		w.Key("lines")
		w.Array(func() {
			for _, l := range s.Lines {
				w.Object(func() {
					member(w, "text", l.Text)
					member(w, "basis", l.Basis)
					member(w, "amount_text", l.AmountText)
				})
			}
		})
		member(w, "fixed_line", s.FixedLine)
		member(w, "get_line", s.GetLine)
		member(w, "stop_line", s.StopLine)
		member(w, "includes", s.Includes)
	})
}
