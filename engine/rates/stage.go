package rates

import (
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/money"
)

// The ways in which a step of the strip and survey is charged.
const (
	Fixed     = "fixed"
	EachOne   = "each"
	ByTheHour = "by_the_hour"
	AtCost    = "at_cost"
)

// StepIDs are the steps of the strip and survey, in working order. On a car with a
// separate chassis the body lift replaces the rotisserie and is charged in the same
// way.
var StepIDs = []string{
	"check_in", "make_safe", "disassemble", "running_gear", "rotisserie", "undercoat", "sealer", "mask_plug",
	"skins", "lead", "blast_shell", "blast_loose", "purge_1", "purge_2", "purge_3", "wire_wheel", "pits",
	"survey", "meet", "flash", "wipe", "epoxy", "waste",
}

// Strip says how the strip and survey is priced: the first job the customer is
// asked to authorise.
type Strip struct {
	Charged  []Charge // one for each of StepIDs, in that order
	PriceSet bool     // false: worked out from likely hours × rates + materials
	Price    money.Minor
	ToStop   money.Minor // putting it back or boxing it up
	Includes string
	Note     string
	Source   string
}

// Charge says how one step is charged.
type Charge struct {
	Step   string
	How    string // Fixed, EachOne, ByTheHour, AtCost
	Capped bool
	// NoMoreThan is the ceiling of a step by the hour, if Capped: hours for a
	// two-door with a unitary body, to be scaled like the step's own hours.
	NoMoreThan   float64
	Note, Source string
}

// ScopeIDs say how much of the car is done.
var ScopeIDs = []string{"whole_body", "outside_only", "metalwork_only"}

// SentOut is work that others do and the shop charges on.
type SentOut struct {
	Handling Percent
	Work     []Sent // in file order
	Source   string
}

// Sent is one kind of work sent out, per car.
type Sent struct {
	ID           string
	Name         car.Words
	Published    [3]money.Decimal // low, likely, high in major units
	Price        [3]float64       // the binary numbers nearest to them
	Stage        string
	Standards    [3]bool // by index in car.Standards
	Scopes       [3]bool // by index in ScopeIDs
	Note, Source string
}

// The answers to "is this kind of line taxed?", and how rates are published.
const (
	Yes     = "yes"
	No      = "no"
	NotSure = "not_sure"

	WithoutTax = "without_tax"
	WithTax    = "with_tax"
)

// Tax is charged, or not, by kind of line.
type Tax struct {
	Name      car.Words
	Percent   Percent
	On        TaxOn
	Published string // WithTax: every published figure of a taxed kind includes the tax
	Note      string
	Source    string
}

// TaxOn answers for each kind of line: Yes, No or NotSure.
type TaxOn struct{ Labour, Materials, Parts, Supplies, SentOut string }

// Kinds lists the answers in the order of the fields.
func (t TaxOn) Kinds() [5]string {
	return [5]string{t.Labour, t.Materials, t.Parts, t.Supplies, t.SentOut}
}

// NotSure says whether any kind of line is undecided, in which case no tax can be
// worked out.
func (t Tax) NotSure() bool {
	kinds := t.On.Kinds()
	return slices.Contains(kinds[:], NotSure)
}
