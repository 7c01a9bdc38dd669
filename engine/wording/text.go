package wording

import (
	_ "embed"
	"sync"

	"underpaint/engine/car"
	"underpaint/engine/money"
	"underpaint/engine/rates"
	"underpaint/engine/session"
	"underpaint/engine/strict"
)

//go:embed data/words.json
var wordsFile []byte

// Text writes for one shop, in its word set (US or UK) and in its currency.
type Text struct {
	shop     *session.Shop
	rates    *rates.Rates
	words    string // "us" or "uk"
	currency money.Currency
	lists    *lists
}

// For returns the Text that a shop's rates ask for.
func For(s *session.Shop) (*Text, error) {
	l, err := loadLists()
	if err != nil {
		return nil, err
	}
	return &Text{shop: s, rates: s.Rates, words: s.Rates.Words, currency: s.Rates.Currency, lists: l}, nil
}

// InMoney returns a copy of t that writes amounts in another currency.
func (t *Text) InMoney(c money.Currency) *Text {
	other := *t
	other.currency = c
	return &other
}

// In returns w in the shop's word set.
func (t *Text) In(w car.Words) string { return w.In(t.words) }

// say returns the text of the shop's word set.
func (t *Text) say(us, uk string) string {
	if t.words == "uk" {
		return uk
	}
	return us
}

func (t *Text) all(list []car.Words) (out []string) {
	for _, w := range list {
		out = append(out, t.In(w))
	}
	return out
}

// lists holds the plain sentences of data/words.json.
type lists struct {
	notInIt, limits []car.Words
	cautions        []Caution
	stampedBody     car.Words // the caution beside every offer of another body
}

// loadLists reads the lists once. All Texts share them, so nobody may change them.
var loadLists = sync.OnceValues(readLists)

func readLists() (*lists, error) {
	f, err := strict.Parse(wordsFile)
	if err != nil {
		return nil, err
	}
	l := &lists{notInIt: wordList(f.Get("not_in_it")), limits: wordList(f.Get("known_limits")), stampedBody: readWords(f.Get("stamped_body"))}
	for _, c := range f.Get("cautions").Items() {
		l.cautions = append(l.cautions, readCaution(c))
	}
	return l, f.Err()
}

func wordList(f strict.Field) (out []car.Words) {
	for _, w := range f.Items() {
		out = append(out, readWords(w))
	}
	return out
}

// LocalCaution returns the caution that belongs at the foot of every page.
func (t *Text) LocalCaution() string {
	for _, c := range t.lists.cautions {
		if c.ID == "local" {
			return t.In(c.text)
		}
	}
	return ""
}

// Caution returns the text of one caution.
func (t *Text) Caution(c Caution) string { return t.In(c.text) }

// KnownLimits lists what we know the model leaves out.
func (t *Text) KnownLimits() []string { return t.all(t.lists.limits) }
