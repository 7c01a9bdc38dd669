package rates

import (
	"os"
	"regexp"
	"slices"
	"sort"
	"strings"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/engine/money"
	"underpaint/engine/olddamage"
	"underpaint/tests/schemas"
)

func schema(t *testing.T) map[string]any {
	t.Helper()
	text, err := os.ReadFile("../../site/schema/rates.schema.json")
	if err != nil {
		t.Fatal(err)
	}
	return tree(t, text)
}

// TestSchemaNames: the groups of the schema have the members that Decode knows, and the
// test compares every group of the schema.
func TestSchemaNames(t *testing.T) {
	want := map[string][]string{
		"":                                   fileKeys,
		"properties.shop":                    shopKeys,
		"properties.shop.properties.contact": contactKeys,
		"properties.labour":                  labourKeys,
		"properties.consumables":             consumablesKeys,
		"properties.parts":                   partsKeys,
		"properties.what_is_done":            car.Standards,
		"properties.strip_and_survey":        stripKeys,
		"properties.sent_out":                sentOutKeys,
		"properties.supplies":                suppliesKeys,
		"properties.tax":                     taxKeys,
		"properties.tax.properties.on":       taxOnKeys,
		"properties.time":                    timeKeys,
		"properties.allowance":               allowanceKeys,
		"properties.doubt":                   doubtKeys,
		"properties.prices_over_time":        overTimeKeys,
		"properties.prices_over_time.properties.promise": promiseKeys,
		"$defs.by_stage":            DoubtStages,
		"properties.hidden_history": oldDamageKeys,
		"properties.hidden_history.properties.hit.properties.zones":                olddamage.ZoneIDs[:],
		"properties.hidden_history.properties.earlier_hand.properties.replaced_is": olddamage.Groups["replaced_is"],
		"$defs.by_repairs":                                       damage.RepairStateIDs[:],
		"$defs.three_by_repairs":                                 damage.RepairStateIDs[:],
		"properties.another_body":                                anotherBodyKeys,
		"properties.another_body.properties.search_hours":        searchKeys,
		"properties.another_body.properties.moving_across_hours": movingKeys,
		"$defs.offered_body":                                     offeredBodyKeys,
		"properties.own_figures":                                 ownKeys,
		"properties.own_figures.properties.hours":                car.TradeIDs[:],
		"properties.own_figures.properties.doubt":                ownDoubtKeys,
		"$defs.own_figure":                                       ownFigureKeys,
		"$defs.own_rust":                                         ownRustKeys,
		"properties.record":                                      pastKeys,
		"$defs.words":                                            wordsKeys,
		"$defs.trade":                                            tradeKeys,
		"$defs.quantity":                                         quantityKeys,
		"$defs.film":                                             filmKeys,
		"$defs.material":                                         materialKeys,
		"$defs.material.properties.how":                          howKeys,
		"$defs.material.properties.factor":                       car.Standards,
		"$defs.part_price":                                       partPriceKeys,
		"$defs.charge":                                           chargeKeys,
		"$defs.sent":                                             sentKeys,
		"$defs.kinds":                                            Kinds,
		"$defs.rows":                                             car.ConditionIDs[:],
	}
	for name, members := range olddamage.Groups {
		if name != "replaced_is" {
			want["properties.hidden_history.properties."+name] = members
		}
	}
	for n, id := range olddamage.LineIDs {
		want["properties.hidden_history.properties.hours.properties."+id] = olddamage.LineTrades(olddamage.LineID(n))
	}
	schemas.Compare(t, "../../site/schema/rates.schema.json", want)
}

func names(m map[string]any) (list []string) {
	for name := range m {
		list = append(list, name)
	}
	sort.Strings(list)
	return list
}

func sorted(list []string) []string {
	list = slices.Clone(list)
	sort.Strings(list)
	return list
}

