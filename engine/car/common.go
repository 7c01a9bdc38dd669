package car

import (
	"sync"

	"underpaint/engine/strict"
)

// Common holds what is the same for every body: names of trades, conditions and ways, and
// the neighbours that tend to need work together with a part.
type Common struct {
	Trades     [Trades]Words
	Conditions [Conditions]Words
	LooksLike  [Conditions]string
	Ways       [Ways]Words
	Behind     []Behind // in file order
}

// Behind lists the neighbours that tend to need metalwork once Part is rusted through,
// with the chance of each. It serves for explanations and for seams between parts. The
// dependence between the rust of neighbours comes from shared water, not from this list.
type Behind struct {
	Part       string
	Neighbours []Neighbour
}

// Neighbour is one part behind or beside another.
type Neighbour struct {
	Part   string
	Chance float64
}

// rustByTrap gives the rust constants m, b and paint life of a part by its trap score, 1
// to 5, which is how well it holds water. It applies unless the part has constants of its
// own. Assumption; b from ISO 9224:2012 (0.523, 0.575) and sheltered sites (Benarie and
// Lipfert 1986).
var rustByTrap = [6]Rust{1: {1.4, .523, 10}, 2: {1.7, .575, 8}, 3: {2.0, .850, 6}, 4: {2.5, .850, 5}, 5: {3.1, .850, 4}}

// RustByTrap returns the constants for a trap score of 1 to 5.
func RustByTrap(trap int) Rust {
	if trap < 1 || trap > 5 {
		return Rust{}
	}
	return rustByTrap[trap]
}

// LoadCommon returns the shared words. They are read once and shared:
// callers must not change them. An error means a damaged build.
func LoadCommon() (*Common, error) { return loadCommon() }

var loadCommon = sync.OnceValues(readCommon)

func readCommon() (*Common, error) {
	f, err := strict.Parse(commonWords)
	if err != nil {
		return nil, err
	}
	f.Keys("format", "trades", "conditions", "ways", "behind_source", "behind")
	f.Get("format").OneOf("underpaint words 1")
	c := &Common{}
	for i, t := range f.Get("trades").Items() {
		t.Get("id").OneOf(TradeIDs[i])
		c.Trades[i] = words(t.Get("name"))
	}
	for i, t := range f.Get("conditions").Items() {
		t.Get("id").OneOf(ConditionIDs[i])
		c.Conditions[i] = words(t.Get("name"))
		c.LooksLike[i] = t.Get("looks_like").Text(200)
	}
	for i, t := range f.Get("ways").Items() {
		t.Get("id").OneOf(WayIDs[i])
		c.Ways[i] = words(t.Get("name"))
	}
	behind := f.Get("behind")
	for _, part := range behind.Names() {
		one := behind.Get(part)
		b := Behind{Part: part}
		for _, n := range one.Names() {
			b.Neighbours = append(b.Neighbours, Neighbour{n, one.Get(n).Number(0, 1)})
		}
		c.Behind = append(c.Behind, b)
	}
	return c, f.Err()
}
