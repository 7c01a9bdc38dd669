package rates

import (
	"slices"
	"testing"
)

// TestLeftovers: of either sample everything is named once the shop is called real, and
// nothing while it is called invented.
func TestLeftovers(t *testing.T) {
	paths := func(r *Rates) (out []string) {
		for _, w := range r.Leftovers() {
			out = append(out, w.Path)
		}
		return out
	}
	all := []string{"shop.name", "shop.town", "shop.contact.text", "shop.contact.href", "tax.note", "terms"}
	for _, sample := range [][]byte{Sample(), SampleUK()} {
		invented := decode(t, sample)
		if got := paths(invented); len(got) > 0 || invented.CalledInvented() >= 0 {
			t.Errorf("an invented shop: %q", got)
		}
		r := decode(t, changed(t, sample, "shop.invented", false))
		if got := paths(r); !slices.Equal(got, all) || r.CalledInvented() != 0 {
			t.Errorf("%q, want %q", got, all)
		}
		r.Shop.Name, r.Shop.Contact.Href, r.Tax.Note = "A shop", "", ""
		r.Terms = []string{"Nothing in this shop is invented."}
		if got, want := paths(r), []string{"shop.town", "shop.contact.text"}; !slices.Equal(got, want) || r.CalledInvented() != -1 {
			t.Errorf("%q, want %q", got, want)
		}
		r.Terms = append(r.Terms, "Hours are hours. This workshop is invented.")
		if r.CalledInvented() != 1 {
			t.Error("a paragraph of its own is not seen")
		}
	}
}
