// Package build makes the folder that any web host can serve: the pages, the
// engine, and one shop's rates.
//
// Start with [Check], which reads the shop's rates, [FindEngine], and [Build],
// which puts both together with the pages. How a page finds the files of its own
// build is in arrange.go.
//
// # What lies in the folder
//
//	index.html, about.html, …   pages; others in folders of their own (survey/)
//	sw.js                       keeps one whole build for use without a connection
//	rates.json                  the shop's rates
//	build.json                  the name of the build
//	v-0123456789/               everything else of that build
//
// Beside a file lie the same file compressed, as .br and .gz, where that makes it
// smaller: a host that hands out variants needs nothing more. rates.json alone has
// none, because a shop replaces it alone, and a host would go on handing out the
// variants of the old one.
//
// # Guarantees
//
//   - The same sources, engine and rates give the same folder, byte for byte.
//   - Everything that belongs to one build lies in one folder named after the
//     content of that build, so a host, a cache or a half-finished upload can
//     never hand out a page with the engine of another build.
//   - Rates that the engine refuses write nothing.
//   - Every file is put in place whole, the pages last: when writing is
//     interrupted, the older pages go on working.
//   - Nothing is written outside the output folder, and nothing of an older build
//     is taken away but compressed variants that would be out of date.
package build
