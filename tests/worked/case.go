package worked

import (
	"encoding/json"
	"os"
)

// Case is what is known of a car, and the results of the independent calculation.
type Case struct {
	Answer   string `json:"earlier_work_answer"`
	Body     string `json:"body_pattern"`
	Standard string
	ThisYear int `json:"this_year"`
	Lived    []struct {
		Chance  float64
		Periods []struct {
			Place, Kept string
			Years       float64
			RoadYears   float64 `json:"road_years"`
		}
	} `json:"where_it_lived"`
	Tests     []Look
	SideTests []Look `json:"side_tests"`
	Survey    map[string]struct {
		Condition string
		Findings  []string
		Lead      *int `json:"failed_lead_joints"`
	}
	Expect struct {
		Condition map[string][]float64
		Repair    map[string][]float64 `json:"earlier_repair_of_item"`
		Dent      map[string]float64   `json:"filler_over_dent"`
		State     []float64            `json:"car_repair_state"`
		Level     []float64            `json:"history_level"`
		Covered   float64
		MeanK     float64 `json:"mean_K"`
		Hours     struct {
			All   Hours `json:"all_hours"`
			Metal Hours `json:"metal_hours_after_the_strip"`
		}
	}
}

// Look is a check of a part or of a whole side.
type Look struct{ Item, Side, Test, Result, Who string }

// Hours are ends of a range of hours with their standard errors.
type Hours struct {
	Ends [4]float64 `json:"P10_P50_P80_P90"`
	SE   [4]float64 `json:"standard_error"`
}

// Read reads the case in a file.
func Read(file string) (c Case, err error) {
	text, err := os.ReadFile(file)
	if err != nil {
		return c, err
	}
	return c, json.Unmarshal(text, &c)
}
