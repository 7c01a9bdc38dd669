package session

import (
	"crypto/sha256"
	"slices"
	"sync"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/damage"
	"underpaint/engine/evidence"
	"underpaint/engine/exposure"
	"underpaint/engine/olddamage"
	"underpaint/engine/pricing"
	"underpaint/engine/rates"
	"underpaint/engine/strict"
)

// FiguresCode identifies the program's own figures, as the rates' check code does a
// shop's: the same answers and rates give another range once they change. It is the first
// ten hexadecimal digits of the SHA-256 of all data files with figures, in the order of
// their paths. Sentences are no figures.
var FiguresCode = sync.OnceValue(func() string {
	return figuresCode(slices.Concat(car.DataFiles(), damage.DataFiles(), evidence.DataFiles(),
		exposure.DataFiles(), olddamage.DataFiles(), pricing.DataFiles(), rates.DataFiles()))
})

// figuresCode takes the files in the order of their paths.
func figuresCode(files []strict.DataFile) string {
	sum := sha256.New()
	for _, f := range files {
		f.HashInto(sum)
	}
	return strict.CheckCode(sum)
}

// OtherFigures returns the first stage of the car that was recorded with other figures of
// the program than today's, and whether there is one.
func OtherFigures(c *carfile.Car) (stage carfile.Stage, other bool) {
	k := slices.IndexFunc(c.Stages, func(s carfile.Stage) bool { return s.Figures != "" && s.Figures != FiguresCode() })
	if k < 0 {
		return carfile.Stage{}, false
	}
	return c.Stages[k], true
}
