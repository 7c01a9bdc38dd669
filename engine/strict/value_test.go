package strict

import (
	"math"
	"slices"
	"strings"
	"testing"
)

// parse reads a document that must be good.
func parse(t *testing.T, text string) Field {
	t.Helper()
	f, err := Parse([]byte(text))
	if err != nil {
		t.Fatalf("%q: %v", text, err)
	}
	return f
}

// Values that each getter must reject. The document is {"a": value} on line 2, so that
// the test also covers path and line.
func TestRefusedValues(t *testing.T) {
	text := func(f Field) { f.Text(5) }
	price := func(f Field) { f.Number(0, 10000) }
	anyNumber := func(f Field) { f.Number(math.Inf(-1), math.Inf(1)) }
	atLeast := func(f Field) { f.Number(0, math.Inf(1)) }
	whole := func(f Field) { f.Whole(1, 12) }
	anyWhole := func(f Field) { f.Whole(math.MinInt, math.MaxInt) }
	yes := func(f Field) { f.Bool() }
	one := func(f Field) { f.OneOf("dry", "damp", "sea") }
	amount := func(f Field) { f.Decimal() }
	date := func(f Field) { f.Date() }
	three := func(f Field) { f.Numbers(3, 0, 1) }
	const (
		wantText   = "a text in double quotes, at most 5 characters"
		wantWhole  = "a whole number from 1 to 12"
		wantAmount = "a plain amount such as 1240.50 (digits and a point only, at most 12 digits before it and 6 after)"
		wantDate   = `a date such as "2025-03-31" (year, month, day)`
		wantThree  = "a list [ ] of 3 numbers from 0 to 1"
	)
	for _, row := range []struct {
		value string
		get   func(Field)
		want  string // expected, found …
	}{
		{`5`, text, wantText + ", found 5"},
		{`null`, text, wantText + ", found null"},
		{`"sixsix"`, text, wantText + ", found 6 characters"},
		{`"a\nb"`, text, `a text in one line, without control characters, found "a\nb"`},
		{`"a\u0000"`, text, `a text in one line, without control characters, found "a\x00"`},
		{`"a\u007f"`, text, `a text in one line, without control characters, found "a\x7f"`},
		{`"a\u202eb"`, text, `a text in one line, without control characters, found "a\u202eb"`},
		{`" a"`, text, `a text without spaces at its start or end, found " a"`},
		{`"a\u00a0"`, text, "a text without spaces at its start or end, found \"a\u00a0\""},
		{`"abc"`, price, `a number from 0 to 10000, found "abc"`},
		{`"12"`, price, `a number from 0 to 10000, found "12"`},
		{`-1`, price, "a number from 0 to 10000, found -1"},
		{`-1e-300`, price, "a number from 0 to 10000, found -1e-300"},
		{`10000.0000001`, price, "a number from 0 to 10000, found 10000.0000001"},
		{`1e308`, price, "a number from 0 to 10000, found 1e308"},
		{`{"x":1}`, price, "a number from 0 to 10000, found a group { } of 1 entry"},
		{`[1,2]`, price, "a number from 0 to 10000, found a list [ ] of 2 entries"},
		{`true`, anyNumber, "a number, found true"},
		{`-1e308`, atLeast, "a number of at least 0, found -1e308"},
		{`0`, whole, wantWhole + ", found 0"},
		{`13`, whole, wantWhole + ", found 13"},
		{`1.5`, whole, wantWhole + ", found 1.5"},
		{`1e300`, whole, wantWhole + ", found 1e300"},
		{`9007199254740993`, anyWhole, "a whole number from -9007199254740991 to 9007199254740991, found 9007199254740993"},
		{`-9007199254740992`, anyWhole, "a whole number from -9007199254740991 to 9007199254740991, found -9007199254740992"},
		{`"3"`, whole, wantWhole + `, found "3"`},
		{`1`, yes, "true or false, found 1"},
		{`"true"`, yes, `true or false, found "true"`},
		{`null`, yes, "true or false, found null"},
		{`"wet"`, one, `one of "dry", "damp", "sea", found "wet"`},
		{`"Dry"`, one, `one of "dry", "damp", "sea", found "Dry"`},
		{`1`, one, `one of "dry", "damp", "sea", found 1`},
		{`1e3`, amount, wantAmount + ", found 1e3"},
		{`1234567890123`, amount, wantAmount + ", found 1234567890123"},
		{`0.1234567`, amount, wantAmount + ", found 0.1234567"},
		{`"1,240.50"`, amount, wantAmount + `, found "1,240.50"`},
		{`"$5"`, amount, wantAmount + `, found "$5"`},
		{`""`, amount, wantAmount + `, found ""`},
		{`"-"`, amount, wantAmount + `, found "-"`},
		{`"+5"`, amount, wantAmount + `, found "+5"`},
		{`"007"`, amount, wantAmount + `, found "007"`},
		{`"5."`, amount, wantAmount + `, found "5."`},
		{`".5"`, amount, wantAmount + `, found ".5"`},
		{`"NaN"`, amount, wantAmount + `, found "NaN"`},
		{`false`, amount, wantAmount + ", found false"},
		{`"2025-02-29"`, date, wantDate + `, found "2025-02-29"`},
		{`"1900-02-29"`, date, wantDate + `, found "1900-02-29"`},
		{`"2025-13-01"`, date, wantDate + `, found "2025-13-01"`},
		{`"2025-04-31"`, date, wantDate + `, found "2025-04-31"`},
		{`"2025-00-10"`, date, wantDate + `, found "2025-00-10"`},
		{`"2025-01-00"`, date, wantDate + `, found "2025-01-00"`},
		{`"0000-01-01"`, date, wantDate + `, found "0000-01-01"`},
		{`"31.03.2025"`, date, wantDate + `, found "31.03.2025"`},
		{`"2025-3-31"`, date, wantDate + `, found "2025-3-31"`},
		{`20250331`, date, wantDate + ", found 20250331"},
		{`[0,1]`, three, wantThree + ", found a list [ ] of 2 entries"},
		{`[0,1,0,1]`, three, wantThree + ", found a list [ ] of 4 entries"},
		{`{}`, three, wantThree + ", found a group { } of 0 entries"},
		{`"` + strings.Repeat("é", 100) + `"`, one, `one of "dry", "damp", "sea", found "` + strings.Repeat("é", 40) + `…"`},
	} {
		f := parse(t, "{\n\"a\": "+row.value+"}")
		row.get(f.Get("a"))
		if want := "a: expected " + row.want + " (line 2)"; f.Err() == nil || f.Err().Error() != want {
			t.Errorf("%s:\n got %v\nwant %s", row.value, f.Err(), want)
		}
	}
	f := parse(t, `{"a":[0,0.5,7]}`)
	f.Get("a").Numbers(3, 0, 1)
	if want := "a[2]: expected a number from 0 to 1, found 7 (line 1)"; f.Err() == nil || f.Err().Error() != want {
		t.Errorf("Numbers: %v, want %s", f.Err(), want)
	}
}

