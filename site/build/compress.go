package build

import (
	"bytes"
	"compress/gzip"
	"os"

	"github.com/andybalholm/brotli"
)

// variant is a file in a compressed form, under its name with a suffix. Without
// data there is none of that kind.
type variant struct {
	suffix string
	data   []byte
}

// writeWithVariants writes a file and, where that makes it smaller, its variants,
// for hosts that hand them out. It gives the sizes of what it wrote, the file
// itself first.
func writeWithVariants(target string, data []byte, variants []variant) (sizes []int, err error) {
	if err := putInPlace(target, data); err != nil {
		return nil, err
	}
	sizes = []int{len(data)}
	for _, v := range variants {
		if v.data == nil || len(v.data) >= len(data) {
			// A variant left over from an older build would be served instead.
			if err := os.Remove(target + v.suffix); err != nil && !os.IsNotExist(err) {
				return nil, err
			}
			continue
		}
		if err := putInPlace(target+v.suffix, v.data); err != nil {
			return nil, err
		}
		sizes = append(sizes, len(v.data))
	}
	return sizes, nil
}

// putInPlace writes a file beside its place and moves it there, so that no half
// of a file is ever served.
func putInPlace(target string, data []byte) error {
	part := target + ".part"
	if err := os.WriteFile(part, data, 0o644); err != nil {
		return err
	}
	if err := os.Rename(part, target); err != nil {
		os.Remove(part)
		return err
	}
	return nil
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
