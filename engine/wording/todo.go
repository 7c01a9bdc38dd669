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

// GettingIn names the work that is charged once for all chosen ways that ask for it.
func (t *Text) GettingIn(shared []car.Words) (out []string) {
	for _, g := range shared {
		if line := "Getting in (once): " + lowerFirst(t.In(g)); !slices.Contains(out, line) {
			out = append(out, line)
		}
	}
	return out
}

// Undecided says what stands for the parts that are not decided.
func Undecided(n int) string {
	return strconv.Itoa(n) + " undecided: for these the odds of what is usually done stand"
}

// DecisionTitle is the part and its condition.
func (t *Text) DecisionTitle(b *car.Body, d *session.Decision) string {
	return t.Item(b, d.Item) + ": " + lowerFirst(t.Condition(d.Condition))
}

// ChosenBy says who chose, or what stands where nobody did.
func ChosenBy(d *session.Decision) string {
	if d.Chosen == nil {
		return "Not decided: what is usually done stands, with its odds."
	}
	return "Chosen by the " + d.Chosen.By + "."
}

// CannotLeave says why a part cannot be left as it is; nothing where it can.
func CannotLeave(d *session.Decision) string {
	switch {
	case !d.CannotLeave:
		return ""
	case d.Structural:
		return "Structural metal at heavy pitting or worse is not left."
	}
	return "Metal in this condition is not left as it is."
}

// CoveredBy names the part whose chosen way covers this one; nothing where none does.
func (t *Text) CoveredBy(b *car.Body, d *session.Decision) string {
	if d.CoveredBy < 0 {
		return ""
	}
	return "Already covered by the " + lowerFirst(t.Item(b, d.CoveredBy)) + "."
}

// OpenedFor says because of which other parts this one is opened.
func (t *Text) OpenedFor(b *car.Body, d *session.Decision) (out []string) {
	for _, o := range d.OpenedFor {
		out = append(out, "Opened because of the "+lowerFirst(t.Item(b, o.Item))+": "+lowerFirst(t.In(o.Why)))
	}
	return out
}

// MountingCaution warns where belts, steering or suspension are fastened.
func MountingCaution(p *car.Part) string {
	if p.NearMounting {
		return "Seat belt, steering or suspension is fastened here: work and inspection by people qualified for it, to the rules of the place."
	}
	return ""
}

// WayHours says how many hours a way takes.
func WayHours(w *pricing.WayCard) string {
	h := w.Hours
	if h == (car.Hours{}) {
		return "no hours of its own"
	}
	return tenths(h[1]) + " hours, 8 in 10 between " + tenths(h[0]) + " and " + tenths(h[2])
}

// WayPrice says what a way would likely cost.
func (t *Text) WayPrice(likely money.Minor) string { return "about " + t.Likely(float64(likely)) }

// WaySentence says what a way takes: its hours, and its part where it has one.
func (t *Text) WaySentence(w *pricing.WayCard) string {
	if !w.HasPart {
		return WayHours(w)
	}
	return WayHours(w) + "; part " + t.Amount(w.Price[1]) + ", 8 in 10 between " + t.Amount(w.Price[0]) + " and " + t.Amount(w.Price[2])
}

// WayCovers names the parts that need no work of their own then.
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

// WayOpens names the parts that have to be opened for it, and why.
func (t *Text) WayOpens(b *car.Body, w *pricing.WayCard) (out []string) {
	for _, o := range w.Opens {
		out = append(out, lowerFirst(t.Item(b, o.Item))+" ("+lowerFirst(t.Way(o.To))+"): "+lowerFirst(t.In(o.Why)))
	}
	return out
}

// Against names what ways are compared with.
func (t *Text) Against(c *session.Comparison) string {
	if c.Against < 0 {
		return "what is usually done"
	}
	return lowerFirst(t.Way(car.Way(c.Against)))
}

// WayDifference says what a way costs more or less than what is decided now.
func (t *Text) WayDifference(d estimate.Difference, against string) string {
	if d.Same > 0.999 {
		return "No difference."
	}
	e := session.RoundEnds(d.Low, d.Half, 0, d.High)
	line := t.signed(e.Low) + " to " + t.signed(e.High) + " against " + against
	if e.Low == e.High {
		line = t.signed(e.Half) + " against " + against
	}
	if weeks := weeksWords(d.WeeksHalf); weeks != "" {
		line += ", " + weeks
	}
	return line + "; dearer in " + InTen(d.Dearer) + " cars."
}

// ComparedOn says on how many simulated cars ways are compared.
func ComparedOn() string {
	return "On the same " + Grouped(session.Compared) + " imagined cars, " + eachPriced + ", with everything else as it stands."
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
