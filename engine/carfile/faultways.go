package carfile

import (
	"slices"
	"strconv"
	"strings"

	"underpaint/engine/car"
)

func (f *faults) hours() {
	if f.c.StripHours == [car.Trades]float64{} {
		return
	}
	if !f.c.Begun(Survey) {
		f.add("strip_hours", "hours of a stage that has not begun", "the survey stage with its date", "")
		return
	}
	if _, err := f.t.With(f.c.Decided(f.b, Survey, false)); err != nil {
		f.take("", err, "")
	}
}

func (f *faults) ways() {
	for n, w := range f.c.Ways {
		path := "ways[" + strconv.Itoa(n) + "]"
		i, ok := f.b.ItemNamed(w.On)
		if !ok {
			f.add(path+".on", w.On, "a part of this body, such as "+f.b.Items[0].ID, w.On)
			continue
		}
		if slices.ContainsFunc(f.c.Ways[:n], func(o Choice) bool { return o.On == w.On }) {
			f.add(path+".on", w.On, "one way for each part", w.On)
		}
		if way := car.Way(slices.Index(car.WayIDs[:], w.Way)); f.c.RecordedMissing(w.On) {
			if ways := f.t.AllowedMissing(i); !slices.Contains(ways, way) {
				f.add(path+".way", w.Way, "one of "+wayList(ways)+", because the part is missing", w.On)
			}
			continue
		}
		k := f.c.RecordedCondition(w.On)
		if k < 0 {
			f.add(path+".on", w.On, "a part whose condition is recorded", w.On)
			continue
		}
		if way := car.Way(slices.Index(car.WayIDs[:], w.Way)); !slices.Contains(f.t.Allowed(i, k), way) {
			f.add(path+".way", w.Way, "one of "+wayList(f.t.Allowed(i, k))+" for this condition", w.On)
		}
	}
}

func wayList(ways []car.Way) string {
	var ids []string
	for _, w := range ways {
		ids = append(ids, car.WayIDs[w])
	}
	return strings.Join(ids, ", ")
}
