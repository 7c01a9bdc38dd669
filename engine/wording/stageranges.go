package wording

import (
	"underpaint/engine/car"
	"underpaint/engine/session"
)

// EightInTen says a range.
func (t *Text) EightInTen(e session.Ends) string {
	return eightOutOfTen + t.span(e.Low, e.High) + "."
}

// Wide says how wide a range is.
func (t *Text) Wide(e session.Ends) string { return t.Amount(e.High-e.Low) + " wide" }

// Wider says why the k-th range is wider than the one before it. It is empty where it is
// not wider.
func Wider(rows []session.StageRange, k int) string {
	if k == 0 || !rows[k-1].Done || rows[k].Width() <= 1.03*rows[k-1].Width() {
		return ""
	}
	why := "what we found does not fit what we knew before, so more is possible now."
	switch before, now := rows[k-1].Exact.Half, rows[k].Exact.Half; {
	case now > 1.02*before:
		why = "we found worse than expected, and bigger jobs vary more."
	case now < 0.98*before:
		why = "what we found is better than expected and does not yet fit what we knew before."
	}
	return "Wider than the row above, because " + why
}

// StagesHeadline compares the last range with the first.
func (t *Text) StagesHeadline(rows []session.StageRange) (out []string) {
	first, last := &rows[0], &rows[0]
	for k := range rows {
		if rows[k].Done {
			last = &rows[k]
		}
	}
	span := t.span(last.Shown.Low, last.Shown.High)
	if last == first {
		return []string{"From your answers, the range is " + span + " (8 cars out of 10)."}
	}
	out = append(out, t.afterStage(last.ID)+", the range is "+span+" (8 cars out of 10).",
		"It is "+widthWords(last.Width()/first.Width(), "at first")+".")
	switch {
	case last.Exact.Low >= first.Exact.Low && last.Exact.High <= first.Exact.High:
		out = append(out, "This range lies inside the first.")
	case last.Exact.Half > first.Exact.High || last.Exact.Half < first.Exact.Low:
		out = append(out, "Its middle lies outside the first range. We said that this happens to 2 cars in 10, and this is one of them.")
	default:
		out = append(out, "It reaches past one end of the first range, which was never a limit.")
	}
	return out
}

// mostPockets is how many pockets we name as worse, and as better.
const mostPockets = 4

// MovedPockets names the pockets that turned out worse, and better, than in most such
// cars.
func (t *Text) MovedPockets(b *car.Body, moved []session.PocketMoved) (worse, better []string) {
	for _, m := range moved {
		if m.Share >= 0.65 && len(worse) < mostPockets {
			worse = append(worse, t.Pocket(b, m.Pocket)+": worse than in "+InTen(m.Share)+" cars like this.")
		}
		if m.Share <= 0.35 && len(better) < mostPockets {
			better = append(better, t.Pocket(b, m.Pocket)+": better than in "+InTen(1-m.Share)+" cars like this.")
		}
	}
	return worse, better
}

// MovedItem says how the odds of one item changed.
func MovedItem(m session.ItemMoved) string {
	return "rusted through or gone: " + CarsInTen(m.Before) + " before, " + CarsInTen(m.Now) + " now"
}

// ComparedWith compares a recorded item with other cars like this. It is empty where the
// item is not recorded.
func ComparedWith(o *session.Odds) string {
	switch {
	case !o.Recorded:
		return ""
	case o.Better >= o.Worse:
		return "Worse than in " + InTen(o.Better) + " cars like this."
	}
	return "Better than in " + InTen(o.Worse) + " cars like this."
}

// OddsBefore says how often the item was rusted through, as believed before the stage.
func OddsBefore(o *session.Odds) string {
	return "Before: rusted through or gone in " + CarsInTen(o.Before) + "."
}

// OddsNow says how often it is in cars that fit everything recorded.
func OddsNow(o *session.Odds) string {
	return "Now: in " + InTen(o.Now) + " cars that fit everything recorded."
}
