package pricing

import (
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/rates"
	"underpaint/engine/strict"
)

// Table is the flat price table of one body at one standard, for one scope and one
// shop's rates. It is never changed once made, so goroutines may share it.
type Table struct {
	Body     *car.Body
	Rates    *rates.Rates
	Standard int // index in car.Standards
	Unseen   int // the standard of what nobody sees, an index in car.Standards
	Scope    int // index in rates.ScopeIDs

	fig        *figures
	items      []itemLine
	labour     [][car.Ways]labour // by item: hours and prices again, packed together for speed
	openings   []openingRule
	above      []aboveRule
	covers     [][]int // by covering item: the items a full panel covers
	panels     []wholePanel
	seams      []seam
	accesses   []access
	nuts       []nut
	finding    [3]*chance.ThreePoint
	failedLead *chance.ThreePoint
	strip      []stripLine
	after      []plainLine
	money      pricing
	surfaces   surfaces
	decided    *decided // nil = nothing is decided
	doubt      Doubt
	overTime   *overTime // nil = no price rises
	coming     *supplyFigures
	parts      []partLine // by item: how its part comes
	supply     *supply    // nil = how parts come is not drawn

	wrongWeeks, noGoodWeeks *chance.ThreePoint // until a part is there that was ordered again
	old                     *oldWork           // nil = the range leaves old damage aside
	another                 *anotherBody       // nil = the shop has none to offer

	ownDisassembly bool // the customer takes the car apart
}

// Wish says how a customer wants the job done. Standard and Unseen are ids of
// car.Standards, Scope is one of rates.ScopeIDs.
type Wish struct {
	Standard       string
	Unseen         string // of hidden parts, and of paint inside and underneath
	Scope          string
	OwnDisassembly bool // the customer takes the car apart
}

// itemLine is what can be done on one item.
type itemLine struct {
	chance  *[car.Conditions][car.Ways]float64
	ends    *wayEnds          // the same probabilities, prepared for picking
	instead [car.Ways]car.Way // what a drawn or raised way becomes
	once    bool              // a full replacement means another chassis
	leftOut bool              // outside the scope unless other work forces it
	ways    [car.Ways]wayLine
}

// wayLine is one way on one item, in this shop's hours and money.
type wayLine struct {
	n           int
	trade       [car.Trades]car.Trade
	hours       [car.Trades]chance.ThreePoint
	price       *chance.ThreePoint // minor units of the currency, nil = no part
	likelyMetal float64
}

// plainLine is work of one trade that belongs to no item.
type plainLine struct {
	id    string
	name  car.Words
	trade car.Trade
	hours *chance.ThreePoint
}

// NewTable makes the price table at one standard for everything. Errors are those of
// [NewTableFor].
func NewTable(body *car.Body, common *car.Common, r *rates.Rates, standard, scope string) (*Table, error) {
	return NewTableFor(body, common, r, Wish{Standard: standard, Unseen: standard, Scope: scope})
}

// NewTableFor makes the price table of a wish. An unknown standard or scope is an
// error. Tables of one body that differ only in the wish take the same uniforms for
// what they have in common.
func NewTableFor(body *car.Body, common *car.Common, r *rates.Rates, wish Wish) (*Table, error) {
	fig, err := loadFigures()
	if err != nil {
		return nil, err
	}
	t := &Table{Body: body, Rates: r, Standard: slices.Index(car.Standards, wish.Standard), Unseen: slices.Index(car.Standards, wish.Unseen),
		Scope: slices.Index(rates.ScopeIDs, wish.Scope), fig: fig, ownDisassembly: wish.OwnDisassembly}
	if t.Standard < 0 || t.Unseen < 0 {
		return nil, &strict.Error{Path: "standard", Found: wish.Standard + ", " + wish.Unseen, Expected: "driver, show or concours"}
	}
	if t.Scope < 0 {
		return nil, &strict.Error{Path: "scope", Found: wish.Scope, Expected: "whole_body, outside_only or metalwork_only"}
	}
	if err := t.setItems(); err != nil {
		return nil, err
	}
	t.setLabour()
	if err := t.setParts(); err != nil {
		return nil, err
	}
	t.setOpenings()
	t.setCovers()
	t.setSeams(common)
	if err := t.setGettingIn(); err != nil {
		return nil, err
	}
	if err := t.setStrip(); err != nil {
		return nil, err
	}
	if err := t.setAfter(); err != nil {
		return nil, err
	}
	if err := t.setOverTime(); err != nil {
		return nil, err
	}
	if err := t.setOld(); err != nil {
		return nil, err
	}
	if err := t.setMoney(); err != nil {
		return nil, err
	}
	return t, t.setAnotherBody()
}

