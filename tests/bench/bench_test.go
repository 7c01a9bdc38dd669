package bench

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

const sampleRates = "../../engine/rates/data/sample.json"

// compared is how many cars are compared; more are in the race.
const compared = 2000

func load(t *testing.T) *Case {
	t.Helper()
	c, err := Load("car.json", sampleRates)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// jsCars are the cars that the peer in JavaScript makes of a flat file.
func jsCars(t *testing.T, flat string, n int) []Priced {
	t.Helper()
	path := filepath.Join(t.TempDir(), "flat.txt")
	if err := os.WriteFile(path, []byte(flat), 0o600); err != nil {
		t.Fatal(err)
	}
	const program = "peers/peer.mjs"
	if _, err := os.Stat(program); err != nil { // so that a changed peer is tested anew
		t.Fatal(err)
	}
	cmd := exec.Command("node", program, path)
	cmd.Stderr = os.Stderr
	peer, err := Start(cmd)
	if err != nil {
		t.Fatal(err)
	}
	got, err := peer.Show(Seed, n)
	if err != nil {
		t.Fatal(err)
	}
	if err := peer.Stop(); err != nil {
		t.Fatal(err)
	}
	return got
}

func flatOf(t *testing.T, c *Case) string {
	t.Helper()
	var b bytes.Buffer
	if err := c.Flat(&b); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// TestPeerAgrees holds the peer in JavaScript to the engine, to the minor unit and the
// thousandth of an hour, and shows that the comparison can fail: one figure of the
// flat file changed a little makes cars differ.
func TestPeerAgrees(t *testing.T) {
	c := load(t)
	var want []Priced
	c.Cars(Seed, compared, func(p Priced) { want = append(want, p) })
	flat := flatOf(t, c)
	if err := Differences(jsCars(t, flat, compared), want); err != nil {
		t.Error(err)
	}
	for _, name := range []string{"item_own", "finding_hours", "panel_times", "whole_car", "rate"} {
		if Differences(jsCars(t, nudged(t, flat, name), compared), want) == nil {
			t.Errorf("the first figure of %s is a hundredth larger, and no car differs", name)
		}
	}
}

// nudged is a flat file with the first figure of one list a hundredth larger.
func nudged(t *testing.T, flat, name string) string {
	t.Helper()
	head, rest, found := strings.Cut(flat, "\n"+name+" ")
	if !found {
		t.Fatalf("no list %s", name)
	}
	lines := strings.SplitN(rest, "\n", 3)
	var v float64
	if _, err := fmt.Sscan(lines[1], &v); err != nil || v == 0 {
		t.Fatalf("%s begins with %s", name, lines[1])
	}
	return head + "\n" + name + " " + lines[0] + "\n" + fmt.Sprint(v*1.01) + "\n" + lines[2]
}

// TestNothingAllocatedPerCar: a thousand cars more allocate nothing more.
func TestNothingAllocatedPerCar(t *testing.T) {
	c := load(t)
	of := func(n int) float64 {
		return testing.AllocsPerRun(3, func() { c.Cars(Seed, n, func(Priced) {}) })
	}
	if few, many := of(1), of(1001); few != many {
		t.Errorf("1 car allocates %v times, 1001 cars %v", few, many)
	}
}

// TestSeenIsRefused: a car of which something was seen cannot be written down.
func TestSeenIsRefused(t *testing.T) {
	text, err := os.ReadFile("car.json")
	if err != nil {
		t.Fatal(err)
	}
	seen := strings.Replace(string(text), `"looks":[]`, `"looks":[{"look":"bubbles","on":"outer_sill.left","result":"yes","by":"customer"}]`, 1)
	path := filepath.Join(t.TempDir(), "car.json")
	if err := os.WriteFile(path, []byte(seen), 0o600); err != nil {
		t.Fatal(err)
	}
	c, err := Load(path, sampleRates)
	if err != nil {
		t.Fatal(err)
	}
	if err := c.Flat(&bytes.Buffer{}); err == nil {
		t.Error("a car with a look was written down as one of which nothing was seen")
	}
}
