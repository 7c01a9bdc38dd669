package rates

import (
	"crypto/sha256"
	"strings"

	"underpaint/engine/money"
	"underpaint/engine/strict"
)

// Decode reads a rates file and checks every figure. The error is a *strict.Error with
// the path of the first fault, and then no rates are returned.
func Decode(data []byte) (*Rates, error) {
	f, err := strict.Parse(data)
	if err != nil {
		return nil, err
	}
	f.Get("format").Format(Format) // first, so that the error for another kind of file says what kind it is
	r := &Rates{Currency: readCurrency(f.Get("currency"))}
	for _, read := range sections {
		read(r, f)
	}
	if err := f.Err(); err != nil {
		return nil, err
	}
	r.code = checkCode(f)
	return r, nil
}

func (r *Rates) readDates(f strict.Field) {
	r.RatesOf = f.Get("rates_of").Date()
	until := f.Get("valid_until")
	if r.ValidUntil = until.Date(); r.ValidUntil < r.RatesOf { // ISO 8601 dates sort as text
		until.Complain("a date not before rates_of, " + r.RatesOf)
	}
}

func readShop(f strict.Field) Shop {
	f.Keys(shopKeys...)
	s := Shop{Name: text(f.Get("name"), 80), Town: text(f.Get("town"), 80), Invented: f.Get("invented").Bool()}
	contact := f.Get("contact")
	contact.Keys(contactKeys...)
	s.Contact.Text = text(contact.Get("text"), 200)
	if contact.Has("href") {
		s.Contact.Href = readHref(contact.Get("href"))
	}
	return s
}

// readHref accepts only the kinds of link that a contact line needs, because the file
// may come from anyone and a link can carry a script.
func readHref(f strict.Field) string {
	s := f.Text(300)
	for _, scheme := range []string{"https://", "http://", "mailto:", "tel:"} {
		if rest, ok := strings.CutPrefix(s, scheme); ok && rest != "" && !strings.ContainsAny(s, " \"'<>\\`") {
			return s
		}
	}
	f.Complain("a link that begins with https://, http://, mailto: or tel:, without blanks or quotes")
	return ""
}

func readCurrency(f strict.Field) money.Currency {
	code := f.Text(40)
	c, err := money.CurrencyOf(code)
	if err != nil {
		f.Complain("the three capital letters of a currency this tool knows, such as \"USD\" or \"GBP\"")
	}
	return c
}

func readTerms(f strict.Field) (terms []string) {
	items := f.Items()
	if len(items) > 40 {
		f.Complain("a list of at most 40 paragraphs")
	}
	for _, item := range items {
		terms = append(terms, text(item, 2000))
	}
	return terms
}

func checkCode(f strict.Field) string {
	sum := sha256.New()
	sum.Write(strict.Canonical(f))
	return strict.CheckCode(sum)
}
