package carfile

import (
	"slices"
	"strconv"
	"strings"

	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/engine/evidence"
	"underpaint/engine/exposure"
	"underpaint/engine/olddamage"
	"underpaint/engine/strict"
)

// Hit is the answer to whether the car has been hit hard, and where.
type Hit struct {
	Answer string   // one of olddamage.Answers; "" = not asked
	Where  []string // of olddamage.ZoneIDs; only if it was hit
}

// SurveyCar is what a survey recorded of old accidents: how each zone was mended ("" =
// not recorded), and whether the body is square.
type SurveyCar struct {
	Zones  [olddamage.Zones]string
	Square string // one of olddamage.SquareIDs, or ""
}

func readHit(f strict.Field) (h Hit) {
	if !f.Has("hit") {
		return h
	}
	hit := f.Get("hit")
	hit.Keys(hitKeys...)
	h.Answer = hit.Get("answer").OneOf(olddamage.Answers...)
	for _, w := range some(hit, "where", len(olddamage.ZoneIDs)) {
		id := w.OneOf(olddamage.ZoneIDs[:]...)
		if f.Err() == nil && slices.Contains(h.Where, id) {
			w.ComplainFound(id+" twice", "each place once")
		}
		h.Where = append(h.Where, id)
	}
	if f.Err() == nil && len(h.Where) > 0 && !slices.Contains(olddamage.HitAnswers, h.Answer) {
		hit.Get("where").ComplainFound("a place, with the answer "+h.Answer, "no place, because only a car that was hit lightly or hard has one")
	}
	return h
}

func (h *Hit) write(w *strict.Writer) {
	if h.Answer == "" {
		return
	}
	w.Key("hit")
	w.Object(func() {
		w.Member("answer", h.Answer)
		if len(h.Where) > 0 {
			w.Texts("where", h.Where)
		}
	})
}

func readSurveyCar(f strict.Field) (s SurveyCar) {
	if !f.Has("survey_car") {
		return s
	}
	one := f.Get("survey_car")
	one.Keys(surveyCarKeys...)
	if one.Has("zones") {
		zones := one.Get("zones")
		zones.Keys(olddamage.ZoneIDs[:]...)
		for z, id := range olddamage.ZoneIDs {
			if zones.Has(id) {
				s.Zones[z] = zones.Get(id).OneOf(olddamage.MannerIDs[:]...)
			}
		}
	}
	if one.Has("square") {
		s.Square = one.Get("square").OneOf(olddamage.SquareIDs...)
	}
	return s
}

func (s *SurveyCar) write(w *strict.Writer) {
	if *s == (SurveyCar{}) {
		return
	}
	w.Key("survey_car")
	w.Object(func() {
		if s.Zones != [olddamage.Zones]string{} {
			w.Key("zones")
			w.Object(func() {
				for z, manner := range s.Zones {
					w.MemberIf(olddamage.ZoneIDs[z], manner)
				}
			})
		}
		w.MemberIf("square", s.Square)
	})
}

// Measured is whether the body is square, as far as anyone knows. An older file says that
// it is not among the findings of the whole car.
func (r *Recorded) Measured() string {
	if r.SurveyCar.Square == "" && slices.Contains(r.WholeCar, twisted) {
		return olddamage.OutOfSquare
	}
	return r.SurveyCar.Square
}

// twisted is the finding of the whole car in files from before squareness was recorded.
const twisted = "twist"

// ofOldDamage says whether a check is about old accidents and not about rust.
func ofOldDamage(l evidence.Look) bool {
	_, is := olddamage.LookNamed(l.Look)
	return is
}

// OldDamage returns what counts for the odds of old damage by the end of a stage.
func (c *Car) OldDamage(b *car.Body, reached string) olddamage.Known {
	k := olddamage.Known{RoadYears: c.roadYears(), Answer: c.Hit.Answer, Where: c.Hit.Where}
	for _, l := range c.Looks {
		if ofOldDamage(l) && (l.By == evidence.ByCustomer || reached != Told) {
			k.Looks = append(k.Looks, l)
		}
	}
	if reached != Survey && reached != OpeningUp {
		return k
	}
	k.Zones, k.Square = c.SurveyCar.Zones, c.Measured()
	for i, n := range c.recordsUpTo(b, reached) {
		if n >= 0 && !c.Survey[n].CouldNotSee {
			AddSeen(&k, b.PartOf(i), &c.Survey[n])
		}
	}
	return k
}

