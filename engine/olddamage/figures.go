package olddamage

import (
	_ "embed"
	"sync"

	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/engine/strict"
)

//go:embed data/olddamage.json
var startingFile []byte

// Figures are the odds and the hours of old damage. See data/olddamage.json for what
// each means and where it comes from. Hours are low, likely, high at show standard.
type Figures struct {
	HitsAYear, LeftOnTheRoad float64
	TimesByWork              [damage.RepairStates]float64
	Zones                    [Zones]float64
	Mended                   [damage.RepairStates][3]float64 // well, roughly, crooked

	answers                map[string][3]float64 // no hard hit, one, two or more
	namedHit, namedElse    float64
	looks                  []Look
	customer, seller, next float64

	Sagged      [3]float64 // closed, open, on a frame
	Hand        [damage.RepairStates][hands]float64
	ReplacedIs  [HandKinds][hands]float64
	PatchBrazed [hands]float64
	Blasted     [damage.RepairStates]float64
	SkinWarped  [2]float64 // not blasted before, blasted
	leastM2     float64
	mostTrap    int
	Cracked     [2]float64 // closed, open or pickup
	Packed      float64

	Lines      [Lines][car.Trades]car.Hours
	SentOut    map[string]car.Hours // by currency, major units; in place of the hours for setting up
	IsSentOut  bool                 // the shop has the setting up done elsewhere
	HalfIfFull [Zones]string        // the part that halves a zone's hours where it is replaced whole

	leftUpTo [hands][2][HandKinds]float64 // running sums of replacedIs
}

// LineID is a kind of work that old damage makes.
type LineID int

// The kinds of work.
const (
	MendedRoughly LineID = iota // for each zone
	MadeCrooked                 // for each zone, on top of the first
	HasSagged                   // for the car
	SetUp                       // for the car, where it is out of square
	Measure                     // for every car, in the strip and survey
	SkinWarped                  // for each skin, on top of the finding
	Lines                       // the number of them
)

// LineIDs name the kinds in files.
var LineIDs = [Lines]string{"mended_roughly", "crooked", "sagged", "set_up", "measure", "warped"}

// lineTrades are the trades that each kind of work takes.
var lineTrades = [Lines][]string{{"metal", "prep", "body", "paint"}, {"metal", "fit"}, {"metal"}, {"metal"}, {"metal"}, {"body"}}

// Starting returns the figures of a shop that states none of its own. Read only.
func Starting() *Figures { return starting() }

var starting = sync.OnceValue(func() *Figures {
	f, err := strict.Parse(startingFile)
	if err == nil {
		g := &Figures{}
		f.Keys("format", "hit", "answer", "looks", "looks_source", "weights", "sagged", "earlier_hand", "warped", "cracked", "packed", "hours", "sent_out", "half_if_full")
		f.Get("format").OneOf("underpaint old damage 1")
		g.read(f)
		g.readLooks(f.Get("looks"))
		g.readFixed(f)
		g.addUp()
		if err = f.Err(); err == nil {
			return g
		}
	}
	panic("engine: internal error: the figures of old damage: " + err.Error())
})

// Keys are the members of [Figures.With].
var Keys = []string{"hit", "answer", "sagged", "earlier_hand", "warped", "cracked", "packed", "hours", "sent_out"}

// With returns the figures with those that a shop states in place of the starting ones.
// Everything may be left out. An error has the path in the shop's file.
func (g *Figures) With(f strict.Field) *Figures {
	own := *g
	own.read(f)
	own.addUp()
	return &own
}

// addUp works out the running sums of what hands leave.
func (g *Figures) addUp() {
	for h := range hands {
		for b, canBraze := range []bool{false, true} {
			sum := 0.0
			for k, v := range g.replacedIs(h, canBraze) {
				sum += v
				g.leftUpTo[h][b][k] = sum
			}
		}
	}
}

// readFixed reads what a shop does not replace.
func (g *Figures) readFixed(f strict.Field) {
	w := f.Get("weights")
	w.Keys("customer", "seller", "further", "source")
	g.customer, g.seller, g.next = w.Get("customer").Number(0, 1), w.Get("seller").Number(0, 1), w.Get("further").Number(0, 1)
	half := f.Get("half_if_full")
	for z, id := range ZoneIDs {
		g.HalfIfFull[z] = half.Get(id).Text(60)
	}
}

// readLooks reads the checks. The chance of yes never falls from one manner to the next.
func (g *Figures) readLooks(f strict.Field) {
	for _, l := range f.Items() {
		l.Keys("id", "zones", "shop_only", "yes", "name", "how", "needs")
		one := Look{ID: l.Get("id").Text(40), Name: words(l.Get("name")), How: words(l.Get("how")), Needs: words(l.Get("needs")), CustomerCan: !l.Has("shop_only")}
		for _, z := range l.Get("zones").Items() {
			one.Zones = append(one.Zones, z.OneOf(append([]string{WholeCar}, ZoneIDs[:]...)...))
		}
		n := int(Manners)
		if one.OfTheCar() {
			n = 2
		}
		one.yes = l.Get("yes").Numbers(n, 0.0001, 0.9999)
		for k := 1; k < len(one.yes); k++ {
			if one.yes[k] < one.yes[k-1] {
				l.Get("yes").Complain("chances that do not fall")
			}
		}
		g.looks = append(g.looks, one)
	}
}

func words(f strict.Field) car.Words {
	f.Keys("us", "uk")
	return car.Words{US: f.Get("us").Text(300), UK: f.Get("uk").Text(300)}
}
