//go:build !js

package tests

import (
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"underpaint/engine/message"
	"underpaint/tests/vectors"
)

var update = flag.Bool("update", false, "write today's replies into the vectors and print what has changed")

// customerRequests are also asked of the customer's engine. It answers more, which
// takes long; engine/message compares those.
var customerRequests = strings.Fields("open range cover sheet plan check_car")

// TestVectors sends every scenario to a fresh engine and compares the figures and the
// bytes of the whole reply. run.mjs does the same under Node and in a browser.
func TestVectors(t *testing.T) {
	const dir = "vectors"
	all, err := vectors.Load(dir)
	must(t, err)
	kept, err := vectors.Kept(dir)
	must(t, err)
	now := map[string]string{}
	for _, v := range all {
		requests, err := v.Requests(dir)
		must(t, err)
		now[v.Name] = vectors.Digest(requests)
		t.Run(v.Name, func(t *testing.T) { oneVector(t, dir, v, requests) })
	}
	if *update {
		for name, digest := range now {
			if kept[name] == "" {
				kept[name] = digest
			}
		}
		must(t, vectors.Keep(dir, kept))
	}
	for _, fault := range vectors.Broken(kept, now) {
		t.Error(fault)
	}
}

func oneVector(t *testing.T, dir string, v *vectors.Vector, requests []string) {
	replies, err := v.Run(dir, (&message.Engine{}).Ask)
	must(t, err)
	changed := false
	for n, reply := range replies {
		is, err := vectors.Of(reply)
		must(t, err)
		was := v.Ask[n].Expect
		if was == nil {
			was = &vectors.Expect{}
		}
		for _, d := range was.Differences(is) {
			changed = true
			if *update {
				t.Logf("request %d: %s", n+1, d)
			} else {
				t.Errorf("request %d: %s", n+1, d)
			}
		}
		v.Ask[n].Expect = is
		refusalAlone(t, reply)
	}
	if changed && *update {
		must(t, v.Write(dir))
	}
	if ofCustomers(requests) {
		again, err := v.Run(dir, (&message.Customer{}).Ask)
		must(t, err)
		for n := range again {
			if string(again[n]) != string(replies[n]) {
				t.Errorf("request %d: the customer's engine answers differently", n+1)
			}
		}
	}
}

// refusalAlone: a refusal comes without any figure.
func refusalAlone(t *testing.T, reply []byte) {
	t.Helper()
	var members map[string]json.RawMessage
	must(t, json.Unmarshal(reply, &members))
	if string(members["kind"]) != `"refused"` {
		return
	}
	for name := range members {
		if !slices.Contains([]string{"id", "kind", "what", "path", "found", "expected", "text"}, name) {
			t.Errorf("a refusal with %s", name)
		}
	}
}

// ofCustomers says whether the customer's engine answers all of the requests.
func ofCustomers(requests []string) bool {
	for _, text := range requests {
		var r struct{ Ask string }
		if json.Unmarshal([]byte(text), &r) != nil || !slices.Contains(customerRequests, r.Ask) {
			return false
		}
	}
	return true
}

// TestVectorsCanFail: the comparison detects another figure, another digest, a changed
// request, a missing vector, and a member that the format does not have.
func TestVectorsCanFail(t *testing.T) {
	is, err := vectors.Of([]byte(`{"id":1,"kind":"range","rows":[{"low_minor":100,"note":"a"}]}`))
	must(t, err)
	for _, c := range []struct{ reply, want string }{
		{`{"id":1,"kind":"range","rows":[{"low_minor":101,"note":"a"}]}`, "rows[0].low_minor 100 → 101"},
		{`{"id":1,"kind":"range","rows":[{"note":"a"}]}`, "rows[0].low_minor 100 → nothing"},
		{`{"id":1,"kind":"range","rows":[{"low_minor":100,"note":"b"}]}`, "words only"},
		{`{"id":1,"kind":"refused","path":"x"}`, `kind range → refused {"path":"x"}`},
	} {
		other, err := vectors.Of([]byte(c.reply))
		must(t, err)
		if got := is.Differences(other); len(got) != 1 || got[0] != c.want {
			t.Errorf("want %q, got %q", c.want, got)
		}
	}
	if got := vectors.Broken(map[string]string{"a": "1", "b": "2", "c": "3"}, map[string]string{"a": "1", "b": "9", "d": "4"}); len(got) != 3 {
		t.Errorf("want three faults, got %v", got)
	}
	dir := t.TempDir()
	must(t, os.Mkdir(filepath.Join(dir, "cases"), 0o755))
	for _, text := range []string{`{"name":"x","about":"A.","ask":[{"request":{}}],"more":1}`, `{"name":"y","about":"A.","ask":[{"request":{}}]}`, `{"name":"x","about":"A","ask":[]}`} {
		must(t, os.WriteFile(filepath.Join(dir, "cases", "x.json"), []byte(text), 0o600))
		if _, err := vectors.Load(dir); err == nil {
			t.Errorf("taken: %s", text)
		}
	}
}
