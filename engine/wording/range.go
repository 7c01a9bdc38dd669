package wording

import (
	"strings"

	"underpaint/engine/estimate"
	"underpaint/engine/money"
	"underpaint/engine/rates"
	"underpaint/engine/session"
)

// Label names one of several ranges: its standard, and its body where there are several.
func (t *Text) Label(r *session.Range) string {
	standard := Standard(r.Standard)
	if !r.OfSeveral {
		return standard
	}
	return t.In(r.Body.Name) + ", " + lowerFirst(standard)
}

// SentenceHead stands above [Text.Sentence].
const SentenceHead = "Think of 10 cars like yours."

// Sentence says a range as three lines about ten cars.
func (t *Text) Sentence(r *session.Range) [3]string {
	low, high := t.Amount(r.Shown.Low), t.Amount(r.Shown.High)
	return [3]string{"1 would cost less than " + low, "8 would cost between " + low + " and " + high, "1 would cost more than " + high}
}

// Spoken says the same in one sentence.
func (t *Text) Spoken(r *session.Range) string {
	s := t.Sentence(r)
	return "Of 10 cars like yours, " + s[0] + ", " + s[1] + ", " + s[2] + "."
}

// SetAside says what to set aside.
func (t *Text) SetAside(r *session.Range) string {
	return "If you set aside " + t.Amount(r.Shown.SetAside) + ", 2 cars in 10 would still cost more."
}

// Reserve says what to hold beside the middle.
func (t *Text) Reserve(r *session.Range) string {
	return "A reserve to hold, not to pay: " + t.Amount(r.Shown.High-r.Shown.Half) + " above the middle of this range; 1 car in 10 would still take more."
}

// What is said of every range.
const (
	NotAnEstimate = "A cost range: not an estimate, not a quotation, not a ceiling."
	KindsNote     = "Each line has its own ends, so the lines do not add up to the range: they are seldom all low or all high in one car."
	Dots          = "Each dot is one car in twenty: 2 below, 16 between, 2 above."
	NotALimit     = "The ends are no limits: 1 such car in 10 comes out below each range and 1 above."
)

// Hours says how many hours of work it is.
func (t *Text) Hours(x *estimate.Range) string {
	low, high := session.RoundOutward(x.Hours.Low/1000, x.Hours.High/1000)
	return "8 in 10: " + Grouped(low) + " to " + Grouped(high) + " hours of work"
}

// Weeks says how long it takes.
func (t *Text) Weeks(x *estimate.Range) string {
	low, high := session.RoundOutward(x.Weeks.Low/1000, x.Weeks.High/1000)
	line := "8 in 10: " + Grouped(low) + " to " + Grouped(high) + " weeks at about " + plain(t.rates.Time.HoursAWeek[1]) + " hours a week"
	if t.rates.Time.Waits {
		line += ", waiting for parts and outside work included"
	}
	if w := t.rates.Time.WeeksUntilStart; w > 0 {
		line += ", after a wait of about " + plain(w) + " weeks for a start"
	}
	return line
}

// Tax says whether tax is in the range, and if not what comes on top.
func (t *Text) Tax(x *estimate.Range) string {
	tax := t.rates.Tax
	name, rate, q := t.In(tax.Name), tax.Percent.Published.String()+" %", x.Kinds[estimate.Tax]
	switch {
	case tax.NotSure():
		return name + " is not in it and not worked out: the shop has not said which lines it falls on."
	case tax.Published == rates.WithTax:
		return "Prices include " + name + " at " + rate + "."
	case q.High == 0:
		return name + " is not included."
	}
	return name + " is not included: at " + rate + " on " + t.taxedKinds() + " it would add " + t.Ends(q.Low, q.High) + "."
}

func (t *Text) taxedKinds() string {
	names := []string{t.say("labor", "labour"), "materials", "parts", t.say("supplies", "consumables"), "work sent out"}
	var on []string
	for k, answer := range t.rates.Tax.On.Kinds() {
		if answer == rates.Yes {
			on = append(on, names[k])
		}
	}
	if n := len(on); n > 1 {
		return strings.Join(on[:n-1], ", ") + " and " + on[n-1]
	}
	return strings.Join(on, "")
}

// Allowance says what is set apart for what no survey can show; nothing where the
// shop allows for nothing.
func (t *Text) Allowance(r *session.Range) string {
	p := t.rates.Allowance.Before
	v := p.Of(r.Shown.Half)
	if v == 0 {
		return ""
	}
	return "Set apart and not in the range: an allowance of " + p.Published.String() + " % for what no survey can show, such as breakage, wrong parts and delays; about " +
		t.Amount(money.RoundNearest(v, money.OutwardStep(v*2))) + " on the middle of this range."
}

// KindAmounts are the low, middle and high amount of one kind of line.
func (t *Text) KindAmounts(q estimate.Quantiles) (low, half, high string) {
	e := session.RoundEnds(q.Low, q.Half, 0, q.High)
	if q.Low == q.High {
		only := money.Minor(q.Low)
		e = session.Ends{Low: only, Half: only, High: only}
	}
	return t.Amount(e.Low), t.Amount(e.Half), t.Amount(e.High)
}

// Zone says how often anything in a zone is rusted through.
func (t *Text) Zone(z *session.ZoneShare) string {
	line := "In " + CarsInTen(z.Share) + " at least one part here is rusted through"
	if z.OwnCause > 0.5 {
		line += ", mostly by a cause of its own (a leak, acid, a blocked drain)"
	}
	return line + "."
}

// BehindZone names what is usually found with it; nothing where nothing is.
func (t *Text) BehindZone(r *session.Range, z *session.ZoneShare) string {
	var names []string
	for _, p := range z.Behind {
		names = append(names, lowerFirst(t.In(r.Body.Parts[p].Name)))
	}
	if len(names) == 0 {
		return ""
	}
	return "Usually found with it: " + strings.Join(names, "; ") + "."
}
