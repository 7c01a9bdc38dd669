package columns

import (
	"encoding/csv"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"
)

func write(t testing.TB, sep byte, rows ...[]string) string {
	t.Helper()
	w, err := NewWriter(sep, rows[0]...)
	for _, r := range rows[1:] {
		if err == nil {
			err = w.Row(r...)
		}
	}
	if err != nil {
		t.Fatal(err)
	}
	return w.Text()
}

// RFC 4180, section 2, rules 1 and 5 to 7, and its example of a doubled mark.
func TestWriteRFC4180(t *testing.T) {
	got := write(t, ',', []string{"aaa", "bbb", "ccc"}, []string{"zzz", "b\r\nbb", "b\"bb"}, []string{"a,b", " c", ""})
	want := "aaa,bbb,ccc\r\nzzz,\"b\r\nbb\",\"b\"\"bb\"\r\n\"a,b\",\" c\",\r\n"
	if got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

// A byte order mark that is part of a heading is not dropped.
func TestMarkInAHeading(t *testing.T) {
	name := ByteOrderMark + "one"
	table := read(t, write(t, ',', []string{name, "two"}, []string{"1", "2"}), []Column{{Name: name}})
	if len(table.Rows) != 1 || table.Rows[0].Cells[0].Text != "1" {
		t.Errorf("%+v", table)
	}
}

// Characters that begin a formula: OWASP, "CSV injection" (= + - @, tab, carriage
// return, line feed and the wide forms).
func TestFormulasAreNeutralised(t *testing.T) {
	for cell, want := range map[string]string{
		"=1+1": "'=1+1", "+A1": "'+A1", "-A1": "'-A1", "@SUM(A1)": "'@SUM(A1)", "\tx": "'\tx", "\rx": "'\rx", "\nx": "'\nx",
		" =1": "' =1", "\u00a0=1": "'\u00a0=1", "＝1": "'＝1", "'=1": "''=1", "''=1": "'''=1", "-5-5": "'-5-5", "+44 20": "'+44 20", "-": "'-", "-1.": "'-1.",
		"-5": "-5", "+5.25": "+5.25", "-1.234,50": "-1.234,50", "5": "5", "a=b": "a=b", "'tis": "'tis", "": "", "'": "'", "x\n=1": "x\n=1",
	} {
		if got := guard(cell); got != want {
			t.Errorf("%q: got %q, want %q", cell, got, want)
		}
		if back, safe := bare(guard(cell)); back != cell || !safe {
			t.Errorf("%q came back as %q, %v", cell, back, safe)
		}
		if _, safe := bare(cell); safe != (guard(cell) == cell || strings.HasPrefix(cell, "'")) {
			t.Errorf("%q accepted without apostrophe: %v", cell, safe)
		}
	}
}

func TestWriterRefuses(t *testing.T) {
	w, err := NewWriter(',', "a", "b")
	if err != nil {
		t.Fatal(err)
	}
	before := w.Text()
	for _, cells := range [][]string{{"x"}, {"x", "y", "z"}, {"x", "\x00"}, {"x", "\xff"}, {"x", strings.Repeat("y", MaxCell+1)}, {"x", "=" + strings.Repeat("y", MaxCell-1)}} {
		if err := w.Row(cells...); err == nil || !strings.Contains(err.Error(), "row ") {
			t.Errorf("%.20q: %v", cells, err)
		}
	}
	if w.Text() != before {
		t.Errorf("part of a refused row was written: %q", w.Text())
	}
	if _, err := NewWriter(','); err == nil {
		t.Error("a table without columns")
	}
	defer func() {
		if recover() == nil {
			t.Error("a bar as separator did not panic")
		}
	}()
	_, _ = NewWriter('|', "a")
}

var spicy = []string{"", " ", "=", "+", "-", "@", "'", "\"", ",", ";", "\t", "\r", "\n", "\r\n", "\u00a0", "\ufeff", "5", "1.234", "sill", "é", "＝"}

// cellsGen draws cells made of the pieces that break tables.
func cellsGen(n int) gopter.Gen {
	return gen.SliceOfN(4*n, gen.IntRange(0, len(spicy)-1)).Map(func(piece []int) []string {
		cells := make([]string, n)
		for i, p := range piece {
			cells[i/4] += spicy[p]
		}
		return cells
	})
}

var anyText = []Column{{Name: "one", Blank: true}, {Name: "two", Blank: true}, {Name: "three", Blank: true}}

// sameBack reports whether Read returns the rows as they were written. Read skips a row
// that has only spaces.
func sameBack(t testing.TB, sep byte, rows [][]string) bool {
	table, err := Read(ByteOrderMark+write(t, sep, append([][]string{{"one", "two", "three"}}, rows...)...), anyText)
	if err != nil || table.Refused != 0 || table.Separator != sep {
		t.Logf("%v %+v", err, table.Refusals)
		return false
	}
	k := 0
	for _, row := range rows {
		if blankCell(guard(row[0]) + guard(row[1]) + guard(row[2])) {
			continue
		}
		for i, cell := range row {
			if k >= len(table.Rows) || table.Rows[k].Cells[i].Text != cell {
				t.Logf("%q came back as %+v", row, table.Rows)
				return false
			}
		}
		k++
	}
	return k == len(table.Rows)
}

func TestWrittenIsReadBack(t *testing.T) {
	parameters := gopter.DefaultTestParametersWithSeed(20260607)
	parameters.MinSuccessfulTests = 3000
	properties := gopter.NewProperties(parameters)
	properties.Property("cells", prop.ForAll(func(a, b []string, sep int) bool {
		return sameBack(t, ",;\t"[sep], [][]string{a, b})
	}, cellsGen(3), cellsGen(3), gen.IntRange(0, 2)))
	properties.Property("no cell runs", prop.ForAll(func(a []string) bool {
		// Read as a spreadsheet would, with another reader.
		got, err := csv.NewReader(strings.NewReader(write(t, ',', a))).ReadAll()
		if err != nil {
			return false
		}
		for _, cell := range got[0] {
			if strings.ContainsAny(strings.TrimLeft(cell, " \u00a0")+"x", "=@\t") && strings.IndexAny(strings.TrimLeft(cell, " \u00a0"), "=@\t\n") == 0 {
				return false
			}
		}
		return true
	}, cellsGen(3).SuchThat(func(a []string) bool { return !emptyRecord(a) })))
	properties.Property("figures", prop.ForAll(func(units int64, decimals int, comma bool) bool {
		plain := figure{negative: units < 0, whole: strings.TrimLeft(short(float64(units)), "-"), decimals: "1234567"[:decimals]}.plain(Point)
		mark := Point
		if comma {
			mark = Comma
		}
		table := read(t, write(t, ';', []string{"price"}, []string{Figure(plain, mark)}), []Column{{Name: "price", Kind: Number}})
		if len(table.Rows) != 1 || len(table.Questions) != 0 {
			return false
		}
		back := table.Rows[0].Cells[0]
		return back.Text == plain || back.Text == plain+"0" && decimals == 3
	}, gen.Int64Range(-3000, 3000), gen.IntRange(0, 7), gen.Bool()))
	properties.TestingRun(t)
	for _, odd := range []string{"1.2340", "x", "", "1,5", "1,234", "01"} {
		if Figure(odd, Point) != odd {
			t.Errorf("%q is not a plain figure, but Figure changes it to %q", odd, Figure(odd, Point))
		}
	}
	if Figure("1.234", Point) != "1.2340" || Figure("-12.5", Comma) != "-12,5" {
		t.Error(Figure("1.234", Point), Figure("-12.5", Comma))
	}
}

// agreesWithLibrary splits a text with this package and with encoding/csv, if that
// accepts it, and compares.
func agreesWithLibrary(t *testing.T, text string, sep byte) {
	if strings.Contains(strings.ReplaceAll(text, "\r\n", ""), "\r") || len(text) > MaxCell {
		return // a lone carriage return ends a row here
	}
	library := csv.NewReader(strings.NewReader(text))
	library.Comma, library.FieldsPerRecord = rune(sep), -1
	want, err := library.ReadAll()
	if err != nil {
		return
	}
	s, rec, k := splitter{text: text, sep: sep, line: 1}, record{}, 0
	for s.next(&rec) {
		if len(rec.cells) == 1 && rec.cells[0] == "" && rec.fault == nil && !(k < len(want) && len(want[k]) == 1 && want[k][0] == "") {
			continue // the library skips empty lines
		}
		if rec.fault != nil && k < len(want) && len(want[k]) > MaxCells {
			return // the library does not bound the cells in a row
		}
		if rec.fault != nil || k >= len(want) || len(rec.cells) != len(want[k]) {
			t.Fatalf("%q: row %d is %q (%v), the library has %q", text, k, rec.cells, rec.fault, want)
		}
		for i, cell := range rec.cells {
			if strings.ReplaceAll(cell, "\r\n", "\n") != want[k][i] {
				t.Fatalf("%q: cell %q, the library has %q", text, cell, want[k][i])
			}
		}
		k++
	}
	if k != len(want) {
		t.Fatalf("%q: %d rows, the library has %d", text, k, len(want))
	}
}

func TestSplitAgainstLibrary(t *testing.T) {
	parameters := gopter.DefaultTestParametersWithSeed(20260608)
	parameters.MinSuccessfulTests = 5000
	properties := gopter.NewProperties(parameters)
	pieces := []string{"a", "b c", ",", ";", "\"", "\"\"", "\n", "\r\n", "\"x\"", ",\"y,z\""}
	properties.Property("as encoding/csv", prop.ForAll(func(at []int) bool {
		text := ""
		for _, i := range at {
			text += pieces[i]
		}
		agreesWithLibrary(t, text, ',')
		agreesWithLibrary(t, text, ';')
		return true
	}, gen.SliceOf(gen.IntRange(0, len(pieces)-1))))
	properties.TestingRun(t)
}

func FuzzRead(f *testing.F) {
	for _, seed := range []string{
		"Part,Price\nsill,12.50\n", "Part;Price\n\"floor\nfront\";\"1.234,50 €\"\n", "\ufeffPart\tPrice\r=A1\t5\r\n", "Part,Price\n\"lost,1\nx,1.234\n",
		"Part,Price\n18\" wheel,1 234,5\n'=x,-5\n", "Part\n\"\"\"\"\n",
	} {
		f.Add(seed)
	}
	want := []Column{prices[0], {Name: "Price", Kind: Number, Marks: []string{"€"}, Optional: true, Low: -1e6, High: 1e6}}
	f.Fuzz(func(t *testing.T, text string) {
		agreesWithLibrary(t, text, ',')
		table, err := Read(text, want)
		if err != nil {
			if _, ok := err.(*Refusal); !ok {
				t.Fatal(err)
			}
			return
		}
		if table.Refused > 0 && len(table.Refusals) == 0 {
			t.Fatal("rows refused without a word")
		}
		for _, r := range table.Refusals {
			if r.Row < 1 || r.Column < 1 || r.Found == "" || r.Expected == "" || !utf8.ValidString(r.Found) {
				t.Fatalf("%+v", r)
			}
		}
		for _, r := range table.Rows {
			price := r.Cells[1]
			if len(r.Cells) != 2 || !fit(r.Cells[0].Text) || r.Cells[0].Blank || table.Present[1] == price.Blank {
				t.Fatalf("%+v", r)
			}
			if f, ok := takeApart(price.Text, nil); !price.Blank && (!ok || f.plain(Point) != price.Text || price.Float() < -1e6 || price.Float() > 1e6) {
				t.Fatalf("figure %q", price.Text)
			}
		}
	})
}

func FuzzWrittenIsReadBack(f *testing.F) {
	f.Add("=1", "a\"b", "\r\n", 0)
	f.Add("'=1", " ", "x;y", 1)
	f.Add("-5", "\t", "\ufeff", 2)
	f.Add(" ", " ", "\n", 0)
	f.Fuzz(func(t *testing.T, a, b, c string, sep int) {
		for _, cell := range []string{a, b, c} {
			if !fit(cell) || len(cell) >= MaxCell {
				return
			}
		}
		if !sameBack(t, ",;\t"[uint(sep)%3], [][]string{{a, b, c}, {c, a, b}}) {
			t.Fatalf("%q %q %q", a, b, c)
		}
	})
}
