package build

import (
	"fmt"
	"html"
	"strings"
)

// markShopText is where index.html takes what a visitor without scripts reads.
const markShopText = "<!--shop text-->"

// opened is the part of the engine's answer to "open" that is written out.
type opened struct {
	Shop struct {
		Name     string `json:"name"`
		Contact  string `json:"contact_text"`
		Invented bool   `json:"invented"`
	} `json:"shop"`
	Rates struct {
		Line string `json:"line"`
		Code string `json:"check_code"`
	} `json:"rates"`
	Labour []struct {
		Name string `json:"name"`
		Text string `json:"text"`
	} `json:"labour"`
	LabourNote string `json:"labour_note"`
	Bodies     []struct {
		Name  string `json:"name"`
		Stage struct {
			Name  string `json:"name"`
			Price string `json:"price_text"`
			Fixed string `json:"fixed_line"`
			Stop  string `json:"stop_line"`
		} `json:"stage"`
	} `json:"bodies"`
	NotInIt []string `json:"not_in_it"`
}

// shopText writes the shop's rates, the price of the first stage and what is
// not in the range as plain markup, from the engine's own words. Rates that the
// engine refuses are an error, so that no site is built on them.
func shopText(rates []byte) (text, shop string, err error) {
	var o opened
	if err := ask(map[string]any{"id": 1, "ask": "open", "rates": string(rates)}, &o); err != nil {
		return "", "", err
	}
	name := o.Shop.Name
	if o.Shop.Invented {
		name += " (an invented shop)"
	}
	var b strings.Builder
	paragraph := func(text string) { fmt.Fprintf(&b, "<p>%s</p>\n", html.EscapeString(text)) }
	items := func(all []string) {
		b.WriteString("<ul>\n")
		for _, text := range all {
			fmt.Fprintf(&b, "<li>%s</li>\n", html.EscapeString(text))
		}
		b.WriteString("</ul>\n")
	}
	fmt.Fprintf(&b, "<h2>%s</h2>\n", html.EscapeString(name))
	paragraph(o.Rates.Line + ". Rates check code " + o.Rates.Code + ". " + o.Shop.Contact)
	paragraph("These are the rates with which this page was put together; the shop may have newer ones.")
	var labour, stages []string
	for _, l := range o.Labour {
		labour = append(labour, l.Name+": "+l.Text)
	}
	items(labour)
	paragraph(o.LabourNote)
	for _, body := range o.Bodies {
		stages = append(stages, fmt.Sprintf("%s: %s. %s %s", body.Name, body.Stage.Price, body.Stage.Fixed, body.Stage.Stop))
	}
	b.WriteString("<h2>The one stage that has a price: strip and survey</h2>\n")
	items(stages)
	b.WriteString("<h2>Not in a range</h2>\n")
	items(o.NotInIt)
	return b.String(), html.EscapeString(name), nil
}
