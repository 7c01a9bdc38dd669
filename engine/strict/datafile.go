package strict

import (
	"encoding/binary"
	"hash"
)

// DataFile is a data file of the program with its path below the folder engine.
type DataFile struct {
	Path string
	Text []byte
}

// HashInto writes the file to a hash: the lengths of path and text in eight bytes each,
// largest first, then path and text, so that no two lists of files hash the same bytes.
func (f DataFile) HashInto(sum hash.Hash) {
	var lengths [16]byte
	binary.BigEndian.PutUint64(lengths[:8], uint64(len(f.Path)))
	binary.BigEndian.PutUint64(lengths[8:], uint64(len(f.Text)))
	sum.Write(lengths[:])
	sum.Write([]byte(f.Path))
	sum.Write(f.Text)
}

// IsCheckCode says whether a text has the form of a [CheckCode].
func IsCheckCode(s string) bool {
	if len(s) != 11 || s[5] != ' ' {
		return false
	}
	for k, c := range []byte(s) {
		if k != 5 && (c < '0' || c > '9') && (c < 'a' || c > 'f') {
			return false
		}
	}
	return true
}
