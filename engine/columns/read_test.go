package columns

import (
	"strings"
	"testing"
)

// prices are the columns in most tests: a name and a price.
var prices = []Column{{Name: "Part", Also: []string{"Item"}}, {Name: "Price", Kind: Number, Marks: []string{"$", "€", "US$"}}}

func read(t testing.TB, text string, want []Column) Table {
	t.Helper()
	table, err := Read(text, want)
	if err != nil {
		t.Fatalf("%q: %v", text, err)
	}
	return table
}

// price reads a table of one price and returns it, or what was expected.
func price(t testing.TB, figure string, c Column) string {
	t.Helper()
	c.Name, c.Kind = "price", max(c.Kind, Number)
	w, err := NewWriter(';', "part", "price")
	if err != nil {
		t.Fatal(err)
	}
	w.text = append(w.text, `x;"`+strings.ReplaceAll(figure, `"`, `""`)+"\"\r\n"...)
	table := read(t, w.Text(), []Column{{Name: "part"}, c})
	if len(table.Rows) == 1 && table.Refused == 0 && len(table.Refusals) == 0 {
		return table.Rows[0].Cells[1].Text
	}
	if len(table.Rows) != 0 || table.Refused != 1 || len(table.Refusals) != 1 {
		t.Fatalf("%q: %+v", figure, table)
	}
	return "! " + table.Refusals[0].Expected
}

// Figures as written in various countries (Unicode CLDR 44 number symbols: group marks
// point, comma, apostrophe, no-break and narrow no-break space), one at a time. "?" marks
// a figure that must raise a question, "!" one that is refused.
func TestFigures(t *testing.T) {
	c := Column{Marks: []string{"US$", "$", "€", "EUR", "kr.", "kr"}}
	for figure, want := range map[string]string{
		"12": "12", "12.5": "12.5", "12,5": "12.5", "1.234,50 €": "1234.50", "1,234.50": "1234.50",
		"$1,234,567": "1234567", "1.234.567": "1234567", "1.234.567,8": "1234567.8", "US$ 5": "5", "5 US$": "5", "EUR5,00": "5.00",
		"1 234,50": "1234.50", "1\u00a0234,50": "1234.50", "1\u202f234\u202f567,5": "1234567.5", "1'234.50": "1234.50", "1’234.50": "1234.50",
		"1 234 567": "1234567", "1234567.891": "1234567.891", "1234.567": "1234.567", "123456": "123456", "kr. 5,5": "5.5", "5,5 kr.": "5.5", "5 kr": "5", "1 234.567": "1234.567", "0.500": "0.500", ".5": "0.5", ".500": "0.500", ",25": "0.25",
		"-5": "-5", "−5,5": "-5.5", "-€ 5": "-5", "€ -5": "-5", "+5": "5", "-0.00": "0.00", "007": "7", " 12 ": "12", "12.3456": "12.3456",
		"1.234": "?", "1,234": "?", "$999,000": "?", "12.345 €": "?", "-1.234": "?",
		"1.23.4": "!", "1,23,4": "!", "1.234,567,8": "!", "1,2.3": "!", "1.5,5": "!", "1,234.5.6": "!", "12.": "!", ".": "!", "-": "!", "$": "!",
		"1 23": "!", "1234 567": "!", "1 234.567 8": "!", "£5": "!", "5 %": "!", "abc": "!", "1e5": "!", "--5": "!", "-$-5": "!", "5-": "!",
		"(5)": "!", "0x10": "!", "NaN": "!", "Infinity": "!", "#REF!": "!", "١٢": "!", "1_000": "!", "=5": "!", "=A1*2": "!", "-A1": "!", "+B2": "!", "@SUM(A1)": "!",
		"123456789012345678901234567890123": "!",
	} {
		got := price(t, figure, c)
		switch {
		case want == "?" && !strings.HasPrefix(got, "! a clear decimal mark: "),
			want == "!" && !strings.HasPrefix(got, "! a figure, with US$ or $ or € or EUR or kr. or kr or no sign"),
			want != "?" && want != "!" && got != want:
			t.Errorf("%q: got %q, want %q", figure, got, want)
		}
		formula := strings.Contains("=A1*2 -A1 +B2 @SUM(A1) =5", figure) && len(figure) > 1 && strings.ContainsAny(figure, "A=B@")
		if formula != strings.HasSuffix(got, ", not a formula") {
			t.Errorf("%q: %q", figure, got)
		}
	}
}

