// Package pages holds the sources of the web pages as bytes, so that a program
// can put a site together without this tree at hand.
//
// Start reading at [Files]. The pages themselves lie beside this file: one in a
// folder of its own has an index.html there and everything it alone needs.
//
// Guarantees:
//
//   - Every file below this folder is in [Files], but for Go's own and for those
//     whose name begins with "." or "_". A new folder needs no entry in a list.
//   - A file of a kind that no page needs is an error, so that a stray copy or a
//     note is never published.
package pages
