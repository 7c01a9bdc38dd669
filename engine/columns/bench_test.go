package columns

import (
	"strconv"
	"strings"
	"testing"
	"time"
)

// large is a table of MaxRows rows and six columns, three of figures.
func large() string {
	var b strings.Builder
	b.WriteString("part;way;low;likely;high;note\n")
	for i := range MaxRows {
		b.WriteString("\"panel " + strconv.Itoa(i) + "\";section;" + strconv.Itoa(100+i%900) + ",50;1.234,50;2.345,00 €;\n")
	}
	return b.String()
}

var largeColumns = []Column{
	{Name: "part"}, {Name: "way"}, {Name: "low", Kind: Number}, {Name: "likely", Kind: Number},
	{Name: "high", Kind: Number, Marks: []string{"€"}}, {Name: "note", Blank: true},
}

func BenchmarkRead100000Rows(b *testing.B) {
	text := large()
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		table, err := Read(text, largeColumns)
		if err != nil || len(table.Rows) != MaxRows {
			b.Fatal(err, len(table.Rows))
		}
	}
}

func BenchmarkWrite100000Rows(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		w, _ := NewWriter(';', "part", "way", "low", "likely", "high", "note")
		for range MaxRows {
			if err := w.Row("panel", "section", "100,50", "1234,50", "2345,00", "=x"); err != nil {
				b.Fatal(err)
			}
		}
	}
}

// Texts designed to be slow take no longer per byte than ordinary ones. If the time were
// quadratic in their length, they would take a minute.
func TestHostileTextsAreQuick(t *testing.T) {
	for name, row := range map[string]string{
		"marks never closed": "\"x\n", "doubled marks": "\"\"\"\"\"\"\"\"\"\n", "a mark and pairs": "a,\"\"\"\" ,\"\n", "separators": strings.Repeat(",", 150) + "\n",
		"marks in the middle": "x\"\",\"\"\"\"\n", "groups": "x,1 111 111 111 111 111 111 111\n", "nothing": "\n",
	} {
		start := time.Now()
		_, err := Read("part,price\n"+strings.Repeat(row, min(MaxRows, (MaxBytes-20)/len(row))), prices)
		if took := time.Since(start); err != nil || took > 5*time.Second {
			t.Errorf("%s: %v, %v", name, took, err)
		}
	}
	start := time.Now()
	if _, err := Read("part,price\n\""+strings.Repeat("\"\"", MaxBytes/2-20), prices); err != nil || time.Since(start) > 5*time.Second {
		t.Errorf("one long cell: %v, %v", time.Since(start), err)
	}
}