// The answer to the question settles it.
func TestFiguresWithAnAnswer(t *testing.T) {
	for _, c := range []struct {
		figure       string
		point, comma string
	}{
		{"1.234", "1.234", "1234"}, {"1,234", "1234", "1.234"}, {"-12.345", "-12.345", "-12345"},
		{"1.5", "1.5", "! a decimal comma, as in the rest of the column"}, {"1,5", "! a decimal point, as in the rest of the column", "1.5"},
		{"1.234.567", "! a decimal point, as in the rest of the column", "1234567"},
	} {
		if got := price(t, c.figure, Column{Decimal: Point}); got != c.point {
			t.Errorf("%q with a point: %q", c.figure, got)
		}
		if got := price(t, c.figure, Column{Decimal: Comma}); got != c.comma {
			t.Errorf("%q with a comma: %q", c.figure, got)
		}
	}
	for figure, want := range map[string]string{"12": "12", "12.00": "12", "12,50": "!", "1.234,00": "1234", "4": "!", "101": "!", "5": "5", "100": "100"} {
		got := price(t, figure, Column{Kind: Whole, Low: 5, High: 2000, Decimal: Unknown})
		if figure == "101" || figure == "100" {
			got = price(t, figure, Column{Kind: Whole, Low: 5, High: 100})
		}
		if got != want && !(want == "!" && strings.HasPrefix(got, "! a whole number from 5 to ")) {
			t.Errorf("whole %q: %q", figure, got)
		}
	}
}

// One clear figure settles its own column and no other.
func TestDecimalsByColumn(t *testing.T) {
	want := []Column{{Name: "a", Kind: Number}, {Name: "b", Kind: Number}, {Name: "c", Kind: Number}, {Name: "d", Kind: Number}}
	table := read(t, "a;b;c;d\n1.234;1,234;1.234;7\n2.5;1,5;2.345;8\n", want)
	if table.Decimals[0] != Point || table.Decimals[1] != Comma || table.Decimals[2] != Unknown || table.Decimals[3] != Unknown {
		t.Errorf("decimals %v", table.Decimals)
	}
	if len(table.Questions) != 1 || table.Questions[0] != (Question{Asked: 2, Heading: "c", Row: 2, Found: "1.234", AsPoint: "1.234", AsComma: "1234"}) {
		t.Errorf("questions %+v", table.Questions)
	}
	if table.Refused != 2 || len(table.Rows) != 0 {
		t.Errorf("%+v", table)
	}
	want[2].Decimal = Comma
	table = read(t, "a;b;c;d\n1.234;1,234;1.234;7\n2.5;1,5;2.345;8\n", want)
	if len(table.Rows) != 2 || table.Rows[0].Cells[0].Text != "1.234" || table.Rows[0].Cells[1].Text != "1.234" ||
		table.Rows[0].Cells[2].Text != "1234" || table.Rows[1].Cells[3].Float() != 8 {
		t.Errorf("%+v", table.Rows)
	}
	// Two figures that contradict each other are both refused; whole numbers are accepted.
	table = read(t, "a\n1.5\n1,5\n7\n", want[:1])
	if len(table.Rows) != 1 || table.Rows[0].Number != 4 || table.Refused != 2 || len(table.Questions) != 1 ||
		table.Questions[0].Found != "1.5" || table.Questions[0].OtherFound != "1,5" || table.Questions[0].OtherRow != 3 {
		t.Errorf("%+v", table)
	}
}

