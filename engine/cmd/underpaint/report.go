package main

import (
	"bytes"
	"fmt"
	"io"
	"strings"

	"underpaint/engine/message"
)

// report writes the range in the page's words.
func report(out io.Writer, s *message.Session, state message.State) error {
	var b bytes.Buffer
	rows := s.Rows()
	fmt.Fprintf(&b, "%s\n%s, %s\n\n", s.CarLine(), s.Rates.Shop.Name, s.RatesLine())
	for _, r := range rows {
		writeRow(&b, r, len(rows) > 1)
	}
	fmt.Fprintf(&b, "Not in it:\n")
	for _, line := range s.NotInIt() {
		fmt.Fprintf(&b, "  - %s\n", line)
	}
	for _, w := range s.Warnings() {
		fmt.Fprintf(&b, "Note: %s\n", w)
	}
	for _, line := range s.OwnRecord() {
		fmt.Fprintf(&b, "%s\n", line)
	}
	fmt.Fprintf(&b, "\n%s Seed %d, rates check code %s.\n", s.HowSure(state, rows), message.Seed, s.Rates.CheckCode())
	fmt.Fprintf(&b, "%s\n", s.LocalCaution())
	_, err := out.Write(b.Bytes())
	return err
}

func writeRow(b *bytes.Buffer, r message.Row, labelled bool) {
	if labelled {
		fmt.Fprintf(b, "%s\n%s\n", r.Label, strings.Repeat("-", len([]rune(r.Label))))
	}
	fmt.Fprintf(b, "%s\n", r.SentenceHead)
	for _, line := range r.Sentence {
		fmt.Fprintf(b, "  %s\n", line)
	}
	fmt.Fprintf(b, "%s\n%s\n%s\n%s\n\n", r.NotAnEstimate, r.TaxLine, r.SetAsideLine, r.ReserveLine)
	fmt.Fprintf(b, "Next: strip and survey, %s. %s\n%s %s\n\n", r.Stage.PriceText, r.Stage.FixedLine, r.Stage.GetLine, r.Stage.StopLine)
	fmt.Fprintf(b, "By zone:\n")
	for _, z := range r.Zones {
		fmt.Fprintf(b, "  %-32s %s\n", z.Name, strings.TrimSpace(z.Line+" "+z.Behind))
	}
	fmt.Fprintf(b, "\nWhere the money goes (1 in 10 below, half, 1 in 10 above):\n")
	for _, k := range r.Kinds {
		fmt.Fprintf(b, "  %-32s %12s %12s %12s\n", k.Name, k.LowText, k.HalfText, k.HighText)
	}
	fmt.Fprintf(b, "  %s\n\n%s\n%s\n", r.KindsNote, r.HoursLine, r.WeeksLine)
	if r.AllowanceLine != "" {
		fmt.Fprintf(b, "%s\n", r.AllowanceLine)
	}
	fmt.Fprintln(b)
}
