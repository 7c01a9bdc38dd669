// Package columns reads and writes tables of figures: comma-, semicolon- or
// tab-separated text that a person pastes from a spreadsheet or opens from a file.
//
// Start with [Read] and [Column]; [Writer] writes tables. figure.go parses a single
// figure, and formula.go recognises cells that a spreadsheet would run as a formula.
//
// # Guarantees
//
//   - Nothing is guessed silently. A figure such as 1.234, which can mean two things, is
//     accepted only if other figures in its column settle it or the caller says which it
//     is. Otherwise it raises a [Question], and its row is refused.
//   - Good rows are separate from refused ones. Every refusal names row and column, what
//     was found and what was expected. The number of refused rows is always complete.
//   - A cell that a spreadsheet would run as a formula is never accepted as text and
//     never written: see [Writer.Row].
//   - Read returns exactly what Writer wrote, cell by cell.
//   - The time is proportional to the length of the text, which is bounded before
//     anything is stored: see [MaxBytes], [MaxRows], [MaxCells] and [MaxCell].
//
// Quoting follows RFC 4180, with two extensions because spreadsheets write such text: a
// quotation mark inside a cell that does not begin with one is an ordinary character (18"
// wheel), and a lone carriage return or line feed ends a row. The package splits rows
// itself because encoding/csv turns line ends inside a cell into line feeds, and loses
// everything after a quotation mark that is never closed. Tests compare the two.
//
// If a spreadsheet does not expect the separator of a written table, it may split a cell
// in two, and the second half may then be a formula. So write each table with the
// separator that is usual in its reader's country.
package columns
