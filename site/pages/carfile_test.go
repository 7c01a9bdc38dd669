package pages

import (
	"encoding/json"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// The pages' types of the car file against its published schema: the same members,
// the same words where a member is one of a few, and the same kinds of value.

type schemaNode struct {
	Ref        string                `json:"$ref"`
	Type       any                   `json:"type"`
	Const      any                   `json:"const"`
	Enum       []string              `json:"enum"`
	Items      *schemaNode           `json:"items"`
	Properties map[string]schemaNode `json:"properties"`
	Defs       map[string]schemaNode `json:"$defs"`
}

// carTypes are the declarations of carfile.ts: the members of each interface with
// their types as written, and what each other name stands for.
type carTypes struct {
	interfaces map[string]map[string]string
	names      map[string]string
}

var (
	tsComment   = regexp.MustCompile(`(?s)/\*.*?\*/|//[^\n]*`)
	tsInterface = regexp.MustCompile(`(?s)\bexport interface (\w+)(?: extends \w+)? \{(.*?)\n\}`)
	tsMember    = regexp.MustCompile(`(?m)^  (\w+)\??: (.*?);$`)
	tsAlias     = regexp.MustCompile(`(?s)\bexport type (\w+) =(.*?);`)
	tsRecord    = regexp.MustCompile(`^Partial<Record<(\w+), (.*)>>$`)
)

func readCarTypes(text string) carTypes {
	text = tsComment.ReplaceAllString(text, "")
	types := carTypes{map[string]map[string]string{}, map[string]string{}}
	for _, m := range tsInterface.FindAllStringSubmatch(text, -1) {
		types.interfaces[m[1]] = map[string]string{}
		for _, member := range tsMember.FindAllStringSubmatch(m[2], -1) {
			types.interfaces[m[1]][member[1]] = member[2]
		}
	}
	for _, m := range tsAlias.FindAllStringSubmatch(text, -1) {
		types.names[m[1]] = strings.TrimSpace(m[2])
	}
	return types
}

// words are the alternatives of a type, with names replaced by what they stand for.
func (c carTypes) words(kind string) (all []string) {
	for _, one := range strings.Split(kind, "|") {
		one = strings.TrimSpace(one)
		if stands, ok := c.names[one]; ok {
			all = append(all, c.words(stands)...)
		} else if one != "" {
			all = append(all, strings.Trim(one, `"`))
		}
	}
	slices.Sort(all)
	return all
}

type carComparison struct {
	carTypes
	schema schemaNode
	seen   map[string]bool
	faults []string
}

func (c *carComparison) fault(path, have, want string) {
	c.faults = append(c.faults, path+": the type has "+have+", the schema "+want)
}

// keys reports what only one of the two names.
func (c *carComparison) keys(path string, have []string, want []string) {
	for _, k := range have {
		if !slices.Contains(want, k) {
			c.fault(path, k, "does not")
		}
	}
	for _, k := range want {
		if !slices.Contains(have, k) {
			c.fault(path, "no "+k, "does")
		}
	}
}

func names[V any](of map[string]V) (all []string) {
	for name := range of {
		all = append(all, name)
	}
	slices.Sort(all)
	return all
}

// compare holds a type of carfile.ts against a node of the schema, and all that is
// inside them.
func (c *carComparison) compare(path, kind string, node schemaNode) {
	if node.Ref != "" {
		node = c.schema.Defs[strings.TrimPrefix(node.Ref, "#/$defs/")]
	}
	if of, isList := strings.CutSuffix(kind, "[]"); isList {
		if node.Type != "array" || node.Items == nil {
			c.fault(path, "a list", "does not")
			return
		}
		c.compare(path+"[]", of, *node.Items)
		return
	}
	if m := tsRecord.FindStringSubmatch(kind); m != nil {
		c.keys(path, c.words(m[1]), names(node.Properties))
		for name, inner := range node.Properties {
			c.compare(path+"."+name, m[2], inner)
		}
		return
	}
	if members, ok := c.interfaces[kind]; ok {
		c.seen[kind] = true
		c.keys(path, names(members), names(node.Properties))
		for name, inner := range node.Properties {
			if member, ok := members[name]; ok {
				c.compare(path+"."+name, member, inner)
			}
		}
		return
	}
	c.value(path, kind, node)
}

// value compares what is neither a list nor an object. A member that is one of a few
// words may be any string in carfile.ts, where no page looks at the word.
func (c *carComparison) value(path, kind string, node schemaNode) {
	want := []string{}
	switch of := node.Type.(type) {
	case string:
		want = append(want, strings.Replace(of, "integer", "number", 1))
	case []any:
		for _, one := range of {
			want = append(want, one.(string))
		}
	}
	switch constant := node.Const.(type) {
	case string:
		want = append(want, constant)
	case bool:
		want = append(want, map[bool]string{true: "true", false: "false"}[constant])
	}
	if want = append(want, node.Enum...); node.Enum != nil && kind == "string" {
		return
	}
	c.keys(path, c.words(kind), want)
}

func carFileFaults(t *testing.T, source string) []string {
	t.Helper()
	text, err := os.ReadFile("../schema/car.schema.json")
	if err != nil {
		t.Fatal(err)
	}
	c := carComparison{carTypes: readCarTypes(source), seen: map[string]bool{}}
	if err := json.Unmarshal(text, &c.schema); err != nil {
		t.Fatal(err)
	}
	c.compare("car", "CarFile", c.schema)
	for name := range c.interfaces {
		if !c.seen[name] {
			c.faults = append(c.faults, name+": no part of a car file has this type")
		}
	}
	return c.faults
}

func TestCarFileTypesAreThoseOfTheSchema(t *testing.T) {
	text, err := os.ReadFile("shared/carfile.ts")
	if err != nil {
		t.Fatal(err)
	}
	source := string(text)
	for _, fault := range carFileFaults(t, source) {
		t.Error(fault)
	}
	// Each change of the types is found: otherwise the comparison above says nothing.
	for _, change := range []struct{ from, to string }{
		{"  earlier_work?: string;\n", ""},
		{"  asked_in: number;\n", "  asked_in: number;\n  plate?: string;\n"},
		{"  lead_failed?: number;", "  lead_failed?: string;"},
		{"  shore?: string;\n", ""},
		{"  box: string;\n", "  box: string;\n  by: Teller;\n"},
		{`"gone"`, `"lost"`},
		{` | "could_not"`, ""},
		{`"metal" | `, ""},
		{` | "concours"`, ` | "concourse"`},
		{"  opened?: Opened[];", "  opened?: Opened;"},
		{"  was?: Was[];", "  was?: Choice[];"},
		{`"assembly"`, `"trim"`},
	} {
		changed := strings.Replace(source, change.from, change.to, 1)
		if changed == source {
			t.Errorf("carfile.ts no longer holds %q", change.from)
		} else if len(carFileFaults(t, changed)) == 0 {
			t.Errorf("with %q in place of %q nothing is found", change.to, change.from)
		}
	}
}
