package main

import (
	"bytes"
	"fmt"
	"io"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"time"
)

// firstVisit lists the addresses that a customer's first visit loads, the engine last:
// the page, the rates, and the scripts and styles of the build.
func firstVisit(built string) ([]string, error) {
	builds, err := filepath.Glob(filepath.Join(built, "v-*"))
	if err != nil || len(builds) != 1 {
		return nil, fmt.Errorf("%s: expected one folder v-…, found %d", built, len(builds))
	}
	files := []string{"/", "/rates.json"}
	entries, err := os.ReadDir(builds[0])
	if err != nil {
		return nil, err
	}
	for _, e := range entries {
		if kind := filepath.Ext(e.Name()); kind == ".js" || kind == ".css" {
			files = append(files, "/"+filepath.Base(builds[0])+"/"+e.Name())
		}
	}
	return append(files, "/"+filepath.Base(builds[0])+"/customer.wasm"), nil
}

// headers are those that both hosts must send alike.
var headers = []string{"Content-Type", "Content-Security-Policy", "X-Content-Type-Options", "Referrer-Policy",
	"Cross-Origin-Opener-Policy", "Cross-Origin-Resource-Policy", "Cache-Control", "Content-Encoding", "Vary"}

// alike compares two hosts: they must send the same headers and the same bytes to a
// browser that takes Brotli, to one that takes only gzip and to one that takes neither.
func alike(own, other string, files []string) error {
	for _, file := range files {
		for _, accepted := range []string{"br, gzip", "gzip", "identity"} {
			a, bodyA, err := get(own+file, accepted)
			if err != nil {
				return err
			}
			b, bodyB, err := get(other+file, accepted)
			if err != nil {
				return err
			}
			for _, h := range headers {
				if got, want := b.Get(h), a.Get(h); !strings.EqualFold(got, want) {
					return fmt.Errorf("%s, %s: nginx sends %s: %q, expected %q", file, accepted, h, got, want)
				}
			}
			if !bytes.Equal(bodyA, bodyB) {
				return fmt.Errorf("%s, %s: nginx sends %d bytes, expected the same %d", file, accepted, len(bodyB), len(bodyA))
			}
		}
	}
	return nil
}

// get fetches a file as it is sent, without decompressing it.
func get(address, accepted string) (http.Header, []byte, error) {
	request, err := http.NewRequest(http.MethodGet, address, nil)
	if err != nil {
		return nil, nil, err
	}
	request.Header.Set("Accept-Encoding", accepted)
	response, err := http.DefaultTransport.RoundTrip(request)
	if err != nil {
		return nil, nil, err
	}
	defer response.Body.Close()
	if response.StatusCode != http.StatusOK {
		return nil, nil, fmt.Errorf("%s: %s", address, response.Status)
	}
	body, err := io.ReadAll(response.Body)
	return response.Header, body, err
}

// perSecond matches what wrk says about its requests, and faults what it says about
// failed ones.
var (
	perSecond = regexp.MustCompile(`Requests/sec:\s+([\d.]+)`)
	perByte   = regexp.MustCompile(`Transfer/sec:\s+(\S+)`)
	faults    = regexp.MustCompile(`Non-2xx.*|Socket errors.*`)
)

// ask has wrk ask for one file for a while, over 32 connections.
func ask(out io.Writer, host, address, file string, each time.Duration) error {
	text, err := exec.Command("wrk", "-t1", "-c32", "-d"+each.String(), "-H", "Accept-Encoding: br", address).CombinedOutput()
	if err != nil {
		return fmt.Errorf("wrk: %v\n%s", err, text)
	}
	found, bytes := perSecond.FindSubmatch(text), perByte.FindSubmatch(text)
	if fault := faults.Find(text); fault != nil || found == nil || bytes == nil {
		return fmt.Errorf("wrk on %s: %s\n%s", address, fault, text)
	}
	_, err = fmt.Fprintf(out, "%-11s %-34s %10s requests a second, %s a second\n", host, file, found[1], bytes[1])
	return err
}

// visitorsAMonth is a busy month of a shop's site (assumption).
const visitorsAMonth = 10_000

// visitors says what a month of first visits means. It counts all scripts of all pages,
// so it is an upper bound; the budget in the tests is for less.
func visitors(out io.Writer, origin string, files []string) error {
	for _, accepted := range []string{"br, gzip", "gzip", "identity"} {
		sum := 0
		for _, file := range files {
			_, body, err := get(origin+file, accepted)
			if err != nil {
				return err
			}
			sum += len(body)
		}
		if _, err := fmt.Fprintf(out, "a first visit with every script, %-8s %9d bytes; %d of them a month %.1f GB\n",
			accepted, sum, visitorsAMonth, float64(sum)*visitorsAMonth/1e9); err != nil {
			return err
		}
	}
	return nil
}
