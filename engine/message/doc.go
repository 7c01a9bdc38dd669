// Package message is what pages and the prompt ask the engine and are told:
// strict JSON in, JSON out, with every text ready to show.
//
// Start with [Engine.Ask]. The page holds no arithmetic and no formatting of
// its own: amounts arrive as text in the shop's currency, positions as shares of
// an axis. The reply to the same request is the same bytes natively and in a
// browser. A request that cannot be answered gets a reply of kind "refused" with
// the path in the user's file, what was found there and what was expected, and
// never a figure.
//
// Package carfile reads the car; [Session.Rows] is the same answer as values, for
// the prompt.
package message
