package message

import (
	"errors"

	"underpaint/engine/car"
	"underpaint/engine/money"
	"underpaint/engine/rates"
	"underpaint/engine/strict"
	"underpaint/engine/work"
)

// checkRates tells a form what is wrong with rates, what is usually a slip, and
// what the file will be.
func checkRates(id int64, f strict.Field) []byte {
	f.Keys("id", "ask", "rates", "today")
	text, today := []byte(f.Get("rates").Document(strict.MaxBytes)), f.Get("today").Date()
	if f.Err() != nil {
		return refused(id, "request", f.Err())
	}
	r, faults := rates.Check(text)
	w := strict.NewWriter()
	w.Object(func() {
		head(w, id, "rates_checked")
		w.Key("ok")
		w.Bool(r != nil)
		writeFaults(w, faults)
		if r == nil {
			w.Objects("warnings", 0, nil)
			w.Texts("still_sample", nil)
			w.Member("check_code", "")
			w.Member("rates_line", "")
			w.Member("canonical", "")
			return
		}
		warnings := append(r.Warnings(today), belowItsHours(r)...)
		w.Objects("warnings", len(warnings), func(i int) {
			w.Member("path", warnings[i].Path)
			w.Member("text", warnings[i].Text)
		})
		w.Texts("still_sample", r.StillSample())
		w.Member("check_code", r.CheckCode())
		w.Member("rates_line", "Rates of "+date(r.RatesOf)+", valid until "+date(r.ValidUntil))
		parsed, err := strict.Parse(text)
		if err != nil {
			panic("engine: internal error: rates that were read cannot be parsed")
		}
		w.Member("canonical", string(strict.Indented(parsed)))
	})
	return w.Bytes()
}

// writeFaults writes errors with their place in the user's file.
func writeFaults(w *strict.Writer, faults []error) {
	w.Objects("faults", len(faults), func(i int) {
		var at *strict.Error
		if !errors.As(faults[i], &at) {
			at = &strict.Error{Expected: faults[i].Error()}
		}
		writeError(w, at)
	})
}

// writeError writes an error with its place in the user's file.
func writeError(w *strict.Writer, e *strict.Error) {
	w.Member("path", e.Path)
	w.Member("found", e.Found)
	w.Member("expected", e.Expected)
	w.Member("text", e.Error())
}

// belowItsHours warns of a strip and survey that is priced below what its likely
// hours come to at the shop's own rates, on the body that its steps are set for.
func belowItsHours(r *rates.Rates) []rates.Warning {
	if !r.Strip.PriceSet {
		return nil
	}
	s := &Session{Rates: r}
	common, err := car.LoadCommon()
	if err != nil {
		panic("engine: internal error: " + err.Error())
	}
	b, err := car.Load("two_door_unitary")
	if err != nil {
		panic("engine: internal error: " + err.Error())
	}
	t, err := work.NewTable(b, common, r, "show", "whole_body")
	if err != nil {
		return nil
	}
	labour := money.Minor(0)
	for _, l := range t.StagePrice().Lines {
		if l.How == rates.Fixed || l.How == rates.EachOne {
			labour += l.Likely
		}
	}
	if r.Strip.Price >= labour {
		return nil
	}
	return []rates.Warning{{Path: "strip_and_survey.price", Text: "The strip and survey is set to " + s.wholeText(r.Strip.Price) +
		", but the likely hours of its fixed steps on a two-door come to " + s.wholeText(labour) + " at your rates, before materials."}}
}

// ratesOutline lists what a form of rates chooses from.
func ratesOutline(id int64, f strict.Field) []byte {
	f.Keys("id", "ask")
	common, err := car.LoadCommon()
	if err != nil {
		return refused(id, "outline", err)
	}
	steps, err := work.Steps()
	if err != nil {
		return refused(id, "outline", err)
	}
	ways, err := work.StartingWays()
	if err != nil {
		return refused(id, "outline", err)
	}
	bodies, parts := outlineParts()
	w := strict.NewWriter()
	named := func(name string, ids []string, words []car.Words) {
		w.Objects(name, len(ids), func(i int) {
			w.Member("id", ids[i])
			w.Member("name_us", words[i].US)
			w.Member("name_uk", words[i].UK)
		})
	}
	w.Object(func() {
		head(w, id, "rates_outline")
		w.Objects("parts", len(parts), func(i int) { parts[i].write(w) })
		named("bodies", car.BodyIDs, bodies)
		w.Objects("steps", len(steps), func(i int) {
			w.Member("id", steps[i].ID)
			w.Member("name_us", steps[i].Name.US)
			w.Member("name_uk", steps[i].Name.UK)
		})
		named("trades", car.TradeIDs[:], common.Trades[:])
		named("ways", car.WayIDs[:], common.Ways[:])
		named("conditions", car.ConditionIDs[:], common.Conditions[:])
		w.Texts("kinds", rates.Kinds)
		w.Key("what_is_done")
		w.Object(func() { writeWays(w, &ways) })
		w.Texts("currencies", money.Codes())
		w.Member("sample_us", string(rates.Sample()))
		w.Member("sample_uk", string(rates.SampleUK()))
	})
	return w.Bytes()
}

func writeWays(w *strict.Writer, ways *[3][4][car.Conditions][car.Ways]float64) {
	for s, standard := range car.Standards {
		w.Key(standard)
		w.Object(func() {
			for k, kind := range rates.Kinds {
				w.Key(kind)
				w.Object(func() {
					for c, condition := range car.ConditionIDs {
						w.Key(condition)
						w.Array(func() {
							for _, p := range ways[s][k][c] {
								w.Number(p)
							}
						})
					}
				})
			}
		})
	}
}

// outlinePart is a part that a shop can price, over all bodies that have it.
type outlinePart struct {
	id     string
	name   car.Words
	bodies []string
	start  [car.Ways]car.Hours // starting prices of the first body that has the part
	done   [car.Ways]bool
}

func outlineParts() (bodies []car.Words, parts []*outlinePart) {
	byID := map[string]*outlinePart{}
	for _, id := range car.BodyIDs {
		b, err := car.Load(id)
		if err != nil {
			panic("engine: internal error: " + err.Error())
		}
		bodies = append(bodies, b.Name)
		for k := range b.Parts {
			p := &b.Parts[k]
			one := byID[p.ID]
			if one == nil {
				one = &outlinePart{id: p.ID, name: p.Name}
				byID[p.ID] = one
				parts = append(parts, one)
			}
			one.bodies = append(one.bodies, id)
			for w := car.Patch; w < car.Ways; w++ {
				one.done[w] = one.done[w] || p.Ways[w].Done
				if one.start[w] == (car.Hours{}) {
					one.start[w] = p.Ways[w].Price
				}
			}
		}
	}
	return bodies, parts
}

func (p *outlinePart) write(w *strict.Writer) {
	w.Member("id", p.id)
	w.Member("name_us", p.name.US)
	w.Member("name_uk", p.name.UK)
	w.Texts("bodies", p.bodies)
	var ways []string
	for k, done := range p.done {
		if done {
			ways = append(ways, car.WayIDs[k])
		}
	}
	w.Texts("ways", ways)
	w.Key("start")
	w.Object(func() {
		for k, price := range p.start {
			if price == (car.Hours{}) {
				continue
			}
			w.Key(car.WayIDs[k])
			w.Array(func() {
				for _, v := range price {
					w.Number(v)
				}
			})
		}
	})
}
