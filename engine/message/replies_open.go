package message

// OpenedReply describes the shop, its rates, the bodies and the places.
//
//reply:opened
type OpenedReply struct {
	Version        string           `json:"version"`
	FiguresCode    string           `json:"figures_code"`
	Shop           ShopName         `json:"shop"`
	Rates          RatesName        `json:"rates"`
	Words          string           `json:"words" ts:"\"us\" | \"uk\""`
	Units          string           `json:"units"`
	Currency       string           `json:"currency"`
	CurrencySymbol string           `json:"currency_symbol"`
	Labour         []NamedText      `json:"labour"`
	LabourNote     string           `json:"labour_note"`
	Made           Years            `json:"made"`
	Bodies         []OpenedBody     `json:"bodies"`
	Places         []CountryPlaces  `json:"places"`
	Terms          []string         `json:"terms"`
	NotInIt        []string         `json:"not_in_it"`
	Cautions       []CautionMessage `json:"cautions"`
	Warnings       []string         `json:"warnings"`
}

// ShopName is the name of the shop and how to reach it.
type ShopName struct {
	Name        string `json:"name"`
	Town        string `json:"town"`
	ContactText string `json:"contact_text"`
	ContactHref string `json:"contact_href"`
	Invented    bool   `json:"invented"`
}

// RatesName identifies rates by their dates and check code.
type RatesName struct {
	Line       string `json:"line"`
	CheckCode  string `json:"check_code"`
	Date       string `json:"date"`
	ValidUntil string `json:"valid_until"`
	PastText   string `json:"past_text"`
}

// NamedText is a line of text with a name.
type NamedText struct {
	Name string `json:"name"`
	Text string `json:"text"`
}

// IDName is one choice in a list.
type IDName struct {
	ID   string `json:"id"`
	Name string `json:"name"`
}

// Years is the span of years in which a car can have been made.
type Years struct {
	From     int    `json:"from"`
	To       int    `json:"to"`
	Expected string `json:"expected"`
}

// OpenedBody is a body with its strip and survey. The stage is left out if the rates give
// no price for it.
type OpenedBody struct {
	ID             string          `json:"id" ts:"Body"`
	Name           string          `json:"name"`
	Options        []IDName        `json:"options"`
	CustomerPlaces []CustomerPlace `json:"customer_places"`
	Stage          *StripStage     `json:"stage,omitempty"`

	// Whether the shop offers another body of this kind: "offered" or left out.
	AnotherBody string `json:"another_body,omitempty" ts:"\"offered\""`
}

// CustomerPlace is a part of the car that we ask the customer about.
type CustomerPlace struct {
	ID    string   `json:"id"`
	Name  string   `json:"name"`
	Look  string   `json:"look"`
	Left  []string `json:"left"`
	Right []string `json:"right"`
	Whole []string `json:"whole"`
}

// StripStage describes the strip and survey for the customer.
type StripStage struct {
	Name      string      `json:"name"`
	PriceText string      `json:"price_text"`
	Price     int64       `json:"price_minor"` // what PriceText rounds, in minor units
	Lines     []StripLine `json:"lines"`
	FixedLine string      `json:"fixed_line"`
	GetLine   string      `json:"get_line"`
	StopLine  string      `json:"stop_line"`
	Includes  string      `json:"includes"`
}

// StripLine is one step of the strip and survey.
type StripLine struct {
	Text       string `json:"text"`
	Basis      string `json:"basis"`
	AmountText string `json:"amount_text"`
}

// CountryPlaces are the places of one country.
type CountryPlaces struct {
	Country string  `json:"country"`
	Places  []Place `json:"places"`
}

// Place is a place where a car can have lived.
type Place struct {
	ID    string `json:"id"`
	Name  string `json:"name"`
	Coast bool   `json:"coast"`
}

// CautionMessage is a caution with the place where it belongs. CustomerDoes says that the
// customer is known to do the work that needs it, so that paper has it in full.
type CautionMessage struct {
	ID           string `json:"id"`
	Where        string `json:"where"`
	Text         string `json:"text"`
	CustomerDoes bool   `json:"customer_does"`
}

// CarOKReply is the reply to a car file that can be used, with notes on what the file does
// not say.
//
//reply:car_ok
type CarOKReply struct {
	Canonical string    `json:"canonical"`
	Notes     []CarNote `json:"notes"`
}

// CarNote is something that a car file does not say.
type CarNote struct {
	Path string `json:"path"`
	Text string `json:"text"`
}
