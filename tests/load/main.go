// Command load measures how many visitors a small machine can serve: wrk asks for the
// folder on the loopback interface, from the project's own server and from nginx
// (site/hosts/nginx.conf). First it checks that nginx sends the same headers and bytes
// as the project's own server, file by file of a first visit. At the end it works out
// what ten thousand visitors a month mean. Start with run.
//
// nginx, its module brotli_static and wrk come from Debian's packages.
package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"time"
)

// options are the flags.
type options struct {
	rates, conf string
	each        time.Duration
}

func main() {
	var o options
	flag.StringVar(&o.rates, "rates", "engine/rates/data/sample.json", "rates file")
	flag.StringVar(&o.conf, "conf", "site/hosts/nginx.conf", "nginx's part of a server block")
	flag.DurationVar(&o.each, "each", 5*time.Second, "how long each file is asked for")
	flag.Parse()
	if err := run(o); err != nil {
		fmt.Fprintln(os.Stderr, "load:", err)
		os.Exit(1)
	}
}

func run(o options) error {
	dir, err := os.MkdirTemp("", "load")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	// nginx's workers run as other users than the one who made the folder.
	if err := os.Chmod(dir, 0o755); err != nil {
		return err
	}
	built := filepath.Join(dir, "range")
	program := filepath.Join(dir, "site")
	if err := build(program, built, o.rates); err != nil {
		return err
	}
	own, stop, err := startOwn(program, built)
	if err != nil {
		return err
	}
	defer stop()
	other, stopOther, err := startNginx(dir, built, o.conf)
	if err != nil {
		return err
	}
	defer stopOther()
	files, err := firstVisit(built)
	if err != nil {
		return err
	}
	if err := alike(own, other, files); err != nil {
		return err
	}
	for _, host := range []struct{ name, origin string }{{"own server", own}, {"nginx", other}} {
		for _, file := range []string{"/", files[len(files)-1]} {
			if err := ask(os.Stdout, host.name, host.origin+file, file, o.each); err != nil {
				return err
			}
		}
	}
	return visitors(os.Stdout, own, files)
}
