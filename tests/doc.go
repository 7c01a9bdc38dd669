// Package tests holds what crosses packages: the ladder of imports, what the
// engine must say of whole questions (package vectors has them), the same sums on
// every processor, and what is refused of input that means harm.
package tests
