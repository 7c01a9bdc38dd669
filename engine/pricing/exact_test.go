//go:build !js

// The wasm run leaves this out because it takes long.

package pricing

import (
	"math"
	"math/cmplx"
	"slices"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/exposure"
)

// Gauss-Hermite rules for a standard normal: nodes and weights by 3, 5 and 9
// points (Abramowitz and Stegun, table 25.10, nodes times √2, weights over √π).
var hermite = map[int][2][]float64{
	3: {{-1.7320508075688772, 0, 1.7320508075688772}, {1.0 / 6, 2.0 / 3, 1.0 / 6}},
	5: {{-2.8569700138728056, -1.3556261799742659, 0, 1.3556261799742659, 2.8569700138728056},
		{0.0112574113277207, 0.2220759220056126, 0.5333333333333333, 0.2220759220056126, 0.0112574113277207}},
	9: {{-4.512745863399783, -3.205429002856470, -2.076847978677830, -1.023255663789133, 0, 1.023255663789133, 2.076847978677830, 3.205429002856470, 4.512745863399783},
		{2.2345844007746e-5, 0.0027891413212318, 0.0499164067652179, 0.2440975028949394, 0.4063492063492063, 0.2440975028949394, 0.0499164067652179, 0.0027891413212318, 2.2345844007746e-5}},
}

// exact works out the distribution of a car's price without sampling. Given its shared
// factors, the items of a car are independent, so the characteristic function of the
// sum is a product, averaged over the factors level by level. It takes the rust model
// from its published form (package damage, doc.go) and not from that package's code.
type exact struct {
	t         *Table
	histories []exposure.History
	omega     []float64
	period    float64
	own       map[string]float64 // probability of a cause of its own, by part
	rust      [][]float64        // [item][((root × 5 + p) × 10 + q) × 6 + condition]
	phi       []complex128
}

func newExact(t *Table, histories []exposure.History, own map[string]float64, period float64, terms int) *exact {
	x := &exact{t: t, histories: histories, own: own, period: period, phi: make([]complex128, terms)}
	for n := range terms {
		x.omega = append(x.omega, 2*math.Pi*float64(n)/period)
	}
	for i := range t.items {
		x.rust = append(x.rust, x.conditions(i))
	}
	for a, za := range hermite[5][0] {
		for b, zb := range hermite[3][0] {
			x.addFactors(za, zb, hermite[5][1][a]*hermite[3][1][b])
		}
	}
	return x
}

// spread is the mean of exp(iω·amount(s)) over a standard normal z = s·q90, by
// the trapezoidal rule, which converges at once for smooth functions.
func spread(omega float64, amount func(s float64) float64) (v complex128) {
	const points, reach = 41, 5.0
	sum := 0.0
	for n := range points {
		z := reach * (2*float64(n)/(points-1) - 1)
		w := math.Exp(-z * z / 2)
		v += complex(w, 0) * cmplx.Exp(complex(0, omega*amount(z/q90)))
		sum += w
	}
	return v / complex(sum, 0)
}

// addFactors adds the characteristic function at one pair of whole-car factors.
func (x *exact) addFactors(zMetal, zOwn, weight float64) {
	t := x.t
	f := [car.Trades]float64{}
	rest := math.Exp(t.fig.sdOther * (t.fig.rho*zMetal + math.Sqrt(1-t.fig.rho*t.fig.rho)*zOwn))
	for trade := range f {
		f[trade] = rest
	}
	f[car.Metal] = math.Exp(t.fig.sdMetal * zMetal)
	rate := func(trade car.Trade) float64 {
		return 100 * t.Rates.Labour.Trades[trade].Rate.Published.Float()
	}
	fixed := float64(t.money.stripLabour + t.money.stripMaterials + t.primer(0) + t.money.materials)
	handling := 1 + t.Rates.Parts.Handling.Published.Float()/100
	sentHandling := 1 + t.Rates.SentOut.Handling.Published.Float()/100
	for n, omega := range x.omega {
		all := cmplx.Exp(complex(0, omega*fixed))
		for k := range t.after {
			l := &t.after[k]
			all *= spread(omega, func(s float64) float64 { return rate(l.trade) * f[l.trade] * l.hours.At(s) })
		}
		for k := range t.strip {
			l := &t.strip[k]
			if l.chargedAsWorked() {
				all *= spread(omega, func(s float64) float64 {
					h := f[l.trade] * l.hours.At(s)
					if l.ceiling > 0 {
						h = math.Min(h, l.ceiling)
					}
					return rate(l.trade) * h
				})
			}
		}
		for _, tp := range t.money.sent {
			if tp != nil {
				all *= spread(omega, func(s float64) float64 { return sentHandling * tp.At(s) })
			}
		}
		x.phi[n] += complex(weight, 0) * all * x.items(omega, f, rate, handling)
	}
}

