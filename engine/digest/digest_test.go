package digest

import (
	"crypto/sha256"
	"encoding/hex"
	"math/rand/v2"
	"strings"
	"testing"
)

// TestPublishedExamples: NIST, "Examples with Intermediate Values", SHA-256, one
// block and two; the million letters a and the empty message are those of FIPS
// 180-2, appendix B.3, and of the NIST test vectors for short messages.
func TestPublishedExamples(t *testing.T) {
	for text, want := range map[string]string{
		"":    "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855",
		"abc": "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
		"abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq": "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
		strings.Repeat("a", 1_000_000):                             "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0",
	} {
		var d Digest
		d.Write([]byte(text))
		sum := d.Sum()
		if got := hex.EncodeToString(sum[:]); got != want {
			t.Errorf("%.20q: %s, expected %s", text, got, want)
		}
		if got := d.Code(); got != want[:5]+" "+want[5:10] {
			t.Errorf("%.20q: code %s", text, got)
		}
	}
}

// TestAgainstTheLibrary: every length around the ends of blocks, written in pieces,
// with a sum taken on the way, which must not disturb what follows.
func TestAgainstTheLibrary(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for n := range 300 {
		data := make([]byte, n)
		for k := range data {
			data[k] = byte(random.Uint32())
		}
		var d Digest
		cut := random.IntN(n + 1)
		d.Write(data[:cut])
		if got := d.Sum(); got != sha256.Sum256(data[:cut]) {
			t.Fatalf("%d bytes: wrong sum", cut)
		}
		d.Write(data[cut:])
		if got := d.Sum(); got != sha256.Sum256(data) {
			t.Fatalf("%d bytes, written as %d and %d: wrong sum", n, cut, n-cut)
		}
	}
}

// TestCodeKeepsZerosInFront: a code always has ten digits.
func TestCodeKeepsZerosInFront(t *testing.T) {
	found := false
	for n := range 2000 {
		var d Digest
		d.Write([]byte{byte(n), byte(n >> 8)})
		sum := d.Sum()
		if code := d.Code(); len(code) != 11 || strings.ReplaceAll(code, " ", "") != hex.EncodeToString(sum[:5]) {
			t.Fatalf("%d: code %q", n, code)
		}
		found = found || sum[0] == 0
	}
	if !found {
		t.Error("no sum began with zeros: the test shows nothing")
	}
}
