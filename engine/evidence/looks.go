package evidence

import (
	"slices"
	"strconv"
	"strings"

	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/engine/strict"
)

// Who made the check. A seller's answer counts like a customer's.
const (
	ByCustomer = "customer"
	ByShop     = "shop"
	BySeller   = "seller"
)

// witness is who made the check, as an index.
type witness int

const (
	shop witness = iota
	customer
	seller
	witnesses // the number of them
)

var witnessIDs = [witnesses]string{ByShop, ByCustomer, BySeller}

// Results of a check.
const (
	Yes      = "yes"
	No       = "no"
	CouldNot = "could_not"
)

// Look is one answer: which check, on which item, with which result, by whom.
type Look struct {
	Look   string // id of a Kind
	On     string // id of an item, of an either place (see [Either]), or left or right
	Result string // Yes, No or CouldNot
	By     string // ByCustomer, ByShop or BySeller
}

// Seen is the evidence of checks on single items, on the worst of several items, and on
// the cover of the car. Fresh cover (new undercoat, recent or thick paint) hides the
// same damage from many checks at once. Good results then count for less, so everything
// is given twice.
//
// Each likelihood is scaled separately. Ratios within one are meaningful, but comparing
// the two versions says nothing about which of them holds: that is what Cover is for.
type Seen struct {
	Items []*damage.Likelihood // as the car shows, by item; nil for an item without evidence on it alone
	Worst []damage.MaxEvidence

	// CoveredItems and CoveredWorst are the same for a freshly covered car. Both are nil
	// if cover can hide none of the results; Items and Worst then apply to both cases.
	// An item without such results shares its likelihood.
	CoveredItems []*damage.Likelihood
	CoveredWorst []damage.MaxEvidence

	Cover [2]float64 // likelihood of the answers about cover: as it shows, freshly covered; 1 and 1 = no evidence
}

// FromLooks returns the likelihoods of the checks, each scaled so that the largest entry
// is one, except Cover. An error names the path of the entry. It is an error if a check
// or place is unknown, if a check cannot be made there, if a customer or a seller makes
// a check that only a shop can do, if the shop answers for either side (it can say
// which), or if the same person answers the same check twice.
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
			return Seen{}, refuse(n, "on", l.On, "one answer to each check by the same person, and looks["+strconv.Itoa(before)+"] already answers this check")
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

// seen combines the results on each item and node, for the car as it shows and, if that
// makes a difference, for a freshly covered one.
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

// node collects the checks on the worst of the same items.
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

// check finds the kind and the items of entry n, or returns what is wrong with it.
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
		return kind, nil, refuse(n, "by", l.By, "shop, because only a shop can do the check "+l.Look)
	}
	return kind, at, nil
}

// refuse makes the error for one member of entry n.
func refuse(n int, member, found, expected string) error {
	return &strict.Error{Path: "looks[" + strconv.Itoa(n) + "]." + member, Found: quote(found), Expected: expected}
}

// longestQuote is how many characters of an id an error repeats.
const longestQuote = 40

// quote shows the text found on one line, shortened and without invisible characters.
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
