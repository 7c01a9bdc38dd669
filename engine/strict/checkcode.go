package strict

import (
	"encoding/hex"
	"hash"
)

// CheckCode names what a sum has taken in so that two people can compare it by eye:
// its first ten hexadecimal digits in two groups, "0a1b2 c3d4e". The sum must have at
// least five bytes; a SHA-256 has 32.
func CheckCode(sum hash.Hash) string {
	digits := hex.EncodeToString(sum.Sum(nil))
	return digits[:5] + " " + digits[5:10]
}
