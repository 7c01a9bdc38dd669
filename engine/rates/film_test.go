package rates

import (
	"math"
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"underpaint/engine/car"
)

// Exact by definition: NIST Special Publication 811 (2008), appendix B (inch,
// foot; US gallon of 231 cubic inches).
const (
	litresPerGallon = 3.785411784
	m2PerFt2        = 0.09290304
	umPerMil        = 25.4
)

// spread is how far a gallon goes, in ft², by the rule that painters use.
func spread(solids, transfer, mil float64) float64 {
	const cubicInches, inchesPerMil, in2PerFt2 = 231, 0.001, 144
	return cubicInches / inchesPerMil / in2PerFt2 * solids * transfer / mil
}

// TestSpreadOfAGallon: 231 in³ at a thickness of one mil cover 1604 ft². Derived. A
// published specification of an epoxy-polyamide paint (SSPC, summary) has 420 ft² a
// gallon at 65 % solids and 2.5 mil, which the same rule gives.
func TestSpreadOfAGallon(t *testing.T) {
	one := Film{Coats: 1, DryUM: umPerMil, VolumeSolids: 1, Transfer: 1}
	ft2 := litresPerGallon / one.LitresPerM2() / m2PerFt2
	if math.Abs(ft2-1604.1667) > 0.001 {
		t.Errorf("a gallon of solids covers %.4f ft² at a mil, want 1604.1667", ft2)
	}
	published := Film{Coats: 1, DryUM: 2.5 * umPerMil, VolumeSolids: 0.65, Transfer: 1}
	if ft2 := litresPerGallon / published.LitresPerM2() / m2PerFt2; math.Abs(ft2-420) > 5 {
		t.Errorf("%.1f ft² a gallon, published 420", ft2)
	}
}

// TestFilmAgreesWithGallons: the metric rule agrees with the rule in US units for any
// film.
func TestFilmAgreesWithGallons(t *testing.T) {
	parameters := gopter.DefaultTestParametersWithSeed(20260603)
	properties := gopter.NewProperties(parameters)
	properties.Property("litres a square metre against gallons a square foot", prop.ForAll(
		func(coats, um, solids, transfer float64) bool {
			f := Film{Coats: coats, DryUM: um, VolumeSolids: solids, Transfer: transfer}
			want := litresPerGallon / m2PerFt2 / spread(solids, transfer, coats*um/umPerMil)
			return math.Abs(f.LitresPerM2()-want) <= 1e-12*want
		},
		gen.Float64Range(0.5, 12), gen.Float64Range(1, 2000), gen.Float64Range(0.02, 1), gen.Float64Range(0.1, 1)))
	properties.TestingRun(t)
}

// TestEpoxyForAFullSizeShell: painters reckon with 1.25 to 1.5 US gallons of epoxy for
// a full-size shell. That holds for gallons ready to spray at about one mil; two coats
// take twice as much (2.5 to 3), or 1.25 to 1.5 gallons of unmixed base that mixing one
// to one makes into that. Common practice, no published source. The shell: 310 kg of
// sheet 0.98 mm thick, both sides 867 ft², of which the gun reaches 74 %: 642 ft²
// (assumption).
func TestEpoxyForAFullSizeShell(t *testing.T) {
	const steelKG, sheetM, density, inReach = 310, 0.98e-3, 7850, 0.74
	area := 2 * steelKG / (density * sheetM) * inReach
	if ft2 := area / m2PerFt2; math.Abs(ft2-642) > 1 {
		t.Fatalf("a full-size shell has %.1f ft² in reach, want 642", ft2)
	}
	mil := Film{Coats: 1, DryUM: umPerMil, VolumeSolids: 0.45, Transfer: 0.65}
	if gallons := area * mil.LitresPerM2() / litresPerGallon; gallons < 1.25 || gallons > 1.5 {
		t.Errorf("%.3f US gallons ready to spray at a mil, want 1.25 to 1.5", gallons)
	}
	for _, sample := range [][]byte{Sample(), SampleUK()} {
		epoxy := material(t, decode(t, sample), "epoxy_primer")
		if epoxy.How != ByFilm || epoxy.Area != Reached || epoxy.Stage != StripStage {
			t.Fatalf("epoxy primer: %+v", epoxy)
		}
		if gallons := area * epoxy.UnitsPerM2() / litresPerGallon; gallons < 2.5 || gallons > 3 {
			t.Errorf("the sample's two coats take %.3f US gallons ready to spray, want 2.5 to 3", gallons)
		}
		one := epoxy.Film
		one.Coats = 1
		if gallons := area * one.LitresPerM2() / litresPerGallon; gallons < 1.25 || gallons > 1.5 {
			t.Errorf("one coat of the sample takes %.3f US gallons ready to spray, want 1.25 to 1.5", gallons)
		}
	}
}

func TestUnitsPerM2(t *testing.T) {
	r := decode(t, Sample())
	for id, want := range map[string]float64{
		"blast_media":  7.3,                       // per square metre, as published
		"cavity_wax":   0,                         // by car
		"epoxy_primer": 50. / (1000 * 0.45 * .65), // 2 × 25 µm
	} {
		if got := material(t, r, id).UnitsPerM2(); math.Abs(got-want) > 1e-12 {
			t.Errorf("%s: %v a square metre, want %v", id, got, want)
		}
	}
}

func material(t *testing.T, r *Rates, id string) Material {
	t.Helper()
	for _, m := range r.Materials {
		if m.ID == id {
			return m
		}
	}
	t.Fatalf("no material %s", id)
	return Material{}
}

// areas returns the areas of a two-door with a unitary body, in m², if nothing is replaced
// (assumption: of an outer skin 1.5 faces are reached, of sheet seen when open 1.6, of
// hidden sheet 1.7, of a closed box 0.8).
func areas(t *testing.T) map[string]float64 {
	body, err := car.Load("two_door_unitary")
	if err != nil {
		t.Fatal(err)
	}
	reached, outer := 0.0, 0.0
	for _, p := range body.Parts {
		a := p.AreaM2 * float64(len(p.Items))
		switch {
		case p.Face == car.Outer:
			reached += 1.5 * a
			outer += a
		case p.Face == car.SeenWhenOpen:
			reached += 1.6 * a
		case p.SeenWhenStripped:
			reached += 1.7 * a
		default:
			reached += .8 * a
		}
	}
	return map[string]float64{Reached: reached, Outer: outer, InsideAndUnder: reached - outer, NoArea: 1}
}
