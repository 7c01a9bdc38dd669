// Package share draws the picture that other sites show beside a link to the
// customer's page: twenty dots on a money axis, invented and saying so, without a
// figure that somebody could take for a price. The same bytes each time.
package share