func TestAcceptedValues(t *testing.T) {
	f := parse(t, `{"text":"Grüße, 5 µm","none":"","zero":-0,"big":1e308,"whole":5.0,"exp":1e1,"most":9007199254740991,"yes":true,"no":false,
		"one":"sea","amount":-1240.50,"text amount":"999999999999.999999","zero amount":"-0","date":"2024-02-29",
		"century":"2000-02-29","list":[0,0.25,1],"nil":null}`)
	check := func(name string, ok bool) {
		t.Helper()
		if !ok || f.Err() != nil {
			t.Errorf("%s: wrong value, or a complaint: %v", name, f.Err())
		}
	}
	check("text", f.Get("text").Text(11) == "Grüße, 5 µm")
	check("none", f.Get("none").Text(0) == "")
	check("zero", math.Float64bits(f.Get("zero").Number(0, 1)) == 0)
	check("big", f.Get("big").Number(0, math.MaxFloat64) == 1e308)
	check("whole", f.Get("whole").Whole(0, 5) == 5)
	check("exp", f.Get("exp").Whole(10, 10) == 10)
	check("most", f.Get("most").Whole(0, math.MaxInt) == 9007199254740991)
	check("yes", f.Get("yes").Bool() && !f.Get("no").Bool())
	check("one", f.Get("one").OneOf("dry", "sea") == "sea")
	check("amount", f.Get("amount").Decimal() == "-1240.50")
	check("text amount", f.Get("text amount").Decimal() == "999999999999.999999")
	check("zero amount", f.Get("zero amount").Decimal() == "-0")
	check("date", f.Get("date").Date() == "2024-02-29" && f.Get("century").Date() == "2000-02-29")
	check("list", slices.Equal(f.Get("list").Numbers(3, 0, 1), []float64{0, .25, 1}))
	check("null", f.Get("nil").IsNull() && !f.Get("zero").IsNull())
	kinds := f.Kind() + f.Get("list").Kind() + f.Get("text").Kind() + f.Get("big").Kind() + f.Get("no").Kind() + f.Get("nil").Kind()
	check("kinds", kinds == "objectarraystringnumbertrue/falsenull")
}
