package car

// Words holds a name in the trade's US and UK vocabulary.
type Words struct{ US, UK string }

// In returns the name in the vocabulary "uk" or, for anything else, "us".
func (w Words) In(vocabulary string) string {
	if vocabulary == "uk" {
		return w.UK
	}
	return w.US
}

// Side is the side of the car that an item is on, as seen from the driver's seat.
type Side int

// The sides. An item on the centre line or across the whole car has no side.
const (
	NoSide Side = iota
	Left
	Right
)

// String returns "left", "right" or "".
func (s Side) String() string { return [...]string{"", "left", "right"}[s] }

// Face says how visible a part is.
type Face int

// The faces of a part.
const (
	Outer Face = iota // painted, block-sanded and visible
	Hidden
	SeenWhenOpen
)

// Trade is one of the five kinds of labour that a shop prices separately.
type Trade int

// The trades, in the order in which a car goes through them.
const (
	Metal Trade = iota
	Prep
	BodyWork
	Paint
	Fit
	Trades // the number of trades
)

// TradeIDs are the ids of the trades in files, by Trade.
var TradeIDs = [Trades]string{"metal", "prep", "body", "paint", "fit"}

// Way is a way of repairing an item, from least to most work.
type Way int

// The ways.
const (
	Leave Way = iota
	Treat
	Patch
	Section
	Full
	Fabricate
	Ways // the number of ways
)

// WayIDs are the ids of the ways in files, by Way.
var WayIDs = [Ways]string{"leave", "treat", "patch", "section", "full", "fabricate"}

// Conditions is the number of steps on the scale of condition.
const Conditions = 6

// ConditionIDs are the steps of the scale, from best to worst.
var ConditionIDs = [Conditions]string{"sound", "light_pitting", "heavy_pitting", "pinholes", "rusted_through", "gone"}

// Standards are the three standards of finish.
var Standards = []string{"driver", "show", "concours"}

// Hours is low, likely and high: one job in ten takes less than the first, half take
// less than the second, one in ten takes more than the third. A zero triple means no
// work.
type Hours [3]float64

// WayOfMending is the work of one way on one item: hours by trade at show standard, with
// access already open, and the price of the part if one is bought.
type WayOfMending struct {
	Done    bool // false: this way is not done on this part
	Instead Way  // the way used instead if Done is false
	Once    string
	Hours   [Trades]Hours
	Price   Hours // money in the rates' currency, major units; zero = no part
}

// Rust holds the constants of the metal loss of one part: the ratio of the loss at the
// worst spot to the mean loss (M), the exponent of time (B), and the life of the paint in
// years (Life).
type Rust struct{ M, B, Life float64 }

// Part is a kind of part of a body.
type Part struct {
	ID               string
	Name             Words
	Zone, Group      int // indices into Body.Zones, Body.Groups
	Face             Face
	Structural       bool
	NearMounting     bool
	Table            string // id of the table of ways by condition
	AreaM2, MM       float64
	Gauge, Trap      int
	Splash           float64 // share of exposure to road splash rather than air, 0 to 1
	Rust             Rust
	LeadJoints       int
	SeenWhenStripped bool // false: a closed box, seen only once opened
	Joint, Had       string
	CoveredBy        []string
	Option           string
	Items            []int
	Ways             [Ways]WayOfMending
}

// Item is a particular part, such as the left one of two.
type Item struct {
	ID     string
	Part   int
	Side   Side
	End    string // "front", "rear" or ""
	Place  string // only if side and end do not identify the item
	Pocket int
}

// Group is a set of pockets that mirror each other.
type Group struct {
	ID      string
	Name    Words
	Pockets []int
}

// Pocket is the set of items that share the same water and dirt.
type Pocket struct {
	ID    string
	Group int
	Items []int
}

// Zone is an area of the car, in the order of a walk round it.
type Zone struct {
	ID   string
	Name Words
}

// GettingIn is work to get access to other work. It is charged once.
type GettingIn struct {
	ID      string
	Hours   Hours         // of the trade of the line
	Also    [Trades]Hours // of other trades
	Price   Hours
	OwnRust OwnRust
}

// OwnRust is the rust that a part from another car brings along: the chance of any, and
// the hours of metalwork that it then takes. The zero value is none.
type OwnRust struct {
	Chance float64
	Metal  Hours
}

// Option is a variant of a body with additional parts.
type Option struct {
	ID   string
	Name Words
}

// Body is one body pattern with the chosen options applied.
type Body struct {
	ID                string
	Name              Words
	CarriesTheLoad    Words
	OnAFrame, OpenCar bool
	StageFactor       float64            // work of strip and survey relative to the two-door unitary body
	AfterSurveyFactor map[string]float64 // by work id
	GettingIn         []GettingIn
	Options           []Option
	LookFirst         []string // part ids
	Zones             []Zone
	Groups            []Group
	Pockets           []Pocket
	Parts             []Part
	Items             []Item

	partIndex, itemIndex map[string]int
}

// PartOf returns the part of item i.
func (b *Body) PartOf(i int) *Part { return &b.Parts[b.Items[i].Part] }

// ItemNamed finds an item by id.
func (b *Body) ItemNamed(id string) (int, bool) { i, ok := b.itemIndex[id]; return i, ok }

// PartNamed finds a part by id.
func (b *Body) PartNamed(id string) (int, bool) { i, ok := b.partIndex[id]; return i, ok }

// AreaM2 is the total area in m², counting one face of every item, and that of the outer
// items alone.
func (b *Body) AreaM2() (all, outer float64) {
	for i := range b.Items {
		p := b.PartOf(i)
		all += p.AreaM2
		if p.Face == Outer {
			outer += p.AreaM2
		}
	}
	return all, outer
}

// LeadJoints counts the lead-loaded joints of the body.
func (b *Body) LeadJoints() int {
	n := 0
	for i := range b.Items {
		n += b.PartOf(i).LeadJoints
	}
	return n
}

// ItemName is the name of item i in a vocabulary, such as "Outer rocker, left".
func (b *Body) ItemName(i int, vocabulary string) string {
	it := b.Items[i]
	name := b.PartOf(i).Name.In(vocabulary)
	switch {
	case it.Place != "":
		return name + ", " + it.Place
	case it.Side != NoSide:
		return name + ", " + it.Side.String()
	}
	return name
}
