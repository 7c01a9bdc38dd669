// Package digest makes the check codes that stand on pages and papers: the first
// ten hexadecimal digits of a SHA-256 (FIPS 180-4). Start with [Digest].
//
// It is written out here because the library's comes with everything that a
// certified module needs: 36 KB of the 1.1 MB that a customer's page had to load
// (compressed, measured). It tells files apart and keeps no secrets. The tests hold
// it to the published examples and to the library.
package digest
