package message

import (
	"math"
	"strconv"
	"strings"
	"testing"
)

// TestWide: the shares of what makes a range wide add up to all of it and have words.
// Every part that could make it worse has odds, an amount and a way to find out.
func TestWide(t *testing.T) {
	e := opened(t)
	reply, steps := map[string]any{"state": "refining"}, 0
	for ; reply["state"] == "refining"; steps++ {
		reply = ask(t, e, `"wide"`, goodCar)
	}
	if reply["state"] != "settled" || steps != 41 || reply["done"] != reply["of"] { // 40 slices of walks, and the parts
		t.Fatalf("%v after %d steps", reply, steps)
	}
	sum := reply["rest"].(float64)
	shares := listIn(t, reply, "shares")
	for k, one := range shares {
		sum += one["share"].(float64)
		if k > 0 && one["share"].(float64) > shares[k-1]["share"].(float64) {
			t.Error("not ranked")
		}
	}
	whole := 0
	for _, text := range append([]string{reply["rest_text"].(string)}, texts(shares, "share_text")...) {
		n, err := strconv.Atoi(strings.TrimSuffix(text[strings.LastIndexByte(text, ' ')+1:], "%"))
		if err != nil {
			t.Fatal(err)
		}
		whole += n
	}
	if whole != 100 {
		t.Errorf("whole percents add to %d", whole)
	}
	if math.Abs(sum-1) > 1e-9 || len(shares) < 4 {
		t.Errorf("%d shares add to %v", len(shares), sum)
	}
	worse := listIn(t, reply, "worse")
	if len(worse) != 5 {
		t.Fatalf("%d parts", len(worse))
	}
	for _, p := range worse {
		if !strings.Contains(p["cost_line"].(string), "$") || !strings.Contains(p["likely_line"].(string), "most expensive fifth") || p["find_line"] == "" {
			t.Errorf("%v", p)
		}
	}
}

func texts(list []map[string]any, member string) (out []string) {
	for _, one := range list {
		out = append(out, one[member].(string))
	}
	return out
}

// TestTwenty: the twenty cars are the first cars of the range itself, and they differ.
func TestTwenty(t *testing.T) {
	reply := ask(t, opened(t), `"twenty"`, goodCar)
	cars := listIn(t, reply, "cars")
	if len(cars) != 20 {
		t.Fatalf("%v", reply)
	}
	seen := map[string]bool{}
	for _, c := range cars {
		seen[c["total_text"].(string)] = true
		if (len(c["holed"].([]any)) == 0) != strings.HasPrefix(c["found_text"].(string), "No part") {
			t.Errorf("%v", c)
		}
	}
	if len(seen) < 8 {
		t.Errorf("only %d different prices", len(seen))
	}
}

// TestTwoWays: if each part rusts on its own, the range is clearly narrower.
func TestTwoWays(t *testing.T) {
	reply := ask(t, opened(t), `"two_ways"`, goodCar)
	if rows := listIn(t, reply, "rows"); len(rows) != 2 || rows[0]["sentence"] == rows[1]["sentence"] {
		t.Fatalf("%v", reply)
	}
	if text := reply["compared"].(string); !strings.Contains(text, "as wide as it really is") || strings.Contains(text, "nearly as wide") {
		t.Error(text)
	}
}

// inTenBack reads a share as wording.InTen writes it.
func inTenBack(text string) float64 {
	switch {
	case strings.HasPrefix(text, "fewer"):
		return 0
	case strings.HasPrefix(text, "19"):
		return 0.95
	}
	return float64(text[0]-'0') / 10
}