func TestSeparatorsAndHeadings(t *testing.T) {
	for text, sep := range map[string]byte{
		"part,price\nsill,12.50\n":                     ',',
		"\ufeffpart;price\r\nsill;12.50\r\n":           ';',
		"part\tprice\rsill\t12.50":                     '\t',
		"\n,,\nPRICE,note,item\n12.50,\"a, b\",sill\n": ',', // any order, another heading, empty rows above
		"\"Price\";\" Part \"\n12.50;sill\n":           ';',
		"price, each;price;part\n1;12.50;sill\n":       ';', // one unknown heading contains a comma
	} {
		table := read(t, text, prices)
		if table.Separator != sep || len(table.Rows) != 1 || table.Rows[0].Cells[0].Text != "sill" || table.Rows[0].Cells[1].Text != "12.50" {
			t.Errorf("%q: %+v", text, table)
		}
	}
	table := read(t, "price,each  of-them\n3,4\n", []Column{{Name: "Each of_them", Kind: Whole}, {Name: "more", Optional: true}})
	if len(table.Rows) != 1 || table.Rows[0].Cells[0].Text != "4" || !table.Rows[0].Cells[1].Blank ||
		!table.Present[0] || table.Present[1] || len(table.Ignored) != 1 || table.Ignored[0] != "price" {
		t.Errorf("%+v", table)
	}
	single := read(t, "price\n1,5\n2,25\n", []Column{{Name: "price", Kind: Number}})
	if single.Separator != 0 || len(single.Rows) != 2 || single.Rows[1].Cells[0].Text != "2.25" {
		t.Errorf("single column: %+v", single)
	}
	for text, want := range map[string]string{
		"":                              "empty table",
		"\n\n":                          "empty table",
		"name,cost\n":                   "no known heading",
		"part,cost\nx,1\n":              "no column with this heading",
		"part,price,Price\n":            "a second time",
		"part,price,item\n":             "a second time",
		"\xff\xfep\x00":                 "UTF-16",
		strings.Repeat("x", MaxBytes+1): "bytes",
		"\"part,price\nx,1\n":           "no known heading",
	} {
		_, err := Read(text, prices)
		if _, isRefusal := err.(*Refusal); !isRefusal || !strings.Contains(err.Error(), want) {
			t.Errorf("%.30q: %v", text, err)
		}
	}
}

// Every refusal names its place, and the good rows are still returned.
func TestRefusalsAndGoodRows(t *testing.T) {
	text := "Part;Note;Price\n" + // row 1
		"sill;ok;$12.50\n" + // 2, line 2
		"\n" + // 3: skipped
		"\"floor\nfront\";;1,000.00\n" + // 4, lines 4 and 5
		"=HYPERLINK(1);;7\n" + // 5, line 6
		"wing;;£7\n" + // 6
		"door;;7;8\n" + // 7
		";;7\n" + // 8
		"\"lost;;7\n" + // 9, line 10: never closed
		"\"a\"b;;7\n" + // 10
		"boot;=1+1;7.25\n" + // 11: a formula in a column that was not requested
		"b\x7fot;;=7\n" + // 12: two refusals
		"bad\xff;;7\n" + // 13
		"roof\n" + // 14: ends early
		"18\" wheel;;\u00a07 €\n" // 15
	table := read(t, text, prices)
	var good []string
	for _, r := range table.Rows {
		good = append(good, r.Cells[0].Text+"="+r.Cells[1].Text)
	}
	if got, want := strings.Join(good, "|"), "sill=12.50|floor\nfront=1000.00|boot=7.25|18\" wheel=7"; got != want {
		t.Errorf("good rows %q, want %q", got, want)
	}
	if table.Rows[1].Number != 4 || table.Rows[1].Line != 4 || table.Rows[2].Number != 11 || table.Rows[2].Line != 12 {
		t.Errorf("places: %+v", table.Rows)
	}
	want := []Refusal{
		{5, 6, 1, "Part", `"=HYPERLINK(1)"`, "text, not a formula"},
		{6, 7, 3, "Price", `"£7"`, "a figure, with $ or € or US$ or no sign"},
		{7, 8, 4, "", `"8"`, "no more cells than headings (3)"},
		{8, 9, 1, "Part", "an empty cell", "text"},
		{9, 10, 1, "", "text after the closing quotation mark", "a separator"},
		{10, 11, 1, "", "text after the closing quotation mark", "a separator"},
		{12, 13, 1, "Part", `"b ot"`, "control characters"},
		{12, 13, 3, "Price", `"=7"`, "not a formula"},
		{13, 14, 1, "Part", "\"bad\uFFFD\"", "UTF-8"},
		{14, 15, 3, "Price", "an empty cell", "a figure"},
	}
	if table.Refused != 9 || len(table.Refusals) != len(want) {
		t.Errorf("%d rows refused: %+v", table.Refused, table.Refusals)
	}
	for i, w := range want {
		if i >= len(table.Refusals) {
			break
		}
		g := table.Refusals[i]
		if !strings.Contains(g.Expected, w.Expected) {
			t.Errorf("refusal %d expected %q, want %q", i, g.Expected, w.Expected)
		}
		if g.Expected = w.Expected; g != w {
			t.Errorf("refusal %d: %+v, want %+v", i, g, w)
		}
	}
	r := &table.Refusals[1]
	if got := r.Error(); got != `row 6, column 3 (Price): found "£7"; expected a figure, with $ or € or US$ or no sign` {
		t.Error(got)
	}
}

