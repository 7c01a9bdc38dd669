// Package vectors holds whole questions to the engine with its replies, so that tests
// can require the same bytes of native code, wasm under Node and a browser, today and
// in every later version.
//
// Start with [Load] and [Vector.Run]. Each file of the folder cases is one
// scenario:
//
//	name    the name of the file
//	about   one plain sentence
//	files   texts that the requests carry, each one of
//	        {"from": F, "changes": [[a, b], …]}  a file of the folder files, with
//	                 each a, which must occur in it exactly once, replaced by b
//	        {"json": V, "changes": …}            a value, as compact JSON
//	        {"text": T, "times": n, "after": U}  T n times, then U
//	ask     requests to a fresh engine, in order, each with
//	        request  the members of a request without its id; {"file": F} inserts a
//	                 text as it is and {"quoted": F} as one JSON string. A request
//	                 that is {"file": F} alone is that text and nothing else
//	        until    true: ask again until the reply no longer improves
//	        expect   kind, SHA-256 of the whole last reply, and its figures in full
//
// # The rule
//
// What a vector asks never changes: kept.txt holds a digest of every request, and
// nobody edits or removes a vector, so that every later version can still be asked
// whatever could be asked once. The files in the folder files are copies from the day
// of the first vectors; they do not follow the sample files.
//
// What a vector expects changes only in a commit that means to change it and says why:
//
//	go test ./tests -run TestVectors -update
//
// writes today's replies into the files and prints what has changed: figures and
// refusals by name, or "words only". A refusal keeps its kind and its path. Changing
// those breaks what users rely on and needs a reason of its own.
//
// The format is implemented twice, here and in run.mjs for Node and browsers; kept.txt
// makes sure that both send the same bytes.
package vectors
