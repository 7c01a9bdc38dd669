package carfile

import (
	"errors"
	"slices"
	"strconv"
	"strings"

	"underpaint/engine/car"
	"underpaint/engine/evidence"
	"underpaint/engine/pricing"
	"underpaint/engine/strict"
)

// Fault is one entry that cannot be true, with the item that it is about, if any. The
// rest of the file still counts.
type Fault struct {
	Err *strict.Error
	On  string
}

// faults collects every record that cannot be true of body b.
type faults struct {
	c    *Car
	b    *car.Body
	t    *pricing.Table
	list []Fault
}

// Faults checks quick checks, records, opened boxes, strip hours and choices, and
// returns every fault in the order of the file.
func (c *Car) Faults(b *car.Body, t *pricing.Table) []Fault {
	f := &faults{c: c, b: b, t: t}
	f.looks()
	f.oldLooks()
	f.stages()
	f.records()
	f.opened()
	f.surveyCar()
	f.hours()
	f.ways()
	return f.list
}

func (f *faults) add(path, found, expected, on string) {
	f.list = append(f.list, Fault{&strict.Error{Path: path, Found: found, Expected: expected}, on})
}

// take adds an error of another package under a path of this file.
func (f *faults) take(path string, err error, on string) {
	var at *strict.Error
	if !errors.As(err, &at) {
		at = &strict.Error{Found: "an entry", Expected: err.Error()}
	}
	own := *at
	own.Path = strings.Trim(path+"."+own.Path, ".")
	f.list = append(f.list, Fault{&own, on})
}

// looks finds every check that is refused, by removing one after another.
func (f *faults) looks() {
	left := slices.Clone(f.c.looksAt(f.b))
	var at []int
	for n, l := range f.c.Looks {
		if slices.Contains(left, l) {
			at = append(at, n)
		}
	}
	for len(left) > 0 {
		_, err := evidence.FromLooks(f.b, left)
		if err == nil {
			return
		}
		var e *strict.Error
		n := -1
		if errors.As(err, &e) {
			n = indexIn(e.Path)
		}
		if n < 0 || n >= len(left) {
			f.take("looks", err, "")
			return
		}
		own := *e
		own.Path = "looks[" + strconv.Itoa(at[n]) + "]" + own.Path[strings.IndexByte(own.Path, ']')+1:]
		f.list = append(f.list, Fault{&own, left[n].On})
		left, at = slices.Delete(left, n, n+1), slices.Delete(at, n, n+1)
	}
}

// indexIn reads n from a path that begins with name[n].
func indexIn(path string) int {
	open, shut := strings.IndexByte(path, '['), strings.IndexByte(path, ']')
	if open < 0 || shut < open {
		return -1
	}
	n, err := strconv.Atoi(path[open+1 : shut])
	if err != nil {
		return -1
	}
	return n
}

func (f *faults) stages() {
	last, day := -1, ""
	for n, s := range f.c.Stages {
		path, k := "stages["+strconv.Itoa(n)+"]", slices.Index(StageIDs, s.Stage)
		if k <= last {
			f.add(path+".stage", s.Stage, "each stage once, in the order "+strings.Join(StageIDs, ", "), "")
		}
		if s.On < day {
			f.add(path+".on", s.On, "a date no earlier than the stage before it, "+day, "")
		}
		last, day = max(k, last), s.On
	}
	survey, opening := f.c.Begun(Survey), f.c.Begun(OpeningUp)
	if opening && !survey {
		f.add("stages", "opening up without a survey", "the strip and survey first, because closed boxes are opened after it", "")
	}
	if len(f.c.Survey) > 0 && !survey {
		f.add("stages", "records of a survey that has not begun", "the survey stage with its date", "")
	}
	if len(f.c.Opened) > 0 && !opening {
		f.add("opened[0].box", f.c.Opened[0].Box, "the opening_up stage, after the survey, because closed boxes are opened then", "")
	} else if len(f.c.Opened) > 0 && !survey {
		f.add("opened[0].box", f.c.Opened[0].Box, "the strip and survey first, because closed boxes are opened after it", "")
	}
}

