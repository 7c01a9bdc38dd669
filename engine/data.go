package engine

import "embed"

// Data has every data file with figures by its path below this folder.
//
//go:embed car/data exposure/data damage/data evidence/data olddamage/data pricing/data wording/data rates/data
var Data embed.FS
