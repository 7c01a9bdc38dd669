package session

import (
	"bytes"
	"slices"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/strict"
)

// TestFiguresCodeChanges: the code changes with any byte of a file, with a path, with a
// file left out, and where the end of one text becomes the beginning of the next.
func TestFiguresCodeChanges(t *testing.T) {
	files := car.DataFiles()
	seen := map[string]string{figuresCode(files): "as they are"}
	differs := func(what string, changed []strict.DataFile) {
		code := figuresCode(changed)
		if before, again := seen[code]; again || !strict.IsCheckCode(code) {
			t.Errorf("%s: %q, as %s", what, code, before)
		}
		seen[code] = what
	}
	for k, f := range files {
		for _, at := range []int{0, len(f.Text) - 1} {
			text := bytes.Clone(f.Text)
			text[at] ^= 1
			changed := slices.Clone(files)
			changed[k].Text = text
			differs(f.Path+" with another byte", changed)
		}
		changed := slices.Clone(files)
		changed[k].Path += "x"
		differs(f.Path+" renamed", changed)
		differs(f.Path+" left out", slices.Delete(slices.Clone(files), k, k+1))
	}
	moved := slices.Clone(files)
	end := len(moved[0].Text) - 1
	moved[1].Text = append([]byte{moved[0].Text[end]}, moved[1].Text...)
	moved[0].Text = moved[0].Text[:end]
	differs("a byte moved to the next file", moved)
	differs("path and text run together", []strict.DataFile{{Path: "a", Text: []byte("bc")}})
	differs("path and text run together elsewhere", []strict.DataFile{{Path: "ab", Text: []byte("c")}})
}

// TestOtherFigures: a stage without a code, or with today's, says nothing.
func TestOtherFigures(t *testing.T) {
	today, other := carfile.Stage{Stage: "walk_round", Figures: FiguresCode()}, carfile.Stage{Stage: "survey", Figures: "00000 00000"}
	for _, c := range []struct {
		stages []carfile.Stage
		want   carfile.Stage
	}{
		{nil, carfile.Stage{}},
		{[]carfile.Stage{{Stage: "walk_round"}, today}, carfile.Stage{}},
		{[]carfile.Stage{today, other}, other},
	} {
		one := &carfile.Car{}
		one.Stages = c.stages
		if got, differ := OtherFigures(one); got != c.want || differ != (c.want != carfile.Stage{}) {
			t.Errorf("%v: %v, %v, want %v", c.stages, got, differ, c.want)
		}
	}
}
