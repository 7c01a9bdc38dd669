package module

import (
	"cmp"
	"errors"
	"maps"
	"slices"
	"strings"
)

// Weight is how many bytes a part of a module has.
type Weight struct {
	Name  string
	Parts int // functions of a package; 1 for anything else
	Bytes int
	Text  []byte // the bytes themselves, to be compressed by who wants to know
}

// Weigh says where the bytes of a module with names go: its sections, and the code
// by package, largest first. A compressed size is told best of a section; packages
// compress each other, so those of packages add up to more than the code.
func Weigh(code []byte, packages []string) (bySection, byPackage []Weight, err error) {
	all, err := sections(code)
	if err != nil {
		return nil, nil, err
	}
	var names map[int]string
	var functions [][]byte
	imported := 0
	for _, s := range all {
		r := reader{rest: s.body}
		switch s.id {
		case customSection:
			if found := functionNames(s.body); found != nil {
				names = found
				continue
			}
		case importSection:
			imported = r.number() // Go programs import functions only
		case codeSection:
			functions = bodies(&r)
			if r.err != nil {
				return nil, nil, r.err
			}
		}
		bySection = append(bySection, Weight{s.name(), 1, len(s.body), s.body})
	}
	if names == nil {
		return nil, nil, errors.New("expected names in the module: it has to be linked with them")
	}
	return heaviest(bySection), byPackageOf(functions, names, imported, packages), nil
}

func bodies(r *reader) (all [][]byte) {
	for n := r.number(); n > 0 && r.err == nil; n-- {
		all = append(all, r.bytes(r.number()))
	}
	return all
}

// functionNames reads the names of functions from the custom section "name" (the
// appendix on custom sections, 7.4.1), or nil from any other.
func functionNames(body []byte) map[int]string {
	r := reader{rest: body}
	if string(r.bytes(r.number())) != "name" {
		return nil
	}
	names := map[int]string{}
	for len(r.rest) > 0 && r.err == nil {
		kind := r.bytes(1)
		part := reader{rest: r.bytes(r.number())}
		if r.err != nil || kind[0] != 1 {
			continue
		}
		for n := part.number(); n > 0 && part.err == nil; n-- {
			index := part.number()
			names[index] = string(part.bytes(part.number()))
		}
	}
	return names
}

// byPackageOf adds functions up by package. The linker writes the path of a package
// with lines for what is neither letter, digit nor point, and then a point.
func byPackageOf(functions [][]byte, names map[int]string, imported int, packages []string) []Weight {
	written := map[string]string{"main": "main", "type_": "comparing and hashing of types"}
	for _, p := range packages {
		written[strings.Map(plainLetter, p)] = p
	}
	sums := map[string]*Weight{}
	for k, body := range functions {
		name, owner := names[imported+k], ""
		for at := range len(name) {
			if name[at] == '.' && written[name[:at]] != "" {
				owner = written[name[:at]] // the longest wins: points stand in paths too
			}
		}
		owner = cmp.Or(owner, "other functions")
		if sums[owner] == nil {
			sums[owner] = &Weight{Name: owner}
		}
		w := sums[owner]
		w.Parts, w.Bytes, w.Text = w.Parts+1, w.Bytes+len(body), append(w.Text, body...)
	}
	var all []Weight
	for w := range maps.Values(sums) {
		all = append(all, *w)
	}
	return heaviest(all)
}

func plainLetter(r rune) rune {
	if r == '.' || r >= '0' && r <= '9' || r >= 'A' && r <= 'Z' || r >= 'a' && r <= 'z' {
		return r
	}
	return '_'
}

func heaviest(all []Weight) []Weight {
	slices.SortFunc(all, func(a, b Weight) int {
		return cmp.Or(b.Bytes-a.Bytes, strings.Compare(a.Name, b.Name))
	})
	return all
}
