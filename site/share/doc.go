// Package share has the picture that other sites show beside a link to the
// customer's page: twenty dots on a money axis. They are invented, the picture says
// so, and it has no figure that somebody could take for a price.
//
// The picture is a committed file, [Picture]. `make pictures` draws it anew from
// share.svg.
package share
