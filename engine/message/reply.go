package message

import (
	"errors"
	"strings"

	"underpaint/engine/strict"
)

//go:generate go run ./gen

// Reply is the answer to one request: one of the structs named …Reply. The command gen
// generates from these structs the code that writes them and their types in TypeScript.
type Reply interface {
	kind() string
	write(w *strict.Writer) // its members, after id and kind
}

// Encode writes the reply to the request with an id as JSON.
func Encode(id int64, r Reply) []byte {
	w := strict.NewWriter()
	w.Object(func() {
		w.Key("id")
		w.Whole(id)
		w.Member("kind", r.kind())
		r.write(w)
	})
	return w.Bytes()
}

// object is a JSON object whose names are data. It keeps their order.
type object[T any] []entry[T]

type entry[T any] struct {
	key   string
	value T
}

// rawJSON is a value that is JSON already.
type rawJSON []byte

// Fault is what is wrong at one place of the user's own file.
type Fault struct {
	Path     string `json:"path"`
	Found    string `json:"found"`
	Expected string `json:"expected"`
}

// TextFault is a fault with what is said of it.
type TextFault struct {
	Fault
	Text string `json:"text"`
}

// RefusedReply is the reply to what cannot be answered. It never holds a figure. What
// is wrong is its request, car, rates, sum, jobs, table or outline.
//
//reply:refused
type RefusedReply struct {
	What   string `json:"what"`
	*Fault        // where the place is known
	Text   string `json:"text"`
}

// BrokenReply is the reply when the program stopped on a mistake of its own.
//
//reply:broken
type BrokenReply struct {
	Text  string `json:"text"`
	*Told        // to the shop alone
}

// Told is what a panic told, and the functions that were running, the one that panicked
// first.
type Told struct {
	Panic string   `json:"panic"`
	Stack []string `json:"stack"`
}

// refusal is an error with the subject that it is about.
type refusal struct {
	what string
	err  error
}

func (r *refusal) Error() string { return r.err.Error() }

// refuse adds to an error its subject: the request, the car, the rates …
func refuse(what string, err error) error { return &refusal{what, err} }

// refused makes the reply to an error. Its subject is the one that the error names, or
// else what.
func refused(what string, err error) *RefusedReply {
	var r *refusal
	if errors.As(err, &r) {
		what, err = r.what, r.err
	}
	out := &RefusedReply{What: what, Text: err.Error()}
	var at *strict.Error
	if errors.As(err, &at) {
		// The user knows paths in their own file, not in the message around it.
		own := *at
		own.Path = strings.TrimPrefix(strings.TrimPrefix(own.Path, "car"), ".")
		out.Fault, out.Text = faultOf(&own), own.Error()
	}
	return out
}

func faultOf(e *strict.Error) *Fault { return &Fault{e.Path, e.Found, e.Expected} }

func textFault(e *strict.Error) TextFault { return TextFault{*faultOf(e), e.Error()} }
