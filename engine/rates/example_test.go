package rates_test

import (
	"bytes"
	"fmt"

	"underpaint/engine/rates"
)

// Decode reads a rates file completely or not at all, and its error says where the
// fault is.
func ExampleDecode() {
	shop, err := rates.Decode(rates.Sample())
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("rates of", shop.RatesOf, "in", shop.Currency.Code, "with", len(shop.Materials), "materials")

	_, err = rates.Decode(bytes.Replace(rates.Sample(), []byte(`"USD"`), []byte(`"dollars"`), 1))
	fmt.Println(err)
	// Output:
	// rates of 2026-06-03 in USD with 23 materials
	// currency: expected the three capital letters of a currency this tool knows, such as "USD" or "GBP", found "dollars" (line 5)
}
