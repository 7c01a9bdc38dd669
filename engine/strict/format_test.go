package strict

import (
	"errors"
	"testing"
)

// A file with a byte order mark has the content and the places of the one without.
func TestByteOrderMark(t *testing.T) {
	const mark = "\xef\xbb\xbf"
	text := "{\"b\": 1,\n\"a\": [12.50]}"
	if got := canonical(t, mark+text); got != canonical(t, text) {
		t.Errorf("canonical text %s", got)
	}
	for _, text := range []string{"[1, x]", "{\"a\":\n[1 2]}", "{\"a\": tru"} {
		_, without := Parse([]byte(text))
		_, with := Parse([]byte(mark + text))
		var a, b *Error
		if !errors.As(without, &a) || !errors.As(with, &b) || *a != *b {
			t.Errorf("%q: %v without the mark, %v with it", text, without, with)
		}
	}
	list := "{\"f\": 1, \"jobs\": [{\"a\": 1},\n{\"a\": 2}]}"
	head, parts, err := SplitList([]byte(mark+list), "jobs", 1000, 5)
	if err != nil || len(parts) != 2 || parts[1].Line != 2 || head.Get("f").Whole(0, 9) != 1 {
		t.Errorf("a list with the mark: %v, %d parts", err, len(parts))
	}
}

func TestFormat(t *testing.T) {
	const newest = ` (this file was made by a newer version of Underpaint; open it with that version), found `
	for _, row := range []struct {
		format string // JSON
		want   string // the complaint, or "" when it is read
	}{
		{`"oak table 2"`, ""},
		{`"oak chair 1"`, ""},
		{`"oak table 3"`, `format: expected "oak table 2"` + newest + `"oak table 3" (line 1)`},
		{`"oak chair 10"`, `format: expected "oak chair 1"` + newest + `"oak chair 10" (line 1)`},
		{`"oak table 99999999999999999999999"`, `format: expected "oak table 2"` + newest + `"oak table 99999999999999999999999" (line 1)`},
		{`"oak table 1"`, `format: expected one of "oak table 2", "oak chair 1", found "oak table 1" (line 1)`},
		{`"oak table 03"`, `format: expected one of "oak table 2", "oak chair 1", found "oak table 03" (line 1)`},
		{`"oak table x"`, `format: expected one of "oak table 2", "oak chair 1", found "oak table x" (line 1)`},
		{`"oak table "`, `format: expected one of "oak table 2", "oak chair 1", found "oak table " (line 1)`},
		{`"elm table 3"`, `format: expected one of "oak table 2", "oak chair 1", found "elm table 3" (line 1)`},
		{`"3"`, `format: expected one of "oak table 2", "oak chair 1", found "3" (line 1)`},
		{`""`, `format: expected one of "oak table 2", "oak chair 1", found "" (line 1)`},
		{`3`, `format: expected one of "oak table 2", "oak chair 1", found 3 (line 1)`},
	} {
		f := parse(t, `{"format":`+row.format+`}`)
		got := f.Get("format").Format("oak table 2", "oak chair 1")
		if row.want == "" && (f.Err() != nil || `"`+got+`"` != row.format) {
			t.Errorf("%s: %q, %v", row.format, got, f.Err())
		}
		if row.want != "" && (f.Err() == nil || f.Err().Error() != row.want || got != "") {
			t.Errorf("%s:\n got %v\nwant %s", row.format, f.Err(), row.want)
		}
	}
}

func TestNearest(t *testing.T) {
	known := []string{"range", "stages", "sample"}
	for found, want := range map[string]string{"rnage": "range", "Stage": "stages", "sing": "", "": ""} {
		if got := Nearest(found, known); got != want {
			t.Errorf("%q: %q, want %q", found, got, want)
		}
	}
}
