package evidence

import (
	_ "embed"
	"math"
	"slices"
	"sync"

	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/engine/strict"
)

//go:embed data/looks.json
var looksFile []byte

// What a look answers to.
const (
	OfCondition = "condition" // the rust itself
	OfFinding   = "finding"   // what an earlier repair left behind
)

// Kind is one way of looking at a part before the car is stripped. A yes means
// that what Name states was so; of a look at condition it is the bad result.
type Kind struct {
	ID          string
	Name        car.Words // a statement that the answer yes affirms
	How         car.Words // what to do, and what else gives the same answer
	Needs       car.Words // what one needs for it
	Caution     car.Words // empty where looking can hurt neither person nor car nor answer
	AnswersTo   string    // OfCondition or OfFinding
	Parts       []string  // part ids that it can be made at
	CustomerCan bool      // safe for a customer to do
	BySide      bool      // speaks of the worst item of a side
	NotAtLead   bool      // tells nothing beside a lead-loaded joint
	Source      string    // where its chances come from

	condition [car.Conditions]float64  // chance of a yes by condition
	finding   [damage.Findings]float64 // chance of a yes by finding
	overDent  float64                  // chance of a yes over filler over a dent; 0 = as the finding
	order     int                      // place in the data
}

// ChanceOfYes is the chance, 0 to 1, that a careful look gives yes at an item in
// the given condition (0 = sound), with the given finding and with or without
// filler over a dent.
func (k Kind) ChanceOfYes(condition int, f damage.Finding, dent bool) float64 {
	switch {
	case k.AnswersTo == OfCondition:
		return k.condition[condition]
	case dent:
		return math.Max(k.finding[f], k.overDent)
	}
	return k.finding[f]
}

// weights say how much a log likelihood counts, 0 to 1.
type weights struct{ customer, word, further float64 }

type table struct {
	kinds []Kind
	w     weights
}

var looks = sync.OnceValue(func() *table {
	t, err := readLooks(looksFile)
	if err != nil {
		panic("engine: internal error: looks data: " + err.Error())
	}
	return t
})

func readLooks(text []byte) (*table, error) {
	f, err := strict.Parse(text)
	if err != nil {
		return nil, err
	}
	f.Keys("format", "weights", "looks")
	f.Get("format").OneOf("underpaint looks 1")
	w := f.Get("weights")
	w.Keys("customer", "sellers_word", "further", "source")
	t := &table{w: weights{w.Get("customer").Number(0, 1), w.Get("sellers_word").Number(0, 1), w.Get("further").Number(0, 1)}}
	w.Get("source").Text(200)
	for n, k := range f.Get("looks").Items() {
		t.kinds = append(t.kinds, readKind(k, n))
	}
	return t, f.Err()
}

func readKind(f strict.Field, order int) Kind {
	f.Keys("id", "name", "how", "needs", "caution", "customer_can", "by_side", "not_at_lead", "yes_by_condition", "yes_by_finding", "source", "parts")
	k := Kind{ID: f.Get("id").Text(40), Name: words(f.Get("name")), How: words(f.Get("how")), Needs: words(f.Get("needs")),
		AnswersTo: OfCondition, CustomerCan: f.Get("customer_can").Bool(), BySide: f.Get("by_side").Bool(),
		NotAtLead: f.Get("not_at_lead").Bool(), Source: f.Get("source").Text(200), order: order}
	if f.Has("caution") {
		k.Caution = words(f.Get("caution"))
	}
	for _, p := range f.Get("parts").Items() {
		k.Parts = append(k.Parts, p.Text(60))
	}
	if !f.Has("yes_by_finding") {
		copy(k.condition[:], f.Get("yes_by_condition").Numbers(car.Conditions, leastChance, 1-leastChance))
		return k
	}
	k.AnswersTo = OfFinding
	yes := f.Get("yes_by_finding")
	yes.Keys(append([]string{"filler_over_dent"}, damage.FindingIDs[:]...)...)
	for n, id := range damage.FindingIDs {
		k.finding[n] = yes.Get(id).Number(leastChance, 1-leastChance)
	}
	if yes.Has("filler_over_dent") {
		k.overDent = yes.Get("filler_over_dent").Number(leastChance, 1-leastChance)
	}
	return k
}

// leastChance keeps every chance in the data away from 0 and 1, so that no
// answer can rule anything out (assumption).
const leastChance = 0.0001

func words(f strict.Field) car.Words {
	f.Keys("us", "uk")
	return car.Words{US: f.Get("us").Text(300), UK: f.Get("uk").Text(300)}
}

// Kinds lists all looks, in the order in which they are offered. The lists of
// parts are shared: read only.
func Kinds() []Kind { return slices.Clone(looks().kinds) }

// KindOf finds one look by id.
func KindOf(id string) (Kind, bool) {
	for _, k := range looks().kinds {
		if k.ID == id {
			return k, true
		}
	}
	return Kind{}, false
}

// Items are the items of a body that a look can be made at, by index; nil for an
// unknown look. For a look at a whole side they are the items of both sides.
func Items(b *car.Body, look string) (out []int) {
	k, ok := KindOf(look)
	if !ok {
		return nil
	}
	for i := range b.Items {
		if slices.Contains(k.Parts, b.PartOf(i).ID) {
			out = append(out, i)
		}
	}
	return out
}
