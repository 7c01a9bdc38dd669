// Command site makes the folder of pages for a web host and serves such a folder
// on this machine. The folder itself is made by package build; the pages lie in
// pages: the customer's (pages/page.js), the shop's "This car"
// (pages/survey/page.js) and others in folders of their own, and some plain ones.
//
// Start reading at main.go (the command line); packages build and serve do the work, and
// build/weigh.go says what a folder comes to.
//
// Guarantees:
//
//   - No page asks another host for anything; a test reads every file for that.
package main
