package wording

import (
	"slices"
	"strconv"
	"strings"

	"underpaint/engine/car"
	"underpaint/engine/estimate"
	"underpaint/engine/money"
	"underpaint/engine/pricing"
	"underpaint/engine/session"
)

// GettingIn names the access work that is charged once for all chosen ways that need it.
func (t *Text) GettingIn(shared []car.Words) (out []string) {
	for _, g := range shared {
		if line := "Access, charged once: " + lowerFirst(t.In(g)); !slices.Contains(out, line) {
			out = append(out, line)
		}
	}
	return out
}

// Undecided says what the range allows for on parts that nobody has decided about. The
// text has no full stop.
func Undecided(n int) string {
	return strconv.Itoa(n) + " not decided yet, so we allow for what is usually done"
}

// DecisionTitle names a part and its condition.
func (t *Text) DecisionTitle(b *car.Body, d *session.Decision) string {
	if d.Missing {
		return t.Item(b, d.Item) + ": missing"
	}
	return t.Item(b, d.Item) + ": " + lowerFirst(t.Condition(d.Condition))
}

// ChosenBy says who chose, or what the range allows for where nobody did.
func (t *Text) ChosenBy(d *session.Decision) string {
	switch {
	case d.Chosen == nil:
		return "Not decided yet, so we allow for what is usually done."
	case d.Chosen.By == "customer":
		return "Chosen by the customer."
	}
	return t.say("Chosen by the shop.", "Chosen by the workshop.")
}

// CannotLeave says why a part cannot be left as it is. It is empty where it can.
func CannotLeave(d *session.Decision) string {
	switch {
	case !d.CannotLeave:
		return ""
	case d.Missing:
		return "It is not on the car, so it has to be replaced."
	case d.Structural:
		return "Structural metal that is heavily pitted or worse cannot stay as it is."
	}
	return "Metal in this condition cannot stay as it is."
}

// CoveredBy names the part whose chosen way covers this one. It is empty where none does.
func (t *Text) CoveredBy(b *car.Body, d *session.Decision) string {
	if d.CoveredBy < 0 {
		return ""
	}
	return "Already covered by the work on the " + lowerFirst(t.Item(b, d.CoveredBy)) + "."
}

// OpenedFor says which other parts make it necessary to open this one, and why.
func (t *Text) OpenedFor(b *car.Body, d *session.Decision) (out []string) {
	for _, o := range d.OpenedFor {
		out = append(out, "Opened for the work on the "+lowerFirst(t.Item(b, o.Item))+": "+lowerFirst(t.In(o.Why)))
	}
	return out
}

// MountingCaution warns where seat belts, steering or suspension are fastened.
func MountingCaution(p *car.Part) string {
	if p.NearMounting {
		return "Seat belts, steering or suspension are fastened here. Qualified people must do and inspect the work, under your local rules."
	}
	return ""
}

// WayHours says how many hours a way takes.
func WayHours(w *pricing.WayCard) string {
	h := w.Hours
	if h == (car.Hours{}) {
		return "no extra hours"
	}
	return tenths(h[1]) + " hours (8 times out of 10: " + tenths(h[0]) + " to " + tenths(h[2]) + ")"
}

// WayPrice says what a way is likely to cost, in minor units.
func (t *Text) WayPrice(likely money.Minor) string { return "about " + t.Likely(float64(likely)) }

// WaySentence says what a way takes: its hours, and the price of its part where it
// needs one.
func (t *Text) WaySentence(w *pricing.WayCard) string {
	if !w.HasPart {
		return WayHours(w)
	}
	return WayHours(w) + "; part " + t.Amount(w.Price[1]) + " (8 times out of 10: " + t.span(w.Price[0], w.Price[2]) + ")"
}

// WayCovers names the parts that then need no work of their own.
func (t *Text) WayCovers(b *car.Body, w *pricing.WayCard) string {
	var covers []string
	for _, i := range w.Covers {
		covers = append(covers, lowerFirst(t.Item(b, i)))
	}
	if len(covers) == 0 {
		return ""
	}
	return "Covers " + strings.Join(covers, "; ") + "."
}

// WayOpens names the parts that have to be opened for a way, and why.
func (t *Text) WayOpens(b *car.Body, w *pricing.WayCard) (out []string) {
	for _, o := range w.Opens {
		out = append(out, lowerFirst(t.Item(b, o.Item))+" ("+lowerFirst(t.Way(o.To))+"): "+lowerFirst(t.In(o.Why)))
	}
	return out
}

// Against names what the ways are compared with.
func (t *Text) Against(c *session.Comparison) string {
	if c.Against < 0 {
		return "what is usually done"
	}
	return lowerFirst(t.Way(car.Way(c.Against)))
}

// WayDifference says how much more or less a way costs than what is decided now.
func (t *Text) WayDifference(d estimate.Difference, against string) string {
	if d.Same > 0.999 {
		return "No difference."
	}
	e := session.RoundEnds(d.Low, d.Half, 0, d.High)
	line := t.signed(e.Low) + " to " + t.signed(e.High) + " compared with " + against
	switch {
	case e.Low == 0 && e.High == 0:
		line = "Almost no difference compared with " + against
	case e.Low == e.High:
		line = t.signed(e.Half) + " compared with " + against
	}
	if weeks := weeksWords(d.WeeksHalf); weeks != "" {
		line += ", " + weeks
	}
	return line + ". It costs more in " + CarsInTen(d.Dearer) + "."
}

// ComparedOn says on how many simulated cars the ways are compared.
func ComparedOn() string {
	return "Worked out on the same " + Grouped(session.Compared) + " simulated cars, " + eachPriced + ". Everything else stays as it is now."
}

func weeksWords(weeks float64) string {
	more := "more"
	if weeks < 0 {
		weeks, more = -weeks, "less"
	}
	switch {
	case weeks < 0.15:
		return ""
	case weeks < 0.75:
		return "about half a week " + more
	case weeks < 1.5:
		return "about a week " + more
	}
	return "about " + strconv.Itoa(int(weeks+0.5)) + " weeks " + more
}
