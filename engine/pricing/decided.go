package pricing

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/olddamage"
	"underpaint/engine/strict"
)

// Decided holds what is no longer uncertain: chosen ways, findings outside the odds,
// and hours already worked. Start from [Undecided].
type Decided struct {
	// Way is the chosen [car.Way] by item, −1 where none is chosen; nil means none at
	// all.
	Way []int8
	// Also lists the ids of further findings by item; nil means none at all. Only
	// Priced findings belong here, because the odds already include the others.
	Also [][]string
	// PanelFit says how the panel bought for an item fits, by item: one of PanelFits, or
	// empty where nobody has tried it; nil means none at all.
	PanelFit []string
	// WholeCar lists the ids of findings of the whole car.
	WholeCar []string
	// Old is what is known about old damage besides the findings in Also; nil leaves it
	// aside, and only what was found is priced.
	Old *olddamage.Known
	// Bare says by item whether it was seen on bare metal, so that what is not in Also is
	// not there; nil means none.
	Bare []bool
	// Unmeasured says that the strip is over and nobody measured the shell.
	Unmeasured bool
	// StripHours are the hours worked in the strip and survey, by trade; NaN or −1
	// where not entered. 0 is refused, because no strip takes no time.
	StripHours [car.Trades]float64
	// KeepOldMetal says that the customer wants to keep as much of the old metal as
	// possible. Then no full panel is fitted because its pieces would cost more.
	KeepOldMetal bool
}

// Undecided returns a Decided with nothing chosen, found or entered.
func Undecided() (d Decided) {
	for trade := range d.StripHours {
		d.StripHours[trade] = -1
	}
	return d
}

// mostHours is the longest entry of hours in one trade (assumption: five years of one
// person's work).
const mostHours = 10000

// decided is a checked Decided, ready for Price.
type decided struct {
	way     []int8 // nil = none
	panels  []wholePanel
	also    [][]int // by item: indices in figures.found
	further []chance.ThreePoint
	missing []bool // by item; nil = none
	fit     []int  // by item, as PanelFits, −1 = not said; nil = none
	car     []carLine

	odds     *olddamage.Odds // nil = old damage is left aside
	bare     []bool
	recorded []uint8 // by item: kinds in also, as bits of olddamage.Kind

	stripKnown bool
	strip      [car.Trades]int64 // thousandths worked, −1 = not entered
	charged    []int64           // by strip line: thousandths charged, of entered trades
	factors    factorPosterior
}

// carLine is one finding of the whole car.
type carLine struct {
	plainLine
	uniform int // index in Uniforms.Found
}

// With returns a copy of the table with these decisions; t itself does not change, and
// the decisions of an earlier With do not carry over. A chosen way replaces the drawn
// one, whatever condition the simulated car has there and whether or not the scope
// includes the part; openings may still raise it. Both tables take the same uniforms,
// so two decisions are compared on the same simulated cars. A decision that cannot be
// made is an error that names its path.
func (t *Table) With(d Decided) (*Table, error) {
	out := *t
	out.decided = &decided{}
	for _, set := range []func(*decided, Decided) error{out.setChosen, out.setPieces, out.setAlso, out.setFit, out.setOdds, out.setWholeCar, out.setWorked} {
		if err := set(out.decided, d); err != nil {
			return nil, err
		}
	}
	return &out, nil
}

func (t *Table) setChosen(to *decided, d Decided) error {
	if d.Way == nil {
		return nil
	}
	t.checkLength(len(d.Way))
	to.way = slices.Clone(d.Way)
	for i, w := range d.Way {
		if w == -1 {
			continue
		}
		if w < 0 || int(w) >= int(car.Ways) || !t.isDone(i, car.Way(w)) {
			return &strict.Error{Path: "ways", Found: t.Body.Items[i].ID + ": " + wayID(w), Expected: "a way that is done there: " + t.waysDone(i)}
		}
	}
	return nil
}

// isDone says whether a way is done on an item, rather than replaced by another, and
// the shop can get the part.
func (t *Table) isDone(i int, w car.Way) bool { return t.items[i].instead[w] == w }

func wayID(w int8) string {
	if w < 0 || int(w) >= len(car.WayIDs) {
		return strconv.Itoa(int(w))
	}
	return car.WayIDs[w]
}

func (t *Table) waysDone(i int) string {
	var ids []string
	for w := car.Leave; w < car.Ways; w++ {
		if t.isDone(i, w) {
			ids = append(ids, car.WayIDs[w])
		}
	}
	return strings.Join(ids, ", ")
}

