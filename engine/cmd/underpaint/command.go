package main

import (
	"flag"
	"fmt"
	"io"
	"os"
)

const usage = `usage:
  underpaint range CAR.json --rates RATES.json [--json]   the range of one car
  underpaint range FOLDER   --rates RATES.json [--json]   every car file in a folder, on all cores
  underpaint stages CAR.json --rates RATES.json [--json]  its range at each stage, and what moved it
  underpaint worth  CAR.json --rates RATES.json [--json]  what each stage to come is worth, and the best looks
                                     [--for customer]     looks that a customer can do
  underpaint why    CAR.json --rates RATES.json [--json]  what makes its range wide, what could make it worse
  underpaint plan   CAR.json --rates RATES.json [--json]  the job in stages, and what it costs to stop at each
  underpaint decide CAR.json --rates RATES.json [--json]  what other standards and scopes would change
  underpaint ways   CAR.json --rates RATES.json [--json]  what can be done with each damaged part
  underpaint score JOBS.json --rates RATES.json [--json]  how ranges of finished jobs came out, what they teach
  underpaint score FOLDER    --rates RATES.json           every file of past jobs in a folder, as one
                                     [--write NEW.json]   rates with all that was learnt, and the record
  underpaint check FILE...                                say whether files of ours can be used
  underpaint sample rates|rates-uk|past-jobs              print an invented shop's rates, or past jobs
  underpaint site --rates RATES.json --out DIR            the folder of pages for a web host
                                     [--engine FILE]      with a built engine, not one built from the sources
                                     [--address URL]      where it will stand, for the picture beside a shared link
  underpaint help

FILE "-" is standard input. With --json the result is the engine's own reply, one
line per car; without it a report in words.
`

// command carries the streams of one run.
type command struct {
	in              io.Reader
	out, complaints io.Writer
}

func (c command) fail(code int, format string, args ...any) int {
	fmt.Fprintf(c.complaints, "underpaint: "+format+"\n", args...)
	return code
}

// parse reads flags that may stand before or after the operands, as people
// expect of a command.
func (c command) parse(args []string, flags *flag.FlagSet) (operands []string, ok bool) {
	flags.SetOutput(c.complaints)
	flags.Usage = func() { fmt.Fprint(c.complaints, usage) }
	for {
		if err := flags.Parse(args); err != nil {
			return nil, false
		}
		if flags.NArg() == 0 {
			return operands, true
		}
		operands = append(operands, flags.Arg(0))
		args = flags.Args()[1:]
	}
}

// maxFile is more than any file of ours can be; a longer one is refused without
// being read to its end.
const maxFile = 5 << 20

func (c command) read(name string) ([]byte, error) { return c.readUpTo(name, maxFile) }

func (c command) readUpTo(name string, most int64) ([]byte, error) {
	if name == "-" {
		return limited(c.in, "standard input", most)
	}
	f, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return limited(f, name, most)
}

func limited(r io.Reader, name string, most int64) ([]byte, error) {
	data, err := io.ReadAll(io.LimitReader(r, most+1))
	if err == nil && int64(len(data)) > most {
		err = fmt.Errorf("%s: longer than such a file of ours can be (%d MB)", name, most>>20)
	}
	return data, err
}
