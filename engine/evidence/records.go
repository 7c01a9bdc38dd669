package evidence

import (
	_ "embed"
	"math"
	"slices"
	"strconv"
	"sync"

	"underpaint/engine/car"
	"underpaint/engine/strict"
)

//go:embed data/reading.json
var readingFile []byte

// reading holds how often a record of bare metal is right.
type reading struct {
	condition  [2][car.Conditions][car.Conditions]float64 // [closed box from outside][true][recorded]
	slip       float64                                    // smallest entry of condition: a keying error
	againBelow float64
	finding    float64
}

var readings = sync.OnceValue(func() *reading {
	r, err := readReading(readingFile)
	if err != nil {
		panic("engine: internal error: reading data: " + err.Error())
	}
	return r
})

func readReading(text []byte) (*reading, error) {
	f, err := strict.Parse(text)
	if err != nil {
		return nil, err
	}
	f.Keys("format", "source", "seen", "closed_box_from_outside", "slip", "finding_right")
	f.Get("format").OneOf("underpaint reading 2")
	f.Get("source").Text(300)
	slip := f.Get("slip")
	slip.Keys("chance", "look_again_below", "source")
	slip.Get("source").Text(300)
	r := &reading{finding: f.Get("finding_right").Number(0.5, 1-leastChance),
		slip: slip.Get("chance").Number(1e-12, 1e-4), againBelow: slip.Get("look_again_below").Number(0, 1)}
	r.condition[0] = readTable(f.Get("seen"), r.slip)
	r.condition[1] = readTable(f.Get("closed_box_from_outside"), r.slip)
	return r, f.Err()
}

// readTable reads the chance of each record by the true condition. A record with a
// chance below slip can still be a keying error; that chance is taken from the largest
// entry of its row.
func readTable(f strict.Field, slip float64) (out [car.Conditions][car.Conditions]float64) {
	f.Keys(append([]string{"source"}, car.ConditionIDs[:]...)...)
	f.Get("source").Text(300)
	for is, id := range car.ConditionIDs {
		row := f.Get(id).Numbers(car.Conditions, 0, 1)
		sum := 0.0
		for _, p := range row {
			sum += p
		}
		if row == nil || math.Abs(sum-1) > 1e-9 {
			f.Get(id).ComplainFound("chances that add up to "+strconv.FormatFloat(sum, 'g', -1, 64), "chances that add up to 1")
			return out
		}
		likeliest := slices.Index(row, slices.Max(row))
		copy(out[is][:], row)
		for k := range row {
			if row[k] < slip {
				out[is][k] = slip
				out[is][likeliest] -= slip - row[k]
			}
		}
	}
	return out
}

// RecordChance is the chance, above 0 and up to 1, that a survey records an item in
// condition is as being in condition as, both from 0 = sound to 5 = gone. closed means a
// closed box judged from outside; otherwise the item was seen. It panics on other
// conditions.
func RecordChance(closed bool, is, as int) float64 { return readings().condition[b2i(closed)][is][as] }

// SlipNamedBelow is the chance below which a record is worth checking again: the
// chance, given everything else that is known, that the condition is one of [Readable].
// Such a record still counts unchanged.
func SlipNamedBelow() float64 { return readings().againBelow }

// Readable lists the true conditions, ascending, that a careful survey may record as the
// given one. For an item that was seen, they are at most one step away. For a closed box
// judged from outside, they are all those that can be recorded so without a keying error.
func Readable(closed bool, as int) (conditions []int) {
	for is := range car.Conditions {
		near := is >= as-1 && is <= as+1
		if closed {
			near = RecordChance(true, is, as) > readings().slip
		}
		if near {
			conditions = append(conditions, is)
		}
	}
	return conditions
}
