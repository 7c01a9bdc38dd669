package build

import (
	"strings"
	"testing"
)

// TestEveryBudgetCanBeBroken: by one byte, by a size that was not found, alone.
func TestEveryBudgetCanBeBroken(t *testing.T) {
	within := Made{EngineBrotli: customerBudget, WholeBrotli: wholeBudget, FirstVisitBrotli: firstVisitBudget}
	if err := within.OverBudget(); err != nil {
		t.Error(err)
	}
	for name, change := range map[string]func(*Made){
		"customer's engine": func(m *Made) { m.EngineBrotli++ },
		"whole engine":      func(m *Made) { m.WholeBrotli++ },
		"first visit":       func(m *Made) { m.FirstVisitBrotli++ },
	} {
		m := within
		change(&m)
		err := m.OverBudget()
		if err == nil || !strings.Contains(err.Error(), name) || strings.Count(err.Error(), "\n") != 1 {
			t.Errorf("%s: %v", name, err)
		}
	}
	if err := (Made{}).OverBudget(); err == nil || strings.Count(err.Error(), "\n") != 3 {
		t.Errorf("nothing measured passes: %v", err)
	}
}
