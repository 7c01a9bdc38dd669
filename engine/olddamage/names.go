package olddamage

import "slices"

// Zone is where a hard hit fell. It is larger than a zone of package car.
type Zone int8

// The zones.
const (
	Front Zone = iota
	Rear
	LeftSide
	RightSide
	Roof
	Zones // the number of zones
)

// ZoneIDs name the zones in files. WholeCar is the place of a check that is about none.
var ZoneIDs = [Zones]string{"front", "rear", "left", "right", "roof"}

// WholeCar is the place of a check of the car as a whole.
const WholeCar = "car"

// Manner says whether a zone was hit hard, and how that was mended.
type Manner int8

// The manners, from nothing to the worst.
const (
	NoHit Manner = iota
	Well
	Roughly
	Crooked
	Manners // the number of manners
)

// MannerIDs name the manners in files.
var MannerIDs = [Manners]string{"none", "well", "roughly", "crooked"}

// Whether the body is square, as a survey records it.
const (
	Square      = "square"
	OutOfSquare = "out"
	NotMeasured = "not_measured"
)

// SquareIDs are the answers to that in files.
var SquareIDs = []string{Square, OutOfSquare, NotMeasured}

// Answers are the answers about hits in files. Those of HitAnswers can name zones.
var (
	Answers    = []string{"not_that_i_know", "lightly", "hard", "not_sure"}
	HitAnswers = []string{"lightly", "hard"}
)

// hands is the number of earlier hands: good, fair and poor.
const hands = 3

// Kind is what can be wrong with a part, besides its condition and its earlier repair.
type Kind int8

// The kinds. The first five exclude each other.
const (
	Right Kind = iota
	BadPanel
	BadWeld
	Brazed
	Bonded
	HandKinds // the number of what an earlier hand leaves on a part that it replaced

	Warped  = HandKinds
	Cracked = HandKinds + 1
	Packed  = HandKinds + 2
	Kinds   = HandKinds + 3
)

// KindIDs are the ids of the findings that record them, by Kind; Right has none.
var KindIDs = [Kinds]string{"", "bad_panel", "bad_weld", "brazed", "bonded", "blast_warp", "stress_crack", "packed"}

// Telling are those of the findings recorded on a part that tell of an earlier hand or of
// blasting.
func Telling(also []string) (out []string) {
	for _, id := range also {
		if slices.Contains(KindIDs[BadPanel:Cracked], id) {
			out = append(out, id)
		}
	}
	return out
}
