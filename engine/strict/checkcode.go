package strict

import (
	"encoding/hex"
	"hash"
)

// CheckCode identifies the bytes that a hash has read, in a form that two people can
// compare by eye: its first ten hexadecimal digits in two groups, "0a1b2 c3d4e". The hash
// must have at least five bytes; a SHA-256 has 32.
func CheckCode(sum hash.Hash) string {
	digits := hex.EncodeToString(sum.Sum(nil))
	return digits[:5] + " " + digits[5:10]
}