// TestSuppose: a hole makes holes nearby more likely and a sound part makes them less
// likely. A supposition that contradicts a record is refused.
func TestSuppose(t *testing.T) {
	e := opened(t)
	ratio := func(condition string) (worse, better int) {
		reply := ask(t, e, `"suppose","on":"outer_sill.left","condition":"`+condition+`"`, goodCar)
		list := listIn(t, reply, "neighbours")
		if len(list) == 0 {
			t.Fatalf("%v", reply)
		}
		if near := list[0]; near["same_water"] != true {
			t.Errorf("%s: moves most: %v", condition, near)
		}
		for _, n := range list {
			switch before, after := inTenBack(n["before_text"].(string)), inTenBack(n["after_text"].(string)); {
			case after > before:
				worse++
			case after < before:
				better++
			}
		}
		return worse, better
	}
	if worse, better := ratio("rusted_through"); worse == 0 || better > 0 {
		t.Errorf("supposed holed: %d likelier, %d less", worse, better)
	}
	if worse, better := ratio("sound"); better == 0 || worse > 0 {
		t.Errorf("supposed sound: %d likelier, %d less", worse, better)
	}
	if reply := ask(t, e, `"suppose","on":"nowhere"`, goodCar); reply["kind"] != "refused" || reply["path"] != "on" {
		t.Errorf("%v", reply)
	}
}

func BenchmarkWide(b *testing.B) {
	for b.Loop() {
		e := opened(b)
		for reply := map[string]any{"state": "refining"}; reply["state"] == "refining"; {
			reply = ask(b, e, `"wide"`, goodCar)
		}
	}
}

// TestPlanReply: the plan has five stages, each with money, hours, weeks and the cost of
// stopping.
func TestPlanReply(t *testing.T) {
	stages := listIn(t, ask(t, opened(t), `"plan"`, goodCar), "stages")
	if len(stages) != 5 {
		t.Fatalf("%v", stages)
	}
	for k, one := range stages {
		for _, member := range []string{"money_text", "by_then_text"} {
			if !strings.Contains(one[member].(string), "$") {
				t.Errorf("stage %d, %s: %v", k, member, one[member])
			}
		}
		if last := k == 4; last == strings.Contains(one["stop_line"].(string), "$2,300") {
			t.Errorf("stage %d: %v", k, one["stop_line"])
		}
	}
}

// TestFits: a larger amount is never enough for fewer cars, and a higher standard never
// for more. The two smaller scopes fit at least as many cars as the whole body.
func TestFits(t *testing.T) {
	e := opened(t)
	e.Ask([]byte(`{"id":1,"ask":"range","effort":"rough","car":` + goodCar + `}`))
	chances := func(sum string) (out []float64) {
		reply := shopAsk(t, e, "fits", map[string]any{"sum": sum})
		lines, ok := reply["lines"].([]any)
		if !ok || len(lines) != 9 {
			t.Fatalf("%v", reply)
		}
		for _, l := range lines {
			text := l.(string)
			switch {
			case strings.Contains(text, "fewer than"):
				out = append(out, 0)
			case strings.Contains(text, "more than 19"):
				out = append(out, 1)
			default:
				i := strings.Index(text, "about ") + len("about ")
				out = append(out, float64(text[i]-'0')/10)
			}
		}
		return out
	}
	low, high := chances("70000"), chances("110000")
	for k := range low {
		if high[k] < low[k] || k%3 > 0 && high[k] > high[k-1] {
			t.Errorf("%v %v", low, high)
			break
		}
	}
	if high[0] == high[2] {
		t.Errorf("the standard makes no difference: %v", high)
	}
	if reply := shopAsk(t, e, "fits", map[string]any{"sum": "-1"}); reply["kind"] != "refused" {
		t.Errorf("%v", reply)
	}
}

