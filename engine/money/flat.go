package money

// FlatRate returns the two whole numbers behind [Rate.Of]: the price of a quantity in
// thousandths is millionths × thousandths ÷ divisor, half away from zero.
func FlatRate(r Rate) (millionths int64, divisor uint64) { return r.millionths, r.divisor }

// FlatPercent returns the percentage in millionths; the part of an amount is millionths ×
// amount ÷ 100,000,000, half away from zero.
func FlatPercent(p Percent) (millionths int64) { return p.millionths }
