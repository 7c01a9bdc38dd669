package rates

// The members of each group of the file. The JSON Schema of the site lists the same
// names, and a test compares the two.
var (
	fileKeys = []string{"format", "shop", "currency", "words", "units", "country", "rates_of", "valid_until",
		"labour", "materials", "consumables", "parts", "what_is_done", "strip_and_survey", "sent_out", "supplies",
		"tax", "time", "allowance", "doubt", "prices_over_time", "hidden_history", "another_body", "terms", "own_figures", "record", "note", "source"}
	shopKeys     = []string{"name", "town", "contact", "invented"}
	contactKeys  = []string{"text", "href"}
	wordsKeys    = []string{"us", "uk"}
	labourKeys   = []string{"metal", "prep", "body", "paint", "fit", "includes", "least_charge_hours", "source"}
	tradeKeys    = []string{"rate", "pace", "note", "source"}
	materialKeys = []string{"id", "name", "unit", "price", "how", "area", "stage", "standards", "factor", "scopes",
		"note", "source"}
	howKeys         = []string{ByFilm, PerM2, PerCar}
	filmKeys        = []string{"coats", "dry_um", "volume_solids", "transfer", "base_share"}
	quantityKeys    = []string{"quantity"}
	consumablesKeys = []string{"money_per_metal_hour", "source"}
	partsKeys       = []string{"price_factor", "handling_percent", "prices", "as_they_come", "source"}
	partPriceKeys   = []string{"body", "part", "way", "price", "had", "fit", "weeks", "used_share", "note", "source"}
	stripKeys       = []string{"charged", "price", "to_stop", "includes", "note", "source"}
	chargeKeys      = []string{"step", "how", "no_more_than", "note", "source"}
	sentOutKeys     = []string{"handling_percent", "work", "source"}
	sentKeys        = []string{"id", "name", "price", "stage", "standards", "scopes", "note", "source"}
	suppliesKeys    = []string{"how", "percent", "no_more_than", "source"}
	taxKeys         = []string{"name", "percent", "on", "published", "note", "source"}
	taxOnKeys       = []string{"labour", "materials", "parts", "supplies", "sent_out"}
	timeKeys        = []string{"hours_a_week", "weeks_until_start", "waits_weeks", "source"}
	ownKeys         = []string{"learnt_on", "jobs_code", "rust", "hours", "spread", "doubt", "source"}
	ownDoubtKeys    = []string{"growth_percent", "shared", "own", "jobs", "from"}
	ownRustKeys     = []string{"group", "factor", "jobs"}
	ownFigureKeys   = []string{"factor", "jobs"}
	pastKeys        = []string{"below", "inside", "above", "from", "to", "jobs_code"}
	allowanceKeys   = []string{"before_percent", "after_percent", "in_range", "source"}
	doubtKeys       = []string{"shared", "own", "source"}
	overTimeKeys    = []string{"promise", "labour_percent_a_year", "parts_percent_a_year", "materials_percent_a_year", "source"}
	promiseKeys     = []string{"how", "months", "until", "on", "from", "source"}
	anotherBodyKeys = []string{"bodies", "search_hours", "moving_across_hours", "papers", "its_metal_hours", "its_prep_times",
		"advise_when_dearer_by_percent", "source"}
	offeredBodyKeys = []string{"body", "price", "to_be_had", "weeks", "source"}
	searchKeys      = []string{"fit"}
	movingKeys      = []string{"fit", "metal"}
)
