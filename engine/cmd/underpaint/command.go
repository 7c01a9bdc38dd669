package main

import (
	"flag"
	"fmt"
	"io"
	"os"
)

const usage = `usage:
  underpaint range CAR.json --rates RATES.json [--json]   show the range of one car
  underpaint range FOLDER   --rates RATES.json [--json]   show the range of every car file in a folder
  underpaint stages CAR.json --rates RATES.json [--json]  show its range at each stage, and what changed it
  underpaint worth  CAR.json --rates RATES.json [--json]  show what each later stage is worth, and the best checks
                                     [--for customer]     only checks that the customer can do
  underpaint why    CAR.json --rates RATES.json [--json]  show what makes its range wide and what could make it worse
  underpaint plan   CAR.json --rates RATES.json [--json]  show the job in stages, and what it costs to stop at each
  underpaint decide CAR.json --rates RATES.json [--json]  show what other standards and scopes would change
  underpaint ways   CAR.json --rates RATES.json [--json]  show how each damaged part can be repaired
  underpaint score JOBS.json --rates RATES.json [--json]  show how the ranges of finished jobs came out, and what they teach
  underpaint score FOLDER    --rates RATES.json           the same for all files of past jobs in a folder together
                                     [--write NEW.json]   save the rates with everything learnt, and the record
  underpaint check FILE...                                say whether Underpaint can use these files
  underpaint sample rates|rates-uk|past-jobs              print an invented shop's rates or past jobs
  underpaint site --rates RATES.json --out DIR            make the folder of pages for a web host
                                     [--engine FILE]      use this engine instead of building one
                                     [--address URL]      the folder's web address, for the picture beside a shared link
  underpaint help

Use "-" as a file name for standard input. With --json you get the engine's own reply,
one line per car; without it, a report in words.
`

// command holds the input and output streams of one run.
type command struct {
	in              io.Reader
	out, complaints io.Writer
}

func (c command) fail(code int, format string, args ...any) int {
	fmt.Fprintf(c.complaints, "underpaint: "+format+"\n", args...)
	return code
}

// parse reads flags before and after the operands, as people expect of a command.
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

// maxFile is longer than any file we can use, in bytes. We refuse a longer one without
// reading it to its end.
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
		err = fmt.Errorf("%s: found more than %d MB; no file that Underpaint can use is that long", name, most>>20)
	}
	return data, err
}