// items is the mean over the shared factors of the product over the items.
func (x *exact) items(omega float64, f [car.Trades]float64, rate func(car.Trade) float64, handling float64) (sum complex128) {
	t := x.t
	byCondition := make([][car.Conditions]complex128, len(t.items))
	for i := range t.items {
		var way [car.Ways]complex128
		for w := range way {
			one := &t.items[i].ways[w]
			way[w] = spread(omega, func(s float64) (v float64) {
				for k := 0; k < one.n; k++ {
					v += rate(one.trade[k]) * f[one.trade[k]] * one.hours[k].At(s)
				}
				return v
			})
			if one.price != nil {
				way[w] *= spread(omega, func(s float64) float64 { return handling * one.price.At(s) })
			}
			if car.Way(w) >= car.Full { // primed one coat later, on the new part alone
				area := t.surfaces.byItem[i]
				way[w] *= cmplx.Exp(complex(0, omega*float64(t.onNewParts(area)+t.primer(area)-t.primer(0))))
			}
		}
		for c := range byCondition[i] {
			for w, p := range t.items[i].chance[c] {
				byCondition[i][c] += complex(p, 0) * way[t.items[i].instead[w]]
			}
		}
	}
	for h, history := range x.histories {
		for k, wk := range hermite[9][1] {
			for r, wr := range [damage.RepairStates]float64{.36, .45, .12, .07} { // a car over 40 years old
				root := (h*9+k)*damage.RepairStates + r
				sum += complex(history.Weight*wk*wr, 0) * x.groups(root, byCondition)
			}
		}
	}
	return sum
}

func (x *exact) groups(root int, phi [][car.Conditions]complex128) complex128 {
	product := complex128(1)
	for g := range x.t.Body.Groups {
		group := complex128(0)
		for p, wp := range hermite[5][1] {
			pockets := complex128(1)
			for _, k := range x.t.Body.Groups[g].Pockets {
				pocket := complex128(0)
				for q, wq := range sided[1] {
					v := complex(wq, 0)
					for _, i := range x.t.Body.Pockets[k].Items {
						row := x.rust[i][((root*len(hermite[5][0])+p)*len(sided[0])+q)*car.Conditions:]
						one := complex128(0)
						for c := range car.Conditions {
							one += complex(row[c], 0) * phi[i][c]
						}
						v *= one
					}
					pocket += v
				}
				pockets *= pocket
			}
			group += complex(wp, 0) * pockets
		}
		product *= group
	}
	return product
}

// below is the probability of a price below v, from the Fourier series of the density
// on the period.
func (x *exact) below(v float64) float64 {
	sum := v / x.period
	for n := 1; n < len(x.phi); n++ {
		sum += 2 / x.period * real(cmplx.Conj(x.phi[n])*(cmplx.Exp(complex(0, x.omega[n]*v))-1)/complex(0, x.omega[n]))
	}
	return sum
}

func (x *exact) quantile(p float64) float64 {
	low, high := 0.0, x.period
	for range 60 {
		if mid := (low + high) / 2; x.below(mid) < p {
			low = mid
		} else {
			high = mid
		}
	}
	return (low + high) / 2
}

// TestAgainstExactCalculation compares the sampled ends of the range with a calculation
// that samples nothing, for cars priced without openings, getting in and findings.
func TestAgainstExactCalculation(t *testing.T) {
	model, table := testTable(t, "two_door_unitary", "show")
	table.openings, table.above, table.seams, table.accesses, table.nuts = nil, nil, nil, nil, nil
	table.covers, table.panels = make([][]int, len(table.items)), nil
	table.money.wire = nil
	x := newExact(table, model.Histories, ownCauses(t), 6e7, 48)
	c, u, b := model.NewCar(), table.NewUniforms(), table.NewBill()
	const cars = 60000
	totals := make([]int64, cars)
	for n := range totals {
		damaged, priced := chance.NewStream(3, uint64(2*n)), chance.NewStream(3, uint64(2*n+1))
		model.Draw(&damaged, c)
		u.Fill(&priced)
		for i := range c.Finding {
			c.Finding[i], c.Dent[i], c.LeadFailed[i] = damage.NoFinding, false, 0
		}
		table.Price(c, "salt", u, b)
		totals[n] = int64(b.Total)
	}
	slices.Sort(totals)
	for _, p := range []float64{.1, .5, .8, .9} {
		got, want := chance.QuantileMinor(totals, p), x.quantile(p)
		density := (x.below(want+1e5) - x.below(want-1e5)) / 2e5
		se := math.Sqrt(p*(1-p)/cars) / density
		t.Logf("at %g: drawn %.0f, exact %.0f, standard error %.0f", p, got, want, se)
		if math.Abs(got-want) > 4*se {
			t.Errorf("at %g: drawn %.0f, exact %.0f, standard error %.0f", p, got, want, se)
		}
	}
}
