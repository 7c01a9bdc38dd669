package exact

import (
	"encoding/json"
	"os"
	"path/filepath"

	"underpaint/engine/car"
	"underpaint/tests/figures"
)

// Figures are the engine's data files of chances and hours, read with code of their
// own.
type Figures struct {
	damage *figures.Damage
	work   workFile
}

type three [3]float64

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
	Strip struct {
		Steps []stepFigures
		Faces struct {
			Outer  float64 `json:"outer"`
			Seen   float64 `json:"seen_when_open"`
			Open   float64 `json:"hidden_open"`
			Closed float64 `json:"hidden_closed"`
		}
	} `json:"strip_and_survey"`
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

// ReadFigures reads the engine's data files below the root of the module.
func ReadFigures(root string) (*Figures, error) {
	damage, err := figures.ReadDamage(root)
	if err != nil {
		return nil, err
	}
	f := &Figures{damage: damage}
	text, err := os.ReadFile(filepath.Join(root, "engine", "pricing", "data", "work.json"))
	if err != nil {
		return nil, err
	}
	return f, json.Unmarshal(text, &f.work)
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
