package main

import (
	"bytes"
	"fmt"
	"io"
	"strings"

	"underpaint/engine/carfile"
	"underpaint/engine/estimate"
	"underpaint/engine/session"
	"underpaint/engine/wording"
)

// report writes the ranges of a car in words.
func report(out io.Writer, s *session.Session, t *wording.Text, r session.Ranges) error {
	var b bytes.Buffer
	rates := wording.RatesLine(s.Rates)
	fmt.Fprintf(&b, "%s\n%s, %s\n\n", t.Car(&r), s.Rates.Shop.Name, strings.ToLower(rates[:1])+rates[1:])
	for k := range r.Rows {
		writeRow(&b, t, &r.Rows[k], r.Car, len(r.Rows) > 1)
	}
	fmt.Fprintf(&b, "Not included:\n")
	for _, line := range t.NotInRange(&r) {
		fmt.Fprintf(&b, "  - %s\n", line)
	}
	for _, w := range t.Warnings(&r) {
		fmt.Fprintf(&b, "Note: %s\n", w)
	}
	for _, line := range t.OwnRecord() {
		fmt.Fprintf(&b, "%s\n", line)
	}
	fmt.Fprintf(&b, "\n%s Worked out with rates check code %s, figures code %s, start number %d.\n", t.HowSure(&r), s.Rates.CheckCode(), session.FiguresCode(), session.Seed)
	fmt.Fprintf(&b, "%s\n", t.LocalCaution())
	_, err := out.Write(b.Bytes())
	return err
}

func writeRow(b *bytes.Buffer, t *wording.Text, r *session.Range, c *carfile.Car, labelled bool) {
	if label := t.Label(r); labelled {
		fmt.Fprintf(b, "%s\n%s\n", label, strings.Repeat("-", len([]rune(label))))
	}
	fmt.Fprintf(b, "%s\n", wording.SentenceHead)
	for _, line := range t.Sentence(r) {
		fmt.Fprintf(b, "  %s\n", line)
	}
	for _, line := range []string{t.Untested(r), t.Fitting(r)} {
		if line != "" {
			fmt.Fprintf(b, "%s\n", line)
		}
	}
	if prices := strings.TrimSpace(t.Held() + " " + t.Rise(r)); prices != "" {
		fmt.Fprintf(b, "%s\n", prices)
	}
	fmt.Fprintf(b, "%s\n%s\n%s\n%s\n\n", wording.NotAnEstimate, t.Tax(&r.Exact), t.SetAside(r), t.Reserve(r))
	if another := t.AnotherBody(r, c); len(another) > 0 {
		fmt.Fprintf(b, "Must it be this very body?\n")
		for _, line := range append(another, t.AnotherBodyCaution()) {
			fmt.Fprintf(b, "  %s\n", line)
		}
		fmt.Fprintln(b)
	}
	fmt.Fprintf(b, "Next: strip and survey, %s. %s\n%s %s\n\n", t.ToTheUnit(r.Strip.Likely), t.StripFixed(&r.Strip), wording.StripGet, t.StripStop(&r.Strip))
	fmt.Fprintf(b, "By zone:\n")
	for k := range r.Zones {
		z := &r.Zones[k]
		fmt.Fprintf(b, "  %-32s %s\n", t.In(r.Body.Zones[z.Zone].Name), strings.TrimSpace(t.Zone(z)+" "+t.BehindZone(r, z)))
	}
	fmt.Fprintf(b, "\nWhere the money goes (low: 1 in 10 is below; middle; high: 1 in 10 is above):\n")
	for kind, q := range r.Exact.Kinds {
		if q.High != 0 {
			low, half, high := t.KindAmounts(q)
			fmt.Fprintf(b, "  %-32s %12s %12s %12s\n", t.Kind(estimate.Kind(kind)), low, half, high)
		}
	}
	fmt.Fprintf(b, "  %s\n\n%s\n%s\n", wording.KindsNote, t.Hours(&r.Exact), t.Weeks(&r.Exact))
	if allowance := t.Allowance(r); allowance != "" {
		fmt.Fprintf(b, "%s\n", allowance)
	}
	fmt.Fprintln(b)
}
