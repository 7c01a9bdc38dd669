package main

import (
	"bytes"
	"fmt"
	"runtime"
	"runtime/debug"
	"strings"

	"underpaint/engine/carfile"
	"underpaint/engine/pastjobs"
	"underpaint/engine/rates"
	"underpaint/engine/session"
	"underpaint/site/figures"
)

// released is the version of a released program, set by the linker (Makefile, release).
var released string

// version says which version this is, which files it reads and which figures it rests on.
func (c command) version() int {
	formats, err := figures.Formats()
	if err != nil {
		return c.fail(1, "%v", err)
	}
	info, _ := debug.ReadBuildInfo()
	var b bytes.Buffer
	fmt.Fprintf(&b, "%s %s, built with %s for %s/%s\n", programName, versionOf(released, info), runtime.Version(), runtime.GOOS, runtime.GOARCH)
	fmt.Fprintf(&b, "reads files of the formats %s, %s and %s\n", rates.Format, carfile.Format, pastjobs.Format)
	fmt.Fprintf(&b, "rests on figures code %s (formats %s)\n", session.FiguresCode(), strings.Join(formats, ", "))
	return c.print(b.Bytes())
}

// versionOf names a build by its release, or else by the commit of its sources.
func versionOf(released string, info *debug.BuildInfo) string {
	settings := map[string]string{}
	if info != nil {
		for _, s := range info.Settings {
			settings[s.Key] = s.Value
		}
	}
	name := released
	if name == "" {
		name = "(no release)"
	}
	commit := settings["vcs.revision"]
	if commit == "" {
		return name
	}
	date, _, _ := strings.Cut(settings["vcs.time"], "T")
	name += fmt.Sprintf(", commit %.12s of %s", commit, date)
	if settings["vcs.modified"] == "true" {
		name += " with changes that are not committed"
	}
	return name
}
