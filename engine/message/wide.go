package message

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/estimate"
	"underpaint/engine/evidence"
	"underpaint/engine/strict"
	"underpaint/engine/work"
)

// What makes a range wide is worked out on walks, a slice at a time (assumption:
// 3200 leave the largest share good to about two in a hundred).
const (
	walksOfSlice = 80
	allWalks     = 3200
	dearestCars  = 2048
	mostWorse    = 5
)

// wideJob is a car whose range is being taken apart.
type wideJob struct {
	key    string
	stages *stageJob
	shares *estimate.Shares
	worse  []estimate.PartCost
}

// wideReply says what makes the range wide, and what could make it worse. Asked
// again it goes on with more walks.
func (s *Session) wideReply(id int64, c *carfile.Car) ([]byte, error) {
	j, err := s.openWide(c)
	if err != nil {
		return nil, err
	}
	_, now := j.stages.lastTwo()
	if j.shares.Walks() < allWalks {
		j.shares.Add(walksOfSlice)
	} else if j.worse == nil {
		j.worse = estimate.Dearest(now.model, j.stages.priced(), Seed, dearestCars)
	}
	state := Refining
	if j.worse != nil {
		state = Settled
	}
	w := strict.NewWriter()
	w.Object(func() {
		head(w, id, "wide")
		w.Member("state", string(state))
		w.Key("done")
		w.Whole(int64(j.shares.Walks()))
		w.Key("of")
		w.Whole(allWalks)
		w.Member("progress_text", "Taking the width apart: "+grouped(int64(j.shares.Walks()))+" of "+grouped(allWalks)+".")
		s.writeShares(w, j)
		s.writeWorse(w, j)
	})
	return w.Bytes(), nil
}

func (s *Session) openWide(c *carfile.Car) (*wideJob, error) {
	key := string(c.Text())
	if s.wide != nil && s.wide.key == key {
		return s.wide, nil
	}
	stages, now, err := s.openNow(c)
	if err != nil {
		return nil, err
	}
	s.wide = &wideJob{key: key, stages: stages, shares: estimate.NewShares(now.model, stages.priced(), Seed)}
	return s.wide, nil
}

// priced is the table of the last stage, without chosen ways.
func (j *stageJob) priced() *work.Table {
	t, err := j.plain.With(j.car.Decided(j.body, j.car.LastStage(), false))
	if err != nil {
		panic("engine: internal error: what was decided stood a moment ago")
	}
	return t
}

// inputName is an input of the shares in plain words.
func (s *Session) inputName(b *car.Body, input int) (name, why string) {
	switch input {
	case estimate.History:
		return "What is not known of its life", "Where it stood, how long it was driven, how it was kept."
	case estimate.CarLuck:
		return "How this car came through that life", "Of two cars with the same answers one is worse all over. No single look tells; every look tells a little, and bare metal tells most."
	case estimate.Repairs:
		return "Earlier repairs", "Patches over rust and filler over holes come to light under the paint."
	case estimate.Ways:
		return "What is done about what is found", "The same rust can be treated, patched or cut out. It is settled part by part after the survey."
	case estimate.CarHours:
		return "How hard the work goes on this car", "Seized bolts, thin edges, poor access. Hours worked in the strip tell some of it; the rest nobody can take away before the work is done."
	case estimate.OwnHours:
		return "Hours of single pieces of work", "Each piece goes better or worse; over many pieces that evens out."
	case estimate.Prices:
		return "Prices of parts and of work sent out", "Known for good once they are ordered."
	}
	return "Rust: " + lowerFirst(b.Groups[input-estimate.Groups].Name.In(s.Rates.Words)), "Beyond what holds for the whole car. Looks at these places tell about it."
}

