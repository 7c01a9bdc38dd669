//go:build bench

package bench

import (
	"bufio"
	"io"
	"strconv"

	"underpaint/engine/damage"
	"underpaint/engine/pricing"
)

// Format is the first line of a flat file.
const Format = "underpaint flat 1"

// Flat writes everything that drawing and pricing reads. After the first line come
// lists: a line with a name and a number, then that many numbers, one on each line.
// Every number is written so that reading it as a float64 gives the same bits;
// whole ones stay far below 2^53. What each list holds stands where it is made, in
// the folder _tables.
func (c *Case) Flat(w io.Writer) error {
	out := bufio.NewWriter(w)
	out.WriteString(Format + "\n") // the first fault is kept for Flush
	put := func(name string, values []float64) {
		out.WriteString(name + " " + strconv.Itoa(len(values)) + "\n")
		for _, v := range values {
			out.WriteString(strconv.FormatFloat(v, 'g', -1, 64) + "\n")
		}
	}
	if err := damage.Flat(c.Model, put); err != nil {
		return err
	}
	var places []string
	for _, history := range c.Model.Histories {
		places = append(places, history.LastClimate)
	}
	if err := pricing.Flat(c.Table, places, put); err != nil {
		return err
	}
	return out.Flush()
}
