package message

import (
	"bytes"
	"encoding/json"
	"errors"
	"strconv"
	"strings"
	"testing"

	"underpaint/engine/strict"
)

//go:noinline
func reachBeyond(list []int, k int) int { return list[k] }

// stumbling are requests that panic, each in a different way.
var stumbling = []handler{
	{name: "own", engine: func(*Engine, strict.Field) (Reply, error) { panic("engine: internal error: made up") }},
	{name: "beyond", engine: func(*Engine, strict.Field) (Reply, error) {
		return &CoverReply{Text: strconv.Itoa(reachBeyond(nil, 3))}, nil
	}},
	{name: "nothing", engine: func(e *Engine, _ strict.Field) (Reply, error) { return &CoverReply{Text: e.shop.Rates.RatesOf}, nil }},
	{name: "error", engine: func(*Engine, strict.Field) (Reply, error) { panic(errors.New("an error")) }},
	{name: "again", engine: func(*Engine, strict.Field) (Reply, error) {
		defer func() { recover(); panic("the second") }()
		panic("the first")
	}},
}

// TestAPanicTells: the shop's reply and the report have the text of the panic and the
// running functions, first the one that panicked. The customer's reply has the same
// sentence and no more, and its report is the same.
func TestAPanicTells(t *testing.T) {
	for ask, want := range map[string][2]string{
		"own":     {"engine: internal error: made up", "init.func"},
		"beyond":  {"index out of range [3] with length 0", "message.reachBeyond ("},
		"nothing": {"nil pointer dereference", "init.func"},
		"error":   {"an error", "init.func"},
		"again":   {"the second", "init.func"},
	} {
		for _, forShop := range []bool{true, false} {
			var report bytes.Buffer
			e := &Engine{Reports: &report}
			var reply map[string]any
			if err := json.Unmarshal(e.answer([]byte(`{"id":7,"ask":"`+ask+`"}`), forShop, stumbling), &reply); err != nil {
				t.Fatal(err)
			}
			if reply["kind"] != "broken" || reply["id"] != 7.0 || reply["text"] != "Something went wrong on our side. Nothing you entered is lost." {
				t.Errorf("%s: %v", ask, reply)
			}
			if said := report.String(); !strings.Contains(said, want[0]) || !strings.Contains(said, want[1]) || !strings.Contains(said, "broken_test.go:") {
				t.Errorf("%s: reported\n%s", ask, said)
			}
			if !forShop {
				if len(reply) != 3 {
					t.Errorf("%s: the customer is told %v", ask, reply)
				}
				continue
			}
			panicked, _ := reply["panic"].(string)
			stack, _ := reply["stack"].([]any)
			if !strings.Contains(panicked, want[0]) || len(stack) < 3 || !strings.Contains(stack[0].(string), want[1]) || !strings.Contains(stack[0].(string), "broken_test.go:") {
				t.Errorf("%s: %q, first of the stack %v", ask, panicked, stack)
			}
		}
	}
}

type deaf struct{}

func (deaf) Write([]byte) (int, error) { return 0, errors.New("nobody listens") }

// TestAnAnswerWithoutAReport: the reply is the same when the report cannot be written.
func TestAnAnswerWithoutAReport(t *testing.T) {
	e := &Engine{Reports: deaf{}}
	if reply := string(e.answer([]byte(`{"id":7,"ask":"own"}`), true, stumbling)); !strings.Contains(reply, "made up") {
		t.Error(reply)
	}
}
