package serve

import (
	"context"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"path"
	"path/filepath"
	"strings"
	"time"

	"underpaint/site/build"
)

// Only the customer's page may stand in a frame. In a meta element frame-ancestors
// has no effect (W3C Content Security Policy Level 3, 3.3): see pages/shared/refuseframing.ts.
const (
	framedByOwn  = "; frame-ancestors 'self'"
	framedByNone = "; frame-ancestors 'none'"
)

// types by extension. A file of another kind is not served.
var types = map[string]string{
	".html":  "text/html; charset=utf-8",
	".css":   "text/css; charset=utf-8",
	".js":    "text/javascript; charset=utf-8",
	".json":  "application/json; charset=utf-8",
	".svg":   "image/svg+xml",
	".png":   "image/png",
	".wasm":  "application/wasm",
	".woff2": "font/woff2",
}

// Folder serves the built folder dir at a network address such as "127.0.0.1:8080" until
// ctx is done, and says where on out.
func Folder(ctx context.Context, address, dir string, out io.Writer) error {
	listener, err := net.Listen("tcp", address)
	if err != nil {
		return err
	}
	fmt.Fprintf(out, "serving %s on http://%s/\n", dir, listener.Addr())
	server := &http.Server{Handler: handler(dir), ReadHeaderTimeout: 10 * time.Second}
	stop := context.AfterFunc(ctx, func() { server.Close() })
	defer stop()
	if err := server.Serve(listener); !errors.Is(err, http.ErrServerClosed) {
		return err
	}
	return nil
}

// handler serves the built folder: right types, security headers, and the
// compressed variant that the browser takes.
func handler(dir string) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		setHeaders(w.Header(), r.URL.Path)
		if r.Method != http.MethodGet && r.Method != http.MethodHead {
			w.Header().Set("Allow", "GET, HEAD")
			http.Error(w, "only reading is possible here", http.StatusMethodNotAllowed)
			return
		}
		name := path.Clean("/" + r.URL.Path)
		if strings.HasSuffix(r.URL.Path, "/") {
			name = path.Join(name, "index.html")
		} else if isFolder(dir, name) {
			http.Redirect(w, r, path.Base(name)+"/", http.StatusMovedPermanently)
			return
		}
		kind, known := types[path.Ext(name)]
		if !known {
			http.NotFound(w, r)
			return
		}
		w.Header().Set("Content-Type", kind)
		serveVariant(w, r, filepath.Join(dir, filepath.FromSlash(name)), name)
	})
}

// isFolder says whether name is the folder of a page. As on other hosts, its
// address ends in a slash, or what the page names would not be found.
func isFolder(dir, name string) bool {
	info, err := os.Stat(filepath.Join(dir, filepath.FromSlash(name), "index.html"))
	return path.Ext(name) == "" && err == nil && !info.IsDir()
}

func setHeaders(h http.Header, name string) {
	frames := framedByNone
	if name == "/" || name == "/index.html" {
		frames = framedByOwn
	}
	h.Set("Content-Security-Policy", build.Policy+frames)
	h.Set("X-Content-Type-Options", "nosniff")
	h.Set("Referrer-Policy", "no-referrer")
	h.Set("Cross-Origin-Opener-Policy", "same-origin")
	h.Set("Cross-Origin-Resource-Policy", "same-origin")
}

// serveVariant picks .br, .gz or the file as it is. Files in the folder of a
// build never change; all others are asked for again each time.
func serveVariant(w http.ResponseWriter, r *http.Request, target, name string) {
	w.Header().Set("Vary", "Accept-Encoding")
	w.Header().Set("Cache-Control", "no-cache")
	if strings.HasPrefix(name, "/v-") {
		w.Header().Set("Cache-Control", "public, max-age=31536000, immutable")
	}
	accepted := r.Header.Get("Accept-Encoding")
	for _, v := range []struct{ coding, suffix string }{{"br", ".br"}, {"gzip", ".gz"}, {"", ""}} {
		if v.coding != "" && !accepts(accepted, v.coding) {
			continue
		}
		file, err := os.Open(target + v.suffix)
		if err != nil {
			continue
		}
		defer file.Close()
		info, err := file.Stat()
		if err != nil || info.IsDir() {
			continue
		}
		if v.coding != "" {
			w.Header().Set("Content-Encoding", v.coding)
		}
		http.ServeContent(w, r, "", info.ModTime(), file)
		return
	}
	w.Header().Del("Cache-Control")
	http.NotFound(w, r)
}

// accepts reads an Accept-Encoding header (RFC 9110, 12.5.3): a coding with a
// weight of nought is refused.
func accepts(header, coding string) bool {
	for part := range strings.SplitSeq(header, ",") {
		name, weight, _ := strings.Cut(strings.TrimSpace(part), ";")
		if strings.EqualFold(strings.TrimSpace(name), coding) {
			weight = strings.ReplaceAll(weight, " ", "")
			return !(strings.HasPrefix(weight, "q=0") && strings.Trim(weight[3:], ".0") == "")
		}
	}
	return false
}
