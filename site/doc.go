// Command site makes the folder of pages for a web host and serves such a folder
// on this machine. The folder itself is made by package build; the pages lie in
// pages: the customer's (pages/page.js), the shop's "This car"
// (pages/survey/page.js) and others in folders of their own, and some plain ones.
//
// Start reading at main.go (the command line) and serve.go (how a folder is
// served), and folder/weigh.go (what a folder comes to).
//
// Guarantees:
//
//   - Only reading is possible, only of the kinds of file that pages consist of,
//     and only below the folder that is served.
//   - No page asks another host for anything; a test reads every file for that.
package main
