package pricing

import (
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/olddamage"
	"underpaint/engine/rates"
)

// oldWork is the work that old damage makes on one body, in this shop's hours.
type oldWork struct {
	lines   [olddamage.Lines][car.Trades]*chance.ThreePoint
	sentOut *chance.ThreePoint // minor units, in place of the hours for setting up; nil = by the shop
	finding [olddamage.Kinds]*chance.ThreePoint
	zoneIDs [olddamage.Zones][2]string // of the lines of each zone: roughly, crooked
	half    [olddamage.Zones][]int     // items that halve the work of a zone where replaced whole
	may     []mayBe                    // by item
	braze   []bool                     // by item: brass can be there
	brace   int                        // index in accesses, −1 = none
}

// mayBe is what may be wrong with an item, besides what an earlier hand left, and its
// chance, without and with an earlier blasting. No part has more than one such kind.
type mayBe struct {
	kind   uint8 // a bit
	chance [2]float64
}

// oldSlots are where the uniforms of old damage begin, see [Uniforms].
const (
	oldRoughly = olddamage.Nodes
	oldCrooked = oldRoughly + int(olddamage.Zones)
	oldSagged  = oldCrooked + int(olddamage.Zones)
	oldSetUp   = oldSagged + 1
	oldMeasure = oldSetUp + 1
	oldItems   = oldMeasure + 1
)

// OldUniforms is how many numbers old damage takes on a body: those of the car, then two
// for each item, for what the earlier hand left there and for the rest.
func OldUniforms(b *car.Body) int { return oldItems + 2*len(b.Items) }

// setOld works out the lines of old damage.
func (t *Table) setOld() error {
	fig := t.Rates.Reckoned()
	if fig == nil {
		return nil
	}
	old := &oldWork{brace: -1}
	for n := range olddamage.Lines {
		for trade := range car.Trades {
			if fig.Lines[n][trade] == (car.Hours{}) || t.dropped(trade) {
				continue
			}
			factor := t.pace(trade)
			if n != olddamage.SetUp && n != olddamage.Measure {
				factor *= t.fig.standard[t.Standard][trade]
			}
			tp, err := threePoint(fig.Lines[n][trade], factor)
			if err != nil {
				return err
			}
			old.lines[n][trade] = tp
		}
	}
	if fig.IsSentOut {
		tp, err := threePoint(fig.SentOut[""], t.minorPerMajor())
		if err != nil {
			return err
		}
		old.sentOut = tp
	}
	t.old = old
	t.setOldParts(fig)
	t.setOldZones(fig)
	return t.setOldFindings()
}

// setOldFindings takes the hours of what is found on parts from the other findings.
func (t *Table) setOldFindings() error {
	factor := t.fig.standard[t.Standard][car.Metal] * t.pace(car.Metal)
	for k := olddamage.BadPanel; k < olddamage.Kinds; k++ {
		tp, err := threePoint(t.fig.found[t.fig.findingNamed(olddamage.KindIDs[k])].Hours, factor)
		if err != nil {
			return err
		}
		t.old.finding[k] = tp
	}
	m := olddamage.Measure
	tp := t.old.lines[m][car.Metal]
	t.strip = append(t.strip, stripLine{plainLine: plainLine{id: olddamage.LineIDs[m], name: measureName, trade: car.Metal, hours: tp}, how: rates.Fixed, likely: tp.Likely()})
	return nil
}

// measureName is the step of the strip in which every car is measured.
var measureName = car.Words{US: "Measure the shell for squareness with tape and trammel", UK: "Measure the shell for squareness with tape and trammel"}

// setOldParts says what can be on which item.
func (t *Table) setOldParts(fig *olddamage.Figures) {
	t.old.may, t.old.braze = make([]mayBe, len(t.items)), make([]bool, len(t.items))
	cracked := fig.CrackedOn(t.Body)
	for i := range t.items {
		p := t.Body.PartOf(i)
		can := func(k olddamage.Kind) bool { return t.fig.found[t.fig.findingNamed(olddamage.KindIDs[k])].On(p) }
		t.old.braze[i] = can(olddamage.Brazed)
		switch {
		case fig.BigSkin(p):
			t.old.may[i] = mayBe{1 << olddamage.Warped, fig.SkinWarped}
		case can(olddamage.Cracked):
			t.old.may[i] = mayBe{1 << olddamage.Cracked, [2]float64{cracked, cracked}}
		case can(olddamage.Packed):
			t.old.may[i] = mayBe{1 << olddamage.Packed, [2]float64{fig.Packed, fig.Packed}}
		}
	}
}

