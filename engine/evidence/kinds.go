package evidence

import (
	_ "embed"
	"math"
	"slices"
	"strconv"
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

	condition     [car.Conditions]float64  // chance of a yes by condition
	finding       [damage.Findings]float64 // chance of a yes by finding
	overDent      float64                  // chance of a yes over filler over a dent; 0 = as the finding
	falseYes      [witnesses]float64       // chance of a yes where there is no hole, by who looked; 0 = as the condition
	yesWhole      bool                     // its yes counts whole whoever looked
	goodIfCovered float64                  // how much a no counts on a freshly covered car; 1 = as on any
	tellsOfCover  bool                     // a yes says that the car may be freshly covered
	order         int                      // place in the data
}

// firstHole is the mildest condition that is a hole: pinholes.
const firstHole = 3

// ChanceOfYes is the chance, 0 to 1, that a careful look by the shop gives yes at
// an item in the given condition (0 = sound), with the given finding and with or
// without filler over a dent.
func (k Kind) ChanceOfYes(condition int, f damage.Finding, dent bool) float64 {
	switch {
	case k.AnswersTo == OfCondition:
		return k.condition[condition]
	case dent:
		return math.Max(k.finding[f], k.overDent)
	}
	return k.finding[f]
}

// yesBy is ChanceOfYes of a look by anyone: a customer reports a hole where there is
// none more often than the shop does.
func (k Kind) yesBy(w witness, condition int, f damage.Finding, dent bool) float64 {
	if k.falseYes[w] > 0 && condition < firstHole {
		return k.falseYes[w]
	}
	return k.ChanceOfYes(condition, f, dent)
}

// weights say how much a log likelihood counts, 0 to 1.
type weights struct{ customer, word, further float64 }

type table struct {
	kinds []Kind
	w     weights
	fresh [2]float64 // chance that fresh undercoat is found: on a car as it shows, freshly covered
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
	f.Keys("format", "weights", "fresh_undercoat", "looks")
	f.Get("format").OneOf("underpaint looks 2")
	w := f.Get("weights")
	w.Keys("customer", "sellers_word", "further", "source")
	t := &table{w: weights{w.Get("customer").Number(0, 1), w.Get("sellers_word").Number(0, 1), w.Get("further").Number(0, 1)}}
	w.Get("source").Text(200)
	c := f.Get("fresh_undercoat")
	c.Keys("as_it_shows", "freshly_covered", "source")
	for v, id := range []string{"as_it_shows", "freshly_covered"} {
		t.fresh[v] = c.Get(id).Number(leastChance, 1-leastChance)
	}
	c.Get("source").Text(200)
	for n, k := range f.Get("looks").Items() {
		t.kinds = append(t.kinds, readKind(k, n))
	}
	return t, f.Err()
}

func readKind(f strict.Field, order int) Kind {
	f.Keys("id", "name", "how", "needs", "caution", "customer_can", "by_side", "not_at_lead", "tells_of_cover",
		"yes_by_condition", "yes_by_finding", "false_yes_by", "bad_counts_whole", "good_when_covered_times", "source", "parts")
	k := Kind{ID: f.Get("id").Text(40), Name: words(f.Get("name")), How: words(f.Get("how")), Needs: words(f.Get("needs")),
		AnswersTo: OfCondition, CustomerCan: f.Get("customer_can").Bool(), BySide: f.Get("by_side").Bool(),
		NotAtLead: f.Get("not_at_lead").Bool(), Source: f.Get("source").Text(200), goodIfCovered: 1, order: order}
	if f.Has("caution") {
		k.Caution = words(f.Get("caution"))
	}
	for _, p := range f.Get("parts").Items() {
		k.Parts = append(k.Parts, p.Text(60))
	}
	if !f.Has("yes_by_finding") {
		k.readCondition(f)
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

// readCondition reads what a look at condition has.
func (k *Kind) readCondition(f strict.Field) {
	copy(k.condition[:], f.Get("yes_by_condition").Numbers(car.Conditions, leastChance, 1-leastChance))
	k.tellsOfCover = f.Has("tells_of_cover") && f.Get("tells_of_cover").Bool()
	k.yesWhole = f.Has("bad_counts_whole") && f.Get("bad_counts_whole").Bool()
	if f.Has("good_when_covered_times") {
		k.goodIfCovered = f.Get("good_when_covered_times").Number(0, 1)
	}
	if !f.Has("false_yes_by") {
		return
	}
	by := f.Get("false_yes_by")
	by.Keys(witnessIDs[:]...)
	for w, id := range witnessIDs {
		k.falseYes[w] = by.Get(id).Number(leastChance, 1-leastChance)
	}
	for _, v := range k.condition[:firstHole] {
		if v != k.falseYes[shop] {
			by.Get(ByShop).Complain("the first " + strconv.Itoa(firstHole) + " of yes_by_condition, which are the shop's")
		}
	}
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