// TestDuties: every caution that a tool like this owes its readers is there: the
// customer's beside the range, at the line where it belongs, and those of the shop floor
// at the work that causes the hazard.
func TestDuties(t *testing.T) {
	e := opened(t)
	reply := ask(t, e, `"range","effort":"rough"`, goodCar)
	where := map[string]string{}
	note := func(cautions []map[string]any, at string) {
		for _, c := range cautions {
			where[c["id"].(string)] = c["where"].(string) + at
			if len(c["text"].(string)) < 30 {
				t.Errorf("%v", c)
			}
		}
	}
	dangers := ask(t, e, `"dangers"`, goodCar)
	for _, list := range []string{"to_do", "strip"} {
		for _, line := range listIn(t, dangers, list) {
			note(listIn(t, line, "cautions"), ": "+line["line"].(string))
		}
	}
	note(listIn(t, reply, "cautions"), "")
	for id, at := range map[string]string{"not_seen": "range", "rights": "stage", "strip_first": "stage", "numbers": "stage", "structure": "structure", "belts": "structure", "local": "foot",
		"lifting": "own_work", "asbestos": "own_work", "blasting": "work: Blast the shell, inside and underneath", "lead": "work: Melt and wipe out lead at factory joints, wash out the flux",
		"epoxy": "work: Epoxy primer, two coats, inside, outside and underneath", "bare_steel": "work: Blast the shell, inside and underneath", "fuel": "work: Fuel, battery and fluids out; tank vented and put away",
		"noise": "work: Strip the big skins by sander, stripper or fine media", "paint": "work: Fill, high-build and block the outer skins"} {
		if where[id] != at {
			t.Errorf("caution %s stands at %q, expected %q", id, where[id], at)
		}
	}
	row := listIn(t, reply, "rows")[0]
	for member, want := range map[string]string{"not_an_estimate": "not an estimate, not a quotation and not a ceiling", "tax_line": "ax", "reserve_line": "in reserve on top of the middle amount"} {
		if !strings.Contains(row[member].(string), want) {
			t.Errorf("%s: %v", member, row[member])
		}
	}
}

// TestRunningTotal: the cost of finished stages replaces their simulated cost. A stage
// out of order is refused.
func TestRunningTotal(t *testing.T) {
	e := opened(t)
	with := func(cameTo string) string { return strings.TrimSuffix(goodCar, "}") + `,"came_to":` + cameTo + `}` }
	reply := ask(t, e, `"plan"`, with(`{"strip_and_survey":"16500.00","structure":"99000"}`))
	stages := listIn(t, reply, "stages")
	if line := reply["so_far_line"].(string); !strings.HasPrefix(line, "So far $115,500. In 8 cars out of 10, the rest costs $") {
		t.Error(line)
	}
	if stages[0]["actual_line"] != "It cost $16,500, inside its range." || !strings.Contains(stages[1]["actual_line"].(string), "above its range") || stages[1]["by_then_text"] != "The job so far, by the end of this stage: $115,500." {
		t.Errorf("%v", stages[:2])
	}
	for _, wrong := range []string{`{"paint":"100"}`, `{"strip_and_survey":"-1"}`, `{"strip_and_survey":"1.005"}`, `{"wheels":"1"}`} {
		if reply := ask(t, e, `"plan"`, with(wrong)); reply["kind"] != "refused" || !strings.HasPrefix(reply["path"].(string), "came_to") {
			t.Errorf("%s: %v", wrong, reply)
		}
	}
}

// TestDecide: the decisions before anyone has seen the metal each have the chance that
// they save money.
func TestDecide(t *testing.T) {
	reply := ask(t, opened(t), `"decide"`, goodCar)
	saving := map[string]string{}
	for _, o := range listIn(t, reply, "options") {
		saving[o["id"].(string)] = o["saving_text"].(string)
		if !strings.Contains(o["difference_text"].(string), "$") {
			t.Errorf("%v", o)
		}
	}
	if len(saving) != 6 || saving["standard.show"] != "" {
		t.Fatalf("%v", saving)
	}
	for id, want := range map[string]string{"standard.driver": "more than 19", "standard.concours": "fewer than 1", "unseen": "it saves money in", "scope.outside_only": "more than 19",
		"scope.metalwork_only": "more than 19", "own_disassembly": "more than 19"} {
		if !strings.Contains(saving[id], want) {
			t.Errorf("%s: %s", id, saving[id])
		}
	}
}
