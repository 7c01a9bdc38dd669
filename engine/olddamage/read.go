package olddamage

import (
	"math"
	"slices"
	"strconv"

	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/engine/strict"
)

// Groups are the members of each object of [Figures.With]. The JSON Schema of the site
// lists the same names, and a test compares the two.
var Groups = map[string][]string{
	"hit":          {"hard_hits_a_road_year", "left_on_the_road", "times_by_earlier_work", "zones", "mended", "source"},
	"answer":       slices.Concat(Answers, []string{"named_where_hit", "named_elsewhere", "source"}),
	"sagged":       {"closed", "open", "on_a_frame", "source"},
	"earlier_hand": {"by_earlier_work", "replaced_is", "patch_is_brazed", "source"},
	"warped":       {"blasted_before", "skin_if_blasted", "skin_if_not", "least_m2", "most_trap", "source"},
	"cracked":      {"closed", "open_or_pickup", "source"},
	"packed":       {"chance", "source"},
	"hours":        slices.Concat(LineIDs[:], []string{"source"}),
	"replaced_is":  slices.Concat([]string{"right"}, KindIDs[BadPanel:HandKinds]),
}

// LineTrades are the trades that each kind of work takes, by LineID.
func LineTrades(line LineID) []string { return lineTrades[line] }

// read reads every figure that the object has, and leaves the others as they are.
func (g *Figures) read(f strict.Field) {
	in(f, "hit", Groups["hit"], g.readHit)
	in(f, "answer", Groups["answer"], g.readAnswer)
	in(f, "sagged", Groups["sagged"], func(o strict.Field) {
		for k, id := range []string{"closed", "open", "on_a_frame"} {
			number(o, id, 0, 1, &g.Sagged[k])
		}
	})
	in(f, "earlier_hand", Groups["earlier_hand"], g.readHand)
	in(f, "warped", Groups["warped"], func(o strict.Field) {
		byWork(o, "blasted_before", 1, &g.Blasted)
		number(o, "skin_if_not", 0, 1, &g.SkinWarped[0])
		number(o, "skin_if_blasted", 0, 1, &g.SkinWarped[1])
		number(o, "least_m2", 0, 20, &g.leastM2)
		if o.Has("most_trap") {
			g.mostTrap = o.Get("most_trap").Whole(1, 5)
		}
	})
	in(f, "cracked", Groups["cracked"], func(o strict.Field) {
		number(o, "closed", 0, 1, &g.Cracked[0])
		number(o, "open_or_pickup", 0, 1, &g.Cracked[1])
	})
	in(f, "packed", Groups["packed"], func(o strict.Field) { number(o, "chance", 0, 1, &g.Packed) })
	in(f, "hours", Groups["hours"], g.readHours)
	g.readSentOut(f)
}

// in reads an object that may be left out.
func in(f strict.Field, name string, keys []string, read func(strict.Field)) {
	if !f.Has(name) {
		return
	}
	one := f.Get(name)
	one.Keys(keys...)
	if one.Has("source") {
		one.Get("source").Text(600)
	}
	read(one)
}

func number(f strict.Field, name string, least, most float64, to *float64) {
	if f.Has(name) {
		*to = f.Get(name).Number(least, most)
	}
}

// byWork reads one number for each state of earlier repairs.
func byWork(f strict.Field, name string, most float64, to *[damage.RepairStates]float64) {
	if !f.Has(name) {
		return
	}
	o := f.Get(name)
	o.Keys(damage.RepairStateIDs[:]...)
	for r, id := range damage.RepairStateIDs {
		to[r] = o.Get(id).Number(0, most)
	}
}

// threeByWork reads three chances that sum to 1 for each state of earlier repairs.
func threeByWork(f strict.Field, name string, to *[damage.RepairStates][3]float64) {
	if !f.Has(name) {
		return
	}
	o := f.Get(name)
	o.Keys(damage.RepairStateIDs[:]...)
	for r, id := range damage.RepairStateIDs {
		copy(to[r][:], o.Get(id).Numbers(3, 0, 1))
		sumsToOne(o.Get(id), to[r][:])
	}
}

