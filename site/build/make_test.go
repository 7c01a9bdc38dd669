package build

import (
	"bytes"
	"io"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"underpaint/engine/rates"
)

// builtEngine writes the small engine with its loader and gives its path.
func builtEngine(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	for name, data := range map[string][]byte{engineName: small.Code, customerName: small.Customer, loaderName: small.Loader} {
		if err := os.WriteFile(filepath.Join(dir, name), data, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return filepath.Join(dir, engineName)
}

func order(t *testing.T, out string, text []byte) Order {
	return Order{Out: out, RatesName: "rates.json", Rates: text, Engine: builtEngine(t), Today: "2026-06-04"}
}

func TestMakeSaysWhatItMade(t *testing.T) {
	var said bytes.Buffer
	dir := t.TempDir()
	m, err := Make(order(t, dir, rates.Sample()), &said)
	if err != nil {
		t.Fatal(err)
	}
	r, err := rates.Decode(rates.Sample())
	if err != nil {
		t.Fatal(err)
	}
	all := tree(t, dir)
	if all[ratesName] != string(rates.Sample()) || !strings.Contains(all["build.json"], m.ID) || all["v-"+m.ID+"/engine.wasm"] == "" {
		t.Error("the rates, the name of the build or the engine are not in the folder")
	}
	for _, must := range []string{"Rates check code " + r.CheckCode(), m.ID, "first visit loads"} {
		if !strings.Contains(said.String(), must) {
			t.Errorf("it does not say %q:\n%s", must, said.String())
		}
	}
}

// TestWarningsAreSaid: rates that may be used, past their date.
func TestWarningsAreSaid(t *testing.T) {
	if r := sample(t); len(r.Warnings) > 0 {
		t.Errorf("the sample in its time: %v", r.Warnings)
	}
	var said bytes.Buffer
	o := order(t, t.TempDir(), rates.Sample())
	o.Today = "2031-01-01"
	if _, err := Make(o, &said); err != nil || !strings.Contains(said.String(), "warning: valid_until:") {
		t.Errorf("rates past their date: %v\n%s", err, said.String())
	}
}

// TestNoCheckCodeBesideAFailure: the rates are good and something else is not.
func TestNoCheckCodeBesideAFailure(t *testing.T) {
	for name, spoil := range map[string]func(o *Order){
		"no engine":  func(o *Order) { o.Engine = "none.wasm" },
		"no address": func(o *Order) { o.Address = "shop.example" },
		"no folder":  func(o *Order) { o.Out = o.Engine },
	} {
		var said bytes.Buffer
		o := order(t, t.TempDir(), rates.Sample())
		spoil(&o)
		if _, err := Make(o, &said); err == nil || said.Len() > 0 {
			t.Errorf("%s: %v, and it says %q", name, err, said.String())
		}
	}
}

// TestByteOrderMarkStaysOut: what a host hands out is the plain text.
func TestByteOrderMarkStaysOut(t *testing.T) {
	r, err := Check(append([]byte("\xef\xbb\xbf"), rates.Sample()...), "2026-06-04")
	if err != nil || !bytes.Equal(r.text, rates.Sample()) {
		t.Errorf("%v: %.20q", err, r.text)
	}
}

// TestRefusedRatesWriteNothing: each fault with its path, what was found and what
// was expected, and the folder of before as it was.
func TestRefusedRatesWriteNothing(t *testing.T) {
	dir := t.TempDir()
	if _, err := Make(order(t, dir, rates.Sample()), io.Discard); err != nil {
		t.Fatal(err)
	}
	before := tree(t, dir)
	good := string(rates.Sample())
	changed := func(old, new string) []byte {
		if strings.Count(good, old) == 0 {
			t.Fatalf("the sample has no %s", old)
		}
		return []byte(strings.Replace(good, old, new, 1))
	}
	for _, c := range []struct {
		name string
		text []byte
		says []string
	}{
		{"two faults", bytes.Replace(changed(`"words": "us"`, `"words": "french"`), []byte(`"USD"`), []byte(`"dollars"`), 1),
			[]string{"words: expected", `found "french"`, "currency: expected", `found "dollars"`, "line "}},
		{"cut short", rates.Sample()[:900], []string{"expected a closing", "found the end of the file"}},
		{"an error page", []byte("<!doctype html><title>404</title>"), []string{"the file: expected", "found"}},
		{"nothing", nil, []string{"an empty file"}},
		{"no text", []byte("{\"format\": \"\xff\"}"), []string{"expected UTF-8 text", "found byte 0xff"}},
		{"too large", bytes.Repeat([]byte(" "), maxRates+1), []string{"expected at most 2097152 bytes", "found 2097153"}},
		{"a real shop called invented", changed(`"invented": true`, `"invented": false`), []string{"terms[0]: expected terms of your own", `found "This shop is invented and so are its rates.`}},
		{"a newer version", changed(rates.Format, "underpaint rates 2"), []string{"format: expected", "newer version", `found "underpaint rates 2"`}},
	} {
		t.Run(c.name, func(t *testing.T) {
			fresh := filepath.Join(t.TempDir(), "new")
			for _, out := range []string{dir, fresh} {
				var said bytes.Buffer
				_, err := Make(order(t, out, c.text), &said)
				if err == nil {
					t.Fatal("a folder was made")
				}
				for _, must := range append(c.says, "rates.json") {
					if !strings.Contains(err.Error(), must) {
						t.Errorf("it does not say %q: %v", must, err)
					}
				}
				if said.Len() > 0 {
					t.Errorf("beside a refusal it says %s", said.String())
				}
			}
			if _, err := os.Stat(fresh); !os.IsNotExist(err) {
				t.Error("a new folder was begun")
			}
			sameTrees(t, before, tree(t, dir))
		})
	}
}

// TestRatesHaveNoVariants: a host would hand out those of the old rates after a
// shop has replaced the file alone. Variants of older builds are taken away.
func TestRatesHaveNoVariants(t *testing.T) {
	dir := t.TempDir()
	stale := []string{"rates.json.br", "rates.json.gz"}
	for _, name := range stale {
		if err := os.WriteFile(filepath.Join(dir, name), []byte("of before"), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	if _, err := Make(order(t, dir, rates.Sample()), io.Discard); err != nil {
		t.Fatal(err)
	}
	for _, name := range stale {
		if _, there := tree(t, dir)[name]; there {
			t.Errorf("%s is there", name)
		}
	}
}

// TestOtherRatesSameBuild: only the rates and the text written from them follow
// the rates: in every page the shop's name, in the customer's page more.
func TestOtherRatesSameBuild(t *testing.T) {
	us, uk := t.TempDir(), t.TempDir()
	a, errA := Make(order(t, us, rates.Sample()), io.Discard)
	b, errB := Make(order(t, uk, rates.SampleUK()), io.Discard)
	if errA != nil || errB != nil || a.ID != b.ID {
		t.Fatalf("builds %s and %s (%v, %v)", a.ID, b.ID, errA, errB)
	}
	one, other := tree(t, us), tree(t, uk)
	var differ []string
	for name := range one {
		if one[name] != other[name] && filepath.Ext(name) != ".br" && filepath.Ext(name) != ".gz" {
			differ = append(differ, name)
		}
	}
	slices.Sort(differ)
	if !slices.Equal(differ, []string{"about.html", "accessibility.html", "components.html", "embed.html", "figures/index.html", "index.html", "past-jobs/index.html", "privacy.html", "rates.json", "rates/index.html", "survey/index.html", "sw.js", "why/index.html", "words.html"}) {
		t.Errorf("these follow the rates: %v", differ)
	}
}

// TestInterruptedWriteLeavesTheOlderPages: the disk fails at every file in turn.
// As long as an older page stands, every file of its build is there unchanged.
func TestInterruptedWriteLeavesTheOlderPages(t *testing.T) {
	old := arranged(t, parts(t))
	newer := parts(t)
	newer["customer.css"] = append(newer["customer.css"], "\n/* newer */\n"...)
	next := arranged(t, newer)
	for _, failing := range []string{next.dir() + "engine.wasm", next.dir() + "survey.js", "build.json", ratesName, "about.html", "index.html", "sw.js"} {
		t.Run(failing, func(t *testing.T) {
			dir := t.TempDir()
			if _, err := old.write(dir); err != nil { // quick after the first time
				t.Fatal(err)
			}
			// A folder in the place where the file is made ready makes its writing fail.
			if err := os.MkdirAll(filepath.Join(dir, filepath.FromSlash(failing)+".part"), 0o755); err != nil {
				t.Fatal(err)
			}
			if _, err := next.write(dir); err == nil {
				t.Fatal("the write did not fail")
			}
			all := tree(t, dir)
			for name, data := range old.files {
				if !isPage(name) && name != "build.json" && name != ratesName && all[name] != string(data) {
					t.Errorf("%s of the older build is gone", name)
				}
			}
			for name := range maps.Keys(next.files) {
				if isPage(name) && all[name] != string(old.files[name]) && all[name] != string(next.files[name]) {
					t.Errorf("%s is neither the older nor the newer", name)
				}
			}
			if turn(failing) < 2 && all["index.html"] != string(old.files["index.html"]) {
				t.Error("a page of the newer build stands without its files")
			}
		})
	}
}