// Every kind of line end counts as one line, inside a cell and outside.
func TestLines(t *testing.T) {
	table := read(t, "part,price\r\n\"a\rb\r\nc\nd\",1\rx,2\n\ny,3\n", prices)
	if len(table.Rows) != 3 || table.Rows[0].Line != 2 || table.Rows[1].Line != 6 || table.Rows[2].Line != 8 || table.Rows[2].Number != 5 {
		t.Errorf("%+v", table)
	}
}

// A quotation mark that is never closed spoils its own row, not the rest of the table.
func TestUnclosedQuotationMark(t *testing.T) {
	table := read(t, "part,price\nsill,1\n\"floor,2\nwing,3\nroof,4\n", prices)
	if len(table.Rows) != 3 || table.Refused != 1 || table.Refusals[0].Row != 3 || !strings.Contains(table.Refusals[0].Found, "not closed") {
		t.Errorf("%+v", table)
	}
}

func TestBounds(t *testing.T) {
	rows := func(n int) string { return "part,price\n" + strings.Repeat("x,1\n", n) }
	if table := read(t, rows(MaxRows), prices); len(table.Rows) != MaxRows {
		t.Errorf("%d rows", len(table.Rows))
	}
	if _, err := Read(rows(MaxRows+1), prices); err == nil || !strings.Contains(err.Error(), "at most 100000 rows") {
		t.Errorf("a row too many: %v", err)
	}
	for n, good := range map[int]bool{MaxCell: true, MaxCell + 1: false} {
		for _, cell := range []string{strings.Repeat("y", n), `"` + strings.Repeat("y", n) + `"`, `"` + strings.Repeat(`""`, n) + `"`} {
			table := read(t, "part,price\n"+cell+",1\nx,2\n", prices)
			if len(table.Rows) != map[bool]int{true: 2, false: 1}[good] {
				t.Errorf("cell of %d bytes (%.3s): %d rows, %+v", n, cell, len(table.Rows), table.Refusals)
			}
		}
	}
	for n, good := range map[int]bool{MaxCells: true, MaxCells + 1: false} {
		table := read(t, "part,price\nx,1"+strings.Repeat(",", n-2)+"\n", prices)
		if (len(table.Rows) == 1) != good {
			t.Errorf("%d cells: %+v", n, table.Refusals)
		}
	}
	table := read(t, "part,price\n"+strings.Repeat("x,y\n", 5000), prices)
	if table.Refused != 5000 || len(table.Refusals) != MaxRefusals {
		t.Errorf("%d refused, %d kept", table.Refused, len(table.Refusals))
	}
}
