// Package message answers the requests of the pages: it takes strict JSON and returns
// JSON in which every text is ready to show.
//
// Start with [Engine.Ask] and the tables in routes.go. Package session works out the
// answers and package wording puts them into words. This package only fills the reply
// structs (the files replies_…); it does no arithmetic and writes no sentences. The
// command gen generates the code that writes the structs, and their types in
// TypeScript, so you add a member in one place, its struct.
//
// Pages do no arithmetic and no formatting. Amounts arrive as text in the shop's
// currency, positions as shares of an axis. The same request gets the same bytes
// natively and in a browser. The reply to a request that we cannot answer has the kind
// "refused". It names the path in the user's file, what we found there and what we
// expected, and it never has a figure.
//
// The files build on one another in this order, and none uses a later one: reply.go,
// replies_….go, replies_written.go, request.go, ask.go, then one file for each group
// of requests, and routes.go last.
package message