// sumsToOne complains about chances that do not add up to 1, to 1e-9.
func sumsToOne(f strict.Field, chances []float64) {
	sum := 0.0
	for _, v := range chances {
		sum += v
	}
	if f.Err() == nil && !(math.Abs(sum-1) <= 1e-9) {
		f.ComplainFound("chances adding up to "+strconv.FormatFloat(sum, 'g', 6, 64), "chances adding up to 1")
	}
}

func (g *Figures) readHit(f strict.Field) {
	number(f, "hard_hits_a_road_year", 0, 0.1, &g.HitsAYear)
	number(f, "left_on_the_road", 0, 1, &g.LeftOnTheRoad)
	byWork(f, "times_by_earlier_work", 10, &g.TimesByWork)
	threeByWork(f, "mended", &g.Mended)
	if !f.Has("zones") {
		return
	}
	o := f.Get("zones")
	o.Keys(ZoneIDs[:]...)
	for z, id := range ZoneIDs {
		g.Zones[z] = o.Get(id).Number(0, 0.999)
	}
	sumsToOne(o, g.Zones[:])
}

func (g *Figures) readAnswer(f strict.Field) {
	own := map[string][3]float64{}
	for _, id := range Answers {
		own[id] = g.answers[id]
		if f.Has(id) {
			var row [3]float64
			copy(row[:], f.Get(id).Numbers(3, 0, 1))
			own[id] = row
		}
	}
	g.answers = own
	for n := range 3 {
		column := make([]float64, 0, len(Answers))
		for _, id := range Answers {
			column = append(column, own[id][n])
		}
		sumsToOne(f, column)
	}
	number(f, "named_where_hit", 0.001, 0.999, &g.namedHit)
	number(f, "named_elsewhere", 0.001, 0.999, &g.namedElse)
}

func (g *Figures) readHand(f strict.Field) {
	threeByWork(f, "by_earlier_work", &g.Hand)
	if f.Has("replaced_is") {
		o := f.Get("replaced_is")
		ids := Groups["replaced_is"]
		o.Keys(ids...)
		for k, id := range ids {
			copy(g.ReplacedIs[k][:], o.Get(id).Numbers(hands, 0, 1))
		}
		for h := range hands {
			var column [HandKinds]float64
			for k := range column {
				column[k] = g.ReplacedIs[k][h]
			}
			sumsToOne(o, column[:])
		}
	}
	if f.Has("patch_is_brazed") {
		copy(g.PatchBrazed[:], f.Get("patch_is_brazed").Numbers(hands, 0, 1))
	}
}

func (g *Figures) readHours(f strict.Field) {
	for n, id := range LineIDs {
		in(f, id, lineTrades[n], func(o strict.Field) {
			for t, trade := range car.TradeIDs {
				if o.Has(trade) {
					g.Lines[n][t] = triple(o.Get(trade))
				}
			}
		})
	}
}

// triple reads low, likely and high: above 0, none below the one before it.
func triple(f strict.Field) (h car.Hours) {
	copy(h[:], f.Numbers(3, 0, 1e6))
	if f.Err() == nil && !(h[0] > 0 && h[0] <= h[1] && h[1] <= h[2]) {
		f.Complain("low, likely and high, above 0 and in that order")
	}
	return h
}

// readSentOut reads prices by currency (the starting figures), or the one in the
// currency of a shop that has the setting up done elsewhere.
func (g *Figures) readSentOut(f strict.Field) {
	if !f.Has("sent_out") {
		return
	}
	o := f.Get("sent_out")
	if g.SentOut == nil {
		o.Keys("USD", "GBP", "source")
		g.SentOut = map[string]car.Hours{"USD": triple(o.Get("USD")), "GBP": triple(o.Get("GBP"))}
		o.Get("source").Text(600)
		return
	}
	g.IsSentOut, g.SentOut = true, map[string]car.Hours{"": triple(o)}
}
