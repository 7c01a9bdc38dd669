package main

import (
	"bufio"
	"bytes"
	"fmt"
	"net"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"time"
)

func build(program, built, rates string) error {
	for _, c := range [][]string{{"go", "build", "-o", program, "./site"}, {program, "build", "-out", built, "-rates", rates}} {
		if out, err := exec.Command(c[0], c[1:]...).CombinedOutput(); err != nil {
			return fmt.Errorf("%s: %v\n%s", strings.Join(c, " "), err, out)
		}
	}
	return nil
}

// startOwn serves the folder with the project's own server and returns its address.
func startOwn(program, built string) (origin string, stop func(), err error) {
	c := exec.Command(program, "serve", "-addr", "127.0.0.1:0", "-dir", built)
	c.Stderr = os.Stderr
	out, err := c.StdoutPipe()
	if err != nil {
		return "", nil, err
	}
	if err := c.Start(); err != nil {
		return "", nil, err
	}
	stop = func() { c.Process.Kill(); c.Wait() }
	line, err := bufio.NewReader(out).ReadString('\n')
	_, origin, found := strings.Cut(strings.TrimSpace(line), " on ")
	if err != nil || !found {
		stop()
		return "", nil, fmt.Errorf("the server said %q", line)
	}
	return strings.TrimSuffix(origin, "/"), stop, nil
}

// startNginx serves the same folder with nginx, using the configuration that shops get
// with the folder's path filled in.
func startNginx(dir, built, conf string) (origin string, stop func(), err error) {
	part, err := os.ReadFile(conf)
	if err != nil {
		return "", nil, err
	}
	here := bytes.Replace(part, []byte("root /var/www/range;"), []byte("root "+built+";"), 1)
	if bytes.Equal(here, part) {
		return "", nil, fmt.Errorf("%s: expected root /var/www/range; in it", conf)
	}
	port, err := freePort()
	if err != nil {
		return "", nil, err
	}
	whole := "load_module /usr/lib/nginx/modules/ngx_http_brotli_static_module.so;\n" +
		"worker_processes auto;\npid " + dir + "/nginx.pid;\nerror_log stderr;\nevents { worker_connections 1024; }\n" +
		"http {\naccess_log off;\nsendfile on;\nserver {\nlisten 127.0.0.1:" + strconv.Itoa(port) + ";\n" + string(here) + "}\n}\n"
	file := filepath.Join(dir, "nginx.conf")
	if err := os.WriteFile(file, []byte(whole), 0o644); err != nil {
		return "", nil, err
	}
	c := exec.Command("nginx", "-c", file, "-p", dir, "-g", "daemon off;")
	c.Stderr = os.Stderr
	if err := c.Start(); err != nil {
		return "", nil, err
	}
	stop = func() { c.Process.Signal(os.Interrupt); c.Wait() }
	address := "127.0.0.1:" + strconv.Itoa(port)
	for range 50 {
		if conn, err := net.Dial("tcp", address); err == nil {
			conn.Close()
			return "http://" + address, stop, nil
		}
		time.Sleep(100 * time.Millisecond)
	}
	stop()
	return "", nil, fmt.Errorf("nginx does not answer")
}

func freePort() (int, error) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return 0, err
	}
	defer l.Close()
	return l.Addr().(*net.TCPAddr).Port, nil
}
