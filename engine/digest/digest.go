package digest

import (
	"math/bits"
	"strconv"
)

const blockSize = 64

// Digest takes in bytes by Write. The zero Digest is ready and has taken in none.
type Digest struct {
	state  [8]uint32 // against the initial values, so that zero means none
	rest   [blockSize]byte
	length uint64
}

// initial are the first 32 bits of the fractional parts of the square roots of the
// first eight primes (FIPS 180-4, 5.3.3).
var initial = [8]uint32{0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a, 0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19}

// rounds are those of the cube roots of the first 64 primes (4.2.2).
var rounds = [64]uint32{
	0x428a2f98, 0x71374491, 0xb5c0fbcf, 0xe9b5dba5, 0x3956c25b, 0x59f111f1, 0x923f82a4, 0xab1c5ed5,
	0xd807aa98, 0x12835b01, 0x243185be, 0x550c7dc3, 0x72be5d74, 0x80deb1fe, 0x9bdc06a7, 0xc19bf174,
	0xe49b69c1, 0xefbe4786, 0x0fc19dc6, 0x240ca1cc, 0x2de92c6f, 0x4a7484aa, 0x5cb0a9dc, 0x76f988da,
	0x983e5152, 0xa831c66d, 0xb00327c8, 0xbf597fc7, 0xc6e00bf3, 0xd5a79147, 0x06ca6351, 0x14292967,
	0x27b70a85, 0x2e1b2138, 0x4d2c6dfc, 0x53380d13, 0x650a7354, 0x766a0abb, 0x81c2c92e, 0x92722c85,
	0xa2bfe8a1, 0xa81a664b, 0xc24b8b70, 0xc76c51a3, 0xd192e819, 0xd6990624, 0xf40e3585, 0x106aa070,
	0x19a4c116, 0x1e376c08, 0x2748774c, 0x34b0bcb5, 0x391c0cb3, 0x4ed8aa4a, 0x5b9cca4f, 0x682e6ff3,
	0x748f82ee, 0x78a5636f, 0x84c87814, 0x8cc70208, 0x90befffa, 0xa4506ceb, 0xbef9a3f7, 0xc67178f2,
}

// Write takes in more bytes.
func (d *Digest) Write(data []byte) {
	have := int(d.length % blockSize)
	d.length += uint64(len(data))
	for len(data) > 0 {
		n := copy(d.rest[have:], data)
		data = data[n:]
		if have += n; have == blockSize {
			d.block()
			have = 0
		}
	}
}

// Sum is the SHA-256 of what was taken in so far; more can follow.
func (d Digest) Sum() (sum [32]byte) {
	length := d.length * 8
	d.Write([]byte{0x80})
	for d.length%blockSize != blockSize-8 {
		d.Write([]byte{0})
	}
	for shift := 56; shift >= 0; shift -= 8 {
		d.Write([]byte{byte(length >> shift)})
	}
	for k := range sum {
		sum[k] = byte((initial[k/4] ^ d.state[k/4]) >> (24 - 8*(k%4)))
	}
	return sum
}

// Code is the first ten hexadecimal digits of the sum in two groups, "0a1b2 c3d4e".
func (d Digest) Code() string {
	first := uint64(1) // a one in front keeps the zeros
	for sum, k := d.Sum(), 0; k < 5; k++ {
		first = first<<8 | uint64(sum[k])
	}
	digits := strconv.FormatUint(first, 16)[1:]
	return digits[:5] + " " + digits[5:]
}

// block takes in one whole block (6.2.2).
func (d *Digest) block() {
	var w [64]uint32
	for t := range w {
		if t < 16 {
			b := d.rest[4*t:]
			w[t] = uint32(b[0])<<24 | uint32(b[1])<<16 | uint32(b[2])<<8 | uint32(b[3])
			continue
		}
		a, b := w[t-15], w[t-2]
		w[t] = w[t-16] + w[t-7] +
			(bits.RotateLeft32(a, -7) ^ bits.RotateLeft32(a, -18) ^ a>>3) +
			(bits.RotateLeft32(b, -17) ^ bits.RotateLeft32(b, -19) ^ b>>10)
	}
	var before [8]uint32
	for k := range before {
		before[k] = initial[k] ^ d.state[k]
	}
	v := before
	for t := range w {
		a, e := v[0], v[4]
		one := v[7] + (bits.RotateLeft32(e, -6) ^ bits.RotateLeft32(e, -11) ^ bits.RotateLeft32(e, -25)) +
			(e&v[5] ^ ^e&v[6]) + rounds[t] + w[t]
		two := (bits.RotateLeft32(a, -2) ^ bits.RotateLeft32(a, -13) ^ bits.RotateLeft32(a, -22)) +
			(a&v[1] ^ a&v[2] ^ v[1]&v[2])
		v = [8]uint32{one + two, a, v[1], v[2], v[3] + one, e, v[5], v[6]}
	}
	for k := range v {
		d.state[k] = initial[k] ^ (before[k] + v[k])
	}
}
