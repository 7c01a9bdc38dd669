package rates

import (
	"encoding/json"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// fits checks a value against the part of JSON Schema (draft 2020-12) that the schema
// uses, and returns the first fault. A keyword that it does not know fails the test, so
// that none is skipped.
func fits(t *testing.T, root, schema, v any) string {
	t.Helper()
	if schema == false {
		return "not allowed"
	}
	s := schema.(map[string]any)
	for _, keyword := range names(s) {
		if fault := fitsKeyword(t, root, s, keyword, s[keyword], v); fault != "" {
			return fault
		}
	}
	return ""
}

func fitsKeyword(t *testing.T, root any, s map[string]any, keyword string, rule, v any) string {
	t.Helper()
	object, isObject := v.(map[string]any)
	list, isList := v.([]any)
	text, isText := v.(string)
	number, isNumber := v.(json.Number)
	ok := true
	switch keyword {
	case "$schema", "$id", "$defs", "title", "description", "then", "else":
	case "$ref":
		return fits(t, root, get(t, root, strings.ReplaceAll(strings.TrimPrefix(rule.(string), "#/"), "/", ".")), v)
	case "type":
		types, several := rule.([]any)
		if !several {
			types = []any{rule}
		}
		whole := isNumber && slices.Contains(types, any("integer")) && real(number) == math.Trunc(real(number))
		ok = whole || slices.Contains(types, any(typeOf(v)))
	case "const":
		ok = v == rule
	case "enum":
		ok = slices.ContainsFunc(rule.([]any), func(x any) bool { return !isObject && !isList && x == v })
	case "pattern":
		ok = !isText || regexp.MustCompile(rule.(string)).MatchString(text)
	case "minLength":
		ok = !isText || float64(len([]rune(text))) >= real(rule)
	case "maxLength":
		ok = !isText || float64(len([]rune(text))) <= real(rule)
	case "minimum":
		ok = !isNumber || real(number) >= real(rule)
	case "maximum":
		ok = !isNumber || real(number) <= real(rule)
	case "minItems":
		ok = !isList || float64(len(list)) >= real(rule)
	case "maxItems":
		ok = !isList || float64(len(list)) <= real(rule)
	case "uniqueItems":
		for i, x := range list {
			ok = ok && !slices.Contains(list[:i], x)
		}
	case "minProperties":
		ok = !isObject || float64(len(object)) >= real(rule)
	case "maxProperties":
		ok = !isObject || float64(len(object)) <= real(rule)
	case "required":
		for _, name := range rule.([]any) {
			if _, there := object[name.(string)]; isObject && !there {
				return name.(string) + " is required"
			}
		}
	case "additionalProperties":
		for name := range object {
			if _, known := s["properties"].(map[string]any)[name]; !known {
				return name + " is not known"
			}
		}
	case "properties":
		for name, x := range rule.(map[string]any) {
			if inner, there := object[name]; there {
				if fault := fits(t, root, x, inner); fault != "" {
					return name + ": " + fault
				}
			}
		}
	case "items":
		for _, x := range list {
			if fault := fits(t, root, rule, x); fault != "" {
				return fault
			}
		}
	case "if":
		branch := "then"
		if fits(t, root, rule, v) != "" {
			branch = "else"
		}
		return fits(t, root, s[branch], v)
	default:
		t.Fatalf("keyword %s", keyword)
	}
	if !ok {
		return keyword
	}
	return ""
}

func real(v any) float64 {
	x, err := v.(json.Number).Float64()
	if err != nil {
		panic(err)
	}
	return x
}

func typeOf(v any) string {
	switch v.(type) {
	case nil:
		return "null"
	case bool:
		return "boolean"
	case string:
		return "string"
	case json.Number:
		return "number"
	case []any:
		return "array"
	}
	return "object"
}
