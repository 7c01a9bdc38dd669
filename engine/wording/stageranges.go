package wording

import (
	"underpaint/engine/car"
	"underpaint/engine/session"
)

// EightInTen says a range of such cars.
func (t *Text) EightInTen(e session.Ends) string {
	return "8 in 10 such cars: " + t.span(e.Low, e.High) + "."
}

// Wide says how wide a range is.
func (t *Text) Wide(e session.Ends) string { return t.Amount(e.High-e.Low) + " wide" }

// Wider says why the k-th range is wider than the one before it; nothing where it is not.
func Wider(rows []session.StageRange, k int) string {
	if k == 0 || !rows[k-1].Done || rows[k].Width() <= 1.03*rows[k-1].Width() {
		return ""
	}
	why := "what was seen does not agree with what was told, so more is possible than before."
	switch before, now := rows[k-1].Exact.Half, rows[k].Exact.Half; {
	case now > 1.02*before:
		why = "worse was found than was to be expected, and dearer work varies more."
	case now < 0.98*before:
		why = "what was seen is better than what was told, and the two do not agree yet."
	}
	return "Wider than the row above: " + why
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
		return []string{"From what was told the range is " + span + " (8 in 10)."}
	}
	out = append(out, t.afterStage(last.ID)+" the range is "+span+" (8 in 10).",
		"It is "+widthWords(last.Width()/first.Width(), "at first")+".")
	switch {
	case last.Exact.Low >= first.Exact.Low && last.Exact.High <= first.Exact.High:
		out = append(out, "This range lies inside the first.")
	case last.Exact.Half > first.Exact.High || last.Exact.Half < first.Exact.Low:
		out = append(out, "Its middle lies outside the first range: this is one of the 2 in 10 cars that do, as was said there would be.")
	default:
		out = append(out, "It reaches past one end of the first range, which was never a limit.")
	}
	return out
}

// mostPockets is how many pockets are named as worse, and as better.
const mostPockets = 4

// MovedPockets names the pockets that turned out worse, and better, than in most such
// cars.
func (t *Text) MovedPockets(b *car.Body, moved []session.PocketMoved) (worse, better []string) {
	for _, m := range moved {
		if m.Share >= 0.65 && len(worse) < mostPockets {
			worse = append(worse, t.Pocket(b, m.Pocket)+": worse than "+InTen(m.Share)+" such cars.")
		}
		if m.Share <= 0.35 && len(better) < mostPockets {
			better = append(better, t.Pocket(b, m.Pocket)+": better than "+InTen(1-m.Share)+" such cars.")
		}
	}
	return worse, better
}

// MovedItem says how the odds of one item moved.
func MovedItem(m session.ItemMoved) string {
	return "rusted through or gone: " + CarsInTen(m.Before) + " before, " + CarsInTen(m.Now) + " now"
}

// ComparedWith compares a recorded item with such cars; nothing where it is not recorded.
func ComparedWith(o *session.Odds) string {
	switch {
	case !o.Recorded:
		return ""
	case o.Better >= o.Worse:
		return "Worse than " + InTen(o.Better) + " such cars."
	}
	return "Better than " + InTen(o.Worse) + " such cars."
}

// OddsBefore says how often an item was rusted through as believed before the stage.
func OddsBefore(o *session.Odds) string {
	return "Before: rusted through or gone in " + CarsInTen(o.Before) + "."
}

// OddsNow says it of cars that agree with everything recorded.
func OddsNow(o *session.Odds) string {
	return "Now: in " + CarsInTen(o.Now) + " that agree with everything recorded."
}