// AddSeen adds what a record of a part says of the earlier hand and of blasting.
func AddSeen(k *olddamage.Known, p *car.Part, r *Record) {
	var kinds []olddamage.Kind
	for n := olddamage.BadPanel; n < olddamage.HandKinds; n++ {
		if slices.Contains(r.Also, olddamage.KindIDs[n]) {
			kinds = append(kinds, n)
		}
	}
	brass, _ := findingNamed(olddamage.KindIDs[olddamage.Brazed])
	switch finding := slices.Index(damage.FindingIDs[:], r.Finding); damage.Finding(finding) {
	case damage.Replaced, damage.PatchOverRust:
		k.Hand = append(k.Hand, olddamage.HandSeen{Patch: damage.Finding(finding) == damage.PatchOverRust, CanBraze: brass.On(p), Kinds: kinds})
	}
	if olddamage.Starting().BigSkin(p) && r.bare(p) {
		warped := 0
		if slices.Contains(r.Also, olddamage.KindIDs[olddamage.Warped]) {
			warped = 1
		}
		k.Skins[warped]++
	}
}

// bare says whether a record is of bare metal that was seen, so that what it does not
// list is not there.
func (r *Record) bare(p *car.Part) bool {
	return !r.CouldNotSee && (r.Condition != "" || r.Finding != "") && (p.SeenWhenStripped || r.Stage == OpeningUp)
}

// roadYears is how long the car was on the road, to the middle of each answer.
func (c *Car) roadYears() float64 {
	ages, err := c.ages()
	if err != nil {
		return 0
	}
	told, err := c.told()
	if err != nil {
		return 0
	}
	return exposure.RoadYears(ages, told)
}

// oldLooks refuses checks of old damage that cannot be so.
func (f *faults) oldLooks() {
	first := map[evidence.Look]int{}
	for n, l := range f.c.Looks {
		if !ofOldDamage(l) {
			continue
		}
		kind, _ := olddamage.LookNamed(l.Look)
		path := "looks[" + strconv.Itoa(n) + "]"
		if !slices.Contains(kind.Zones, l.On) {
			f.add(path+".on", l.On, "one of "+strings.Join(kind.Zones, ", ")+" for the check "+l.Look, "")
		} else if l.On == olddamage.ZoneIDs[olddamage.Roof] && !olddamage.HasRoof(f.b) {
			f.add(path+".on", l.On, "a place of this body, which has no roof", "")
		}
		if l.By != evidence.ByShop && !kind.CustomerCan {
			f.add(path+".by", l.By, "shop, because only a shop can do the check "+l.Look, "")
		}
		same := evidence.Look{Look: l.Look, On: l.On, By: l.By}
		if before, twice := first[same]; twice {
			f.add(path+".on", l.On, "one answer to each check by the same person (entry "+strconv.Itoa(before)+" answers this check already)", "")
			continue
		}
		first[same] = n
	}
}

// surveyCar refuses records of old accidents that cannot be so.
func (f *faults) surveyCar() {
	s := &f.c.SurveyCar
	if *s == (SurveyCar{}) {
		return
	}
	if !f.c.Begun(Survey) {
		f.add("survey_car", "records of a survey that has not begun", "the survey stage with its date", "")
	}
	if !olddamage.HasRoof(f.b) && s.Zones[olddamage.Roof] != "" {
		f.add("survey_car.zones.roof", s.Zones[olddamage.Roof], "no record of a roof, which this body does not have", "")
	}
	if s.Square != olddamage.Square {
		return
	}
	if z := slices.Index(s.Zones[:], olddamage.MannerIDs[olddamage.Crooked]); z >= 0 {
		f.add("survey_car.square", s.Square+", with the zone "+olddamage.ZoneIDs[z]+" crooked", "out, because a body with a crooked zone is out of square", "")
	}
	if slices.Contains(f.c.WholeCar, twisted) {
		f.add("survey_car.square", s.Square+", with "+twisted+" under whole_car", "only one of the two", "")
	}
}
