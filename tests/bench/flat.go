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
// lists: a line with a name and a length, then that many numbers, one per line. Reading
// a number as a float64 gives back the same bits; whole numbers are far below 2^53. The
// folder _tables says what each list holds.
func (c *Case) Flat(w io.Writer) error {
	out := bufio.NewWriter(w)
	out.WriteString(Format + "\n") // the writer keeps the first error until Flush
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
