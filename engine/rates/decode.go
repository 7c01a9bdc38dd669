package rates

import (
	"crypto/sha256"
	"encoding/hex"
	"strings"

	"underpaint/engine/money"
	"underpaint/engine/strict"
)

// Decode reads a rates file and checks every figure. The error is a
// *strict.Error with the path of the first fault; nothing of a faulty file is
// returned.
func Decode(data []byte) (*Rates, error) {
	f, err := strict.Parse(data)
	if err != nil {
		return nil, err
	}
	r := &Rates{}
	r.readHead(f)
	r.Labour = readLabour(f.Get("labour"), r.Currency)
	r.Materials = readMaterials(f.Get("materials"), r.Currency)
	r.Consumables = readConsumables(f.Get("consumables"))
	r.Parts = readParts(f.Get("parts"))
	r.WhatIsDone = readWhatIsDone(f.Get("what_is_done"))
	r.Strip = readStrip(f.Get("strip_and_survey"), r.Currency)
	r.SentOut = readSentOut(f.Get("sent_out"))
	r.Supplies = readSupplies(f.Get("supplies"), r.Currency)
	r.Tax = readTax(f.Get("tax"))
	r.Time = readTime(f.Get("time"))
	r.Allowance = readAllowance(f.Get("allowance"))
	r.Terms = readTerms(f.Get("terms"))
	if own := f.Get("own_figures"); !own.IsNull() {
		own.Complain("null: figures learnt from past jobs are not taken in this version")
	}
	if err := f.Err(); err != nil {
		return nil, err
	}
	r.code = checkCode(f)
	return r, nil
}

// readHead reads what stands at the top of the file. The format comes first, so
// that another kind of file is named as such.
func (r *Rates) readHead(f strict.Field) {
	f.Get("format").OneOf(Format)
	f.Keys(fileKeys...)
	note(f)
	source(f)
	r.Shop = readShop(f.Get("shop"))
	r.Currency = readCurrency(f.Get("currency"))
	r.Words = f.Get("words").OneOf("us", "uk")
	r.Units = f.Get("units").OneOf("us", "metric")
	r.Country = readCountry(f.Get("country"))
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

// readHref takes only the kinds of link that a contact line needs: the file may
// come from anyone, and a link can carry a script.
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
	sum := sha256.Sum256(strict.Canonical(f))
	digits := hex.EncodeToString(sum[:5])
	return digits[:5] + " " + digits[5:]
}
