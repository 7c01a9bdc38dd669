package pricing

import (
	"math/bits"

	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/engine/olddamage"
)

// drawOld draws the old damage of one car: that of the car, and that of every item as
// bits of b.kinds. What a survey recorded of an item is priced as recorded, and what it
// did not record on bare metal is not there.
func (t *Table) drawOld(c *damage.Car, u *Uniforms, b *Bill) {
	d := t.decided
	b.old = d.odds.Draw(c.Repair, (*[olddamage.Nodes]float64)(u.Old))
	hand, rest := u.Old[oldItems:oldItems+len(t.items)], u.Old[oldItems+len(t.items):]
	blasted := 0
	if b.old.Blasted {
		blasted = 1
	}
	for i := range t.items {
		kinds := uint8(0)
		switch {
		case d.bare[i]:
		case c.Finding[i] == damage.Replaced:
			kinds = 1 << d.odds.Left(b.old.Hand, t.old.braze[i], hand[i]) &^ 1
		case c.Finding[i] == damage.PatchOverRust && t.old.braze[i] && d.odds.Brazed(b.old.Hand, hand[i]):
			kinds = 1 << olddamage.Brazed
		}
		if may := &t.old.may[i]; may.kind != 0 && !d.bare[i] && rest[i] < may.chance[blasted] {
			kinds |= may.kind
		}
		b.kinds[i] = kinds &^ d.recorded[i]
	}
}

// addKinds adds the hours of the kinds of one item, drawn and recorded. A skin that is
// warped takes filling too.
func (t *Table) addKinds(i int, s float64, f *[car.Trades]float64, b *Bill) {
	kinds := b.kinds[i]
	for left := kinds; left != 0; left &= left - 1 {
		k := bits.TrailingZeros8(left)
		b.hours(i, olddamage.KindIDs[k], car.Metal, t.old.finding[k].At(s), f[car.Metal])
	}
	if fill := t.old.lines[olddamage.SkinWarped][car.BodyWork]; fill != nil && (kinds|t.decided.recorded[i])&(1<<olddamage.Warped) != 0 {
		b.hours(i, olddamage.KindIDs[olddamage.Warped], car.BodyWork, fill.At(s), f[car.BodyWork])
	}
}

// workOld adds the work on zones that were hit, and on a body out of square. One number
// sets the hours of all trades of a line in one place.
func (t *Table) workOld(u *Uniforms, f *[car.Trades]float64, b *Bill) {
	b.oldSent = 0
	for z, m := range b.old.Manner {
		if m < olddamage.Roughly {
			continue
		}
		share := 1.0
		if t.anyWhole(t.old.half[z], b) {
			share = 0.5
		}
		t.oldLine(olddamage.MendedRoughly, t.old.zoneIDs[z][0], u.Old[oldRoughly+z], share, f, b)
		if m == olddamage.Crooked {
			t.oldLine(olddamage.MadeCrooked, t.old.zoneIDs[z][1], u.Old[oldCrooked+z], 1, f, b)
		}
	}
	if b.old.Sagged {
		t.oldLine(olddamage.HasSagged, olddamage.LineIDs[olddamage.HasSagged], u.Old[oldSagged], 1, f, b)
	}
	if !b.old.Sagged && !b.old.Crooked() {
		return
	}
	if t.old.sentOut != nil {
		b.oldSent = t.old.sentOut.At(scaledDeviate(u.Old[oldSetUp]))
		return
	}
	t.oldLine(olddamage.SetUp, olddamage.LineIDs[olddamage.SetUp], u.Old[oldSetUp], 1, f, b)
}

func (t *Table) oldLine(line olddamage.LineID, id string, u, share float64, f *[car.Trades]float64, b *Bill) {
	s := scaledDeviate(u)
	for trade, tp := range t.old.lines[line] {
		if tp != nil {
			b.hours(-1, id, car.Trade(trade), float64(share*tp.At(s)), f[trade])
		}
	}
}

// anyWhole says whether any of the items is replaced whole, alone or with a panel that
// covers it.
func (t *Table) anyWhole(items []int, b *Bill) bool {
	for _, i := range items {
		if b.Covered[i] || b.Way[i] >= car.Full {
			return true
		}
	}
	return false
}

// braced says whether a line for getting in is needed because an end of the car is
// crooked: nobody pulls a shell that is not braced.
func (t *Table) braced(access int, b *Bill) bool {
	return t.reckons() && access == t.old.brace && (b.old.Manner[olddamage.Front] == olddamage.Crooked || b.old.Manner[olddamage.Rear] == olddamage.Crooked)
}

// reckons says whether the table draws old damage: the shop counts it in the range, and
// it is known of which car.
func (t *Table) reckons() bool { return t.old != nil && t.decided != nil && t.decided.odds != nil }

// OldDamage is that of the last car priced, where the table reckons with it.
func (b *Bill) OldDamage() olddamage.Car { return b.old }

// OldFound lists the ids of the findings that old damage left on item i of the last car
// priced, without those recorded before.
func (b *Bill) OldFound(i int) (ids []string) {
	for left := b.kinds[i]; left != 0; left &= left - 1 {
		ids = append(ids, olddamage.KindIDs[bits.TrailingZeros8(left)])
	}
	return ids
}
