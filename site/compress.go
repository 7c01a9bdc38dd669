package main

import (
	"bytes"
	"compress/gzip"
	"os"

	"github.com/andybalholm/brotli"
)

// writeWithVariants writes a file (packed is its brotli form) and, where that makes it smaller, the same
// file as .br and .gz for hosts that hand out variants. It returns the size of
// the smallest.
func writeWithVariants(target string, data, packed []byte) (int, error) {
	smallest := len(data)
	if err := os.WriteFile(target, data, 0o644); err != nil {
		return 0, err
	}
	for _, v := range []struct {
		suffix string
		data   []byte
	}{{".br", packed}, {".gz", gzipOf(data)}} {
		if len(v.data) >= len(data) {
			// A variant left over from an older build would be served instead.
			if err := os.Remove(target + v.suffix); err != nil && !os.IsNotExist(err) {
				return 0, err
			}
			continue
		}
		smallest = min(smallest, len(v.data))
		if err := os.WriteFile(target+v.suffix, v.data, 0o644); err != nil {
			return 0, err
		}
	}
	return smallest, nil
}

// brotliOf compresses at the best level. Writing into memory cannot fail.
func brotliOf(data []byte) []byte {
	var b bytes.Buffer
	w := brotli.NewWriterLevel(&b, brotli.BestCompression)
	w.Write(data)
	w.Close()
	return b.Bytes()
}

// gzipOf compresses at the best level and leaves the time out of the header,
// so that the same content gives the same bytes.
func gzipOf(data []byte) []byte {
	var b bytes.Buffer
	w, err := gzip.NewWriterLevel(&b, gzip.BestCompression)
	if err != nil {
		panic("site: internal error: " + err.Error())
	}
	w.Write(data)
	w.Close()
	return b.Bytes()
}
