package build

import (
	"encoding/json"
	"errors"
	"fmt"
	"strconv"
	"strings"

	"underpaint/engine/message"
	"underpaint/engine/rates"
	"underpaint/engine/strict"
)

// maxRates is the largest rates file taken, in bytes; the page refuses a
// larger one too.
const maxRates = 2 << 20

// Rates is a rates file that the engine takes. It comes only from [Check].
type Rates struct {
	Line      string   // of when to when they hold
	CheckCode string   // the one that the pages show
	Warnings  []string // what is allowed but usually a slip

	text     []byte
	shopText string // what a visitor without scripts reads, as markup
	shopName string // the same of the name alone
	address  string // of the folder on the web, or ""
}

// Check reads a rates file. today is YYYY-MM-DD, for rates past their date. The
// error has a line for each fault, with its path in the file, what was found and
// what was expected. Terms that call a real shop invented are a fault here, because what
// is built is for customers to read.
func Check(text []byte, today string) (*Rates, error) {
	if len(text) > maxRates {
		return nil, fmt.Errorf("the file: expected at most %d bytes, found %d", maxRates, len(text))
	}
	text = strict.Unmarked(text)
	decoded, faults := rates.Check(text)
	if len(faults) > 0 {
		return nil, errors.Join(faults...)
	}
	if n := decoded.CalledInvented(); n >= 0 {
		return nil, &strict.Error{Path: fmt.Sprintf("terms[%d]", n), Found: strconv.Quote(decoded.Terms[n]),
			Expected: "terms of your own, or shop.invented true: your customers would read that you do not exist"}
	}
	r := &Rates{text: text}
	var reply struct {
		OK       bool
		Warnings []struct{ Path, Text string }
		Line     string `json:"rates_line"`
		Code     string `json:"check_code"`
	}
	if err := ask(map[string]any{"id": 1, "ask": "check_rates", "rates": string(text), "today": today}, &reply); err != nil {
		return nil, err
	}
	if !reply.OK {
		return nil, errors.New("the rates were refused without a reason")
	}
	r.Line, r.CheckCode = reply.Line, reply.Code
	for _, w := range reply.Warnings {
		r.Warnings = append(r.Warnings, strings.TrimPrefix(w.Path+": "+w.Text, ": "))
	}
	var err error
	r.shopText, r.shopName, err = shopText(text)
	return r, err
}

// ask puts one question to the engine, as a page does.
func ask(request map[string]any, reply any) error {
	text, err := json.Marshal(request)
	if err != nil {
		return err
	}
	var engine message.Engine
	answer := engine.Ask(text)
	var head struct{ Kind, Text string }
	if err := json.Unmarshal(answer, &head); err != nil {
		return err
	}
	if head.Kind == "refused" || head.Kind == "broken" {
		return errors.New(head.Text)
	}
	return json.Unmarshal(answer, reply)
}