func (t *Table) checkLength(n int) {
	if n != len(t.items) {
		panic("engine: internal error: decisions on " + strconv.Itoa(n) + " items of a body with " + strconv.Itoa(len(t.items)))
	}
}

func (t *Table) setAlso(to *decided, d Decided) error {
	factor := t.fig.standard[t.Standard][car.Metal] * t.pace(car.Metal)
	to.further = make([]chance.ThreePoint, len(t.fig.found))
	for n, f := range t.fig.found {
		if f.Priced && f.ID != Missing {
			tp, err := threePoint(f.Hours, factor)
			if err != nil || tp == nil {
				return &strict.Error{Path: "also", Found: f.ID, Expected: "hours low, likely, high"}
			}
			to.further[n] = *tp
		}
	}
	if d.Also == nil {
		return nil
	}
	t.checkLength(len(d.Also))
	to.also = make([][]int, len(d.Also))
	for i, ids := range d.Also {
		for k, id := range ids {
			n := t.furtherNamed(id, false)
			if n < 0 || !t.fig.found[n].On(t.Body.PartOf(i)) {
				return &strict.Error{Path: "also", Found: t.Body.Items[i].ID + ": " + id, Expected: t.furtherOn(i)}
			}
			if slices.Contains(ids[:k], id) {
				return &strict.Error{Path: "also", Found: t.Body.Items[i].ID + ": " + id + " twice", Expected: "each finding once"}
			}
			if id == Missing {
				if err := t.setMissing(to, i); err != nil {
					return err
				}
				continue
			}
			to.also[i] = append(to.also[i], n)
		}
	}
	return nil
}

// furtherNamed returns the index of a priced finding of an item or of the whole car, or
// −1.
func (t *Table) furtherNamed(id string, perCar bool) int {
	for n, f := range t.fig.found {
		if f.ID == id && f.Priced && f.PerCar == perCar {
			return n
		}
	}
	return -1
}

func (t *Table) furtherOn(i int) string {
	var ids []string
	for _, f := range t.fig.found {
		if f.Priced && f.On(t.Body.PartOf(i)) {
			ids = append(ids, f.ID)
		}
	}
	return "one of the findings priced there: " + strings.Join(ids, ", ")
}

func (t *Table) setWholeCar(to *decided, d Decided) error {
	uniform, ids := 0, []string{}
	for n, f := range t.fig.found {
		if !f.PerCar {
			continue
		}
		ids = append(ids, f.ID)
		if slices.Contains(d.WholeCar, f.ID) && !(to.odds != nil && f.ID == outOfSquare) {
			tp := to.further[n]
			to.car = append(to.car, carLine{plainLine{id: f.ID, name: f.Name, trade: car.Metal, hours: &tp}, uniform})
		}
		uniform++
	}
	for k, id := range d.WholeCar {
		if !slices.Contains(ids, id) {
			return &strict.Error{Path: "whole_car", Found: id, Expected: "one of " + strings.Join(ids, ", ")}
		}
		if slices.Contains(d.WholeCar[:k], id) {
			return &strict.Error{Path: "whole_car", Found: id + " twice", Expected: "each finding once"}
		}
	}
	return nil
}

// entered says whether hours of a trade were entered.
func entered(hours float64) bool { return !math.IsNaN(hours) && hours != -1 }

// chosen returns the way chosen for an item and whether there is one.
func (t *Table) chosen(i int) (car.Way, bool) {
	if t.decided == nil || t.decided.way == nil || t.decided.way[i] < 0 {
		return car.Leave, false
	}
	return car.Way(t.decided.way[i]), true
}

// leftOut says whether the scope leaves an item out. An item with chosen work is never
// left out.
func (t *Table) leftOut(i int) bool {
	way, _ := t.chosen(i)
	return t.items[i].leftOut && way == car.Leave
}

// also lists the further findings of an item.
func (t *Table) also(i int) []int {
	if t.decided == nil || t.decided.also == nil {
		return nil
	}
	return t.decided.also[i]
}

// workWholeCar adds the findings of the car as a whole.
func (t *Table) workWholeCar(u *Uniforms, f *[car.Trades]float64, b *Bill) {
	if t.decided == nil {
		return
	}
	for k := range t.decided.car {
		line := &t.decided.car[k]
		b.add(&line.plainLine, scaledDeviate(u.Found[line.uniform]), f[line.trade])
	}
}