// outsideOnly and metalOnly say what the customer wants done.
func (t *Table) outsideOnly() bool { return rates.ScopeIDs[t.Scope] == "outside_only" }
func (t *Table) metalOnly() bool   { return rates.ScopeIDs[t.Scope] == "metalwork_only" }

// dropped says whether the scope leaves a trade out of the work on items.
func (t *Table) dropped(trade car.Trade) bool {
	return t.metalOnly() && (trade == car.BodyWork || trade == car.Paint)
}

// pace is the shop's hours for each of our hours, by trade: its own pace, times what
// its finished jobs have taught.
func (t *Table) pace(trade car.Trade) float64 {
	return t.Rates.Labour.Trades[trade].Pace * t.Rates.Own.Hours[trade].Factor
}

// standardOf is the standard that applies to a part.
func (t *Table) standardOf(p *car.Part) int {
	if p.Face == car.Hidden {
		return t.Unseen
	}
	return t.Standard
}

func (t *Table) setItems() error {
	t.items = make([]itemLine, len(t.Body.Items))
	var ends [3][len(wayChances{})]*wayEnds // made once each
	for i := range t.items {
		p := t.Body.PartOf(i)
		line := &t.items[i]
		kind := slices.Index(partKinds, p.Table)
		if own := t.Rates.WhatIsDone; own != nil {
			line.chance = &own.Chance[t.standardOf(p)][kind]
		} else {
			line.chance = &t.fig.done[t.standardOf(p)][kind]
		}
		made := &ends[t.standardOf(p)][kind]
		if *made == nil {
			*made = newWayEnds(line.chance)
		}
		line.ends = *made
		line.leftOut = t.outsideOnly() && p.Face != car.Outer
		if err := t.setWays(p, line); err != nil {
			return err
		}
	}
	factor := t.fig.standard[t.Standard][car.Metal] * t.pace(car.Metal)
	for k, h := range t.fig.finding {
		tp, err := threePoint(h, factor)
		if err != nil {
			return err
		}
		t.finding[k] = tp
	}
	var err error
	t.failedLead, err = threePoint(t.fig.failedLead, factor)
	return err
}

// setWays fills in the hours and prices of one item, and which way replaces one that is
// not done or for which the shop has no part.
func (t *Table) setWays(p *car.Part, line *itemLine) error {
	for w := car.Leave; w < car.Ways; w++ {
		way := &p.Ways[w]
		line.instead[w] = w
		if way.Once != "" {
			line.once = true
			continue
		}
		if !way.Done {
			line.instead[w] = way.Instead
			continue
		}
		if w == car.Full && t.noWholePanel(p) {
			line.instead[w] = car.Fabricate
		}
		one := &line.ways[w]
		for trade, h := range way.Hours {
			if h == (car.Hours{}) || t.dropped(car.Trade(trade)) {
				continue
			}
			tp, err := threePoint(h, t.fig.standard[t.standardOf(p)][trade]*t.pace(car.Trade(trade)))
			if err != nil {
				return &strict.Error{Path: "parts." + p.ID, Found: err.Error(), Expected: "hours low, likely, high"}
			}
			one.trade[one.n], one.hours[one.n] = car.Trade(trade), *tp
			one.n++
			if trade == int(car.Metal) {
				one.likelyMetal = h[1]
			}
		}
		if err := t.setPrice(p, w, one); err != nil {
			return err
		}
	}
	return nil
}

// noWholePanel says whether the shop has said that it cannot buy the panel.
func (t *Table) noWholePanel(p *car.Part) bool {
	had := t.Rates.Parts.HadAs(t.Body.ID, p.ID)
	return had == "section_only" || had == "by_hand"
}

// setPrice sets the price of a part in minor units: the shop's own, or the starting
// price times the shop's factor.
func (t *Table) setPrice(p *car.Part, w car.Way, one *wayLine) error {
	price, factor := p.Ways[w].Price, t.Rates.Parts.PriceFactor.Float()
	if own, found := t.Rates.Parts.Find(t.Body.ID, p.ID, w); found && own.Priced {
		price, factor = car.Hours(own.Price), 1
	}
	tp, err := threePoint(price, factor*t.minorPerMajor())
	one.price = tp
	return err
}

func (t *Table) minorPerMajor() float64 {
	n := 1.0
	for i := 0; i < t.Rates.Currency.Digits; i++ {
		n *= 10
	}
	return n
}
