package main

import (
	"fmt"
	"io"
	"os"
)

// command holds the input and output streams of one run.
type command struct {
	in              io.Reader
	out, complaints io.Writer
}

func (c command) fail(code int, format string, args ...any) int {
	fmt.Fprintf(c.complaints, programName+": "+format+"\n", args...)
	return code
}

func (c command) print(text []byte) int {
	if _, err := c.out.Write(text); err != nil {
		return c.fail(1, "%v", err)
	}
	return 0
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
