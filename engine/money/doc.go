// Package money does the arithmetic of prices: published figures are exact decimals,
// amounts are whole minor units, and there is one way to round.
//
// Decimals are those of github.com/shopspring/decimal, limited to the digits that files
// may have. Loops over simulated cars only add and multiply whole numbers.
//
// Start with [CurrencyOf] and [Currency.Round], the only place where a decimal becomes
// minor units. [Rate.Of] and [Percent.Of] round in the same way, in integers, for the
// many amounts of a simulation.
//
// Guarantees:
//   - No amount goes through binary floating point.
//   - Rounding is half away from zero at the currency's minor unit, the rule commonly
//     written into sales-tax law (round up when the next decimal exceeds four), and
//     Round reports whether it changed the amount.
//   - Rate.Of and Percent.Of give exactly the rounded decimal product.
//   - Share loses nothing: the parts add up to the whole.
//   - Bad text from outside ([Parse], [CurrencyOf], [Currency.NewRate], [NewPercent]) is
//     an error. An amount that does not fit in 64 bits is a programming error and
//     panics. Amounts up to 9×10^18 minor units fit.
//
// Nothing here depends on settings that could be changed elsewhere.
package money
