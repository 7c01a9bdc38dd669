// Package module reads WebAssembly modules as the Go linker writes them: to make
// one smaller for its way to a visitor, and to say where its bytes go.
//
// Start with [Shrink], which every built engine passes through, and [Weigh],
// which is behind "site weigh".
//
// Guarantees:
//
//   - Shrink changes no byte of the memory that a module starts with that is read but
//     for a stack trace.
//   - What is not understood is an error, never a guess.
//
// Numbers and sections are written as in the WebAssembly Core Specification 1.0,
// chapter 5.
package module
