package estimate_test

import (
	"fmt"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/estimate"
	"underpaint/engine/money"
	"underpaint/engine/pricing"
	"underpaint/engine/rates"
)

// This example goes from a car file and a shop's rates to a range. It builds a model of
// hidden damage and a price table, then adds simulated cars until both ends are accurate
// enough.
func ExampleRun() {
	c, err := carfile.Decode([]byte(`{"format": "underpaint car 1", "asked_in": 2026, "bodies": ["two_door_unitary"], "made": {"year": 1967},
		"life": [{"place": "mild", "kept": "driven_all_year"}], "standard": "show", "scope": "whole_body", "looks": []}`))
	if err != nil {
		fmt.Println(err)
		return
	}
	shop, err := rates.Decode(rates.Sample())
	if err != nil {
		fmt.Println(err)
		return
	}
	run, err := newRun(c, shop)
	if err != nil {
		fmt.Println(err)
		return
	}
	settled := run.Settle(estimate.Accuracy{ShareOfWidth: .05, Budget: 2048})
	r := run.Price(0)
	fmt.Println("settled:", settled)
	fmt.Println("in order:", r.Low < r.Half && r.Half < r.SetAside && r.SetAside < r.High)
	fmt.Println("good to a twentieth of its width:", max(r.SELow, r.SEHigh) < (r.High-r.Low)/20)
	fmt.Printf("one car in two below %s\n", shop.Currency.TextWhole(money.RoundNearest(money.Minor(r.Half), 500_000)))
	// Output:
	// settled: true
	// in order: true
	// good to a twentieth of its width: true
	// one car in two below $105,000
}

func newRun(c *carfile.Car, shop *rates.Rates) (*estimate.Run, error) {
	body, err := c.OneBody()
	if err != nil {
		return nil, err
	}
	histories, err := c.Histories()
	if err != nil {
		return nil, err
	}
	model, err := c.ModelAt(body, histories, carfile.Told, shop.Own, shop.Reckoned(), nil)
	if err != nil {
		return nil, err
	}
	common, err := car.LoadCommon()
	if err != nil {
		return nil, err
	}
	table, err := pricing.NewTable(body, common, shop, c.Standard, c.Scope)
	if err != nil {
		return nil, err
	}
	return estimate.NewRun(model, []*pricing.Table{table}, 1), nil
}
