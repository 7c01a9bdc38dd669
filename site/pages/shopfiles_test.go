package pages

import (
	"encoding/json"
	"os"
	"slices"
	"strings"
	"testing"
)

// The pages' types of the rates file and of the file of past jobs against their published
// schemas. The pages name only what they read or write, so some types may lack members.

// shopType is one type, and the place of its members or words in the schema. part: the
// type may lack members that the schema has.
type shopType struct {
	name string
	at   string
	part bool
}

var shopFiles = []struct {
	source, schema string
	types          []shopType
}{
	{"shared/ratesfile.ts", "../schema/rates.schema.json", []shopType{
		{"DraftRates", "", true},
		{"RatesFile", "", true},
		{"Names", "$words", false},
		{"Words", "words", false},
		{"Standard", "$standards[]", false},
		{"Scope", "$scopes[]", false},
		{"OwnFigures", "own_figures", true},
		{"Material", "$material", false},
		{"Reckoning", "$material.how", false},
		{"PartPrice", "$part_price", false},
		{"Charge", "$charge", false},
		{"SentWork", "$sent", false},
	}},
	{"shared/jobsfile.ts", "../schema/past-jobs.schema.json", []shopType{
		{"JobsFile", "", false},
		{"PastJob", "$job", false},
		{"MoreBecause", "$job.more_because", false},
	}},
}

// at is a node of the schema: "$name" begins at a definition, "[]" leads to the items.
func (s schemaNode) at(path string) schemaNode {
	node := s
	for _, step := range strings.Split(path, ".") {
		name, isList := strings.CutSuffix(step, "[]")
		if def, ok := strings.CutPrefix(name, "$"); ok {
			node = s.Defs[def]
		} else if name != "" {
			node = node.Properties[name]
		}
		if isList {
			node = *node.Items
		}
	}
	return node
}

// shopFaults are the members and words that only a type or only the schema has.
func shopFaults(t *testing.T, source string, schema schemaNode, types []shopType) []string {
	t.Helper()
	c := carComparison{carTypes: readCarTypes(source)}
	for _, one := range types {
		node := schema.at(one.at)
		want := append(names(node.Properties), node.Enum...)
		if len(want) == 0 {
			t.Errorf("the schema has nothing at %q", one.at)
		}
		have := names(c.interfaces[one.name])
		if words, ok := c.names[one.name]; ok {
			have = c.words(words)
		}
		if len(have) == 0 {
			c.faults = append(c.faults, one.name+" is not declared")
		}
		if one.part {
			want = slices.DeleteFunc(want, func(name string) bool { return !slices.Contains(have, name) })
		}
		c.keys(one.name, have, want)
	}
	return c.faults
}

func TestShopFileTypesAreThoseOfTheSchemas(t *testing.T) {
	changes := map[string][]struct{ from, to string }{
		"shared/ratesfile.ts": {
			{"  area: string;\n", ""},
			{"  had: string | null;\n", "  had: string | null;\n  bought?: string;\n"},
			{`"metalwork_only"`, `"metal_only"`},
			{`"per_m2" | `, ""},
			{"  strip_and_survey: {", "  strip: {"},
			{"  spread?: {", "  scatter?: {"},
			{"  own_figures: ", "  figures: "},
			{"export interface Charge {", "export interface Charged {"},
		},
		"shared/jobsfile.ts": {
			{"  came_to: Amount;\n", ""},
			{`"changes_agreed"`, `"changes"`},
			{"  invented?: boolean;\n", "  sample?: boolean;\n"},
		},
	}
	for _, file := range shopFiles {
		text, err := os.ReadFile(file.source)
		if err != nil {
			t.Fatal(err)
		}
		published, err := os.ReadFile(file.schema)
		if err != nil {
			t.Fatal(err)
		}
		var schema schemaNode
		if err := json.Unmarshal(published, &schema); err != nil {
			t.Fatal(err)
		}
		source := string(text)
		for _, fault := range shopFaults(t, source, schema, file.types) {
			t.Errorf("%s: %s", file.source, fault)
		}
		// Each change of the types is found: otherwise the comparison above says nothing.
		for _, change := range changes[file.source] {
			changed := strings.Replace(source, change.from, change.to, 1)
			if changed == source {
				t.Errorf("%s no longer holds %q", file.source, change.from)
			} else if len(shopFaults(t, changed, schema, file.types)) == 0 {
				t.Errorf("%s: with %q in place of %q nothing is found", file.source, change.to, change.from)
			}
		}
	}
}
