package main

import (
	"fmt"
	"os"
	"os/exec"
	"runtime"
	"strings"
)

// tableOf writes one row for each sweep: the sizes, how much longer each takes than the
// base, and the exponent.
func tableOf(sweeps []sweep, o options) string {
	var b strings.Builder
	fmt.Fprintf(&b, "How time grows on %s/%s: medians of %d rounds (folders %d), all sizes in turn. Times are relative to the size marked 1; the last column is what that size took, in milliseconds. The exponent is that of a power law fitted to all sizes; 1 is linear. `make growth` measures it again.\n\n",
		runtime.GOOS, runtime.GOARCH, o.rounds, len(sweeps[len(sweeps)-1].took[0]))
	b.WriteString("| what | grows with | size: time | exponent | size 1 in ms |\n|---|---|---|---|---|\n")
	for k := range sweeps {
		s := &sweeps[k]
		var sizes []string
		for n, size := range s.sizes {
			sizes = append(sizes, fmt.Sprintf("%d: %.2f", size, s.times(n)))
		}
		fmt.Fprintf(&b, "| %s | %s | %s | %.2f | %.1f |\n", s.name, s.over, strings.Join(sizes, ", "), s.exponent(), s.median(s.base))
	}
	return b.String()
}

// plot draws every sweep of at least three sizes with gnuplot, on logarithmic axes,
// beside a line for linear growth.
func plot(sweeps []sweep, picture string) error {
	var data, curves strings.Builder
	n := 0
	for k := range sweeps {
		s := &sweeps[k]
		if len(s.sizes) < 3 || s.sizes[0] == 0 && len(s.sizes) < 4 {
			continue
		}
		fmt.Fprintf(&data, "$sweep%d << EOD\n", n)
		for at, size := range s.sizes {
			if size > 0 {
				fmt.Fprintf(&data, "%g %g\n", float64(size)/float64(s.sizes[s.base]), s.times(at))
			}
		}
		data.WriteString("EOD\n")
		fmt.Fprintf(&curves, ", $sweep%d with linespoints lc rgb '#333333' dt %d pt %d ps 0.6 title '%s, by %s'", n, 1+n%4, 1+n, s.name, s.over)
		n++
	}
	script := "set terminal svg size 760,520 font 'sans-serif,13' background '#ffffff'\nset output\nset logscale xy 2\nset key outside below\nset grid lc rgb '#dddddd'\n" +
		"set xlabel 'size relative to the one marked 1'\nset ylabel 'time relative to it'\n" +
		data.String() + "plot x with lines lc rgb '#9c3b24' title 'linear'" + curves.String() + "\n"
	c := exec.Command("gnuplot", "-")
	c.Stdin, c.Stderr = strings.NewReader(script), os.Stderr
	svg, err := c.Output()
	if err != nil {
		return fmt.Errorf("gnuplot: %w", err)
	}
	return os.WriteFile(picture, svg, 0o644)
}