// writeShares writes the shares, the largest first; what is below two in a hundred
// is put together.
func (s *Session) writeShares(w *strict.Writer, j *wideJob) {
	all, variance := j.shares.Shares()
	order := make([]int, len(all))
	for k := range order {
		order[k] = k
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(all[b].Share, all[a].Share) })
	n := 0
	for n < len(order) && all[order[n]].Share >= 0.02 {
		n++
	}
	rest, worst := 1.0, 0.0
	shown := make([]float64, n+1)
	for k := range n {
		shown[k] = all[order[k]].Share
		rest -= shown[k]
	}
	shown[n] = math.Max(0, rest)
	whole := wholePercents(shown)
	w.Objects("shares", n, func(k int) {
		one := all[order[k]]
		name, why := s.inputName(j.stages.body, order[k])
		worst = math.Max(worst, one.SE)
		w.Member("name", name)
		w.Member("why", why)
		w.Member("share_text", strconv.Itoa(whole[k])+" %")
		w.Key("share")
		w.Number(one.Share)
	})
	w.Member("rest_text", "Everything else: "+strconv.Itoa(whole[n])+" %")
	w.Key("rest")
	w.Number(math.Max(0, rest))
	w.Member("shares_note", "Shares of the variance that add to all of it, each good to about ±"+strconv.Itoa(int(math.Ceil(200*worst)))+
		" in the hundred. What two causes do together is halved between them; what comes later in this order counts for what is new in it: the life, the car, its repairs, each place.")
	w.Key("known")
	w.Bool(variance > 0)
}

// wholePercents rounds shares so that they still add to 100: down, and then up where
// most was cut off (the method of the largest remainder).
func wholePercents(shares []float64) []int {
	out, order, left, sum := make([]int, len(shares)), make([]int, len(shares)), 100, 0.0
	for _, v := range shares {
		sum += v
	}
	part := func(k int) float64 { return 100 * shares[k] / sum }
	for k := range shares {
		order[k], out[k] = k, int(part(k))
		left -= out[k]
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return cmp.Compare(part(b)-float64(out[b]), part(a)-float64(out[a]))
	})
	for _, k := range order[:max(0, min(left, len(order)))] {
		out[k]++
	}
	return out
}

// writeWorse writes the parts that take most more in the dearest fifth of cars.
func (s *Session) writeWorse(w *strict.Writer, j *wideJob) {
	list := slices.Clone(j.worse)
	slices.SortStableFunc(list, func(a, b estimate.PartCost) int { return cmp.Compare(b.Dearest-b.All, a.Dearest-a.All) })
	list = list[:min(len(list), mostWorse)]
	for len(list) > 0 && list[len(list)-1].Dearest <= list[len(list)-1].All {
		list = list[:len(list)-1]
	}
	w.Objects("worse", len(list), func(k int) {
		p := &j.stages.body.Parts[list[k].Part]
		w.Member("part", p.ID)
		w.Member("name", p.Name.In(s.Rates.Words))
		w.Member("likely_line", "Rusted through or gone in "+carsInTen(list[k].HoledAll)+"; of the dearest fifth in "+carsInTen(list[k].HoledDearest)+".")
		w.Member("cost_line", "It takes about "+s.moneyWidth(math.Max(1, list[k].Dearest))+" there, about "+s.moneyWidth(math.Max(1, list[k].All))+" on the average of all such cars.")
		w.Member("find_line", s.findLine(j, p))
	})
	w.Member("worse_note", "What the part takes of its own, both sides together; getting in, materials of the whole car, supplies and tax are apart.")
}

// findLine says how one would find out about a part.
func (s *Session) findLine(j *wideJob, p *car.Part) string {
	words := s.Rates.Words
	switch {
	case !p.SeenWhenStripped:
		return "A closed box: it shows only when it is opened, after the survey."
	case j.stages.car.Begun(carfile.Survey):
		return "Bare metal shows it; what is recorded counts."
	}
	kind, ok := evidence.BestLook(j.stages.body, p.Items[0])
	if !ok {
		return "Only bare metal shows it: strip and survey."
	}
	who := "the shop"
	if kind.CustomerCan {
		who = "the shop, or you"
	}
	return "To find out before: " + lowerFirst(kind.Name.In(words)) + "? (" + who + "). For certain: strip and survey."
}
