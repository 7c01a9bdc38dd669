// Command site puts the pages, the engine and a shop's rates
// together into one folder that any web host can serve, and serves such a
// folder on this machine.
//
// The pages are the customer's (pages/page.js), the shop's "This car"
// (pages/survey/page.js) and some plain ones.
//
// Start reading at build.go (what goes where) and folder.go (how a page finds
// the files of its own build).
//
// Guarantees:
//
//   - The same sources, engine and rates give the same folder, byte for byte.
//   - Everything that belongs to one build lies in one folder named after the
//     content of that build, so a host, a cache or a half-finished upload can
//     never hand out a page with the engine of another build.
//   - The rates lie beside it under a fixed name: a shop replaces that one file.
//   - No page asks another host for anything; a test reads every file for that.
//   - Nothing is written outside the output folder.
package main
