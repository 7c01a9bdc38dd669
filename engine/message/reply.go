package message

import (
	"errors"
	"strings"

	"underpaint/engine/strict"
)

//go:generate go run ./gen

// Reply is the answer to one request: one of the structs named …Reply. From these structs
// the command gen generates the code that writes them and their TypeScript types.
type Reply interface {
	kind() string
	write(w *strict.Writer) // its members, after id and kind
}

// Encode returns, as JSON, the reply r to the request with this id.
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

// rawJSON is a value that is already JSON.
type rawJSON []byte

// Fault says what is wrong at one place of the user's own file: the path, what it holds
// and what was expected.
type Fault struct {
	Path     string `json:"path"`
	Found    string `json:"found"`
	Expected string `json:"expected"`
}

// TextFault is a fault with the sentence that describes it.
type TextFault struct {
	Fault
	Text string `json:"text"`
}

// RefusedReply is the reply to a request that cannot be answered. It never holds a
// figure. What names the subject that is wrong: request, car, rates, sum, jobs, table or
// outline.
//
//reply:refused
type RefusedReply struct {
	What   string `json:"what"`
	*Fault        // if its place is known
	Text   string `json:"text"`
}

// BrokenReply is the reply after a panic, which is always a bug in the engine.
//
//reply:broken
type BrokenReply struct {
	Text  string `json:"text"`
	*Told        // for the shop only
}

// Told is the message of a panic and its stack of functions, beginning with the one that
// panicked.
type Told struct {
	Panic string   `json:"panic"`
	Stack []string `json:"stack"`
}

// refusal is an error together with its subject.
type refusal struct {
	what string
	err  error
}

func (r *refusal) Error() string { return r.err.Error() }

// refuse adds to an error its subject: the request, the car, the rates …
func refuse(what string, err error) error { return &refusal{what, err} }

// refused makes the reply to an error. The subject is the one that the error names, or
// what if it names none.
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
