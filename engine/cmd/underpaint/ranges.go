package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"underpaint/engine/carfile"
	"underpaint/engine/message"
	"underpaint/engine/session"
	"underpaint/engine/wording"
)

func (c command) rangeCommand() *cobra.Command {
	cmd := c.named("range")
	rates, asJSON := ratesFlag(cmd, "the shop's rates"), jsonFlag(cmd)
	takesFiles(cmd)
	cmd.RunE = does(func(args []string) int {
		if len(args) != 1 || *rates == "" {
			return c.misused("range", "range needs one car file or one folder, and --rates RATES.json")
		}
		return c.ranges(args[0], *rates, *asJSON)
	})
	return cmd
}

// ranges shows the range of one car, or of a folder of them.
func (c command) ranges(name, rates string, asJSON bool) int {
	ratesText, err := c.read(rates)
	if err != nil {
		return c.fail(1, "%v", err)
	}
	if _, err := session.OpenShop(ratesText); err != nil {
		return c.fail(1, "%s: %v", rates, err)
	}
	if info, err := os.Stat(name); err == nil && info.IsDir() {
		return c.folder(name, ratesText, asJSON)
	}
	text, err := c.read(name)
	if err != nil {
		return c.fail(1, "%v", err)
	}
	var report bytes.Buffer
	if err := one(&report, text, ratesText, asJSON); err != nil {
		return c.fail(1, "%s: %v", name, err)
	}
	return c.print(report.Bytes())
}

// one works out one car. It writes nothing after an error.
func one(out io.Writer, car, rates []byte, asJSON bool) error {
	s, t, err := openSession(rates)
	if err != nil {
		return err
	}
	decoded, err := carfile.Decode(car)
	if err != nil {
		return err
	}
	if err := s.Open(decoded); err != nil {
		return err
	}
	r := s.Ranges(s.Settle())
	if asJSON {
		_, err = fmt.Fprintf(out, "%s\n", message.Encode(0, message.NewRange(s, t, r)))
		return err
	}
	return report(out, s, t, r)
}

// openSession opens a shop's rates and returns the Text that writes for that shop.
func openSession(rates []byte) (*session.Session, *wording.Text, error) {
	s, err := session.New(rates)
	if err != nil {
		return nil, nil, err
	}
	t, err := wording.For(s.Shop)
	return s, t, err
}

// folder works out every car file of a folder on all cores and prints the results in the
// order of the names. It skips files that cannot be used, with an error for each.
func (c command) folder(dir string, rates []byte, asJSON bool) int {
	names, err := filepath.Glob(filepath.Join(dir, "*.json"))
	if err != nil || len(names) == 0 {
		return c.fail(1, "%s: found no car files here; their names end in .json", dir)
	}
	slices.Sort(names)
	results := make([]bytes.Buffer, len(names))
	errs := make([]error, len(names))
	done := spread(len(names), func(n int) {
		text, err := c.read(names[n])
		if err == nil {
			err = one(&results[n], text, rates, asJSON)
		}
		errs[n] = err
	})
	code := 0
	for n := range names {
		<-done[n]
		if errs[n] != nil {
			code = c.fail(1, "%s: %v", names[n], errs[n])
			continue
		}
		if !asJSON {
			fmt.Fprintf(c.out, "%s\n%s\n", filepath.Base(names[n]), strings.Repeat("=", len(filepath.Base(names[n]))))
		}
		if k := c.print(results[n].Bytes()); k != 0 {
			return k
		}
		results[n] = bytes.Buffer{}
		c.progress(n+1, len(names))
	}
	return code
}

// spread runs work for 0 to n−1 on all cores. It closes the k-th channel when work(k) is
// done.
func spread(n int, work func(int)) []chan struct{} {
	done := make([]chan struct{}, n)
	for i := range done {
		done[i] = make(chan struct{})
	}
	next := make(chan int)
	for range runtime.GOMAXPROCS(0) {
		go func() {
			for i := range next {
				work(i)
				close(done[i])
			}
		}()
	}
	go func() {
		for i := range n {
			next <- i
		}
		close(next)
	}()
	return done
}

// progress updates one line on standard error if that is a terminal.
func (c command) progress(n, of int) {
	f, ok := c.complaints.(*os.File)
	if !ok {
		return
	}
	if info, err := f.Stat(); err != nil || info.Mode()&os.ModeCharDevice == 0 {
		return
	}
	fmt.Fprint(f, "\r"+strconv.Itoa(n)+" of "+strconv.Itoa(of)+" cars")
	if n == of {
		fmt.Fprintln(f)
	}
}
