package wording

import (
	"math"
	"strconv"

	"underpaint/engine/olddamage"
	"underpaint/engine/pricing"
	"underpaint/engine/session"
)

// OldDamage says how often an old accident has to be put right, and what that costs. It
// is empty where the range leaves that aside, or where it is hardly in doubt.
func (t *Text) OldDamage(r *session.Range) string {
	if r.Old.Chance < 0.02 || r.Old.Chance > 0.98 {
		return ""
	}
	return "In " + carsLikeYours(r.Old.Chance) + " an old accident or a body out of square has to be put right. " + t.oldCost(&r.Old)
}

func (t *Text) oldCost(c *pricing.OldCost) string {
	return "That takes about " + t.Likely(math.Max(1, c.Mend)) + " for one end or side, and about " + t.Likely(math.Max(1, c.Pull)) + " more where it has to be pulled square."
}

// carsLikeYours says a chance as one car of so many, or of ten.
func carsLikeYours(p float64) string {
	if n := int(math.Floor(1/p + 0.5)); n >= 3 {
		return "1 car out of " + strconv.Itoa(n) + " like yours"
	}
	return CarsInTen(p) + " like yours"
}

var (
	hitZones = map[string]string{"front": "Front", "rear": "Rear", "left": "Left side", "right": "Right side", "roof": "Roof", "car": "The whole car"}
	manners  = map[string]string{"none": "No hit", "well": "Repaired well", "roughly": "Repaired roughly", "crooked": "Crooked"}
	squares  = map[string]string{"square": "Square", "out": "Out of square", "not_measured": "Not measured"}
)

// HitZone names a place where a car can be hit, Manner how that was repaired, and Square
// what measuring showed.
func (t *Text) HitZone(id string) string { return hitZones[id] }
func (t *Text) Manner(id string) string  { return manners[id] }
func (t *Text) Square(id string) string  { return squares[id] }

// Measured says whether the body was found to be square. square is empty before the
// survey.
func Measured(square string) string {
	switch square {
	case olddamage.Square:
		return "Measured: square"
	case olddamage.OutOfSquare:
		return "Measured: out of square"
	case olddamage.NotMeasured:
		return "Not measured for squareness, which stays in doubt"
	}
	return ""
}
