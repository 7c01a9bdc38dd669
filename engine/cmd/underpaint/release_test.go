package main

import (
	"bufio"
	"bytes"
	"io"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"underpaint/engine/rates"
)

// TestRelease: the program as it is handed out, in an empty folder and without any other
// program to call, makes the folder that `make dist` makes, byte for byte, and serves the
// pages of an invented shop. Only the one for the system of the test can be run.
func TestRelease(t *testing.T) {
	if !*slow {
		t.Skip("not run without -slow")
	}
	if runtime.GOOS != "linux" {
		t.Skip("make release names programs as this test expects them on Linux only")
	}
	released, dist, empty := t.TempDir(), t.TempDir(), t.TempDir()
	ratesFile := filepath.Join(t.TempDir(), "rates.json")
	if err := os.WriteFile(ratesFile, rates.SampleUK(), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, args := range [][]string{
		{"release", "RELEASE=" + released, "PLATFORMS=linux/" + runtime.GOARCH, "VERSION=1.2.3"},
		{"dist", "RATES=" + ratesFile, "OUT=" + dist},
	} {
		if said, err := exec.Command("make", append([]string{"-C", "../../.."}, args...)...).CombinedOutput(); err != nil {
			t.Fatalf("make %v: %v\n%s", args, err, said)
		}
	}
	program := func(args ...string) *exec.Cmd {
		cmd := exec.Command(filepath.Join(released, "underpaint-linux-"+runtime.GOARCH), args...)
		cmd.Dir, cmd.Env = empty, []string{"PATH=", "TMPDIR=" + empty}
		return cmd
	}
	if said, err := program("site", "--rates", ratesFile, "--out", "out").CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, said)
	}
	one, other := contents(t, filepath.Join(empty, "out")), contents(t, dist)
	if len(one) < 100 || len(one) != len(other) {
		t.Errorf("%d files and %d", len(one), len(other))
	}
	for name, data := range one {
		if !bytes.Equal(data, other[name]) {
			t.Errorf("%s differs", name)
		}
	}
	if said, err := program("--version").Output(); err != nil || !strings.HasPrefix(string(said), "underpaint 1.2.3") {
		t.Errorf("%v: %s", err, said)
	}
	manual, err := os.ReadFile(filepath.Join(released, "underpaint.1"))
	if said, failed := program("man").Output(); err != nil || failed != nil || !bytes.Equal(said, manual) {
		t.Errorf("the manual page is not that of the program (%v, %v)", err, failed)
	}
	if err := os.RemoveAll(filepath.Join(empty, "out")); err != nil {
		t.Fatal(err)
	}
	servesUntilInterrupted(t, program("serve", "--listen", "127.0.0.1:0"))
	if left := contents(t, empty); len(left) > 0 {
		t.Errorf("%d files are left behind", len(left))
	}
}

// servesUntilInterrupted starts a server, asks it for two pages and stops it as Ctrl-C does.
func servesUntilInterrupted(t *testing.T, server *exec.Cmd) {
	t.Helper()
	out, err := server.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := server.Start(); err != nil {
		t.Fatal(err)
	}
	line, err := bufio.NewReader(out).ReadString('\n')
	_, address, found := strings.Cut(strings.TrimSpace(line), " on http://")
	if err != nil || !found {
		server.Process.Kill()
		t.Fatalf("%v: %q", err, line)
	}
	for _, name := range []string{"", "rates.json"} {
		reply, err := http.Get("http://" + address + name)
		if err != nil {
			t.Error(err)
			continue
		}
		body, err := io.ReadAll(reply.Body)
		reply.Body.Close()
		if err != nil || reply.StatusCode != http.StatusOK || !bytes.Contains(body, []byte("Quillback Lane")) {
			t.Errorf("/%s: %d, %v, %.80s", name, reply.StatusCode, err, body)
		}
	}
	if err := server.Process.Signal(os.Interrupt); err != nil {
		t.Fatal(err)
	}
	if err := server.Wait(); err != nil {
		t.Errorf("after the interruption: %v", err)
	}
}

// TestServe: rates that cannot be used are not served.
func TestServe(t *testing.T) {
	dir, _ := files(t, map[string]string{"broken.json": `{"format":"underpaint rates 1","shop":`})
	if code, out, complaints := prompt("serve", "--rates", filepath.Join(dir, "broken.json")); code != 1 || out != "" || !strings.Contains(complaints, "found the end of the file") {
		t.Errorf("code %d, %q, %s", code, out, complaints)
	}
	if code, out, complaints := prompt("serve", "--rates", filepath.Join(dir, "none.json")); code != 1 || out != "" || !strings.Contains(complaints, "none.json") {
		t.Errorf("code %d, %q, %s", code, out, complaints)
	}
}
