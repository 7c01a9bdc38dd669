package bench

import (
	"bufio"
	"fmt"
	"io"
	"os/exec"
	"time"
)

// A peer reads one request per line from standard input:
//
//	show SEED N   answers with N lines "total tax hours weeks replaced own-cause", the first N cars
//	time SEED N   answers with one line "NANOSECONDS totals hours weeks replaced own-cause": how
//	              long N cars took, and the sums over them, so that no work can be left out
//
// and stops at the end of its input. Reading its tables and starting up are not timed.

// Timed is the answer to one request for time.
type Timed struct {
	Took                                     time.Duration
	Totals, Hours, Weeks, Replaced, OwnCause int64 // summed over the cars
}

// Peer is one running peer.
type Peer struct {
	cmd *exec.Cmd
	in  io.WriteCloser
	out *bufio.Reader
}

// Start starts a peer. Its error messages go to cmd.Stderr.
func Start(cmd *exec.Cmd) (*Peer, error) {
	in, err := cmd.StdinPipe()
	if err != nil {
		return nil, err
	}
	out, err := cmd.StdoutPipe()
	if err != nil {
		return nil, err
	}
	return &Peer{cmd, in, bufio.NewReader(out)}, cmd.Start()
}

// Show asks for the first n cars of a seed.
func (p *Peer) Show(seed uint64, n int) ([]Priced, error) {
	if _, err := fmt.Fprintf(p.in, "show %d %d\n", seed, n); err != nil {
		return nil, err
	}
	all := make([]Priced, n)
	for k := range all {
		x := &all[k]
		if _, err := fmt.Fscanf(p.out, "%d %d %d %d %d %d\n", &x.Total, &x.Tax, &x.Hours, &x.Weeks, &x.Replaced, &x.OwnCause); err != nil {
			return nil, fmt.Errorf("car %d: %w", k, err)
		}
	}
	return all, nil
}

// Time has the peer draw and price n cars of a seed, and returns how long it took.
func (p *Peer) Time(seed uint64, n int) (t Timed, err error) {
	if _, err = fmt.Fprintf(p.in, "time %d %d\n", seed, n); err != nil {
		return t, err
	}
	_, err = fmt.Fscanf(p.out, "%d %d %d %d %d %d\n", &t.Took, &t.Totals, &t.Hours, &t.Weeks, &t.Replaced, &t.OwnCause)
	return t, err
}

// Stop ends the peer and waits for it.
func (p *Peer) Stop() error {
	if err := p.in.Close(); err != nil {
		return err
	}
	return p.cmd.Wait()
}

// Answer answers requests as a peer until in ends.
func (c *Case) Answer(in io.Reader, out io.Writer) error {
	w := bufio.NewWriter(out)
	for lines := bufio.NewScanner(in); lines.Scan(); {
		var what string
		var seed uint64
		var n int
		if _, err := fmt.Sscanf(lines.Text(), "%s %d %d", &what, &seed, &n); err != nil {
			return err
		}
		switch what {
		case "show":
			c.Cars(seed, n, func(p Priced) { fmt.Fprintln(w, p.Total, p.Tax, p.Hours, p.Weeks, p.Replaced, p.OwnCause) })
		case "time":
			t := c.timed(seed, n)
			fmt.Fprintln(w, int64(t.Took), t.Totals, t.Hours, t.Weeks, t.Replaced, t.OwnCause)
		default:
			return fmt.Errorf("expected show or time, found %q", what)
		}
		if err := w.Flush(); err != nil {
			return err
		}
	}
	return nil
}

func (c *Case) timed(seed uint64, n int) (t Timed) {
	begun := time.Now()
	c.Cars(seed, n, func(p Priced) {
		t.Totals, t.Hours, t.Weeks = t.Totals+p.Total, t.Hours+p.Hours, t.Weeks+p.Weeks
		t.Replaced, t.OwnCause = t.Replaced+p.Replaced, t.OwnCause+p.OwnCause
	})
	t.Took = time.Since(begun)
	return t
}
