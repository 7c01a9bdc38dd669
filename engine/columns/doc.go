// Package columns reads and writes tables of figures: comma-, semicolon- or
// tab-separated text that a person pastes from a spreadsheet or opens from a file.
//
// Start with [Read] and [Column]; [Writer] is the way back. How one figure is
// taken apart is in figure.go, what a cell that would run as a formula is in
// formula.go.
//
// # Guarantees
//
//   - Nothing is guessed in silence. A figure such as 1.234, which can mean two
//     things, is taken only when other figures of its column settle it or the
//     caller says which; otherwise it is a [Question], and its row is refused.
//   - Good rows are kept apart from refused ones. Every refusal names row and
//     column, what was found and what was expected, and how many rows were
//     refused is counted in full.
//   - A cell that a spreadsheet would run as a formula is never taken as text, and
//     never written: see [Writer.Row].
//   - What Writer writes, Read gives back unchanged, cell by cell.
//   - Time grows with the length of the text, and the text is bounded before
//     anything is stored: see [MaxBytes], [MaxRows], [MaxCells] and [MaxCell].
//
// Quoting follows RFC 4180. Two things are taken more widely, because spreadsheets
// do them: a quotation mark inside a cell that does not begin with one is itself
// (18" wheel), and a lone carriage return or line feed ends a row. Rows are split
// here and not by encoding/csv, which turns line ends inside a cell into line
// feeds, and after a quotation mark that is never closed gives up everything that
// follows; tests hold the two against each other.
//
// A separator that the reader's spreadsheet does not expect can still cut a
// written cell in two, and then a formula may stand at the cut. The table should
// therefore be written with the separator of the place it is for.
package columns
