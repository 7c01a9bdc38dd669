package rates

import (
	"encoding/json"
	"errors"
	"regexp"
	"slices"
	"strings"
	"testing"

	"underpaint/engine/strict"
)

// optionalNames may be left out anywhere; every other member is required.
var optionalNames = []string{"source", "note", "href", "factor", "scopes", "no_more_than", "waits_weeks", "percent", "base_share", "prices_over_time"}

// leftOutAt matches places where a name that is required elsewhere may be left out.
var leftOutAt = regexp.MustCompile(`\.factor\.(driver|concours)$|^parts\.prices\[\d+\]\.body$|^prices_over_time\.promise\.from$`)

// neededAt matches places where a name that is optional elsewhere is required.
var neededAt = regexp.MustCompile(`^materials\[\d+\]\.source$|^sent_out\.work\[\d+\]\.scopes$|^tax\.(note|percent)$|^supplies\.percent$`)

// TestEveryMember puts every kind of wrong value at every member of the samples and
// expects the error at exactly that path.
func TestEveryMember(t *testing.T) {
	count := 0
	for i, sample := range [][]byte{Sample(), SampleUK()} {
		visit(tree(t, sample), "", func(path string, v any) {
			if i == 1 && !strings.HasPrefix(path, "supplies") {
				return // only there does the second sample have members of its own
			}
			count++
			complains(t, path, path, changed(t, sample, path, raw("[[]]")), "a list in a list")
			complains(t, path, path, changed(t, sample, path, raw("1e308")), "1e308")
			complains(t, path, path, changed(t, sample, path, raw("-1")), "-1")
			if _, err := Decode(changed(t, sample, path, raw("NaN"))); err == nil {
				t.Errorf("%s: NaN was taken", path)
			}
			switch v := v.(type) {
			case json.Number:
				complains(t, path, path, changed(t, sample, path, raw(`"x"`)), "a text")
				complains(t, path, path, changed(t, sample, path, raw("null")), "null")
			case map[string]any:
				complains(t, path, path, changed(t, sample, path+".zzz", raw("1")), "an unknown name")
			case string:
				if len(v) > 0 {
					complains(t, path, path, changed(t, sample, path, strings.Repeat("x", 2001)), "2001 letters")
				}
			}
		})
	}
	if count < 600 {
		t.Errorf("only %d members checked", count)
	}
}

// TestMissing removes every member in turn.
func TestMissing(t *testing.T) {
	for _, sample := range [][]byte{Sample(), SampleUK()} {
		visit(tree(t, sample), "", func(path string, _ any) {
			if strings.HasSuffix(path, "]") {
				return // an entry of a list, not a member
			}
			name := path[strings.LastIndex(path, ".")+1:]
			file := changed(t, sample, path, missing)
			if leftOutAt.MatchString(path) || slices.Contains(optionalNames, name) && !neededAt.MatchString(path) {
				if _, err := Decode(file); err != nil {
					t.Errorf("%s may be left out, but: %v", path, err)
				}
				return
			}
			want := path
			if i := strings.Index(path, ".how."); i >= 0 && strings.Count(path[i:], ".") == 2 {
				want = path[:i] + ".how" // one of the three must be there, but none in particular
			}
			complains(t, path, want, file, "left out")
		})
	}
}

func complains(t *testing.T, what, path string, file []byte, how string) {
	t.Helper()
	r, err := Decode(file)
	var complaint *strict.Error
	switch {
	case err == nil:
		t.Errorf("%s: %s was taken", what, how)
	case r != nil:
		t.Errorf("%s: %s: rates beside an error", what, how)
	case !errors.As(err, &complaint):
		t.Errorf("%s: %s: %T is no *strict.Error", what, how, err)
	case complaint.Path != path && !strings.HasPrefix(complaint.Path, path+"[") && !strings.HasPrefix(complaint.Path, path+"."):
		t.Errorf("%s: %s: complaint at %q: %v", what, how, complaint.Path, err)
	case complaint.Expected == "" || complaint.Found == "":
		t.Errorf("%s: %s: half a complaint: %v", what, how, err)
	}
}

// TestRefused has, for each member with a rule of its own, a value that breaks only
// that rule. An empty path means the path of the value.
func TestRefused(t *testing.T) {
	for _, c := range refused {
		sample := Sample()
		if c.uk {
			sample = SampleUK()
		}
		file := changed(t, sample, c.at, c.value)
		want := c.path
		if want == "" {
			want = c.at
		}
		_, err := Decode(file)
		var complaint *strict.Error
		if !errors.As(err, &complaint) {
			t.Errorf("%s = %v: taken (%v)", c.at, c.value, err)
			continue
		}
		if want == "top" {
			want = ""
		}
		if complaint.Path != want || !strings.Contains(complaint.Expected, c.expected) {
			t.Errorf("%s = %v: expected %q at %q, got %v", c.at, c.value, c.expected, want, err)
		}
	}
}

// TestDecodeTop: texts that are not rates files at all.
func TestDecodeTop(t *testing.T) {
	for _, text := range []string{"", "null", "[]", "{", "{}", `{"format":"underpaint car 1"}`,
		string(Sample()) + "x", strings.Replace(string(Sample()), `"words": "us",`, `"words": "us", "words": "us",`, 1)} {
		if r, err := Decode([]byte(text)); err == nil || r != nil {
			t.Errorf("taken: %.40q", text)
		}
	}
}
