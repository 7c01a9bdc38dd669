// Package figures reads data files of the engine with code of its own, for tests that
// work something out a second time without the code that they test.
//
// Start with [ReadDamage] and [ReadLooks].
package figures
