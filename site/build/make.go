package build

import (
	"fmt"
	"io"
	"strings"
)

// Order says which folder to make.
type Order struct {
	Out       string // folder to write into
	RatesName string // how the rates file is called in what is said of it
	Rates     []byte
	Engine    string // a built engine, or "" to build one
	Today     string // YYYY-MM-DD
	Address   string // where the folder will stand on the web, or ""
}

// Make makes the folder that an order asks for, and then writes to out which rates are in
// it, with their check code and warnings, and how large it is. After an error it has
// written nothing there, because a check code would read as if the folder were there, and
// the folder is as it was, unless it could not be written.
func Make(o Order, out io.Writer) (Made, error) {
	r, err := Check(o.Rates, o.Today)
	if err != nil {
		return Made{}, fmt.Errorf("%s cannot be used:\n  %s", o.RatesName, strings.ReplaceAll(err.Error(), "\n", "\n  "))
	}
	if r.address, err = checkedAddress(o.Address); err != nil {
		return Made{}, err
	}
	e, err := FindEngine(o.Engine)
	if err != nil {
		return Made{}, err
	}
	m, err := Build(o.Out, r, e)
	if err != nil {
		return m, err
	}
	fmt.Fprintf(out, "%s. Rates check code %s\n", r.Line, r.CheckCode)
	for _, w := range r.Warnings {
		fmt.Fprintf(out, "  warning: %s\n", w)
	}
	fmt.Fprintf(out, "built %s in %s: %d files, %d bytes with their compressed variants\n", m.ID, o.Out, m.Files, m.Bytes)
	fmt.Fprintf(out, "a customer's first visit loads %d bytes (brotli), of them the engine %d (unpacked %d); the shop's pages load the whole engine, %d\n", m.FirstVisitBrotli, m.EngineBrotli, m.EngineBytes, m.WholeBrotli)
	return m, nil
}