func (f *faults) records() {
	type key struct{ on, stage string }
	first := map[key]int{}
	for n := range f.c.Survey {
		r, path := &f.c.Survey[n], "survey["+strconv.Itoa(n)+"]"
		i, ok := f.b.ItemNamed(r.On)
		if !ok {
			f.add(path+".on", r.On, "a part of this body, such as "+f.b.Items[0].ID, r.On)
			continue
		}
		k := key{r.On, r.Stage}
		if m, twice := first[k]; twice {
			f.add(path+".on", r.On, "one record of each part at each stage (survey["+strconv.Itoa(m)+"] records this part already)", r.On)
			continue
		}
		first[k] = n
		f.record(path, r, i)
	}
}

func (f *faults) record(path string, r *Record, i int) {
	p := f.b.PartOf(i)
	if r.Stage == OpeningUp {
		if p.SeenWhenStripped {
			f.add(path+".stage", r.Stage, "survey, because this part shows once the car is stripped and is not in a closed box", r.On)
		} else if box := f.b.Pockets[f.b.Items[i].Pocket].ID; !f.c.IsOpen(box) {
			f.add(path+".stage", r.Stage, "the box "+box+" to be listed under opened first", r.On)
		}
	}
	if r.CouldNotSee && r.Condition != "" {
		f.add(path+".could_not_see", "could_not_see and the condition "+r.Condition, "only one of the two", r.On)
	}
	if r.Sure && r.Condition == "" {
		f.add(path+".sure", "true without a condition", "a condition that was checked again (otherwise remove sure)", r.On)
	}
	if _, err := evidence.Reading(p, r.Entry()); err != nil {
		f.take(path, err, r.On)
	}
	if r.LeadFailed > p.LeadJoints {
		f.add(path+".lead_failed", strconv.Itoa(r.LeadFailed), "at most "+strconv.Itoa(p.LeadJoints)+", the number of lead joints on this part", r.On)
	}
	for k, id := range r.Also {
		if one, ok := findingNamed(id); !ok || one.PerCar || !one.Priced || !one.On(p) {
			f.add(path+".also["+strconv.Itoa(k)+"]", id, "a further finding that this part can have", r.On)
		}
	}
	f.missingPart(path, r, i)
	f.panelFit(path, r, i)
}

// Entry returns the record in the form that package evidence reads.
func (r *Record) Entry() evidence.SurveyEntry {
	if r.CouldNotSee {
		return evidence.SurveyEntry{}
	}
	return evidence.SurveyEntry{Condition: r.Condition, Finding: r.Finding, Dent: r.Dent, Opened: r.Stage == OpeningUp}
}

func (c *Car) IsOpen(box string) bool {
	return slices.ContainsFunc(c.Opened, func(o Opened) bool { return o.Box == box })
}

func findingNamed(id string) (pricing.Finding, bool) {
	for _, one := range pricing.Findings() {
		if one.ID == id {
			return one, true
		}
	}
	return pricing.Finding{}, false
}

func (f *faults) opened() {
	for n, o := range f.c.Opened {
		path := "opened[" + strconv.Itoa(n) + "].box"
		k := slices.IndexFunc(f.b.Pockets, func(p car.Pocket) bool { return p.ID == o.Box })
		if k < 0 || len(ClosedItems(f.b, k)) == 0 {
			f.add(path, o.Box, "a closed box of this body", "")
		}
		if slices.ContainsFunc(f.c.Opened[:n], func(p Opened) bool { return p.Box == o.Box }) {
			f.add(path, o.Box, "each box once", "")
		}
	}
	for n, id := range f.c.WholeCar {
		if one, ok := findingNamed(id); !ok || !one.PerCar {
			f.add("whole_car["+strconv.Itoa(n)+"]", id, "a finding about the whole car", "")
		}
	}
}

// ClosedItems lists the items of a pocket that nobody can see until it is opened.
func ClosedItems(b *car.Body, pocket int) (out []int) {
	for _, i := range b.Pockets[pocket].Items {
		if !b.PartOf(i).SeenWhenStripped {
			out = append(out, i)
		}
	}
	return out
}
