package figures

import (
	"encoding/json"
	"errors"
	"os"
	"path/filepath"

	"underpaint/engine/car"
	"underpaint/engine/damage"
)

// ByState has one value for each state of earlier repairs: untouched, patched,
// restored for looks, restored thoroughly.
type ByState [damage.RepairStates]float64

// TwoKinds has one value for parts that are repaired first, and one for the others.
type TwoKinds struct {
	First     float64 `json:"outer_and_floor_pans"`
	Elsewhere float64
}

// Damage is engine/damage/data/damage.json.
type Damage struct {
	Format string
	Loss   struct {
		Steps  [car.Conditions - 1]float64 `json:"steps"`
		Hidden float64                     `json:"first_step_on_hidden"`
	} `json:"loss_below"`
	Shares struct {
		Split
		Sigma  float64
		Closed struct{ Side, Own float64 } `json:"closed_box"`
		Local  struct {
			Split
			Parts []string
		}
	}
	Leak  struct{ Chance, Shift float64 }
	Cause struct {
		FullAge   float64 `json:"age_of_full_chance"`
		Most      float64 `json:"most_times"`
		Condition struct{ Water, Acid [car.Conditions]float64 }
		AcidOn    []string           `json:"acid_on"`
		ByPart    map[string]float64 `json:"chance_by_part"`
		Spared    struct {
			Chance    float64
			ByPart    map[string]float64 `json:"chance_by_part"`
			Condition [car.Conditions]float64
		}
	} `json:"own_cause"`
	Repairs struct {
		Young      ByState                            `json:"car_at_15_years"`
		Old        ByState                            `json:"car_over_40_years"`
		Holed      [3]float64                         `json:"repaired_where_holed"`
		Elsewhere  float64                            `json:"elsewhere_times"`
		Floors     []string                           `json:"floor_pans"`
		Kinds      [3]map[string]float64              `json:"kinds"`
		Then       map[string][car.Conditions]float64 `json:"condition_then"`
		Thoroughly struct {
			NotReached    TwoKinds `json:"not_reached"`
			FoundReplaced TwoKinds `json:"found_replaced"`
		}
		Knock   ByState `json:"replaced_after_a_knock"`
		Dent    ByState `json:"filler_over_dent"`
		DentLow float64 `json:"filler_over_dent_low_down_times"`
	} `json:"earlier_repairs"`
	Answer map[string]json.RawMessage `json:"answer_about_earlier_work"`
	Cover  struct {
		Chance ByState
		Answer map[string][2]float64
	} `json:"covered"`
	Lead map[string]json.RawMessage `json:"failed_lead_joint"`
}

// Split are shares of the variance of the log depth.
type Split struct{ Car, Group, Side, Own float64 }

// damageFormat is the format that this file reads. Members of another format would be
// left out silently.
const damageFormat = "underpaint damage 2"

// ReadDamage reads the file below the root of the module.
func ReadDamage(root string) (*Damage, error) {
	text, err := os.ReadFile(filepath.Join(root, "engine", "damage", "data", "damage.json"))
	if err != nil {
		return nil, err
	}
	f := &Damage{}
	if err := json.Unmarshal(text, f); err != nil {
		return nil, err
	}
	if f.Format != damageFormat {
		return nil, errors.New("damage.json: expected " + damageFormat + ", found " + f.Format)
	}
	return f, nil
}

// RepairPrior is the prior of the repair states at an age, a straight line between 15
// years and 40.
func (f *Damage) RepairPrior(age float64) (p ByState) {
	r := &f.Repairs
	t := min(1, max(0, (age-15)/25))
	for k := range p {
		p[k] = r.Young[k]*(1-t) + r.Old[k]*t
	}
	return p
}

// LeadFails is the probability that a lead joint failed, by the last place.
func (f *Damage) LeadFails(place string) (p float64, err error) {
	return p, json.Unmarshal(f.Lead[place], &p)
}

// Answered is the probability of the answers about earlier work and cover, by repair
// state; 1 where nobody asked.
func (f *Damage) Answered(k *damage.Known) (p ByState, err error) {
	p = ByState{1, 1, 1, 1}
	if k.EarlierWork != "" {
		if err = json.Unmarshal(f.Answer[k.EarlierWork], &p); err != nil {
			return p, err
		}
	}
	said := [2]float64{1, 1}
	if k.Cover.Answer != "" {
		said = f.Cover.Answer[k.Cover.Answer]
	}
	for v, more := range k.Cover.Fresh {
		if k.Cover.Fresh != [2]float64{} {
			said[v] *= more
		}
	}
	for r, covered := range f.Cover.Chance {
		p[r] *= (1-covered)*said[0] + covered*said[1]
	}
	return p, nil
}
