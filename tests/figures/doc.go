// Package figures reads data files of the engine by code of its own, for tests that
// work something out a second time without the code that they hold to account.
//
// Start with [ReadDamage] and [ReadLooks].
package figures
