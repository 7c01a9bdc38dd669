// Package serve hands out a built folder on this machine, with the headers that a web host
// should send. Start with [Folder].
//
// Guarantees:
//
//   - Only reading is possible, only of the kinds of file that pages consist of,
//     and only below the folder that is served.
package serve
