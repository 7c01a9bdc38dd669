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

// What a check is about.
const (
	OfCondition = "condition" // the rust itself
	OfFinding   = "finding"   // traces of an earlier repair
)

// Kind is one way of checking a part before the car is stripped. A yes means that the
// statement in Name is true; for a check of condition that is the bad result.
type Kind struct {
	ID          string
	Name        car.Words // a statement that the answer yes affirms
	How         car.Words // what to do, and what else gives the same answer
	Needs       car.Words // the tools it needs
	Caution     car.Words // empty if the check can harm neither the person nor the car nor the answer
	AnswersTo   string    // OfCondition or OfFinding
	Parts       []string  // ids of the parts it can be made on
	CustomerCan bool      // safe for a customer to do
	BySide      bool      // evidence on the worst item of a side
	NotAtLead   bool      // gives no information beside a lead-loaded joint
	Source      string    // source of its chances

	condition     [car.Conditions]float64  // chance of a yes by condition
	finding       [damage.Findings]float64 // chance of a yes by finding
	overDent      float64                  // chance of a yes on filler over a dent; 0 = same as for the finding
	falseYes      [witnesses]float64       // chance of a yes where there is no hole, by who checked; 0 = by condition
	yesWhole      bool                     // a yes counts in full, whoever checked
	goodIfCovered float64                  // how much a no counts on a freshly covered car; 1 = as on any car
	tellsOfCover  bool                     // a yes is evidence that the car is freshly covered
	order         int                      // position in the data
}

// firstHole is the mildest condition that is a hole: pinholes.
const firstHole = 3

// ChanceOfYes is the chance, 0 to 1, that a careful check by the shop gives yes on an
// item in the given condition (0 = sound), with the given finding and with or without
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

// yesBy is ChanceOfYes for a check by anyone. A customer reports a hole where there is
// none more often than the shop does.
func (k Kind) yesBy(w witness, condition int, f damage.Finding, dent bool) float64 {
	if k.falseYes[w] > 0 && condition < firstHole {
		return k.falseYes[w]
	}
	return k.ChanceOfYes(condition, f, dent)
}

// weights are factors on log likelihoods, 0 to 1.
type weights struct{ customer, word, further float64 }

type table struct {
	kinds []Kind
	w     weights
	fresh [2]float64 // chance of finding fresh undercoat: on a car as it shows, on a freshly covered one
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

// readCondition reads the fields of a check of condition.
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
			by.Get(ByShop).Complain("the value of the first " + strconv.Itoa(firstHole) + " of yes_by_condition, which are the shop's")
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

// Kinds lists all checks in the order in which they are offered. The lists of parts are
// shared: read only.
func Kinds() []Kind { return slices.Clone(looks().kinds) }

// KindOf finds a check by its id.
func KindOf(id string) (Kind, bool) {
	for _, k := range looks().kinds {
		if k.ID == id {
			return k, true
		}
	}
	return Kind{}, false
}

// Items are the indices of a body's items that a check can be made on, nil for an
// unknown check. For a check of a whole side they are the items of both sides.
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
