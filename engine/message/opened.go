package message

import (
	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/pricing"
	"underpaint/engine/session"
	"underpaint/engine/strict"
	"underpaint/engine/wording"
)

// Version is the version of the messages. A page and an engine of different versions
// refuse each other.
const Version = "1"

func openRates(e *Engine, f strict.Field) (Reply, error) {
	f.Keys("id", "ask", "rates")
	text := f.Get("rates").Document(strict.MaxBytes)
	if f.Err() != nil {
		return nil, f.Err()
	}
	s, err := session.New([]byte(text))
	if err != nil {
		return nil, refuse("rates", err)
	}
	o, err := open(s)
	if err != nil {
		return nil, refuse("rates", err)
	}
	e.shop = o
	return newOpened(o), nil
}

func newOpened(o *openShop) *OpenedReply {
	r, t := o.Rates, o.text
	out := &OpenedReply{
		Version: Version, FiguresCode: session.FiguresCode(),
		Shop:  ShopName{r.Shop.Name, r.Shop.Town, r.Shop.Contact.Text, r.Shop.Contact.Href, r.Shop.Invented},
		Rates: RatesName{wording.RatesLine(r), r.CheckCode(), r.RatesOf, r.ValidUntil, t.RatesPast()},
		Words: r.Words, Units: r.Units, Currency: r.Currency.Code, CurrencySymbol: r.Currency.Symbol,
		LabourNote: t.LabourIncludes(),
		Made:       Years{carfile.OldestYear, carfile.NewestYear, wording.YearExpected},
		Terms:      r.Terms, NotInIt: t.NotInIt(), Cautions: customersCautions(t, nil), Warnings: t.RatesWarnings(),
	}
	for k := range r.Labour.Trades {
		out.Labour = append(out.Labour, NamedText{t.Trade(k), t.AnHour(k)})
	}
	for _, b := range o.Bodies() {
		out.Bodies = append(out.Bodies, openedBody(o, b))
	}
	for _, c := range o.Countries() {
		one := CountryPlaces{Country: c.Name}
		for _, p := range c.Places {
			one.Places = append(one.Places, Place{p.ID, t.In(car.Words(p.Name)), p.Coast})
		}
		out.Places = append(out.Places, one)
	}
	return out
}

func openedBody(o *openShop, b session.Body) OpenedBody {
	t := o.text
	out := OpenedBody{ID: b.ID, Name: t.In(b.Name)}
	for _, choice := range b.Options {
		out.Options = append(out.Options, IDName{choice.ID, t.In(choice.Name)})
	}
	for _, p := range b.Places {
		out.CustomerPlaces = append(out.CustomerPlaces, CustomerPlace{p.ID, t.CustomerPlace(p.ID), p.Check, p.Left, p.Right, p.Whole})
	}
	if b.Strip != nil {
		stage := stripStage(o, b.Strip)
		out.Stage = &stage
	}
	if _, offers := o.Rates.AnotherBody.Find(b.ID); offers {
		out.AnotherBody = "offered"
	}
	return out
}

func stripStage(o *openShop, st *pricing.Stage) StripStage {
	t := o.text
	out := StripStage{Name: wording.StripAndSurvey, PriceText: t.ToTheUnit(st.Likely), Price: int64(st.Likely), FixedLine: t.StripFixed(st),
		GetLine: wording.StripGet, StopLine: t.StripStop(st), Includes: o.Rates.Strip.Includes}
	for _, l := range t.StripLines(st) {
		out.Lines = append(out.Lines, StripLine{l.Text, l.Basis, l.Amount})
	}
	return out
}

func checkCar(_ *Engine, f strict.Field) (Reply, error) {
	f.Keys("id", "ask", "car")
	c := carfile.Read(f.Get("car"))
	if err := f.Err(); err != nil {
		return nil, refuse("car", err)
	}
	if wrong := c.Check(); len(wrong) > 0 {
		return nil, refuse("car", wrong[0])
	}
	out := &CarOKReply{Canonical: string(c.Text())}
	for _, n := range c.Notes() {
		out.Notes = append(out.Notes, CarNote{n.Path, n.Text})
	}
	return out, nil
}