// TestSchemaIDs: where Decode takes one of a list of ids, so does the schema.
func TestSchemaIDs(t *testing.T) {
	s := schema(t)
	for path, want := range map[string][]string{
		"$defs.offered_body.properties.body":                             car.BodyIDs,
		"properties.words":                                               {"us", "uk"},
		"properties.country":                                             strings.Fields(countries),
		"properties.labour.properties.includes.items":                    includable,
		"properties.supplies.properties.how":                             {"in_the_rate", "share_of_labour"},
		"properties.tax.properties.published":                            {WithoutTax, WithTax},
		"properties.tax.properties.on.properties.labour":                 {Yes, No, NotSure},
		"$defs.standards.items":                                          car.Standards,
		"$defs.scopes.items":                                             ScopeIDs,
		"$defs.material.properties.unit":                                 {Litre, Kilogram, Each},
		"$defs.material.properties.area":                                 {Reached, Outer, InsideAndUnder, Frame, Replaced, NoArea},
		"$defs.material.properties.stage":                                {StripStage, AfterStage},
		"$defs.part_price.properties.body":                               car.BodyIDs,
		"$defs.part_price.properties.way":                                car.WayIDs[car.Patch:],
		"$defs.part_price.properties.had":                                append(slices.Clone(hadIDs), "null"),
		"$defs.charge.properties.step":                                   StepIDs,
		"$defs.charge.properties.how":                                    {Fixed, EachOne, ByTheHour, AtCost},
		"$defs.sent.properties.stage":                                    {StripStage, AfterStage},
		"properties.tax.properties.on.properties.sent_out":               {Yes, No, NotSure},
		"properties.units":                                               {"us", "metric"},
		"properties.prices_over_time.properties.promise.properties.how":  {HeldThroughout, HeldUntil, HeldMonths, NotHeld},
		"properties.prices_over_time.properties.promise.properties.from": {FromAuthorized, FromBegun},
	} {
		var got []string
		for _, id := range get(t, s, path+".enum").([]any) {
			if id == nil {
				id = "null"
			}
			got = append(got, id.(string))
		}
		if !slices.Equal(sorted(got), sorted(want)) {
			t.Errorf("%s: schema has %v, Decode takes %v", path, got, want)
		}
	}
	if got := get(t, s, "properties.format.const"); got != Format {
		t.Errorf("format %v", got)
	}
	for _, code := range get(t, s, "properties.currency.enum").([]any) {
		if _, err := money.CurrencyOf(code.(string)); err != nil {
			t.Error(err)
		}
	}
}

// TestSchemaRequired: for every group of both samples, the schema requires exactly the
// members that Decode misses.
func TestSchemaRequired(t *testing.T) {
	s := schema(t)
	samples := [][]byte{Sample()}
	if *slow {
		samples = append(samples, SampleUK())
	} else {
		t.Log("not run without -slow: the British sample")
	}
	for _, sample := range samples {
		file := tree(t, sample)
		if fault := fits(t, s, s, file); fault != "" {
			t.Fatalf("a sample does not fit the schema: %s", fault)
		}
		visit(file, "", func(path string, _ any) {
			if strings.HasSuffix(path, "]") {
				return
			}
			less := changed(t, sample, path, missing)
			_, err := Decode(less)
			fault := fits(t, s, s, tree(t, less))
			if (err == nil) != (fault == "") {
				t.Errorf("without %s: schema %q, Decode %v", path, fault, err)
			}
		})
	}
}

// acrossEntries matches errors that the schema leaves to the program: how entries go
// together, bounds of decimals written as text, and the form of a number, date or line.
var acrossEntries = regexp.MustCompile(`not before|only once|no part is replaced|a different id|film of paint|for the car|with any other|all three|` +
	`for the strip stage|standards that use|none below|id of a part|in which this part|null, because|or both|one entry for|as in the entry|` +
	`by the hour|missing: |at most 2 decimals|6 after|one line|without blanks|without spaces|date|plain amount|only a repair section|a price|a percentage|an amount from|a factor from|"found"|"floor"|each group once|fewer say too little`)

// TestSchemaRefuses: the schema refuses the wrong values that Decode refuses, except
// for what it leaves to the program.
func TestSchemaRefuses(t *testing.T) {
	s := schema(t)
	refusals := 0
	for _, c := range refused {
		sample := Sample()
		if c.uk {
			sample = SampleUK()
		}
		if fits(t, s, s, tree(t, changed(t, sample, c.at, c.value))) != "" {
			refusals++
		} else if !acrossEntries.MatchString(c.expected) {
			t.Errorf("%s = %v fits the schema", c.at, c.value)
		}
	}
	if refusals < 70 {
		t.Errorf("the schema refuses only %d of %d", refusals, len(refused))
	}
}
