//go:build bench

package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"underpaint/tests/bench"
)

// runner is one program in the race.
type runner struct {
	name string
	what string // description for the table
	peer *bench.Peer
}

// The indices of the runners, as ratios name them.
const (
	native = iota
	wasm
	js
	inC
	inCHere
)

const peers = "tests/bench/peers/"

// start builds and starts every runner, in the order of the indices above.
func start(o options, dir, flat string) ([]*runner, error) {
	engine, module, c, here := filepath.Join(dir, "engine"), filepath.Join(dir, "engine.wasm"), filepath.Join(dir, "peer"), filepath.Join(dir, "peer-here")
	if err := build(nil, "go", "build", "-o", engine, "./tests/bench/enginepeer"); err != nil {
		return nil, err
	}
	if err := build([]string{"GOOS=js", "GOARCH=wasm"}, "go", "build", "-o", module, "./tests/bench/enginepeer"); err != nil {
		return nil, err
	}
	for target, processor := range map[string][]string{c: nil, here: {"-march=native"}} {
		args := append(processor, "-O3", "-Wall", "-Wextra", "-Werror", "-o", target, peers+"peer.c", "-lm")
		if err := build(nil, "gcc", args...); err != nil {
			return nil, err
		}
	}
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return nil, err
	}
	inNode := filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "go_js_wasm_exec")
	runners := []*runner{
		{name: "engine, native", what: "Go"},
		{name: "engine, wasm", what: "Go in V8, as in a browser"},
		{name: "peer in JavaScript", what: "typed arrays in V8, nothing allocated per car"},
		{name: "peer in C", what: "gcc -O3, for any processor of the kind, as Go builds"},
		{name: "the same", what: "gcc -O3 -march=native, for this one"},
	}
	for k, command := range [][]string{{engine, o.car, o.rates}, {inNode, module, o.car, o.rates}, {"node", peers + "peer.mjs", flat}, {c, flat}, {here, flat}} {
		cmd := exec.Command(command[0], command[1:]...)
		cmd.Stderr = os.Stderr
		if runners[k].peer, err = bench.Start(cmd); err != nil {
			return nil, fmt.Errorf("%s: %w", runners[k].name, err)
		}
	}
	return runners, nil
}

func build(env []string, name string, args ...string) error {
	cmd := exec.Command(name, args...)
	cmd.Env = append(os.Environ(), env...)
	cmd.Stderr = os.Stderr
	if err := cmd.Run(); err != nil {
		return fmt.Errorf("%s %s: %w", name, strings.Join(args, " "), err)
	}
	return nil
}

// timeAll times every runner once per round, and each round begins with another one, so
// that other load on the machine affects all alike. The first round warms up and does
// not count. The sums over the cars must be the same everywhere.
func timeAll(runners []*runner, o options) (rounds [][]float64, err error) {
	var want bench.Timed
	for round := -1; round < o.rounds; round++ {
		took := make([]float64, len(runners))
		for n := range runners {
			k := (n + round + 1) % len(runners)
			got, err := runners[k].peer.Time(bench.Seed, o.cars)
			if err != nil {
				return nil, fmt.Errorf("%s: %w", runners[k].name, err)
			}
			took[k], got.Took = float64(got.Took.Nanoseconds())/1000/float64(o.cars), 0
			if round < 0 && n == 0 {
				want = got
			}
			if got != want {
				return nil, fmt.Errorf("%s: sums %v, %s has %v", runners[k].name, got, runners[0].name, want)
			}
		}
		if round >= 0 {
			rounds = append(rounds, took)
		}
	}
	return rounds, nil
}
