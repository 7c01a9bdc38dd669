package money_test

import (
	"fmt"

	"underpaint/engine/money"
)

// A published rate is an exact decimal. The price is whole cents, rounded once.
func Example() {
	dollars, err := money.CurrencyOf("USD")
	if err != nil {
		fmt.Println(err)
		return
	}
	published, err := money.Parse("92.50")
	if err != nil {
		fmt.Println(err)
		return
	}
	rate, err := dollars.NewRate(published)
	if err != nil {
		fmt.Println(err)
		return
	}
	labour := rate.Of(12_250) // thousandths of an hour
	fmt.Println(dollars.Text(labour))
	fmt.Println(dollars.TextWhole(money.RoundUp(labour, 10_000)))
	// Output:
	// $1,133.13
	// $1,200
}
