// Package tests holds tests that cross packages. Start with ladder_test.go (who may
// import whom) and vectors_test.go (whole questions and their replies, from package
// vectors). Others check calibration, published figures, an exact calculation beside
// the sampled one, equal arithmetic on every processor, and hostile input.
package tests
