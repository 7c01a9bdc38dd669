package rates

import (
	"underpaint/engine/car"
	"underpaint/engine/strict"
)

// Adopt returns a copy of a rates file with these learned figures and this record, and
// the rates that it holds; nil removes what was there. Nothing else in the file
// changes. Both come from past jobs, so nobody has to type them. Errors are those of
// [Decode].
func Adopt(text []byte, own *Own, past *Past) (out []byte, r *Rates, err error) {
	if _, err := Decode(text); err != nil {
		return nil, nil, err
	}
	f, err := strict.Parse(text)
	if err != nil {
		return nil, nil, err
	}
	out = strict.Replaced(f, []strict.Member{{Name: "own_figures", Value: own.text()}, {Name: "record", Value: past.text()}})
	r, err = Decode(out)
	return out, r, err
}

// text is the member as it is written in the file; null where nothing was learned.
func (o *Own) text() []byte {
	w := strict.NewWriter()
	if o == nil || o.LearntOn == "" {
		w.Null()
		return w.Bytes()
	}
	figure := func(f OwnFigure) {
		w.Key("factor")
		w.Number(f.Factor)
		w.Key("jobs")
		w.Whole(int64(f.Jobs))
	}
	w.Object(func() {
		w.Member("learnt_on", o.LearntOn)
		w.Member("jobs_code", o.JobsCode)
		w.Objects("rust", len(o.Rust), func(i int) {
			w.Member("group", o.Rust[i].Group)
			figure(o.Rust[i].OwnFigure)
		})
		w.Key("hours")
		w.Object(func() {
			for t, f := range o.Hours {
				if f.Jobs > 0 {
					w.Key(car.TradeIDs[t])
					w.Object(func() { figure(f) })
				}
			}
		})
		if o.Spread.Jobs > 0 {
			w.Key("spread")
			w.Object(func() { figure(o.Spread) })
		}
		if o.Doubt != nil {
			w.Key("doubt")
			o.Doubt.write(w)
		}
		w.Member("source", "the shop's own past jobs, drawn towards the starting figures")
	})
	return w.Bytes()
}

// text is the member as it is written in the file; nil where nothing is published,
// because the member may be left out.
func (p *Past) text() []byte {
	if p == nil {
		return nil
	}
	w := strict.NewWriter()
	w.Object(func() { p.Write(w) })
	return w.Bytes()
}

// Write writes the members of the record as they are in the file.
func (p *Past) Write(w *strict.Writer) {
	for _, one := range []struct {
		name string
		n    int
	}{{"below", p.Below}, {"inside", p.Inside}, {"above", p.Above}} {
		w.Key(one.name)
		w.Whole(int64(one.n))
	}
	w.Member("from", p.From)
	w.Member("to", p.To)
	w.Member("jobs_code", p.JobsCode)
}
