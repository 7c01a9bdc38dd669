package pricing

import (
	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/strict"
)

// How a bought part is had, as far as its fit goes.
const (
	hadOtherwise = iota // by hand or from a specialist: as its hours say
	hadNew              // made today, whole or as a section
	hadFound            // must be found: used, or old stock
)

// partLine is how the part of one item comes.
type partLine struct {
	boltedOn bool
	other    int     // the item of the other side, −1 = none
	whole    car.Way // what fitting it whole becomes on this item
	made     int     // hadNew, hadFound or hadOtherwise
	search   *chance.ThreePoint
	byHand   *chance.ThreePoint // search where it is made by hand
	work     *comingWork
	own      [2]ownFit // the shop's own words, by section and full
}

// comingWork is the work on parts that do not come as they should, at one standard.
type comingWork struct{ wrong, alwaysPrep, patchMetal, patchPrep *chance.ThreePoint }

// ownFit is what the shop's rates say about one bought part.
type ownFit struct {
	fit   string  // one of rates.FitIDs, "" = not said
	used  float64 // share of parts found that are used
	weeks *chance.ThreePoint
}

// setParts fills in how the parts of all items come.
func (t *Table) setParts() error {
	g, err := loadSupply()
	if err != nil {
		return err
	}
	t.coming, t.parts = g, make([]partLine, len(t.items))
	if t.wrongWeeks, err = threePoint(g.wrongWeeks, 1); err != nil {
		return err
	}
	if t.noGoodWeeks, err = threePoint(g.used.noGoodWeeks, 1); err != nil {
		return err
	}
	work := make([]*comingWork, len(car.Standards))
	for i := range t.parts {
		p := t.Body.PartOf(i)
		standard := t.standardOf(p)
		if work[standard] == nil {
			if work[standard], err = t.newComingWork(standard); err != nil {
				return err
			}
		}
		line := partLine{boltedOn: g.isBoltedOn(p), other: t.otherSide(i), whole: t.wholeWay(i), work: work[standard]}
		if err := t.setHad(p, &line); err != nil {
			return err
		}
		for k := range line.own {
			line.own[k] = t.ownFitOf(p, car.Section+car.Way(k))
		}
		t.parts[i] = line
	}
	return nil
}

func (t *Table) newComingWork(standard int) (w *comingWork, err error) {
	g, w := t.coming, &comingWork{}
	for _, one := range []struct {
		to    **chance.ThreePoint
		hours car.Hours
		trade car.Trade
	}{{&w.wrong, g.wrongFit, car.Fit}, {&w.alwaysPrep, g.used.alwaysPrep, car.Prep}, {&w.patchMetal, g.used.patchMetal, car.Metal}, {&w.patchPrep, g.used.patchPrep, car.Prep}} {
		if *one.to, err = threePoint(one.hours, t.fig.standard[standard][one.trade]*t.pace(one.trade)); err != nil {
			return nil, err
		}
	}
	return w, nil
}

// setHad sets how a part is had and how long it takes to find, which no standard changes.
func (t *Table) setHad(p *car.Part, line *partLine) (err error) {
	had := t.Rates.Parts.HadAs(t.Body.ID, p.ID)
	if had == "" {
		had = p.Had
	}
	switch had {
	case "made_today", "section_only":
		line.made = hadNew
	case "found":
		line.made = hadFound
	}
	if t.Rates.Labour.IncludesIn("parts_chasing") {
		return nil
	}
	if line.search, err = threePoint(t.coming.search[had], t.pace(car.Fit)); err != nil {
		return &strict.Error{Path: "parts." + p.ID, Found: err.Error(), Expected: "hours low, likely, high"}
	}
	line.byHand, err = threePoint(t.coming.search["by_hand"], t.pace(car.Fit))
	return err
}

func (t *Table) ownFitOf(p *car.Part, w car.Way) ownFit {
	own := ownFit{used: t.coming.used.share}
	if one, found := t.Rates.Parts.Find(t.Body.ID, p.ID, w); found {
		own.fit = one.Fit
		if one.HasUsedShare {
			own.used = one.UsedShare
		}
		own.weeks, _ = threePoint(car.Hours(one.Weeks), 1) // checked when the rates were read
	}
	return own
}

// wholeWay is what replacing an item whole becomes.
func (t *Table) wholeWay(i int) car.Way { return t.items[i].instead[car.Full] }

// otherSide returns the item of the same part on the other side of the car, or −1.
func (t *Table) otherSide(i int) int {
	it := &t.Body.Items[i]
	if it.Side == car.NoSide {
		return -1
	}
	nth, same := 0, func(k int) bool { x := &t.Body.Items[k]; return x.End == it.End && x.Side == it.Side }
	for _, k := range t.Body.Parts[it.Part].Items {
		if k == i {
			break
		}
		if same(k) {
			nth++
		}
	}
	for _, k := range t.Body.Parts[it.Part].Items {
		if x := &t.Body.Items[k]; x.Side != it.Side && x.Side != car.NoSide && x.End == it.End {
			if nth == 0 {
				return k
			}
			nth--
		}
	}
	return -1
}