func (t *Table) setOldZones(fig *olddamage.Figures) {
	sides := [olddamage.Zones]car.Side{olddamage.LeftSide: car.Left, olddamage.RightSide: car.Right}
	for z, part := range fig.HalfIfFull {
		t.old.half[z] = t.itemsOf(part, sides[z], "")
		for k, line := range []olddamage.LineID{olddamage.MendedRoughly, olddamage.MadeCrooked} {
			t.old.zoneIDs[z][k] = olddamage.LineIDs[line] + "_" + olddamage.ZoneIDs[z]
		}
	}
	t.old.brace = slices.IndexFunc(t.accesses, func(a access) bool { return a.line.id == "brace_datum" })
}

// outOfSquare is the finding of the whole car that old damage stands for where it is
// reckoned with.
const outOfSquare = "twist"

// setOdds works out the odds of old damage. A strip that went by without measuring had no
// hours for it, but its price was agreed before.
func (t *Table) setOdds(to *decided, d Decided) error {
	if d.Unmeasured {
		t.strip = t.strip[:t.stripSteps()]
	}
	if t.old == nil || d.Old == nil {
		return nil
	}
	known := *d.Old
	if known.Square == "" && slices.Contains(d.WholeCar, outOfSquare) {
		known.Square = olddamage.OutOfSquare
	}
	to.odds = t.Rates.Reckoned().Condition(t.Body, known)
	to.bare, to.recorded = make([]bool, len(t.items)), make([]uint8, len(t.items))
	copy(to.bare, d.Bare)
	for i := range to.also {
		for k := olddamage.BadPanel; k < olddamage.Kinds; k++ {
			if slices.Contains(d.Also[i], olddamage.KindIDs[k]) {
				to.recorded[i] |= 1 << k
			}
		}
	}
	return nil
}

// Reckoning returns the odds of old damage that the table prices, nil if it leaves old
// damage aside.
func (t *Table) Reckoning() *olddamage.Odds {
	if !t.reckons() {
		return nil
	}
	return t.decided.odds
}

// stripSteps is the number of steps of the strip but for the measuring, which is last and
// takes a uniform of its own.
func (t *Table) stripSteps() int {
	n := len(t.strip)
	if n > 0 && t.strip[n-1].id == olddamage.LineIDs[olddamage.Measure] {
		n--
	}
	return n
}

// OldCost says what old accidents cost where they have to be put right, in minor units of
// labour, before the factors of the whole car.
type OldCost struct {
	Chance float64 // that one, or a body out of square, has to be put right
	Mend   float64 // mean, of one zone that was mended roughly
	Pull   float64 // mean of what a crooked zone takes on top, with the setting up
}

// OldCost works out what old accidents cost, for the chances of the state of earlier
// repairs. Chance is 0 where the table leaves them aside.
func (t *Table) OldCost(repairs [damage.RepairStates]float64) (c OldCost) {
	if !t.reckons() {
		return c
	}
	c.Chance = t.decided.odds.Chances(repairs).ToMend
	c.Mend = t.meanOf(olddamage.MendedRoughly)
	c.Pull = t.meanOf(olddamage.MadeCrooked)
	if t.old.sentOut != nil {
		mean, _ := t.old.sentOut.Moments()
		c.Pull += mean
	} else {
		c.Pull += t.meanOf(olddamage.SetUp)
	}
	return c
}

func (t *Table) meanOf(line olddamage.LineID) (sum float64) {
	for trade, tp := range t.old.lines[line] {
		if tp != nil {
			mean, _ := tp.Moments()
			sum += float64(mean * t.money.perHour[trade])
		}
	}
	return sum
}
