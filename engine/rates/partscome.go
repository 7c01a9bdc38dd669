package rates

import (
	"slices"

	"underpaint/engine/strict"
)

// FitIDs are what a shop may say about how a new-made panel fits: always, never without
// work, now and then, or that it does not know.
var FitIDs = []string{"fits", "needs_work", "mixed", "not_known"}

// mostWeeksForAPart is the longest that the file may say a part takes (assumption).
const mostWeeksForAPart = 520

// readComing reads what the shop says about how one bought part comes.
func (p *PartPrice) readComing(f strict.Field) {
	if f.Has("fit") {
		p.Fit = f.Get("fit").OneOf(FitIDs...)
	}
	if f.Has("weeks") {
		weeks := f.Get("weeks")
		if n := weeks.Numbers(3, 0.1, mostWeeksForAPart); len(n) == 3 {
			if !slices.IsSorted(n) {
				weeks.Complain(lowLikelyHigh)
			}
			p.Weeks = [3]float64(n)
		}
	}
	if f.Has("used_share") {
		p.HasUsedShare, p.UsedShare = true, f.Get("used_share").Number(0, 1)
	}
}

// saysHowItComes says whether an entry has anything besides a price and where the part
// comes from.
func (p *PartPrice) saysHowItComes() bool {
	return p.Fit != "" || p.Weeks != [3]float64{} || p.HasUsedShare
}
