package carfile

import (
	"strconv"
	"strings"

	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/engine/pricing"
	"underpaint/engine/strict"
)

// The stages after the customer's answers, in the order in which a car goes through
// them.
const (
	WalkRound = "walk_round"
	Survey    = "survey"
	OpeningUp = "opening_up"
)

// StageIDs are the stages that a car file can name.
var StageIDs = []string{WalkRound, Survey, OpeningUp}

// Bounds of what a shop may enter of one car (assumption).
const (
	maxRecords, maxEarlier, maxNote = 400, 20, 300
	maxStripHours                   = 2000
)

// Recorded is what the shop has seen, done and chosen on one car.
type Recorded struct {
	AnswersChecked string // the date on which the shop went through the answers
	Stages         []Stage
	Survey         []Record
	Opened         []Opened
	WholeCar       []string // findings of the whole car
	SurveyCar      SurveyCar
	StripHours     [car.Trades]float64 // 0 = not entered
	Ways           []Choice
	CameTo         [len(StepIDs)]string // cost of each finished stage of the work, decimals in the rates' currency; "" = not finished
}

// StepIDs are the stages of the work, after each of which it can stop.
var StepIDs = [...]string{"strip_and_survey", "structure", "outer_metal", "paint", "assembly"}

// Stage is a stage that was begun: its date, and the codes of that day's rates and of the
// program's own figures.
type Stage struct{ Stage, On, Rates, Figures string }

// Record is what was recorded of one item at one stage. Blank members were not
// recorded.
type Record struct {
	On, Stage, Condition, Finding string
	Dent                          string // evidence.Yes, No or blank
	Also                          []string
	LeadFailed                    int    // failed lead joints, −1 = not counted
	PanelFit                      string // how the panel bought for it fits: one of pricing.PanelFits or blank
	CouldNotSee                   bool
	Sure                          bool // the estimator has checked again, and the condition is as recorded
	Note, Photo, At               string
	Was                           []Was
}

// Was is what a record said before it was corrected.
type Was struct{ Condition, At string }

// Opened says that one closed box was opened, and when, for all parts that share it.
type Opened struct{ Box, At string }

// Choice is the way that the customer or the shop has chosen for one item.
type Choice struct{ On, Way, By string }

func (c *Car) readRecorded(f strict.Field) {
	r := &c.Recorded
	if f.Has("answers_checked") {
		r.AnswersChecked = f.Get("answers_checked").Date()
	}
	for _, s := range some(f, "stages", len(StageIDs)) {
		s.Keys(stageKeys...)
		one := Stage{Stage: s.Get("stage").OneOf(StageIDs...), On: s.Get("on").Date()}
		if s.Has("rates") {
			one.Rates = s.Get("rates").Text(20)
		}
		if s.Has("figures") {
			one.Figures = s.Get("figures").Text(20)
			if !strict.IsCheckCode(one.Figures) {
				s.Get("figures").Complain(`a figures code, such as "0a1b2 c3d4e"`)
			}
		}
		r.Stages = append(r.Stages, one)
	}
	for _, e := range some(f, "survey", maxRecords) {
		r.Survey = append(r.Survey, readRecord(e))
	}
	for _, o := range some(f, "opened", maxRecords) {
		o.Keys(openedKeys...)
		r.Opened = append(r.Opened, Opened{Box: o.Get("box").Text(60), At: when(o)})
	}
	for _, w := range some(f, "whole_car", 10) {
		r.WholeCar = append(r.WholeCar, w.Text(40))
	}
	r.SurveyCar = readSurveyCar(f)
	r.StripHours = ReadHours(f, "strip_hours", maxStripHours)
	for _, w := range some(f, "ways", maxRecords) {
		w.Keys(choiceKeys...)
		r.Ways = append(r.Ways, Choice{On: w.Get("on").Text(60), Way: w.Get("way").OneOf(car.WayIDs[:]...), By: w.Get("by").OneOf("customer", "shop")})
	}
	r.readCameTo(f)
}

