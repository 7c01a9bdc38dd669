package message

import (
	"slices"
	"strconv"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/evidence"
	"underpaint/engine/strict"
	"underpaint/engine/work"
)

// tally counts what is recorded and names every entry that cannot stand. It is
// asked after every press, and works out no odds.
func (s *Session) tally(id int64, c *carfile.Car) ([]byte, error) {
	b, t, err := s.oneBody(c)
	if err != nil {
		return nil, err
	}
	n := countUp(c, b, t)
	wrong := c.Faults(b, t)
	w := strict.NewWriter()
	w.Object(func() {
		head(w, id, "tally")
		canonical := ""
		if len(wrong) == 0 {
			canonical = string(c.Text())
		}
		w.Member("canonical", canonical)
		w.Key("faults")
		w.Array(func() {
			for _, f := range wrong {
				w.Object(func() { writeFault(w, f) })
			}
		})
		w.Member("answers_line", n.answersLine())
		w.Key("walk_round")
		w.Object(func() {
			w.Key("done")
			w.Whole(int64(n.walked))
			w.Key("of")
			w.Whole(int64(n.walk))
			looks := " looks"
			if n.walked == 1 {
				looks = " look"
			}
			w.Member("line", s.stageName(carfile.WalkRound)+": "+strconv.Itoa(n.walked)+looks)
		})
		writeStep(w, "survey", "Survey", n.done, len(b.Items))
		writeStep(w, "opening_up", "Opening up", n.openDone, n.closed)
		w.Key("to_do")
		w.Object(func() { w.Member("line", "What to do: "+strconv.Itoa(n.undecided)+" undecided") })
		writeCount(w, "not_opened", "Not opened: ", n.shut, "box", "boxes")
		writeCount(w, "not_recorded", "Not recorded: ", len(b.Items)-n.done, "part", "parts")
		w.Key("zones")
		w.Array(func() {
			for z := range b.Zones {
				w.Object(func() { n.writeZone(w, b, z) })
			}
		})
	})
	return w.Bytes(), nil
}

func writeFault(w *strict.Writer, f carfile.Fault) {
	writeError(w, f.Err)
	w.Member("on", f.On)
}

func writeStep(w *strict.Writer, key, name string, done, of int) {
	w.Key(key)
	w.Object(func() {
		w.Key("done")
		w.Whole(int64(done))
		w.Key("of")
		w.Whole(int64(of))
		w.Member("line", name+" "+strconv.Itoa(done)+" of "+strconv.Itoa(of))
	})
}

func writeCount(w *strict.Writer, key, before string, n int, one, many string) {
	w.Key(key)
	w.Whole(int64(n))
	word := many
	if n == 1 {
		word = one
	}
	w.Member(key+"_line", before+strconv.Itoa(n)+" "+word)
}

// counts are the counts of what is recorded on one car.
type counts struct {
	answers, walked, walk, done int
	openDone, closed, shut      int
	undecided                   int
	dealt                       []bool     // by item: recorded, or could not be seen
	rest                        [][]string // by zone: seen parts without a record
}

func countUp(c *carfile.Car, b *car.Body, t *work.Table) *counts {
	n := &counts{answers: answered(c), dealt: make([]bool, len(b.Items)), rest: make([][]string, len(b.Zones))}
	for _, g := range walkSections(b) {
		n.walk += len(g.lines)
		for _, l := range g.lines {
			if slices.ContainsFunc(c.Looks, func(k evidence.Look) bool { return k.Look == l.kind.ID && k.On == l.on }) {
				n.walked++
			}
		}
	}
	open := make([]bool, len(b.Items))
	for k := range c.Survey {
		r := &c.Survey[k]
		i, ok := b.ItemNamed(r.On)
		if !ok || r.Condition == "" && !r.CouldNotSee {
			continue
		}
		n.dealt[i] = true
		open[i] = open[i] || r.Stage == carfile.OpeningUp
	}
	for i := range b.Items {
		p := b.PartOf(i)
		if n.dealt[i] {
			n.done++
		} else if p.SeenWhenStripped {
			n.rest[p.Zone] = append(n.rest[p.Zone], b.Items[i].ID)
		}
		if !p.SeenWhenStripped {
			n.closed++
			if open[i] {
				n.openDone++
			}
		}
	}
	for k := range b.Pockets {
		if len(carfile.ClosedItems(b, k)) > 0 && !c.IsOpen(b.Pockets[k].ID) {
			n.shut++
		}
	}
	n.undecided = len(damagedItems(c, b, t)) - decidedOf(c, b, t)
	return n
}

// questions is how many questions the customer is asked, apart from looks.
const questions = 10

// answered counts the questions answered; "not sure" is an answer.
func answered(c *carfile.Car) int {
	n := 6 // body, year, place, kept, standard, years on the road: a car file has them all
	if c.EarlierWork != "" {
		n++
	}
	if c.Covered != "" {
		n++
	}
	if len(c.Life) > 1 {
		n++
	}
	if c.Scope != "" {
		n++
	}
	return min(n, questions)
}

func (n *counts) answersLine() string {
	return "Answers " + strconv.Itoa(n.answers) + " of " + strconv.Itoa(questions)
}

func (n *counts) writeZone(w *strict.Writer, b *car.Body, z int) {
	done, of := 0, 0
	for i := range b.Items {
		if b.PartOf(i).Zone == z {
			of++
			if n.dealt[i] {
				done++
			}
		}
	}
	w.Member("id", b.Zones[z].ID)
	w.Key("done")
	w.Whole(int64(done))
	w.Key("of")
	w.Whole(int64(of))
	w.Member("line", strconv.Itoa(done)+" of "+strconv.Itoa(of))
	w.Key("seen_left")
	w.Whole(int64(len(n.rest[z])))
	w.Member("rest_line", "Rest of the seen parts here: sound ("+strconv.Itoa(len(n.rest[z]))+")")
	w.Texts("rest", n.rest[z])
}

// damagedItems are the items recorded in a condition that needs a decision: any
// but sound.
func damagedItems(c *carfile.Car, b *car.Body, t *work.Table) (out []int) {
	for i := range b.Items {
		if c.RecordedCondition(b.Items[i].ID) > 0 {
			out = append(out, i)
		}
	}
	return out
}

func decidedOf(c *carfile.Car, b *car.Body, t *work.Table) (n int) {
	for _, i := range damagedItems(c, b, t) {
		if slices.ContainsFunc(c.Ways, func(w carfile.Choice) bool { return w.On == b.Items[i].ID }) {
			n++
		}
	}
	return n
}
