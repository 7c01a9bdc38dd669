// Package money holds the arithmetic of prices: published figures are exact
// decimals, sums are whole minor units, and there is one way to round.
//
// Decimals are those of github.com/shopspring/decimal, held to the digits that are
// published; loops over imagined cars add and multiply whole numbers only.
//
// Start with [CurrencyOf] and [Currency.Round], the only place where a decimal
// becomes minor units; [Rate.Of] and [Percent.Of] are the same rounding done
// in integers for the many sums of a simulation.
//
// Guarantees:
//   - No binary floating point touches an amount.
//   - Rounding is half away from zero at the currency's minor unit, the rule
//     commonly written into sales-tax law (round up when the next decimal
//     exceeds four), and what it cuts off is returned.
//   - Rate.Of and Percent.Of give exactly what rounding the decimal product
//     would give.
//   - Share loses nothing: the parts add up to the whole.
//   - Text that comes from outside ([Parse], [CurrencyOf], [Currency.NewRate],
//     [NewPercent]) is answered with an error; an amount that does not fit in
//     64 bits is a mistake of the program and panics. Amounts up to 9×10^18
//     minor units fit.
//
// Nothing here depends on settings that could be changed elsewhere.
package money
