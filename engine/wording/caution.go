package wording

import (
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/pricing"
	"underpaint/engine/strict"
)

// Caution is one caution, with the part of the page where it belongs and the work that
// causes it.
type Caution struct {
	ID, Where string
	// ForCustomer marks a caution about what the customer may do or has to decide. The
	// others are for the shop alone.
	ForCustomer bool
	does        []string // what the customer does that needs it: ids of customerWork
	madeFrom    int      // the first model year that needs it, 0 = any
	because     map[pricing.WorkKind][]string
	text        car.Words
}

// customerWork are the things that a customer may do to a car.
var customerWork = []string{"check", "take_apart", "sand"}

// causeKeys are the members that name work, with the kind of each.
var causeKeys = []struct {
	key  string
	kind pricing.WorkKind
}{
	{"steps", pricing.StripStep}, {"ways", pricing.WayOfRepair}, {"findings", pricing.FoundWork}, {"getting_in", pricing.Access},
	{"after", pricing.AfterSurvey}, {"materials", pricing.MaterialUsed}, {"sent_out", pricing.WorkSentOut},
}

func readCaution(f strict.Field) Caution {
	f.Keys("id", "for", "customer_does", "where", "because_of", "made_from", "text", "source")
	c := Caution{ID: f.Get("id").Text(40), ForCustomer: f.Get("for").Text(20) == "customer", Where: f.Get("where").Text(40), text: readWords(f.Get("text"))}
	if f.Has("customer_does") {
		for _, d := range f.Get("customer_does").Items() {
			c.does = append(c.does, d.OneOf(customerWork...))
		}
	}
	if f.Has("made_from") {
		c.madeFrom = f.Get("made_from").Whole(1900, 2100)
	}
	if !f.Has("because_of") {
		return c
	}
	c.because = map[pricing.WorkKind][]string{}
	of := f.Get("because_of")
	for _, k := range causeKeys {
		if of.Has(k.key) {
			for _, id := range of.Get(k.key).Items() {
				c.because[k.kind] = append(c.because[k.kind], id.Text(60))
			}
		}
	}
	return c
}

func readWords(f strict.Field) car.Words {
	f.Keys("us", "uk")
	return car.Words{US: f.Get("us").Text(400), UK: f.Get("uk").Text(400)}
}

// causedBy says whether a line of work needs the caution.
func (c *Caution) causedBy(l pricing.WorkLine) bool {
	return slices.Contains(c.because[l.Kind], l.ID)
}

// concerns says whether a car made no later than a year may need the caution; 0 is a
// year that nobody knows.
func (c *Caution) concerns(made int) bool { return made == 0 || made >= c.madeFrom }
