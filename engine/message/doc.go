// Package message is what pages ask the engine and are told: strict JSON in, JSON out,
// with every text ready to show.
//
// Start with [Engine.Ask] and the tables in routes.go. Package session works the
// answers out, package wording words them, and here they are put into reply structs
// (the files replies_…): no arithmetic and no sentences. What writes the structs, and
// their types in TypeScript, are generated from them by gen, so a member is added in
// one place: its struct.
//
// The page holds no arithmetic and no formatting of its own: amounts arrive as text in
// the shop's currency, positions as shares of an axis. The reply to the same request
// is the same bytes natively and in a browser. A request that cannot be answered gets
// a reply of kind "refused" with the path in the user's file, what was found there and
// what was expected, and never a figure.
//
// The files build on one another in this order; none uses one after it: reply.go,
// replies_….go, replies_written.go, request.go, ask.go, then one file for each group
// of requests, and routes.go on top.
package message
