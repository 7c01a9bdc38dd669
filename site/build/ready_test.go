package build

import (
	"bytes"
	"io"
	"testing"
	"testing/fstest"

	"underpaint/engine/rates"
)

// TestReadyEngines: engines that a program brings along give the folder of the engines
// themselves, byte for byte, and need no Go tool.
func TestReadyEngines(t *testing.T) {
	before := ready
	defer func() { ready = before }()
	ready = fstest.MapFS{
		"ready/engine.wasm.br":   {Data: brotliOf(small.Code)},
		"ready/customer.wasm.br": {Data: brotliOf(small.Customer)},
		"ready/wasm_exec.js":     {Data: small.Loader},
	}
	t.Setenv("PATH", t.TempDir())
	o := order(t, t.TempDir(), rates.Sample())
	if _, err := Make(o, io.Discard); err != nil {
		t.Fatal(err)
	}
	brought := o
	brought.Out, brought.Engine = t.TempDir(), ""
	if _, err := Make(brought, io.Discard); err != nil {
		t.Fatal(err)
	}
	sameTrees(t, tree(t, o.Out), tree(t, brought.Out))

	ready = fstest.MapFS{"ready/engine.wasm.br": {Data: brotliOf(small.Code)[:9]}}
	var said bytes.Buffer
	if _, err := Make(brought, &said); err == nil || said.Len() > 0 {
		t.Errorf("half an engine was taken: %v, %s", err, said.String())
	}
}
