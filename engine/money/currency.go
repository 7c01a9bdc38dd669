package money

import (
	"errors"
	"strings"
)

// Minor is an amount in whole minor units: cents, pence, or yen, which has no smaller
// unit.
type Minor int64

// Currency says how amounts of one currency are rounded and written.
type Currency struct {
	Code        string // ISO 4217 letters
	Digits      int    // decimals of the minor unit: 2 for cents, 0 for yen
	Symbol      string // as written in an English text
	SymbolFirst bool   // the symbol comes before the digits
}

// currencies are those the engine can calculate in.
//
// Codes and digits: ISO 4217, minor units of list one (an older edition of the
// published table was read). Symbols and their side: the usual ones in the currency's
// country, from memory of the Unicode CLDR locale data; the code where that country does
// not use a Latin or general sign.
var currencies = []Currency{
	{"USD", 2, "$", true},
	{"EUR", 2, "€", true},
	{"GBP", 2, "£", true},
	{"CAD", 2, "$", true},
	{"AUD", 2, "$", true},
	{"CHF", 2, "CHF", true},
	{"SEK", 2, "kr", false},
	{"NOK", 2, "kr", false},
	{"DKK", 2, "kr", false},
	{"JPY", 0, "¥", true},
	{"KRW", 0, "₩", true},
	{"CLP", 0, "$", true},
	{"ISK", 0, "kr", false},
	{"VND", 0, "₫", false},
	{"PYG", 0, "Gs.", true},
	{"XOF", 0, "F CFA", false},
	{"XAF", 0, "FCFA", false},
	{"XPF", 0, "FCFP", false},
	{"BHD", 3, "BHD", true},
	{"IQD", 3, "IQD", true},
	{"JOD", 3, "JOD", true},
	{"KWD", 3, "KWD", true},
	{"LYD", 3, "LYD", true},
	{"OMR", 3, "OMR", true},
	{"TND", 3, "TND", true},
}

// CurrencyOf returns the currency with an ISO 4217 code in capital letters.
func CurrencyOf(code string) (Currency, error) {
	codes := make([]string, len(currencies))
	for i, c := range currencies {
		if c.Code == code {
			return c, nil
		}
		codes[i] = c.Code
	}
	return Currency{}, errors.New("expected a currency code, one of " +
		strings.Join(codes, ", ") + "; found " + quote(code))
}

// Codes lists the currencies that the engine can calculate in.
func Codes() []string {
	codes := make([]string, len(currencies))
	for i, c := range currencies {
		codes[i] = c.Code
	}
	return codes
}
