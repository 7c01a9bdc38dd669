package main

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"strings"

	"underpaint/engine/carfile"
	"underpaint/engine/message"
)

// thisCar answers the commands about one car as the page "This car" does:
// stages, worth, ways, why and plan.
func (c command) thisCar(ask string, args []string) int {
	flags := flag.NewFlagSet(ask, flag.ContinueOnError)
	rates := flags.String("rates", "", "the shop's rates file")
	asJSON := flags.Bool("json", false, "print the engine's own reply")
	whom := flags.String("for", "shop", "looks for a customer or for the shop")
	operands, ok := c.parse(args, flags)
	if !ok {
		return 2
	}
	if len(operands) != 1 || *rates == "" || *whom != "shop" && *whom != "customer" {
		return c.fail(2, "one car file and --rates RATES.json are needed\n%s", usage)
	}
	ratesText, err := c.read(*rates)
	if err != nil {
		return c.fail(1, "%v", err)
	}
	text, err := c.read(operands[0])
	if err != nil {
		return c.fail(1, "%v", err)
	}
	reply, err := askUntilSettled(ask, text, ratesText, *whom)
	if err != nil {
		return c.fail(1, "%s: %v", operands[0], err)
	}
	if *asJSON {
		return c.print(append(reply, '\n'))
	}
	var report bytes.Buffer
	if err := inWords[ask](&report, reply); err != nil {
		return c.fail(1, "%v", err)
	}
	return c.print(report.Bytes())
}

// askUntilSettled asks the engine as a page does, until nothing is to come.
func askUntilSettled(ask string, car, rates []byte, whom string) ([]byte, error) {
	e := &message.Engine{}
	quoted, err := json.Marshal(string(rates))
	if err != nil {
		return nil, err
	}
	if err := refusal(e.Ask(fmt.Appendf(nil, `{"id":0,"ask":"open","rates":%s}`, quoted))); err != nil {
		return nil, fmt.Errorf("rates: %w", err)
	}
	// Read apart first: a broken file would break the message around it.
	if _, err := carfile.Decode(car); err != nil {
		return nil, err
	}
	for {
		reply := e.Ask(fmt.Appendf(nil, `{"id":0,"ask":%q,"for":%q,"car":%s}`, ask, whom, car))
		if err := refusal(reply); err != nil {
			return nil, err
		}
		var r struct{ State string }
		if err := json.Unmarshal(reply, &r); err != nil {
			return nil, err
		}
		if r.State != string(message.Refining) {
			return reply, nil
		}
	}
}

// refusal is the error in a reply that refuses, nil in any other.
func refusal(reply []byte) error {
	var r struct{ Kind, Text string }
	if err := json.Unmarshal(reply, &r); err != nil {
		return err
	}
	if r.Kind == "refused" || r.Kind == "broken" {
		return fmt.Errorf("%s", r.Text)
	}
	return nil
}

// inWords writes replies as reports.
var inWords = map[string]func(io.Writer, []byte) error{"before_after": stagesInWords, "worth": worthInWords, "to_do": waysInWords,
	"wide": whyInWords, "plan": planInWords, "decide": decideInWords}

func stagesInWords(out io.Writer, reply []byte) error {
	var r struct {
		Rows []struct {
			Name      string
			DateText  string `json:"date_text"`
			Done      bool
			LowText   string `json:"low_text"`
			HalfText  string `json:"half_text"`
			HighText  string `json:"high_text"`
			WidthText string `json:"width_text"`
			WiderLine string `json:"wider_line"`
		}
		Headline, Worse, Better []string
		UnseenLine              string `json:"unseen_line"`
		Items                   []struct{ Name, Text string }
		NotALimit               string `json:"not_a_limit"`
	}
	if err := json.Unmarshal(reply, &r); err != nil {
		return err
	}
	fmt.Fprintf(out, "%s\n\n", strings.Join(r.Headline, "\n"))
	for _, row := range r.Rows {
		if !row.Done {
			fmt.Fprintf(out, "%-18s not done\n", row.Name)
			continue
		}
		fmt.Fprintf(out, "%-18s %12s to %12s   half below %12s   %s   %s\n", row.Name, row.LowText, row.HighText, row.HalfText, row.WidthText, row.DateText)
		if row.WiderLine != "" {
			fmt.Fprintf(out, "%-18s %s\n", "", row.WiderLine)
		}
	}
	fmt.Fprintln(out)
	for _, line := range append(r.Worse, r.Better...) {
		fmt.Fprintln(out, line)
	}
	fmt.Fprintf(out, "%s\n\n", r.UnseenLine)
	for _, item := range r.Items {
		fmt.Fprintf(out, "  %-56s %s\n", item.Name, item.Text)
	}
	fmt.Fprintf(out, "%s\n", r.NotALimit)
	return nil
}

func worthInWords(out io.Writer, reply []byte) error {
	var r struct {
		NowLine string `json:"now_line"`
		Stages  []struct{ Line string }
		Looks   []struct {
			Text, How, Needs, Caution string
			PlaceLine                 string `json:"place_line"`
			WholeLine                 string `json:"whole_line"`
		}
		LooksNote string `json:"looks_note"`
	}
	if err := json.Unmarshal(reply, &r); err != nil {
		return err
	}
	fmt.Fprintln(out, r.NowLine)
	for _, s := range r.Stages {
		fmt.Fprintln(out, s.Line)
	}
	fmt.Fprintln(out)
	for n, l := range r.Looks {
		fmt.Fprintf(out, "%d. %s\n", n+1, l.Text)
		for _, line := range []string{l.How, "Needs: " + l.Needs, l.Caution, l.PlaceLine, l.WholeLine} {
			if line != "" {
				fmt.Fprintf(out, "   %s\n", line)
			}
		}
	}
	fmt.Fprintln(out, r.LooksNote)
	return nil
}

func waysInWords(out io.Writer, reply []byte) error {
	var r struct {
		Cards []struct {
			Title       string
			ChosenText  string `json:"chosen_text"`
			CannotLeave string `json:"cannot_leave"`
			CoveredBy   string `json:"covered_by"`
			Caution     string
			Opened      []string
			Ways        []struct {
				Name, Sentence string
				CoversText     string `json:"covers_text"`
				Opens          []string
			}
		}
		UndecidedLine string `json:"undecided_line"`
		Shared        []string
	}
	if err := json.Unmarshal(reply, &r); err != nil {
		return err
	}
	for _, c := range r.Cards {
		fmt.Fprintln(out, c.Title)
		for _, w := range c.Ways {
			fmt.Fprintf(out, "  %-14s %s\n", w.Name, w.Sentence)
			for _, line := range append(w.Opens, w.CoversText) {
				if line != "" {
					fmt.Fprintf(out, "  %-14s   %s\n", "", line)
				}
			}
		}
		for _, line := range append(c.Opened, c.ChosenText, c.CoveredBy, c.CannotLeave, c.Caution) {
			if line != "" {
				fmt.Fprintf(out, "  %s\n", line)
			}
		}
	}
	for _, line := range append(r.Shared, r.UndecidedLine) {
		fmt.Fprintln(out, line)
	}
	return nil
}
