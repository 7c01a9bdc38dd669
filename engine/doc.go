// Package engine holds the data files of the packages below it as one tree, for
// whoever writes out what the figures rest on. The packages themselves read their
// own files; nothing that runs in a browser imports this one.
package engine