// ReadHours reads hours by trade from a member that may be left out; 0 = not entered.
func ReadHours(f strict.Field, name string, most float64) (hours [car.Trades]float64) {
	if !f.Has(name) {
		return hours
	}
	entered := f.Get(name)
	entered.Keys(car.TradeIDs[:]...)
	for t, id := range car.TradeIDs {
		if entered.Has(id) {
			hours[t] = entered.Get(id).Number(0.1, most)
		}
	}
	return hours
}

func (r *Recorded) readCameTo(f strict.Field) {
	if !f.Has("came_to") {
		return
	}
	sums := f.Get("came_to")
	sums.Keys(StepIDs[:]...)
	for k, id := range StepIDs {
		if !sums.Has(id) {
			continue
		}
		if r.CameTo[k] = sums.Get(id).Decimal(); strings.HasPrefix(r.CameTo[k], "-") {
			sums.Get(id).Complain("an amount of 0 or more")
		}
		if k > 0 && r.CameTo[k-1] == "" && f.Err() == nil {
			sums.Get(id).ComplainFound("a later stage", "the stages before it first, up to "+StepIDs[k-1])
		}
	}
}

// some returns the entries of an optional list.
func some(f strict.Field, name string, most int) []strict.Field {
	if !f.Has(name) {
		return nil
	}
	items := f.Get(name).Items()
	if len(items) > most {
		f.Get(name).ComplainFound(strconv.Itoa(len(items))+" entries", "at most "+strconv.Itoa(most))
	}
	return items
}

func readRecord(f strict.Field) Record {
	f.Keys(recordKeys...)
	r := Record{On: f.Get("on").Text(60), Stage: f.Get("stage").OneOf(Survey, OpeningUp), LeadFailed: -1, At: when(f)}
	if f.Has("condition") {
		r.Condition = f.Get("condition").OneOf(car.ConditionIDs[:]...)
	}
	if f.Has("finding") {
		r.Finding = f.Get("finding").OneOf(damage.FindingIDs[:]...)
	}
	if f.Has("dent") {
		r.Dent = "no"
		if f.Get("dent").Bool() {
			r.Dent = "yes"
		}
	}
	for _, a := range some(f, "also", 12) {
		r.Also = append(r.Also, a.Text(40))
	}
	if f.Has("lead_failed") {
		r.LeadFailed = f.Get("lead_failed").Whole(0, 20)
	}
	if f.Has("panel_fit") {
		r.PanelFit = f.Get("panel_fit").OneOf(pricing.PanelFits...)
	}
	r.CouldNotSee = f.Has("could_not_see") && f.Get("could_not_see").Bool()
	r.Sure = f.Has("sure") && f.Get("sure").Bool()
	if f.Has("note") {
		r.Note = f.Get("note").Text(maxNote)
	}
	if f.Has("photo") {
		r.Photo = f.Get("photo").Text(40)
	}
	for _, w := range some(f, "was", maxEarlier) {
		w.Keys(wasKeys...)
		one := Was{At: when(w)}
		if w.Has("condition") {
			one.Condition = w.Get("condition").OneOf(car.ConditionIDs[:]...)
		}
		r.Was = append(r.Was, one)
	}
	return r
}

// when reads an optional date and time such as 2026-06-20T14:05.
func when(f strict.Field) string {
	if !f.Has("at") {
		return ""
	}
	at := f.Get("at")
	text := at.Text(16)
	if f.Err() == nil && !isMoment(text) {
		at.Complain("a date and a time, such as 2026-06-20T14:05")
	}
	return text
}

func isMoment(s string) bool {
	const form = "0000-00-00T00:00"
	if len(s) != len(form) {
		return false
	}
	for i := range form {
		digit := s[i] >= '0' && s[i] <= '9'
		if digit != (form[i] == '0') || !digit && s[i] != form[i] {
			return false
		}
	}
	return s[5:7] >= "01" && s[5:7] <= "12" && s[8:10] >= "01" && s[8:10] <= "31" && s[11:13] <= "23" && s[14:16] <= "59"
}

// Begun says whether a stage was begun.
func (c *Car) Begun(stage string) bool {
	for _, s := range c.Stages {
		if s.Stage == stage {
			return true
		}
	}
	return false
}
