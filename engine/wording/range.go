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

// Sentence says a range in three lines about ten cars.
func (t *Text) Sentence(r *session.Range) [3]string {
	low, high := t.Amount(r.Shown.Low), t.Amount(r.Shown.High)
	return [3]string{"1 would cost less than " + low, "8 would cost between " + low + " and " + high, "1 would cost more than " + high}
}

// Spoken says the same in one sentence, for a screen reader.
func (t *Text) Spoken(r *session.Range) string {
	s := t.Sentence(r)
	return "Of 10 cars like yours, " + s[0] + ", " + s[1] + ", " + s[2] + "."
}

// SetAside says how much to set aside.
func (t *Text) SetAside(r *session.Range) string {
	return "If you set aside " + t.Amount(r.Shown.SetAside) + ", 2 cars in 10 would still cost more."
}

// Reserve says how much to hold in reserve above the middle amount.
func (t *Text) Reserve(r *session.Range) string {
	return "Keep " + t.Amount(r.Shown.High-r.Shown.Half) + " in reserve on top of the middle amount. You spend it only if the metal or the work turns out worse than usual. 1 car in 10 would need even more."
}

// The texts that go with every range.
const (
	NotAnEstimate = "This is a cost range. It is not an estimate, not a quotation and not a ceiling."
	KindsNote     = "The lines do not add up to the range, because they are seldom all low or all high on the same car."
	Dots          = "Each dot stands for one car in twenty: 2 below the range, 16 inside it, 2 above."
	NotALimit     = "The ends are not limits: 1 car in 10 comes out below each range and 1 in 10 above it."
)

// eightOutOfTen begins every text about the ends of a range.
const eightOutOfTen = "In 8 cars out of 10: "

// Hours says how many hours of work the job takes.
func (t *Text) Hours(x *estimate.Range) string {
	low, high := session.RoundOutward(x.Hours.Low/1000, x.Hours.High/1000)
	return eightOutOfTen + Grouped(low) + " to " + Grouped(high) + " hours of work"
}

// Weeks says how many weeks the job takes.
func (t *Text) Weeks(x *estimate.Range) string {
	low, high := session.RoundOutward(x.Weeks.Low/1000, x.Weeks.High/1000)
	line := eightOutOfTen + Grouped(low) + " to " + Grouped(high) + " weeks at about " + plain(t.rates.Time.HoursAWeek[1]) + " hours a week"
	if t.rates.Time.Waits {
		line += ", including waits for parts and outside work"
	}
	if w := t.rates.Time.WeeksUntilStart; w > 0 {
		line += ", after a wait of about " + plain(w) + " weeks before we can start"
	}
	return line
}

// Tax says whether the range includes tax, and how much tax comes on top if not.
func (t *Text) Tax(x *estimate.Range) string {
	tax := t.rates.Tax
	name, rate, q := t.In(tax.Name), tax.Percent.Published.String()+"%", x.Kinds[estimate.Tax]
	switch {
	case tax.NotSure():
		return name + " is not included. We have not worked it out, because the rates do not say which lines it applies to."
	case tax.Published == rates.WithTax:
		return "Prices include " + name + " at " + rate + "."
	case q.High == 0:
		return name + " is not included."
	}
	return name + " is not included. At " + rate + " on " + t.taxedKinds() + ", it would add " + t.Ends(q.Low, q.High) + "."
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

// Allowance says how much to allow, on top of the range, for what no survey can show. It
// is empty where the range includes it, and where the shop makes no allowance.
func (t *Text) Allowance(r *session.Range) string {
	if t.rates.Allowance.InRange || t.rates.Own.Doubt != nil {
		return ""
	}
	p := t.rates.Allowance.Before
	v := p.Of(r.Shown.Half)
	if v == 0 {
		return ""
	}
	unknown := "breakage and delays"
	if t.rates.Parts.AsTheyShould {
		unknown = "breakage, wrong parts and delays"
	}
	return "On top of the range, allow " + p.Published.String() + "% (about " + t.Amount(money.RoundNearest(v, money.OutwardStep(v*2))) +
		" on the middle amount) for what no survey can show, such as " + unknown + "."
}

// KindAmounts returns the low, middle and high amount of one kind of line.
func (t *Text) KindAmounts(q estimate.Quantiles) (low, half, high string) {
	e := session.RoundEnds(q.Low, q.Half, 0, q.High)
	if q.Low == q.High {
		only := money.Minor(q.Low)
		e = session.Ends{Low: only, Half: only, High: only}
	}
	return t.Amount(e.Low), t.Amount(e.Half), t.Amount(e.High)
}

// Zone says how often at least one part of a zone is rusted through.
func (t *Text) Zone(z *session.ZoneShare) string {
	line := "In " + CarsInTen(z.Share) + ", at least one part here is rusted through"
	if z.OwnCause > 0.5 {
		line += ", mostly from a local cause (a leak, acid, a blocked drain)"
	}
	return line + "."
}

// BehindZone names the hidden parts that are often found rusted through with a zone. It
// is empty where there are none.
func (t *Text) BehindZone(r *session.Range, z *session.ZoneShare) string {
	var names []string
	for _, p := range z.Behind {
		names = append(names, lowerFirst(t.In(r.Body.Parts[p].Name)))
	}
	if len(names) == 0 {
		return ""
	}
	return "Often rusted through with it: " + strings.Join(names, "; ") + "."
}
