package rates

import (
	"slices"
	"strings"
)

// Leftovers warns of words that a real shop still has from the invented samples: who it is,
// how it is reached, the note on tax, the terms. [Rates.StillSample] looks for figures. For
// a shop that is itself invented it returns none.
func (r *Rates) Leftovers() []Warning {
	if r.Shop.Invented {
		return nil
	}
	var w warnings
	samples := decodedSamples()
	still := func(path, sentence string, of func(s *Rates) string) {
		if mine := of(r); mine != "" && (mine == of(samples[0]) || mine == of(samples[1])) {
			w.add(path, sentence)
		}
	}
	still("shop.name", "The shop's name is still the sample's.", func(s *Rates) string { return s.Shop.Name })
	still("shop.town", "The town is still the sample's.", func(s *Rates) string { return s.Shop.Town })
	still("shop.contact.text", "How to reach you is still the sample's.", func(s *Rates) string { return s.Shop.Contact.Text })
	still("shop.contact.href", "The link to reach you is still the sample's.", func(s *Rates) string { return s.Shop.Contact.Href })
	still("tax.note", "The note on tax is still the sample's, and says that it is invented.", func(s *Rates) string { return s.Tax.Note })
	if r.CalledInvented() >= 0 {
		w.add("terms", "The terms still say that the shop is invented.")
	}
	return w
}

// CalledInvented returns the first paragraph of the terms that says of a real shop that it
// is invented, as the samples do of theirs, or -1.
func (r *Rates) CalledInvented() int {
	if r.Shop.Invented {
		return -1
	}
	return slices.IndexFunc(r.Terms, func(term string) bool {
		return strings.Contains(term, "This shop is invented") || strings.Contains(term, "This workshop is invented")
	})
}
