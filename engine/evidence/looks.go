package evidence

import (
	"slices"
	"strconv"
	"strings"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/strict"
)

// Who looked.
const (
	ByCustomer = "customer"
	ByShop     = "shop"
)

// What came of a look.
const (
	Yes      = "yes"
	No       = "no"
	CouldNot = "could_not"
)

// Look is one answer: what was looked for, at which item, and what came of it.
type Look struct {
	Look   string // id of a Kind
	On     string // id of an item
	Result string // Yes, No or CouldNot
	By     string // ByCustomer or ByShop
}

// FromLooks returns one likelihood per item of the body, nil where nothing was
// seen. Each is scaled so that the largest entry is one. Refused, with the path
// of the entry, are: an unknown look or item, a look that cannot be made at the
// part, one that speaks of a whole side, one by a customer that only a shop can
// do, and a second answer to the same look by the same person.
func FromLooks(b *car.Body, list []Look) ([]*damage.Likelihood, error) {
	results := make([][]result, len(b.Items))
	first := map[Look]int{}
	for n, l := range list {
		kind, item, err := check(b, n, l)
		if err != nil {
			return nil, err
		}
		same := Look{Look: l.Look, On: l.On, By: l.By}
		if before, twice := first[same]; twice {
			return nil, refuse(n, "on", l.On, "one answer to each look by the same person: looks["+strconv.Itoa(before)+"] is this look already")
		}
		first[same] = n
		if l.Result != CouldNot {
			results[item] = append(results[item], newResult(kind, l))
		}
	}
	out := make([]*damage.Likelihood, len(b.Items))
	for i := range results {
		if len(results[i]) > 0 {
			out[i] = combine(results[i])
		}
	}
	return out, nil
}

// check finds the kind and the item of entry n, or says what is wrong with it.
func check(b *car.Body, n int, l Look) (kind Kind, item int, err error) {
	kind, ok := KindOf(l.Look)
	if !ok {
		return kind, 0, refuse(n, "look", l.Look, "one of "+strings.Join(kindIDs(), ", "))
	}
	if kind.BySide {
		return kind, 0, refuse(n, "look", l.Look, "a look at one item: a look at a whole side cannot be counted yet")
	}
	item, ok = b.ItemNamed(l.On)
	if !ok {
		return kind, 0, refuse(n, "on", l.On, "an item of this body, such as "+b.Items[0].ID)
	}
	if part := b.PartOf(item).ID; !slices.Contains(kind.Parts, part) {
		return kind, 0, refuse(n, "on", l.On, "an item of a part that the look "+l.Look+" can be made at, which "+part+" is not")
	}
	if l.Result != Yes && l.Result != No && l.Result != CouldNot {
		return kind, 0, refuse(n, "result", l.Result, "yes, no or could_not")
	}
	if l.By != ByCustomer && l.By != ByShop {
		return kind, 0, refuse(n, "by", l.By, "customer or shop")
	}
	if l.By == ByCustomer && !kind.CustomerCan {
		return kind, 0, refuse(n, "by", l.By, "shop: the look "+l.Look+" is not one for a customer")
	}
	return kind, item, nil
}

// refuse makes the error for one member of entry n.
func refuse(n int, member, found, expected string) error {
	return &strict.Error{Path: "looks[" + strconv.Itoa(n) + "]." + member, Found: quote(found), Expected: expected}
}

// longestQuote is how many characters of an id an error repeats.
const longestQuote = 40

// quote shows what stands there on one line, shortened and without anything
// invisible.
func quote(s string) string {
	if r := []rune(s); len(r) > longestQuote {
		s = string(r[:longestQuote]) + "…"
	}
	return strconv.QuoteToGraphic(s)
}

func kindIDs() (ids []string) {
	for _, k := range looks().kinds {
		ids = append(ids, k.ID)
	}
	return ids
}

// sellersWord is the look that reports what the seller says.
const sellersWord = "word"

// weight is how much of its log likelihood an answer counts.
func weight(k Kind, by string) float64 {
	switch {
	case by == ByCustomer:
		return looks().w.customer
	case k.ID == sellersWord:
		return looks().w.word
	}
	return 1
}

// result is the log likelihood of one answer, weighted by who looked.
type result struct {
	order          int // place of the look in the data
	byShop         bool
	ofFinding, yes bool
	condition      [car.Conditions]float64
	finding        [damage.Findings][2]float64 // without and with filler over a dent
}

func newResult(k Kind, l Look) result {
	r := result{order: k.order, byShop: l.By == ByShop, ofFinding: k.AnswersTo == OfFinding, yes: l.Result == Yes}
	counts := weight(k, l.By)
	logOf := func(condition int, f damage.Finding, dent bool) float64 {
		p := k.ChanceOfYes(condition, f, dent)
		if !r.yes {
			p = 1 - p
		}
		return float64(counts * chance.Log(p))
	}
	if r.ofFinding {
		for f := damage.NoFinding; f < damage.Findings; f++ {
			r.finding[f] = [2]float64{logOf(0, f, false), logOf(0, f, true)}
		}
		return r
	}
	for c := range r.condition {
		r.condition[c] = logOf(c, damage.NoFinding, false)
	}
	return r
}
