package message

import (
	"strconv"
	"strings"

	"underpaint/engine/estimate"
	"underpaint/engine/money"
	"underpaint/engine/rates"
)

// Row is the range of one body at one standard, as it is shown. All texts are
// ready; amounts are in minor units.
type Row struct {
	ID, Label                                   string
	Headline                                    bool
	Low, Half, SetAside, High                   money.Minor
	LowText, HalfText, SetAsideText, HighText   string
	Sentence                                    [3]string
	SetAsideLine, GoodTo, HoursLine, WeeksLine  string
	TaxLine, AllowanceLine, MovedLine, DotsText string
	ReserveLine                                 string
	NotAnEstimate, SentenceHead, KindsNote      string
	Kinds                                       []KindRow
	Zones                                       []ZoneRow
	Stage                                       StageReply
	Exact                                       estimate.Range
}

// KindRow is what one kind of line comes to, with its own ends.
type KindRow struct{ ID, Name, LowText, HalfText, HighText string }

// row reads one row off the imagined cars so far.
func (s *Session) row(b *bodyRun, k int) Row {
	x := b.run.Range(k)
	e := roundEnds(x.Low, x.Half, x.SetAside, x.High)
	c := s.Rates.Currency
	row := Row{
		ID: b.body.ID + "/" + b.standards[k], Label: s.label(b, k), Headline: len(b.standards) == 1,
		Low: e.low, Half: e.half, SetAside: e.setAside, High: e.high,
		LowText: c.TextWhole(e.low), HalfText: c.TextWhole(e.half), SetAsideText: c.TextWhole(e.setAside), HighText: c.TextWhole(e.high),
		Exact: x,
	}
	row.SentenceHead = "Think of 10 cars like yours."
	row.Sentence = [3]string{
		"1 would cost less than " + row.LowText,
		"8 would cost between " + row.LowText + " and " + row.HighText,
		"1 would cost more than " + row.HighText,
	}
	row.SetAsideLine = "If you set aside " + row.SetAsideText + ", 2 cars in 10 would still cost more."
	// U+2060 keeps the sign and the amount on one line.
	row.GoodTo = "each end good to about ±\u2060" + c.TextWhole(goodTo(x))
	row.DotsText = dotsText
	row.NotAnEstimate = "A cost range: not an estimate, not a quotation, not a ceiling."
	row.HoursLine, row.WeeksLine = s.hoursLine(x), s.weeksLine(x)
	row.TaxLine, row.AllowanceLine = s.taxLine(x), s.allowanceLine(e.half)
	row.ReserveLine = "A reserve to hold, not to pay: " + c.TextWhole(e.high-e.half) + " above the middle of this range; 1 car in 10 would still take more."
	row.Kinds, row.KindsNote = s.kinds(x), "Each line has its own ends, so the lines do not add up to the range: they are seldom all low or all high in one car."
	row.Zones = s.zones(b)
	row.Stage = s.stage(b.tables[k])
	return row
}

// dotsText says what the twenty dots of any row are.
const dotsText = "Each dot is one car in twenty: 2 below, 16 between, 2 above."

// goodTo is twice the larger standard error of an end, rounded up.
func goodTo(x estimate.Range) money.Minor {
	se := max(x.SELow, x.SEHigh)
	return roundUp125(2 * se)
}

func (s *Session) hoursLine(x estimate.Range) string {
	low, high := roundOutward(x.Hours.Low/1000, x.Hours.High/1000)
	return "8 in 10: " + grouped(low) + " to " + grouped(high) + " hours of work"
}

func (s *Session) weeksLine(x estimate.Range) string {
	low, high := roundOutward(x.Weeks.Low/1000, x.Weeks.High/1000)
	line := "8 in 10: " + grouped(low) + " to " + grouped(high) + " weeks at about " + plain(s.Rates.Time.HoursAWeek[1]) + " hours a week"
	if s.Rates.Time.Waits {
		line += ", waiting for parts and outside work included"
	}
	if w := s.Rates.Time.WeeksUntilStart; w > 0 {
		line += ", after a wait of about " + plain(w) + " weeks for a start"
	}
	return line
}

func plain(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }

// taxLine says whether tax is in the range, and if not what comes on top.
func (s *Session) taxLine(x estimate.Range) string {
	t := s.Rates.Tax
	name := t.Name.In(s.Rates.Words)
	percent := t.Percent.Published.String() + " %"
	switch {
	case t.NotSure():
		return name + " is not in it and not worked out: the shop has not said which lines it falls on."
	case t.Published == rates.WithTax:
		return "Prices include " + name + " at " + percent + "."
	case x.Kinds[estimate.Tax].High == 0:
		return name + " is not included."
	}
	e := roundEnds(x.Kinds[estimate.Tax].Low, 0, 0, x.Kinds[estimate.Tax].High)
	c := s.Rates.Currency
	return name + " is not included: at " + percent + " on " + s.taxedKinds() + " it would add " + c.TextWhole(e.low) + " to " + c.TextWhole(e.high) + "."
}

func (s *Session) taxedKinds() string {
	names := []string{s.say("labor", "labour"), "materials", "parts", s.say("supplies", "consumables"), "work sent out"}
	var on []string
	for k, answer := range s.Rates.Tax.On.Kinds() {
		if answer == rates.Yes {
			on = append(on, names[k])
		}
	}
	if n := len(on); n > 1 {
		return strings.Join(on[:n-1], ", ") + " and " + on[n-1]
	}
	return strings.Join(on, "")
}

func (s *Session) allowanceLine(half money.Minor) string {
	p := s.Rates.Allowance.Before
	v := p.Of(half)
	if v == 0 {
		return ""
	}
	step := money.OutwardStep(v * 2)
	return "Set apart and not in the range: an allowance of " + p.Published.String() + " % for what no survey can show, such as breakage, wrong parts and delays; about " +
		s.Rates.Currency.TextWhole(money.RoundNearest(v, step)) + " on the middle of this range."
}

// say picks the shop's words.
func (s *Session) say(us, uk string) string {
	if s.Rates.Words == "uk" {
		return uk
	}
	return us
}

func (s *Session) kinds(x estimate.Range) (out []KindRow) {
	c := s.Rates.Currency
	for kind, q := range x.Kinds {
		if q.High == 0 {
			continue
		}
		e := roundEnds(q.Low, q.Half, 0, q.High)
		if q.Low == q.High {
			e = ends{low: money.Minor(q.Low), half: money.Minor(q.Low), high: money.Minor(q.Low)}
		}
		out = append(out, KindRow{ID: estimate.KindIDs[kind], Name: s.kindName(estimate.Kind(kind)),
			LowText: c.TextWhole(e.low), HalfText: c.TextWhole(e.half), HighText: c.TextWhole(e.high)})
	}
	return out
}

func (s *Session) kindName(k estimate.Kind) string {
	switch k {
	case estimate.StripStage:
		return "Strip and survey"
	case estimate.Materials:
		return "Materials"
	case estimate.Parts:
		return "Parts"
	case estimate.SentOut:
		return s.say("Work sent out (sublet)", "Work sent out (subcontract)")
	case estimate.Supplies:
		return s.say("Shop supplies", "Consumables")
	case estimate.Tax:
		return s.Rates.Tax.Name.In(s.Rates.Words) + ", on top"
	}
	return s.common.Trades[k-estimate.MetalLabour].In(s.Rates.Words)
}
