package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"time"

	"github.com/spf13/cobra"

	"underpaint/engine/carfile"
	"underpaint/engine/pastjobs"
	"underpaint/engine/rates"
	"underpaint/engine/session"
	"underpaint/engine/strict"
	"underpaint/engine/wording"
)

// checkCommand says for each file what it is and whether it can be used.
func (c command) checkCommand() *cobra.Command {
	cmd := c.named("check")
	asJSON := cmd.Flags().Bool("json", false, "print one JSON document about all files")
	takesFiles(cmd)
	cmd.RunE = does(func(names []string) int {
		if len(names) == 0 {
			return c.misused("check", "check needs one file or more")
		}
		found := make([]checked, len(names))
		code := 0
		for k, name := range names {
			found[k] = c.checkFile(name)
			if !found[k].OK {
				code = 1
			}
		}
		if *asJSON {
			return max(code, c.print(document(found)))
		}
		for _, f := range found {
			c.sayChecked(f)
		}
		return code
	})
	return cmd
}

// checked is what check finds of one file.
type checked struct {
	File      string    `json:"file"`
	OK        bool      `json:"ok"`
	Format    string    `json:"format,omitempty"`     // of a file that can be used
	CheckCode string    `json:"check_code,omitempty"` // of rates and past jobs
	Errors    []fault   `json:"errors"`
	Warnings  []warning `json:"warnings"`

	what string // the file in words
	err  error
}

// fault is why a file cannot be used, at one entry.
type fault struct {
	Path     string `json:"path"` // "" = the file as a whole
	Found    string `json:"found"`
	Expected string `json:"expected"`
	Line     int    `json:"line,omitempty"`
	Text     string `json:"text"` // all of it as a sentence
}

// warning is about an entry that is allowed but usually a slip.
type warning struct {
	Path string `json:"path"`
	Text string `json:"text"`
}

func document(found []checked) []byte {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	must(e.Encode(struct {
		Files []checked `json:"files"`
	}{found}))
	return b.Bytes()
}

func (c command) sayChecked(f checked) {
	if !f.OK {
		c.fail(1, "%v", f.err)
		return
	}
	fmt.Fprintf(c.out, "%s: %s\n", f.File, f.what)
	for _, w := range f.Warnings {
		fmt.Fprintf(c.out, "  warning: %s\n", w.Text)
	}
}

// checkFile reads a file and recognizes it by its format member.
func (c command) checkFile(name string) checked {
	f := checked{File: name, Errors: []fault{}, Warnings: []warning{}}
	text, err := c.read(name)
	if err != nil {
		f.err = err
		f.Errors = []fault{{Expected: "a file that can be read", Found: err.Error(), Text: err.Error()}}
		return f
	}
	faults := f.check(text)
	for _, err := range faults {
		f.Errors = append(f.Errors, faultOf(err))
	}
	f.OK = len(faults) == 0
	if !f.OK {
		f.err = fmt.Errorf("%s: %w", name, errors.Join(faults...))
	}
	return f
}

func faultOf(err error) fault {
	var at *strict.Error
	if !errors.As(err, &at) {
		return fault{Expected: err.Error(), Text: err.Error()}
	}
	return fault{at.Path, at.Found, at.Expected, at.Line, at.Error()}
}

// check fills in what the file is, or returns its faults.
func (f *checked) check(text []byte) []error {
	format, err := formatOf(text)
	if err != nil {
		return []error{err}
	}
	f.Format = format
	switch format {
	case rates.Format:
		return f.checkRates(text)
	case pastjobs.Format:
		j, faults := pastjobs.Decode(text)
		if len(faults) > 0 {
			return faults
		}
		f.CheckCode = j.CheckCode()
		f.what = fmt.Sprintf("%d past jobs, check code %s", len(j.Jobs), f.CheckCode)
		return nil
	}
	f.what = "a car file, ready to use"
	decoded, err := carfile.Decode(text)
	if err != nil {
		return []error{err}
	}
	return decoded.Check()
}

// formatOf reads the format of a file. Past jobs may have more entries than are read at
// once, so their list is left out.
func formatOf(text []byte) (string, error) {
	f, _, err := strict.SplitList(text, "jobs", pastjobs.MostBytes, pastjobs.MostJobs)
	if err != nil {
		return "", err
	}
	format := f.Get("format").Format(rates.Format, carfile.Format, pastjobs.Format)
	return format, f.Err()
}

func (f *checked) checkRates(text []byte) []error {
	v := session.CheckRates(text, time.Now().Format(time.DateOnly))
	if v.Rates == nil {
		return v.Faults
	}
	f.CheckCode = v.Rates.CheckCode()
	f.what = "rates of " + v.Rates.RatesOf + ", check code " + f.CheckCode
	for _, w := range v.Warnings {
		f.Warnings = append(f.Warnings, warning(w))
	}
	if v.StripBelow == nil {
		return nil
	}
	shop, err := session.NewShop(v.Rates)
	if err != nil {
		return []error{err}
	}
	t, err := wording.For(shop)
	if err != nil {
		return []error{err}
	}
	f.Warnings = append(f.Warnings, warning{"strip_and_survey.price", t.StripBelow(v.StripBelow)})
	return nil
}
