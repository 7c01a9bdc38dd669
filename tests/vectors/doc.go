// Package vectors holds whole questions to the engine with the answers that it
// gives, so that native code, wasm under Node and a browser can be held to the same
// bytes, today and in every later version.
//
// Start with [Load] and [Vector.Run]. Each file of the folder cases is one
// scenario:
//
//	name    the name of the file
//	about   one plain sentence
//	files   texts that the requests carry, each one of
//	        {"from": F, "changes": [[a, b], …]}  a file of the folder files, with
//	                 each a, which must stand in it once, replaced by b
//	        {"json": V, "changes": …}            a value, as compact JSON
//	        {"text": T, "times": n, "after": U}  T n times, then U
//	ask     requests to a fresh engine, in order, each with
//	        request  the members of a request, the id left out; {"file": F} puts a
//	                 text in as it is and {"quoted": F} as one JSON string. A
//	                 request that is {"file": F} alone is that text and nothing else
//	        until    true: ask again until the answer no longer improves
//	        expect   kind, SHA-256 of the whole last reply, and its figures in full
//
// # The rule
//
// What a vector asks never changes: kept.txt holds a digest of every request, and a
// vector is neither edited nor taken away, so that whatever could be asked once can
// be asked in every later version. The files in the folder files are copies made on
// the day of the first vectors; they do not follow the sample files.
//
// What a vector expects changes only with a commit that means to change it and says
// why:
//
//	go test ./tests -run TestVectors -update
//
// writes the answers of today into the files and prints what has changed: figures
// and refusals by name, or "words only". A refusal keeps its kind and its path; a
// change there breaks what users have and wants a reason of its own.
//
// The rules of the format are kept twice, here and in run.mjs for Node and browsers;
// kept.txt makes sure that both send the same bytes.
package vectors
