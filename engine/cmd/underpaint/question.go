package main

import (
	"underpaint/engine/carfile"
	"underpaint/engine/session"
	"underpaint/engine/wording"
)

// question is one car with what it is asked at: stages, worth, ways, why, plan, decide.
type question struct {
	s    *session.Session
	t    *wording.Text
	car  *carfile.Car
	whom string
}

// settled asks again until nothing is to come.
func settled[T any](ask func() (T, error), state func(T) session.State) (T, error) {
	for {
		v, err := ask()
		if err != nil || state(v) != session.Refining {
			return v, err
		}
	}
}
