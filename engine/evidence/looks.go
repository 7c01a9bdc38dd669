package evidence

import (
	"slices"
	"strconv"
	"strings"

	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/engine/strict"
)

// Who looked. What a seller says of a look counts as a customer's.
const (
	ByCustomer = "customer"
	ByShop     = "shop"
	BySeller   = "seller"
)

// witness is who looked, as an index.
type witness int

const (
	shop witness = iota
	customer
	seller
	witnesses // how many there are
)

var witnessIDs = [witnesses]string{ByShop, ByCustomer, BySeller}

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
	By     string // ByCustomer, ByShop or BySeller
}

// Seen is what looks say: of single items, of the worst of several, and of the
// cover of the car. A freshly covered car (new undercoat, recent or thick paint)
// hides what it hides from many looks at once, so there their good results count
// for less and everything is given twice.
//
// Each likelihood is scaled by itself. So ratios within one tell something, while
// the two versions together say nothing of which holds: that is for Cover.
type Seen struct {
	Items []*damage.Likelihood // as the car shows, by item; nil where nothing was seen of it alone
	Worst []damage.MaxEvidence

	// CoveredItems and CoveredWorst are the same where the car is freshly covered.
	// Both are nil when nothing was seen that cover can hide; then Items and Worst
	// serve both. An item of which nothing such was seen shares its likelihood.
	CoveredItems []*damage.Likelihood
	CoveredWorst []damage.MaxEvidence

	Cover [2]float64 // likelihood of what looks say of the cover: as it shows, freshly covered; 1 and 1 for nothing
}

// FromLooks returns the likelihoods of what was seen, each scaled so that the
// largest entry is one, but for Cover. Refused, with the path of the entry, are: an
// unknown look or place, a look that cannot be made there, one by a customer or a
// seller that only a shop can do, one at either side by the shop, which can say
// which, and a second answer to the same look by the same person.
func FromLooks(b *car.Body, list []Look) (Seen, error) {
	results := make([][]result, len(b.Items))
	var nodes []node
	var cover freshUndercoat
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
		if l.Result == CouldNot {
			continue
		}
		r := newResult(kind, l)
		if kind.tellsOfCover {
			cover.add(r)
		}
		if len(at) == 1 && !kind.BySide {
			results[at[0]] = append(results[at[0]], r)
		} else {
			nodes = addTo(nodes, l.On, at, r)
		}
	}
	return seen(results, nodes, cover), nil
}

// seen joins the results at each item and node, on the car as it shows and, where
// that makes a difference, on a freshly covered one.
func seen(results [][]result, nodes []node, cover freshUndercoat) Seen {
	slices.SortFunc(nodes, func(x, y node) int { return strings.Compare(x.on, y.on) })
	out := Seen{Items: make([]*damage.Likelihood, len(results)), Worst: worst(nodes, asItShows), Cover: cover.likelihood()}
	for i := range results {
		if len(results[i]) > 0 {
			out.Items[i] = combine(results[i], asItShows)
		}
	}
	hides := slices.ContainsFunc(results, coverHides) || slices.ContainsFunc(nodes, func(n node) bool { return coverHides(n.results) })
	if !hides {
		return out
	}
	out.CoveredItems, out.CoveredWorst = slices.Clone(out.Items), worst(nodes, freshlyCovered)
	for i := range results {
		if coverHides(results[i]) {
			out.CoveredItems[i] = combine(results[i], freshlyCovered)
		}
	}
	return out
}

func worst(nodes []node, on cover) (out []damage.MaxEvidence) {
	for _, n := range nodes {
		out = append(out, damage.MaxEvidence{Items: n.items, Likely: worstOf(n.results, on)})
	}
	return out
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
	if !slices.Contains(witnessIDs[:], l.By) {
		return kind, nil, refuse(n, "by", l.By, "customer, shop or seller")
	}
	if l.By != ByShop && !kind.CustomerCan {
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
