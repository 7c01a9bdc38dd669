package build

import (
	"fmt"
	"html"
	"net/url"
	"strings"

	"underpaint/site/share"
)

// markShare is where the customer's page takes what other sites show beside a link
// to it (The Open Graph protocol, ogp.me). That needs whole addresses, which are not
// known unless somebody says them; without an address nothing is put there.
const markShare = "<!--share-->"

const shareName = "share.png"

// checkedAddress is the address of the folder with its last stroke, or "".
func checkedAddress(address string) (string, error) {
	if address == "" {
		return "", nil
	}
	u, err := url.Parse(address)
	if err != nil || (u.Scheme != "https" && u.Scheme != "http") || u.Host == "" || u.RawQuery != "" || u.Fragment != "" || u.User != nil {
		return "", fmt.Errorf("the address %q: expected that of the folder on the web, such as https://shop.example/range/", address)
	}
	return strings.TrimSuffix(u.String(), "/") + "/", nil
}

// shared adds the picture and names it in the customer's page.
func (f folder) shared(address string) error {
	if address == "" {
		return f.fill(customersPage, markShare, "")
	}
	name := f.dir() + shareName
	f.files[name] = share.Picture
	var b strings.Builder
	for _, tag := range [][2]string{
		{"og:type", "website"}, {"og:url", address}, {"og:title", "What would the body work cost?"},
		{"og:description", "A cost range for the body of an old car, before the paint comes off: not an estimate, not a quotation, not a ceiling."},
		{"og:image", address + name}, {"og:image:type", "image/png"}, {"og:image:width", fmt.Sprint(share.Width)}, {"og:image:height", fmt.Sprint(share.Height)}, {"og:image:alt", share.Alt},
	} {
		fmt.Fprintf(&b, "<meta property=\"%s\" content=\"%s\">\n", tag[0], html.EscapeString(tag[1]))
	}
	return f.fill(customersPage, markShare, strings.TrimSuffix(b.String(), "\n"))
}
