package main

import (
	"underpaint/engine/carfile"
	"underpaint/engine/session"
	"underpaint/engine/wording"
)

// question is one car at one shop, as the commands stages, worth, ways, why, plan and
// decide need it.
type question struct {
	s    *session.Session
	t    *wording.Text
	car  *carfile.Car
	whom string
}

// settled asks again until the answer no longer changes.
func settled[T any](ask func() (T, error), state func(T) session.State) (T, error) {
	for {
		v, err := ask()
		if err != nil || state(v) != session.Refining {
			return v, err
		}
	}
}
