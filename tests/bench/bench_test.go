//go:build bench

package bench

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

const sampleRates = "../../engine/rates/data/sample.json"

// compared is the number of cars compared here; the race compares more.
const compared = 2000

func load(t *testing.T) *Case {
	t.Helper()
	c, err := Load("car.json", sampleRates)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// jsCars returns the cars that the JavaScript peer makes of a flat file.
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

// TestPeerAgrees compares the JavaScript peer with the engine, to the minor unit, the
// thousandth of an hour and the item, on the car of the race and on one that was
// restored thoroughly half the time. It also shows that the comparison can fail: when
// every other figure of one list changes a little, cars differ.
func TestPeerAgrees(t *testing.T) {
	c := load(t)
	want := cars(c)
	flat := flatOf(t, c)
	if err := Differences(jsCars(t, flat, compared), want); err != nil {
		t.Error(err)
	}
	differ(t, want, flat, "car_term", "group_term", "side_term", "threshold", "item_own", "item_knock", "item_repaired", "item_kinds", "condition_then",
		"item_dent", "lead_chance", "cause_times", "item_hurt", "item_hurt_then", "item_spared", "item_spared_then", "finding_hours", "panel_times", "whole_car", "rate")
	c = changed(t, `"patched_here_and_there"`, `"stripped_and_restored"`)
	want = cars(c)
	flat = flatOf(t, c)
	if err := Differences(jsCars(t, flat, compared), want); err != nil {
		t.Errorf("restored: %v", err)
	}
	differ(t, want, flat, "state_up_to", "mu", "item_kept", "item_found_replaced")
}

func cars(c *Case) (all []Priced) {
	c.Cars(Seed, compared, func(p Priced) { all = append(all, p) })
	return all
}

// differ fails the test for each list that can change without any car differing.
func differ(t *testing.T, want []Priced, flat string, lists ...string) {
	t.Helper()
	for _, name := range lists {
		if Differences(jsCars(t, nudged(t, flat, name), compared), want) == nil {
			t.Errorf("every other figure of %s is a hundredth larger, and no car differs", name)
		}
	}
}

// nudged returns a flat file with every other figure of one list a hundredth larger.
func nudged(t *testing.T, flat, name string) string {
	t.Helper()
	head, rest, found := strings.Cut(flat, "\n"+name+" ")
	if !found {
		t.Fatalf("no list %s", name)
	}
	lines := strings.Split(rest, "\n")
	n, err := strconv.Atoi(lines[0])
	if err != nil {
		t.Fatal(err)
	}
	for k := 1; k <= n; k += 2 {
		v, err := strconv.ParseFloat(lines[k], 64)
		if err != nil {
			t.Fatal(err)
		}
		lines[k] = fmt.Sprint(v * 1.01)
	}
	return head + "\n" + name + " " + strings.Join(lines, "\n")
}

// changed is the car of the race with one answer changed.
func changed(t *testing.T, what, to string) *Case {
	t.Helper()
	text, err := os.ReadFile("car.json")
	if err != nil {
		t.Fatal(err)
	}
	if strings.Count(string(text), what) != 1 {
		t.Fatalf("car.json: expected %s once", what)
	}
	path := filepath.Join(t.TempDir(), "car.json")
	if err := os.WriteFile(path, []byte(strings.Replace(string(text), what, to, 1)), 0o600); err != nil {
		t.Fatal(err)
	}
	c, err := Load(path, sampleRates)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// TestNothingAllocatedPerCar: a thousand more cars allocate nothing more.
func TestNothingAllocatedPerCar(t *testing.T) {
	c := load(t)
	of := func(n int) float64 {
		return testing.AllocsPerRun(3, func() { c.Cars(Seed, n, func(Priced) {}) })
	}
	if few, many := of(1), of(1001); few != many {
		t.Errorf("1 car allocates %v times, 1001 cars %v", few, many)
	}
}

// TestSeenIsRefused: a car of which something was seen has no flat file.
func TestSeenIsRefused(t *testing.T) {
	c := changed(t, `"looks":[]`, `"looks":[{"look":"bubbles","on":"outer_sill.left","result":"yes","by":"customer"}]`)
	if err := c.Flat(&bytes.Buffer{}); err == nil {
		t.Error("a car with a look was written down as one of which nothing was seen")
	}
}
