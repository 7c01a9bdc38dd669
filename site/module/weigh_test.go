package module

import (
	"encoding/binary"
	"strings"
	"testing"
)

// named is a module of one imported function and three own ones, with their names.
func named(names ...string) []byte {
	section := func(out []byte, id byte, body []byte) []byte {
		out = binary.AppendUvarint(append(out, id), uint64(len(body)))
		return append(out, body...)
	}
	out := section([]byte(Start), importSection, []byte{1, 1, 'a', 1, 'b', 0, 0})
	out = section(out, codeSection, []byte{3, 2, 0, 0x0b, 3, 0, 1, 0x0b, 4, 0, 1, 1, 0x0b})
	list := []byte{byte(len(names))}
	for k, n := range names {
		list = append(append(list, byte(k), byte(len(n))), n...)
	}
	body := append([]byte{4, 'n', 'a', 'm', 'e', 1, byte(len(list))}, list...)
	return section(out, customSection, body)
}

// TestWeighByPackage: imported functions have no code but count in the numbering; a
// package is found by the longest path that fits, and what has none is said.
func TestWeighByPackage(t *testing.T) {
	code := named("outside", "example_engine_car.Load", "example_engine.Ask", "wasm_export_run")
	bySection, byPackage, err := Weigh(code, []string{"example/engine", "example/engine/car"})
	if err != nil {
		t.Fatal(err)
	}
	want := map[string]int{"example/engine/car": 2, "example/engine": 3, "other functions": 4}
	for _, w := range byPackage {
		if want[w.Name] != w.Bytes || w.Parts != 1 || len(w.Text) != w.Bytes {
			t.Errorf("%s: %d bytes in %d functions, expected %d", w.Name, w.Bytes, w.Parts, want[w.Name])
		}
		delete(want, w.Name)
	}
	if len(want) > 0 || byPackage[0].Bytes != 4 {
		t.Errorf("not there: %v; largest %d", want, byPackage[0].Bytes)
	}
	if len(bySection) != 2 || bySection[0].Name != "code" || bySection[0].Bytes != 13 {
		t.Errorf("sections: %+v", bySection)
	}
}

// TestWeighRefuses modules without names, and those cut short.
func TestWeighRefuses(t *testing.T) {
	whole := named("outside", "a.b", "a.c", "a.d")
	nameless := whole[:len(Start)+2+7+2+13]
	if _, _, err := Weigh(nameless, nil); err == nil || !strings.Contains(err.Error(), "expected names") {
		t.Errorf("without names: %v", err)
	}
	if _, _, err := Weigh(whole[:len(whole)-1], nil); err == nil {
		t.Error("cut short: passed")
	}
}
