package chance

import (
	"math"
	"testing"
)

// sink keeps the compiler from dropping the benchmarked work.
var sink float64

func benchmarkOver(b *testing.B, low, high float64, f func(float64) float64) {
	const n = 1024
	var xs [n]float64
	s := NewStream(1, 2)
	for i := range xs {
		xs[i] = low + (high-low)*s.Uniform()
	}
	b.ReportAllocs()
	total := 0.0
	for i := 0; b.Loop(); i++ {
		total += f(xs[i%n])
	}
	sink = total
}

func BenchmarkExp(b *testing.B)            { benchmarkOver(b, -5, 5, Exp) }
func BenchmarkMathExp(b *testing.B)        { benchmarkOver(b, -5, 5, math.Exp) }
func BenchmarkLog(b *testing.B)            { benchmarkOver(b, 0, 10, Log) }
func BenchmarkMathLog(b *testing.B)        { benchmarkOver(b, 0, 10, math.Log) }
func BenchmarkNormalCDF(b *testing.B)      { benchmarkOver(b, -4, 4, NormalCDF) }
func BenchmarkNormalQuantile(b *testing.B) { benchmarkOver(b, 0, 1, NormalQuantile) }
func BenchmarkLogNormalCDF(b *testing.B)   { benchmarkOver(b, -8, 8, LogNormalCDF) }

func BenchmarkUniform(b *testing.B) {
	s := NewStream(1, 2)
	benchmarkOver(b, 0, 1, func(float64) float64 { return s.Uniform() })
}

func BenchmarkThreePointAt(b *testing.B) {
	t, err := NewThreePoint(2, 3, 7)
	if err != nil {
		b.Fatal(err)
	}
	benchmarkOver(b, -2, 2, func(s float64) float64 { return t.At(s) })
}

func BenchmarkDraw(b *testing.B) {
	t, err := NewThreePoint(2, 3, 7)
	if err != nil {
		b.Fatal(err)
	}
	s := NewStream(1, 2)
	benchmarkOver(b, 0, 1, func(float64) float64 { return t.Quantile(s.Uniform()) })
}

func BenchmarkMoments(b *testing.B) {
	t, err := NewThreePoint(2, 3, 7)
	if err != nil {
		b.Fatal(err)
	}
	benchmarkOver(b, 0, 1, func(float64) float64 { mean, _ := t.Moments(); return mean })
}
