package exact

import (
	"encoding/json"
	"os"
	"path/filepath"

	"underpaint/engine/car"
)

// Figures are the engine's data files of chances and hours, read by other code.
type Figures struct {
	damage damageFile
	work   workFile
}

type three [3]float64

type damageFile struct {
	Loss struct {
		Steps  [car.Conditions - 1]float64 `json:"steps"`
		Hidden float64                     `json:"first_step_on_hidden"`
	} `json:"loss_below"`
	Shares struct {
		Sigma, Car, Group, Side, Own float64
		Closed                       struct{ Side, Own float64 } `json:"closed_box"`
	}
	Repairs struct {
		Young     three                              `json:"car_at_15_years"`
		Old       three                              `json:"car_over_40_years"`
		Holed     three                              `json:"repaired_where_holed"`
		Elsewhere float64                            `json:"elsewhere_times"`
		Floors    []string                           `json:"floor_pans"`
		Kinds     [3]map[string]float64              `json:"kinds"`
		Then      map[string][car.Conditions]float64 `json:"condition_then"`
		Knock     three                              `json:"replaced_after_a_knock"`
		Dent      three                              `json:"filler_over_dent"`
		DentLow   float64                            `json:"filler_over_dent_low_down_times"`
	} `json:"earlier_repairs"`
	Answer map[string]json.RawMessage `json:"answer_about_earlier_work"`
	Lead   map[string]json.RawMessage `json:"failed_lead_joint"`
}

type workFile struct {
	Standards struct {
		Factors map[string]map[string]float64
	}
	WholeCar struct {
		Metal       float64
		Other       float64 `json:"other_trades"`
		Correlation float64
	} `json:"whole_car"`
	Done struct {
		Standards map[string]map[string]map[string][car.Ways]float64
	} `json:"what_is_done"`
	Lead struct {
		TakeOut three `json:"take_out"`
	} `json:"lead_joint"`
	Findings struct {
		Kinds []struct {
			ID    string
			Hours three
		}
	}
	Strip struct{ Steps []stepFigures } `json:"strip_and_survey"`
	After struct {
		Work []struct {
			ID, Trade string
			Scopes    []string
			Show      three
		}
	} `json:"after_survey"`
}

type stepFigures struct {
	ID, Trade string
	Hours     three
	PerJoint  *three `json:"per_lead_joint"`
	OnAFrame  *struct {
		ID    string
		Hours three
	} `json:"on_a_frame"`
}

// ReadFigures reads the data files of the engine below the root of the module.
func ReadFigures(root string) (*Figures, error) {
	f := &Figures{}
	for path, to := range map[string]any{"engine/damage/data/damage.json": &f.damage, "engine/work/data/work.json": &f.work} {
		text, err := os.ReadFile(filepath.Join(root, filepath.FromSlash(path)))
		if err != nil {
			return nil, err
		}
		if err := json.Unmarshal(text, to); err != nil {
			return nil, err
		}
	}
	return f, nil
}

// hoursOf finds the extra hours of a finding.
func (f *Figures) hoursOf(id string) (h three) {
	for _, k := range f.work.Findings.Kinds {
		if k.ID == id {
			h = k.Hours
		}
	}
	return h
}

// repairPrior is a straight line between 15 years and 40.
func (f *Figures) repairPrior(age float64) (p three) {
	r := &f.damage.Repairs
	t := min(1, max(0, (age-15)/25))
	for k := range p {
		p[k] = r.Young[k]*(1-t) + r.Old[k]*t
	}
	return p
}

// leadFails is the chance that a lead joint failed, by the last place.
func (f *Figures) leadFails(place string) (p float64, err error) {
	return p, json.Unmarshal(f.damage.Lead[place], &p)
}

// answered is the chance of an answer about earlier work by repair state; 1 where
// nobody asked.
func (f *Figures) answered(answer string) (p three, err error) {
	if answer == "" {
		return three{1, 1, 1}, nil
	}
	return p, json.Unmarshal(f.damage.Answer[answer], &p)
}
