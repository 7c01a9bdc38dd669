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

// Seen is what looks say: of single items, and of the worst of several.
type Seen struct {
	Items []*damage.Likelihood // by item, nil where nothing was seen of it alone
	Worst []damage.Worst
}

// FromLooks returns the likelihoods of what was seen, each scaled so that the
// largest entry is one. Refused, with the path of the entry, are: an unknown look
// or place, a look that cannot be made there, one by a customer that only a shop
// can do, one at either side by the shop, which can say which, and a second answer
// to the same look by the same person.
func FromLooks(b *car.Body, list []Look) (Seen, error) {
	results := make([][]result, len(b.Items))
	var nodes []node
	first := map[Look]int{}
	for n, l := range list {
		kind, at, err := check(b, n, l)
		if err != nil {
			return Seen{}, err
		}
		same := Look{Look: l.Look, On: l.On, By: l.By}
		if before, twice := first[same]; twice {
			return Seen{}, refuse(n, "on", l.On, "one answer to each look by the same person: looks["+strconv.Itoa(before)+"] is this look already")
		}
		first[same] = n
		switch {
		case l.Result == CouldNot:
		case len(at) == 1 && !kind.BySide:
			results[at[0]] = append(results[at[0]], newResult(kind, l))
		default:
			nodes = addTo(nodes, l.On, at, newResult(kind, l))
		}
	}
	out := Seen{Items: make([]*damage.Likelihood, len(b.Items))}
	for i := range results {
		if len(results[i]) > 0 {
			out.Items[i] = combine(results[i])
		}
	}
	slices.SortFunc(nodes, func(x, y node) int { return strings.Compare(x.on, y.on) })
	for _, n := range nodes {
		out.Worst = append(out.Worst, damage.Worst{Items: n.items, Likely: worstOf(n.results)})
	}
	return out, nil
}

// node gathers the looks at the worst of the same items.
type node struct {
	on      string
	items   []int
	results []result
}

func addTo(nodes []node, on string, items []int, r result) []node {
	for n := range nodes {
		if nodes[n].on == on {
			nodes[n].results = append(nodes[n].results, r)
			return nodes
		}
	}
	return append(nodes, node{on, items, []result{r}})
}

// check finds the kind and the items of entry n, or says what is wrong with it.
func check(b *car.Body, n int, l Look) (kind Kind, at []int, err error) {
	kind, ok := KindOf(l.Look)
	if !ok {
		return kind, nil, refuse(n, "look", l.Look, "one of "+strings.Join(kindIDs(), ", "))
	}
	if at, err = place(b, n, kind, l); err != nil {
		return kind, nil, err
	}
	if l.Result != Yes && l.Result != No && l.Result != CouldNot {
		return kind, nil, refuse(n, "result", l.Result, "yes, no or could_not")
	}
	if l.By != ByCustomer && l.By != ByShop {
		return kind, nil, refuse(n, "by", l.By, "customer or shop")
	}
	if l.By == ByCustomer && !kind.CustomerCan {
		return kind, nil, refuse(n, "by", l.By, "shop: the look "+l.Look+" is not one for a customer")
	}
	return kind, at, nil
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
