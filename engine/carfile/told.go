package carfile

import (
	"slices"
	"strconv"

	"underpaint/engine/damage"
	"underpaint/engine/exposure"
	"underpaint/engine/strict"
)

// KeptIDs are the ways in which a car was kept, from driven in most of a year's weather
// to put away from nearly all of it; NotSure is also an answer.
var KeptIDs = exposure.KeptIDs()

// CoveredAnswers are the answers about paint and undercoat of the last ten years or so.
var CoveredAnswers = damage.CoverAnswers

// datedWork are the answers about earlier work that can have a year.
var datedWork = []string{"patched_here_and_there", "stripped_and_restored"}

// earlierKept are words of older files for how a car was kept, and what each is read
// as. Where the name has changed, the old and the new name are beside it.
var earlierKept = []struct{ id, is, said, now string }{
	{"mostly_garaged", "garage", "mostly put away in a garage", "mostly in an ordinary garage"},
	{"mostly_outside", "open_shed_or_outside", "", ""},
}

// readKept reads how a car was kept, including the words of older files.
func (l *Life) readKept(f strict.Field) {
	said := f.Apart().Text(60)
	for _, e := range earlierKept {
		if said == e.id {
			l.Kept, l.keptBefore = e.is, e.id
			return
		}
	}
	l.Kept = f.OneOf(append(slices.Clone(KeptIDs), NotSure)...)
}

// readWorkYear reads the year of the earlier work: not before the car was made, and not
// after the questions were answered.
func (c *Car) readWorkYear(f strict.Field) {
	if !f.Has("earlier_work_year") {
		return
	}
	at := f.Get("earlier_work_year")
	c.WorkYear = at.Whole(OldestYear, 2200)
	if f.Err() != nil {
		return
	}
	if !slices.Contains(datedWork, c.EarlierWork) {
		at.Complain("no year here, because only work that was patched here and there, or stripped and restored, has one")
		return
	}
	first, made := OldestYear, ""
	if known := max(c.Made.Year, c.Made.Decade); known != 0 {
		first, made = known, ", when the car was made,"
	}
	if c.WorkYear < first || c.WorkYear > c.AskedIn {
		at.Complain("a year from " + strconv.Itoa(first) + made + " to " + strconv.Itoa(c.AskedIn) + ", when the questions were answered")
	}
}

// Note is about something that a file leaves out or says in the words of an older file:
// a path, and a sentence for the person who opens it.
type Note struct{ Path, Text string }

// Notes lists what a reader of the file should know or add, in the order of the file.
// The car can be worked out without any of it.
func (c *Car) Notes() (notes []Note) {
	for n, l := range c.Life {
		for _, e := range earlierKept {
			if l.keptBefore == e.id && e.said != "" {
				notes = append(notes, Note{"life[" + strconv.Itoa(n) + "].kept",
					"Saved with an earlier version: we read “" + e.said + "” as “" + e.now + "”. Change it if that isn't right."})
			}
		}
	}
	if c.EarlierWork == "stripped_and_restored" && c.WorkYear == 0 {
		notes = append(notes, Note{"earlier_work_year", "The car was stripped and restored, but we don't know when. If you know the year, add it."})
	}
	if c.Covered == "" {
		notes = append(notes, Note{"covered", "We don't know whether the car was painted, or coated underneath, in the last ten years or so. Fresh coats hide rust, so a check that finds nothing says less."})
	}
	return notes
}
