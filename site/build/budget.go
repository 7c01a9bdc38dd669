package build

import "fmt"

// Budgets, in bytes compressed with Brotli: an alarm with room for ordinary changes,
// not an aim. Reached were 1,305,000, 1,479,000 and 1,424,000, of which the two type
// faces are 38,000.
const (
	customerBudget   = 1_340_000
	wholeBudget      = 1_520_000
	firstVisitBudget = 1_460_000
)

// OverBudget names each size that is above its budget, as an error, or is nil.
func (m Made) OverBudget() error {
	over := ""
	for _, b := range []struct {
		name       string
		size, most int
	}{
		{"the customer's engine", m.EngineBrotli, customerBudget},
		{"the whole engine", m.WholeBrotli, wholeBudget},
		{"a customer's first visit", m.FirstVisitBrotli, firstVisitBudget},
	} {
		if b.size > b.most || b.size <= 0 {
			over += fmt.Sprintf("\n  %s has %d bytes (brotli), the budget is %d", b.name, b.size, b.most)
		}
	}
	if over == "" {
		return nil
	}
	return fmt.Errorf("over budget (site/build/budget.go):%s", over)
}
