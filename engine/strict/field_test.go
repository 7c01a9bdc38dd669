package strict

import (
	"errors"
	"slices"
	"testing"
)

func TestPathsAndOrder(t *testing.T) {
	f := parse(t, `{"z":1,"periods":[{"years":1},{"years":2,"a b":[[3]]}]}`)
	if got := f.Names(); !slices.Equal(got, []string{"z", "periods"}) {
		t.Errorf("Names: %v", got)
	}
	items := f.Get("periods").Items()
	if len(items) != 2 || items[1].Get("years").Path() != "periods[1].years" {
		t.Errorf("Items: %v", items)
	}
	if got := items[1].Get("a b").Items()[0].Items()[0].Path(); got != `periods[1]["a b"][0][0]` {
		t.Errorf("path %s", got)
	}
	if f.Path() != "" || f.Err() != nil {
		t.Errorf("top: %q, %v", f.Path(), f.Err())
	}
}

// The first complaint stays, and getters return zero values after it.
func TestFirstComplaintStays(t *testing.T) {
	f := parse(t, `{"a":"x","b":5,"c":[1],"d":{"e":true},"s":"s","t":true,"n":null}`)
	other := parse(t, `{"b":5}`)
	f.Get("b").Whole(0, 4)
	first := f.Err()
	f.Get("missing").Get("deeper").Number(0, 1)
	f.Get("a").Complain("something else")
	if f.Err() != first || first.Error() != "b: expected a whole number from 0 to 4, found 5 (line 1)" {
		t.Errorf("complaint %v, then %v", first, f.Err())
	}
	g := f.Get("a")
	if f.Get("b").Number(0, 9) != 0 || f.Get("s").Text(9) != "" || f.Get("t").Bool() || f.Names() != nil ||
		f.Get("c").Items() != nil || f.Has("a") || f.Get("n").IsNull() || f.Kind() != "" || g.Decimal() != "" ||
		f.Get("c").Numbers(1, 0, 9) != nil || Canonical(f) != nil {
		t.Error("a getter returned a value after a complaint")
	}
	if other.Get("b").Whole(0, 9) != 5 || other.Err() != nil {
		t.Error("a complaint reached another document")
	}
}

func TestComplaints(t *testing.T) {
	for _, row := range []struct {
		name, text string
		read       func(f Field)
		want       string
	}{
		{"missing", "{\"shop\":\n{\"name\":\"x\"}}", func(f Field) { f.Get("shop").Get("rate") },
			"shop.rate: expected this entry, found nothing (line 2)"},
		{"missing at the top", `{}`, func(f Field) { f.Get("rate") }, "rate: expected this entry, found nothing (line 1)"},
		{"unknown, near", "{\"labor\":1,\n\"x\":1}", func(f Field) { f.Keys("paint", "labour", "x") },
			`the file: expected "labour", found the unknown name "labor" (line 1)`},
		{"unknown, value on the next line", "{\n\"agr\":\n1}", func(f Field) { f.Keys("age") },
			`the file: expected "age", found the unknown name "agr" (line 2)`},
		{"unknown, half of it different", `{"rude":1}`, func(f Field) { f.Keys("rate") }, `the file: expected one of "rate", found the unknown name "rude" (line 1)`},
		{"unknown, swapped", `{"raet":1}`, func(f Field) { f.Keys("date", "rate") }, `the file: expected "rate", found the unknown name "raet" (line 1)`},
		{"unknown, capitals", `{"a":{"RATE":1}}`, func(f Field) { f.Get("a").Keys("date", "rate") }, `a: expected "rate", found the unknown name "RATE" (line 1)`},
		{"unknown, far", "{\"rate\":1,\n \"colour\":2}", func(f Field) { f.Keys("rate", "hours") },
			`the file: expected one of "rate", "hours", found the unknown name "colour" (line 2)`},
		{"unknown, none known", `{"a":1}`, func(f Field) { f.Keys() }, `the file: expected no entries here, found the unknown name "a" (line 1)`},
		{"unknown, many", `{"zzzzz":1}`, func(f Field) { f.Keys("a", "b", "c", "d", "e", "f", "g", "h", "i", "j", "k", "l", "m") },
			`the file: expected one of "a", "b", "c", "d", "e", "f", "g", "h", "i", "j", "k", "l", …, found the unknown name "zzzzz" (line 1)`},
		{"no group", `[1]`, func(f Field) { f.Keys("a") }, "the file: expected a group { } of named entries, found a list [ ] of 1 entry (line 1)"},
		{"Get of no group", `{"a":5}`, func(f Field) { f.Get("a").Get("b") }, "a: expected a group { } of named entries, found 5 (line 1)"},
		{"Has of no group", `{"a":"t"}`, func(f Field) { f.Get("a").Has("b") }, `a: expected a group { } of named entries, found "t" (line 1)`},
		{"Names of no group", `{"a":null}`, func(f Field) { f.Get("a").Names() }, "a: expected a group { } of named entries, found null (line 1)"},
		{"no list", `{"a":{}}`, func(f Field) { f.Get("a").Items() }, "a: expected a list [ ], found a group { } of 0 entries (line 1)"},
		{"own words", "{\"a\":\n7}", func(f Field) { f.Get("a").ComplainFound("7 years", "at most 5 years") },
			"a: expected at most 5 years, found 7 years (line 2)"},
		{"own expectation", "{\"a\":\n7}", func(f Field) { f.Get("a").Complain("a year before 1980") }, "a: expected a year before 1980, found 7 (line 2)"},
	} {
		f := parse(t, row.text)
		row.read(f)
		if f.Err() == nil || f.Err().Error() != row.want {
			t.Errorf("%s:\n got %v\nwant %s", row.name, f.Err(), row.want)
		}
	}
}

func TestZeroField(t *testing.T) {
	var f Field
	f.Complain("x")
	if f.Get("a").Number(0, 1) != 0 || f.Kind() != "" || f.Path() != "" || f.Items() != nil {
		t.Error("the zero Field returned a value")
	}
	var e *Error
	if !errors.As(f.Err(), &e) || !errors.As(f.Get("a").Err(), &e) {
		t.Errorf("the zero Field says that all is well: %v", f.Err())
	}
}

// Optimal string alignment distances, by hand.
func TestDistance(t *testing.T) {
	for _, row := range []struct {
		a, b string
		want int
	}{{"", "", 0}, {"", "abc", 3}, {"kitten", "sitting", 3}, {"ab", "ba", 1}, {"ca", "abc", 3}, {"rate", "rates", 1}, {"ä", "a", 1}} {
		if got := distance([]rune(row.a), []rune(row.b)); got != row.want {
			t.Errorf("%q to %q: %d, want %d", row.a, row.b, got, row.want)
		}
	}
}
