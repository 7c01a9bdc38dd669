// Package module reads WebAssembly modules: to write one with its memory in fewer
// pieces, which compress better, and to say where its bytes go.
//
// Start with [Join], which every built engine passes through, and [Weigh], which is
// behind "site weigh".
//
// Guarantees:
//
//   - Join changes no byte of the code and none of the memory that a module starts
//     with.
//   - What is not understood is an error, never a guess.
//
// Numbers and sections are written as in the WebAssembly Core Specification 1.0,
// chapter 5.
package module
