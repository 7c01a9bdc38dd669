package strict

import (
	"crypto/sha256"
	"strings"
	"testing"
)

// TestCheckCodeOfPublishedExamples uses NIST, "Examples with Intermediate Values",
// SHA-256, one block and two. The million letters a and the empty message are from FIPS
// 180-2, appendix B.3, and the NIST test vectors for short messages. 39 is the first
// number whose SHA-256 begins with a zero (sha256sum of GNU coreutils).
func TestCheckCodeOfPublishedExamples(t *testing.T) {
	for text, want := range map[string]string{
		"":    "e3b0c 44298",
		"abc": "ba781 6bf8f",
		"abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq": "248d6 a61d2",
		strings.Repeat("a", 1_000_000):                             "cdc76 e5c99",
		"39":                                                       "0b918 943df",
	} {
		sum := sha256.New()
		sum.Write([]byte(text[:len(text)/2]))
		sum.Write([]byte(text[len(text)/2:]))
		if got := CheckCode(sum); got != want {
			t.Errorf("%.20q: %s, expected %s", text, got, want)
		}
	}
}
