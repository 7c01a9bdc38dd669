package strict

import (
	"encoding/json"
	"math"
	"strings"
	"testing"
)

func TestWriter(t *testing.T) {
	w := NewWriter()
	w.Object(func() {
		w.Key("b")
		w.Array(func() {
			w.Number(0.1)
			w.Whole(math.MinInt64)
			w.Bool(true)
			w.Null()
			w.Object(func() {})
			w.Array(func() {})
		})
		w.Key("a\"\n")
		w.String("é\u2028</script>\x01\xff")
	})
	want := `{"b":[0.1,-9223372036854775808,true,null,{},[]],"a\"\n":"é` + "\u2028" + `</script>\u0001` + "\ufffd" + `"}`
	if got := string(w.Bytes()); got != want || !json.Valid([]byte(got)) {
		t.Errorf("\n got %s\nwant %s", got, want)
	}
}

// RFC 8785, appendix B: 64-bit patterns and their number in JSON.
func TestWriterNumbers(t *testing.T) {
	for bits, want := range map[uint64]string{
		0x0000000000000000: "0",
		0x8000000000000000: "0",
		0x0000000000000001: "5e-324",
		0x8000000000000001: "-5e-324",
		0x7fefffffffffffff: "1.7976931348623157e+308",
		0xffefffffffffffff: "-1.7976931348623157e+308",
		0x4340000000000000: "9007199254740992",
		0xc340000000000000: "-9007199254740992",
		0x4430000000000000: "295147905179352830000",
		0x44b52d02c7e14af5: "9.999999999999997e+22",
		0x44b52d02c7e14af6: "1e+23",
		0x44b52d02c7e14af7: "1.0000000000000001e+23",
		0x444b1ae4d6e2ef4e: "999999999999999700000",
		0x444b1ae4d6e2ef4f: "999999999999999900000",
		0x444b1ae4d6e2ef50: "1e+21",
		0x3eb0c6f7a0b5ed8c: "9.999999999999997e-7",
		0x3eb0c6f7a0b5ed8d: "0.000001",
		0x41b3de4355555553: "333333333.3333332",
		0x41b3de4355555554: "333333333.33333325",
		0x41b3de4355555555: "333333333.3333333",
		0x41b3de4355555556: "333333333.3333334",
		0x41b3de4355555557: "333333333.33333343",
		0xbecbf647612f3696: "-0.0000033333333333333333",
		0x43143ff3c1cb0959: "1424953923781206.2",
	} {
		w := NewWriter()
		w.Number(math.Float64frombits(bits))
		if got := string(w.Bytes()); got != want {
			t.Errorf("%016x: %s, want %s", bits, got, want)
		}
	}
}

func TestWriterRefusesMistakes(t *testing.T) {
	for name, body := range map[string]func(w *Writer){
		"NaN":               func(w *Writer) { w.Number(math.NaN()) },
		"infinity":          func(w *Writer) { w.Number(math.Inf(1)) },
		"nothing":           func(w *Writer) { w.Bytes() },
		"two values":        func(w *Writer) { w.Null(); w.Null() },
		"name at the top":   func(w *Writer) { w.Key("a") },
		"name in an array":  func(w *Writer) { w.Array(func() { w.Key("a") }) },
		"member, no name":   func(w *Writer) { w.Object(func() { w.Null() }) },
		"name, no value":    func(w *Writer) { w.Object(func() { w.Key("a") }) },
		"two names running": func(w *Writer) { w.Object(func() { w.Key("a"); w.Key("b") }) },
		"name twice":        func(w *Writer) { w.Object(func() { w.Key("a"); w.Null(); w.Key("a"); w.Null() }) },
		"not complete":      func(w *Writer) { w.Array(func() { w.Bytes() }) },
	} {
		func() {
			defer func() {
				text, _ := recover().(string)
				if !strings.HasPrefix(text, "engine: internal error: ") {
					t.Errorf("%s: panic %q", name, text)
				}
			}()
			body(NewWriter())
		}()
	}
}
