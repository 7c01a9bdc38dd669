// Package tests holds what crosses packages: the ladder of imports and what the
// engine must say of the three sample cars.
package tests
