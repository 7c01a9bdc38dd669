// Package module reads WebAssembly modules as the Go linker writes them: to make
// one smaller for its way to a visitor, and to say where its bytes go.
//
// Start with [Shrink], which every built engine passes through, and [Weigh],
// which is behind "site weigh".
//
// Guarantees:
//
//   - Of the memory that a module starts with, Shrink takes nothing out that is read but
//     for a stack trace; the lookup from code to functions takes some steps more.
//   - Of the code it changes only functions on a list, into traps ([unreached]).
//   - What is not understood is an error, never a guess.
//
// Numbers and sections are written as in the WebAssembly Core Specification 1.0,
// chapter 5.
package module
