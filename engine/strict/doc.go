// Package strict reads JSON that a person may have written by hand, and says in plain
// words what is wrong with it and where.
//
// Start with [Parse], which turns a whole document into a [Field]. [Field.Get] and
// [Field.Number] show how all getters work. [Writer] and [Canonical] write text.
//
// Guarantees:
//   - The document is RFC 7493 (I-JSON): one value, UTF-8, no member twice. Bytes after
//     the value and numbers too large for a 64-bit binary float are also errors. A byte
//     order mark in front is passed over, as RFC 8259, section 8.1 allows: some editors
//     write one.
//   - Memory is bounded before it is used: see [MaxBytes], [MaxDepth] and [MaxMembers].
//   - Nothing is guessed. A missing member, an unknown member, a wrong type or a value
//     out of bounds is a complaint, never a default.
//   - Complaints stick: a document keeps the first one, and from then on every getter of
//     every Field of that document returns a zero value. So a reader asks for everything
//     it needs and checks [Field.Err] once. It must not act on zero values before that.
//   - Every error is an [*Error] with the path of the value, what was found,
//     what was expected, and the line.
//
// A document and its Fields are for one goroutine at a time.
package strict
