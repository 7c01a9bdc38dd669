package build

import (
	"bytes"
	"fmt"
	"path"
	"strings"
	"text/template"
)

// Policy is the content security policy of every page, in a meta element for hosts
// that set no headers, and of every answer of the server (W3C Content Security Policy
// Level 3, Trusted Types). Strings never become HTML or script, and only
// pages/shared/trustedtypes.ts says which addresses are scripts.
const Policy = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; " +
	"img-src 'self'; font-src 'self'; connect-src 'self'; worker-src 'self'; base-uri 'none'; form-action 'none'; object-src 'none'; " +
	"require-trusted-types-for 'script'; trusted-types default"

// layoutName is the template that all pages share: head, policy, header and foot.
const layoutName = "layout.html"

// plainFolder holds the pages of text. They lie at the top of the site; every other
// page but the customer's lies in a folder of its own.
const plainFolder = "plain"

// layoutData is what a page tells the layout.
type layoutData struct {
	Name   string // of the page's folder, script and style sheet
	Policy string
	Top    string // the way to the top of the site: "" or "../"
	Script bool   // the page has one
	Engine bool   // the page loads an engine
	Links  []pageLink
}

type pageLink struct{ Address, Text string }

// The pages in the order in which every foot names them.
var (
	shopLinks = []pageLink{
		{"", "The customer's page"}, {"survey/", "This car"}, {"rates/", "Rates"},
		{"past-jobs/", "Past jobs"}, {"why/", "Why so wide"},
	}
	plainLinks = []pageLink{
		{"about.html", "About the figures"}, {"words.html", "Words"}, {"privacy.html", "Privacy"}, {"accessibility.html", "Accessibility"},
	}
)

// addressOf is the place of a page's source in the site.
func addressOf(source string) string {
	switch folder, file := path.Split(source); folder {
	case customersFolder + "/", plainFolder + "/":
		return file
	}
	return source
}

// layOut puts each page's own content into the layout. It gives the pages by their
// place in the site. A page without a title or content is an error.
func layOut(sources map[string][]byte) (map[string][]byte, error) {
	laidOut := map[string][]byte{}
	for name, text := range sources {
		if path.Ext(name) != ".html" || name == layoutName {
			continue
		}
		t, err := template.New(layoutName).Parse(string(sources[layoutName]))
		if err == nil {
			_, err = t.New(name).Parse(string(text))
		}
		var page bytes.Buffer
		if err == nil {
			err = t.Execute(&page, dataOf(name, sources))
		}
		if err != nil {
			return nil, fmt.Errorf("pages/%s: %w", name, err)
		}
		laidOut[addressOf(name)] = page.Bytes()
	}
	return laidOut, nil
}

// dataOf is what the layout needs to know of a page.
func dataOf(name string, sources map[string][]byte) layoutData {
	folder := path.Dir(name)
	_, script := sources[folder+"/"+scriptSource]
	d := layoutData{Name: folder, Policy: Policy, Top: toTop(addressOf(name)), Script: script, Engine: script && folder != figuresFolder}
	links := plainLinks
	switch {
	case d.Engine && folder != customersFolder:
		links = append(shopLinks[:len(shopLinks):len(shopLinks)], plainLinks...)
	case folder == figuresFolder:
		links = append(shopLinks[:1:1], plainLinks...)
	}
	for _, l := range links {
		if strings.TrimSuffix(l.Address, "/") != folder {
			d.Links = append(d.Links, pageLink{d.Top + l.Address, l.Text})
		}
	}
	return d
}
