package vectors

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// mostAsked bounds how often one question is repeated for a better answer.
const mostAsked = 500

// Run sends the requests to an engine and returns the last reply to each.
func (v *Vector) Run(dir string, ask func([]byte) []byte) (replies [][]byte, err error) {
	requests, err := v.Requests(dir)
	if err != nil {
		return nil, err
	}
	for n, text := range requests {
		reply := ask([]byte(text))
		for k := 0; v.Ask[n].Until && improving(reply); k++ {
			if k == mostAsked {
				return nil, fmt.Errorf("%s: request %d: still improving", v.Name, n+1)
			}
			reply = ask([]byte(text))
		}
		replies = append(replies, reply)
	}
	return replies, nil
}

func improving(reply []byte) bool {
	var r struct{ State string }
	return json.Unmarshal(reply, &r) == nil && (r.State == "rough" || r.State == "refining")
}

// figureNames are the members of a kind of reply that are kept in full, wherever they
// are: ends and middles, hours, totals of stages, odds and shares, codes, and what a
// refusal is about.
var figureNames = map[string]string{
	"opened":  "check_code currency price_minor",
	"refused": "what path",
	"range": "state imagined_cars check_code low_minor half_minor set_aside_minor high_minor p10_minor p50_minor p80_minor p90_minor " +
		"se_p10_minor se_p90_minor hours_p10 hours_p50 hours_p90 weeks_line tax_line moved_line price_minor low_text half_text high_text",
	"cover": "text", "fits": "sum_text lines", "sheet": "body", "odds": "line before_line now_line",
	"worth": "state done of now_line on place_line whole_line", "wide": "state share rest", "twenty": "total_text found_text",
	"two_ways": "minor compared sentence", "suppose": "minor compared sentence holed_line on before_text after_text",
	"plan": "money_text hours_text by_then_text actual_line so_far_line", "decide": "difference_text saving_text",
	"car_ok": "canonical", "tally": "not_recorded not_opened done of answers_line",
	"before_after": "state low_text half_text high_text width_text headline on before_text after_text",
	"to_do":        "on chosen hours_text price_text part_text undecided_line", "compare_ways": "against line",
	"rates_checked": "ok check_code path", "effect": "state low_text half_text high_text text old_text new_text",
	"prices_read": "part way price refused row column", "prices_written": "text", "rates_outline": "",
	"jobs_checked": "ok jobs check_code path", "jobs_read": "came_to said refused row column", "jobs_written": "text", "adopted": "check_code",
	"scores": "state scored jobs_code first_text survey_text came_to_text where factor amount_text",
}

// mostFigures bounds how many figures of a reply are kept, the first in its order; the
// digest covers the whole reply.
const mostFigures = 60

// longest is the length of the longest text that is kept as a figure.
const longest = 1000

// Of returns what a reply is expected to be from now on.
func Of(reply []byte) (*Expect, error) {
	sum := sha256.Sum256(reply)
	e := &Expect{SHA256: hex.EncodeToString(sum[:]), Figures: map[string]any{}}
	d := json.NewDecoder(bytes.NewReader(reply))
	d.UseNumber()
	if err := e.walk(d, "", ""); err != nil {
		return nil, err
	}
	if _, ok := figureNames[e.Kind]; !ok {
		return nil, fmt.Errorf("no reply of a vector is %q", e.Kind)
	}
	return e, nil
}

// walk reads one value and everything in it.
func (e *Expect) walk(d *json.Decoder, path, name string) error {
	t, err := d.Token()
	if err != nil {
		return err
	}
	switch t {
	case json.Delim('['):
		for n := 0; d.More(); n++ {
			if err := e.walk(d, path+"["+strconv.Itoa(n)+"]", name); err != nil {
				return err
			}
		}
		_, err = d.Token()
	case json.Delim('{'):
		for d.More() {
			member, err := d.Token()
			if err != nil {
				return err
			}
			if err := e.walk(d, strings.TrimPrefix(path+"."+member.(string), "."), member.(string)); err != nil {
				return err
			}
		}
		_, err = d.Token()
	default:
		e.take(path, name, t)
	}
	return err
}

func (e *Expect) take(path, name string, value any) {
	text, isText := value.(string)
	if path == "kind" {
		e.Kind = text
		return
	}
	if !slices.Contains(strings.Fields(figureNames[e.Kind]), name) || len(e.Figures) == mostFigures || isText && len(text) > longest {
		return
	}
	e.Figures[path] = value
}

// Differences says how a reply differs from what was expected: figures by name, and
// "words only" if nothing but the wording or the layout has changed.
func (e *Expect) Differences(now *Expect) (out []string) {
	if e.Kind != now.Kind {
		return []string{"kind " + e.Kind + " → " + now.Kind + " " + compact(now.Figures)}
	}
	for _, path := range sortedKeys(e.Figures) {
		was, is := compact(e.Figures[path]), "nothing"
		if v, ok := now.Figures[path]; ok {
			is = compact(v)
		}
		if was != is {
			out = append(out, path+" "+was+" → "+is)
		}
	}
	for _, path := range sortedKeys(now.Figures) {
		if _, ok := e.Figures[path]; !ok {
			out = append(out, path+" nothing → "+compact(now.Figures[path]))
		}
	}
	if len(out) == 0 && e.SHA256 != now.SHA256 {
		out = append(out, "words only")
	}
	return out
}
