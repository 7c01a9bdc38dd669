package message

import (
	"math"
	"slices"
	"strings"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/estimate"
	"underpaint/engine/strict"
	"underpaint/engine/work"
)

// whyCars is how many imagined cars stand behind each row of the talk.
const whyCars = 4096

// twenty imagines twenty such cars one after another: what is under the paint of
// each, and what it comes to. They are the first twenty cars of the range itself.
func (s *Session) twenty(id int64, c *carfile.Car) ([]byte, error) {
	j, now, err := s.openNow(c)
	if err != nil {
		return nil, err
	}
	table := j.priced()
	type one struct {
		total int64
		holed []string
		all   []int8
	}
	var cars []one
	estimate.Imagine(now.model, table, Seed, 20, func(_ int, d *damage.Car, b *work.Bill) {
		cars = append(cars, one{int64(b.Total), holedIDs(j.body, d), slices.Clone(d.Condition)})
	})
	dearest := 0.0
	var values [20]float64
	for k := range cars {
		values[k] = float64(cars[k].total)
		dearest = math.Max(dearest, values[k])
	}
	a := newAxis(s.Rates.Currency, dearest, 0)
	dots := packDots(values, a)
	w := strict.NewWriter()
	w.Object(func() {
		head(w, id, "twenty")
		w.Member("drawing", j.body.ID)
		w.Key("axis")
		w.Object(func() { a.write(w) })
		w.Objects("cars", len(cars), func(k int) {
			w.Member("total_text", s.moneyWidth(values[k]))
			w.Member("found_text", s.foundText(j.body, cars[k].all))
			w.Texts("holed", cars[k].holed)
			w.Key("at")
			w.Number(dots[k].at)
			w.Key("stack")
			w.Whole(int64(dots[k].stack))
		})
		w.Member("line", "Same kind of car, same answers. These are twenty ways it could turn out.")
		w.Member("note", "Imagined cars: made up from the odds, each with its own rust and its own price. None is the car in hand.")
	})
	return w.Bytes(), nil
}

func holedIDs(b *car.Body, d *damage.Car) (ids []string) {
	for i, k := range d.Condition {
		if int(k) >= holedFrom {
			ids = append(ids, b.Items[i].ID)
		}
	}
	return ids
}

// foundText says in words what is under the paint of one imagined car: the zones,
// worst first, with how many places are rusted through.
func (s *Session) foundText(b *car.Body, condition []int8) string {
	zone := make([]int, len(b.Zones))
	holed := 0
	for i, k := range condition {
		if int(k) >= holedFrom {
			holed++
			zone[b.PartOf(i).Zone]++
		}
	}
	if holed == 0 {
		return "No place is rusted through."
	}
	order := make([]int, len(zone))
	for z := range order {
		order[z] = z
	}
	slices.SortStableFunc(order, func(x, y int) int { return zone[y] - zone[x] })
	text := ""
	for _, z := range order[:min(3, len(order))] {
		if zone[z] > 0 {
			if text != "" {
				text += ", "
			}
			text += lowerFirst(b.Zones[z].Name.In(s.Rates.Words)) + " " + grouped(int64(zone[z]))
		}
	}
	if holed == 1 {
		return "1 place is rusted through or gone, in: " + strings.TrimSuffix(text, " 1") + "."
	}
	return grouped(int64(holed)) + " places are rusted through or gone, most of them in: " + text + "."
}

// twoWays is the range as cars really rust, and as it would be if every panel had
// its own luck, at the same odds for each.
func (s *Session) twoWays(id int64, c *carfile.Car) ([]byte, error) {
	j, now, err := s.openNow(c)
	if err != nil {
		return nil, err
	}
	table := j.priced()
	var together []int64
	estimate.Imagine(now.model, table, Seed, whyCars, func(_ int, _ *damage.Car, b *work.Bill) { together = append(together, int64(b.Total)) })
	apart := estimate.OnTheirOwn(now.model, table, Seed, whyCars)
	slices.Sort(together)
	slices.Sort(apart)
	rows := []whyRow{{"Each panel on its own luck", apart}, {"As cars really rust", together}}
	w := strict.NewWriter()
	w.Object(func() {
		head(w, id, "two_ways")
		s.writeWhyRows(w, rows)
		ratio := width(apart) / width(together)
		w.Member("line", "Rust keeps company. That is where the width comes from.")
		compared := "With every panel on its own luck the range would be " + widthWords(ratio, "it really is") + ": one bad panel would be made up for by another good one. The odds of each single panel are the same in both rows."
		if ratio > 0.96 {
			compared = "So much of this car is known that what keeps company no longer makes the range wider: what is left is in how the work goes and in what is still closed."
		}
		w.Member("compared", compared)
		w.Member("note", "How hard the work goes on the whole car is in both rows.")
	})
	return w.Bytes(), nil
}

// whyRow is one row of dots with its sorted prices.
type whyRow struct {
	label  string
	totals []int64
}

func width(sorted []int64) float64 {
	return chance.QuantileMinor(sorted, 0.9) - chance.QuantileMinor(sorted, 0.1)
}

func (s *Session) writeWhyRows(w *strict.Writer, rows []whyRow) {
	dearest := 1.0
	for _, r := range rows {
		dearest = math.Max(dearest, chance.QuantileMinor(r.totals, 39.0/40))
	}
	a := newAxis(s.Rates.Currency, dearest, 0)
	w.Key("axis")
	w.Object(func() { a.write(w) })
	w.Objects("rows", len(rows), func(k int) {
		r := &rows[k]
		e := roundEnds(chance.QuantileMinor(r.totals, 0.1), chance.QuantileMinor(r.totals, 0.5), 0, chance.QuantileMinor(r.totals, 0.9))
		var values [20]float64
		for d := range values {
			values[d] = chance.QuantileMinor(r.totals, (float64(d)+0.5)/20)
		}
		w.Member("label", r.label)
		w.Key("dots")
		writeDots(w, packDots(values, a))
		w.Member("dots_text", dotsText)
		w.Member("sentence", "8 in 10: "+s.Rates.Currency.TextWhole(e.low)+" to "+s.Rates.Currency.TextWhole(e.high)+".")
	})
}
