package rates

import (
	"slices"

	"underpaint/engine/olddamage"
	"underpaint/engine/strict"
)

// OldDamage is what earlier accidents and earlier hands leave in a car besides rust, in
// this shop's odds and hours.
type OldDamage struct {
	*olddamage.Figures
	InRange bool // counted in the range; otherwise priced only once found
	Source  string
	Stated  bool // the shop's own in part, not all the starting figures
}

// oldDamageKeys are the members of hidden_history.
var oldDamageKeys = slices.Concat([]string{"in_range"}, olddamage.Keys, []string{"source"})

func readOldDamage(f strict.Field) OldDamage {
	d := OldDamage{Figures: olddamage.Starting(), InRange: true}
	if !f.Has("hidden_history") {
		return d
	}
	own := f.Get("hidden_history")
	own.Keys(oldDamageKeys...)
	if own.Has("in_range") {
		d.InRange = own.Get("in_range").Bool()
	}
	d.Figures, d.Source, d.Stated = d.Figures.With(own), source(own), true
	return d
}

// Reckoned returns the figures of old damage where the range counts it, with what the
// shop's jobs taught, and nil where it does not.
func (r *Rates) Reckoned() *olddamage.Figures {
	if !r.OldDamage.InRange {
		return nil
	}
	return r.OldDamage.Figures
}
