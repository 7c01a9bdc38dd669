package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strconv"
)

// timeFolder runs the command on folders of car files: larger and larger folders on one
// core, and one folder on more and more cores.
func timeFolder(o options) ([]sweep, error) {
	dir, err := os.MkdirTemp("", "growth")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	command := filepath.Join(dir, "underpaint")
	if out, err := exec.Command("go", "build", "-o", command, "./engine/cmd/underpaint").CombinedOutput(); err != nil {
		return nil, fmt.Errorf("%v\n%s", err, out)
	}
	sizes := []int{o.cars / 4, o.cars / 2, o.cars}
	folders := map[int]string{}
	for _, n := range sizes {
		if folders[n], err = folderOf(dir, n); err != nil {
			return nil, err
		}
	}
	run := func(cars, cores int) func() error {
		return func() error {
			c := exec.Command(command, "range", folders[cars], "--rates", o.rates, "--json")
			c.Env = append(os.Environ(), "GOMAXPROCS="+strconv.Itoa(cores))
			c.Stderr = os.Stderr
			return c.Run()
		}
	}
	var cores []int
	for k := 1; k <= runtime.NumCPU(); k *= 2 {
		cores = append(cores, k)
	}
	all := []sweep{
		{name: "the prompt on a folder, one core", over: "car files", sizes: sizes, work: func(size int) (func() error, error) { return run(size, 1), nil }},
		{name: "the prompt on a folder of " + strconv.Itoa(o.cars), over: "cores", sizes: cores, work: func(size int) (func() error, error) { return run(o.cars, size), nil }},
	}
	for k := range all {
		if err := all[k].time(max(3, o.rounds/3)); err != nil {
			return nil, err
		}
	}
	return all, nil
}

// folderOf writes n cars, each a few years younger or older and otherwise like the
// sample.
func folderOf(dir string, n int) (string, error) {
	folder := filepath.Join(dir, strconv.Itoa(n))
	if err := os.Mkdir(folder, 0o700); err != nil {
		return "", err
	}
	for k := range n {
		text := fmt.Sprintf(`{"format":"underpaint car 1","asked_in":2026,"bodies":["two_door_unitary"],"made":{"year":%d},`+
			`"life":[{"place":"mild","kept":"driven_all_year","road_years":"20_to_35"}],"standard":"show","scope":"whole_body"}`, 1960+k%12)
		if err := os.WriteFile(filepath.Join(folder, fmt.Sprintf("%05d.json", k)), []byte(text), 0o600); err != nil {
			return "", err
		}
	}
	return folder, nil
}
