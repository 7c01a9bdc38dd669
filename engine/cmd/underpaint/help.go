package main

import (
	"bytes"
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"underpaint/engine/strict"
)

// exitCode is the error of a command that has already said what was wrong.
type exitCode int

func (e exitCode) Error() string { return fmt.Sprintf("exit code %d", int(e)) }

// does turns a function that returns an exit code into what a command runs.
func does(work func(args []string) int) func(*cobra.Command, []string) error {
	return func(_ *cobra.Command, args []string) error {
		if code := work(args); code != 0 {
			return exitCode(code)
		}
		return nil
	}
}

// named begins a command that words.go describes. It takes any operands; what it runs
// refuses those it cannot use.
func (c command) named(name string) *cobra.Command {
	d := describedAs(name)
	cmd := &cobra.Command{
		Use:                   d.forms[0].use,
		Short:                 d.forms[0].does,
		Long:                  d.long,
		Example:               strings.Join(d.examples, "\n"),
		Args:                  cobra.ArbitraryArgs,
		DisableFlagsInUseLine: true,
	}
	helpFlag(cmd)
	return cmd
}

func helpFlag(cmd *cobra.Command) { cmd.Flags().BoolP("help", "h", false, "show this help") }

// overview lists all commands.
func overview() []byte {
	var b bytes.Buffer
	fmt.Fprintln(&b, "usage:")
	for k := range commands {
		commands[k].write(&b)
	}
	form{"--version", "say which version this is and which files it reads"}.write(&b)
	fmt.Fprintf(&b, "\n%s", conventions)
	return b.Bytes()
}

// usageOf is the part of the overview about one command, or all of it for "".
func usageOf(name string) []byte {
	if name == "" {
		return overview()
	}
	var b bytes.Buffer
	fmt.Fprintln(&b, "usage:")
	describedAs(name).write(&b)
	return b.Bytes()
}

// helpFor is all the help on one command, or the overview for the program itself.
func helpFor(cmd *cobra.Command) []byte {
	if !cmd.HasParent() {
		return overview()
	}
	var b bytes.Buffer
	fmt.Fprintf(&b, "%s\n\n%s\nflags:\n%s", cmd.Long, usageOf(cmd.Name()), cmd.Flags().FlagUsages())
	if cmd.Example != "" {
		fmt.Fprintf(&b, "\nfor example:\n  %s\n", strings.ReplaceAll(cmd.Example, "\n", "\n  "))
	}
	return b.Bytes()
}

// misused refuses a command line, with the usage of the command, or of all for "".
func (c command) misused(name, format string, args ...any) int {
	return c.fail(2, "%s\n%s", fmt.Sprintf(format, args...), bytes.TrimSuffix(usageOf(name), []byte("\n")))
}

// wrongFlag refuses a flag in the words of this program.
func (c command) wrongFlag(cmd *cobra.Command, err error) error {
	name := cmd.Name()
	if !cmd.HasParent() {
		name = ""
	}
	var unknown *pflag.NotExistError
	var valueless *pflag.ValueRequiredError
	switch {
	case errors.As(err, &unknown):
		found := "--" + unknown.GetSpecifiedName()
		if short := unknown.GetSpecifiedShortnames(); short != "" {
			found = "-" + short
		}
		var flags []string
		cmd.Flags().VisitAll(func(f *pflag.Flag) {
			if !f.Hidden {
				flags = append(flags, "--"+f.Name)
			}
		})
		if near := strict.Nearest(found, flags); near != "" {
			return exitCode(c.misused(name, "found the flag %s; did you mean %s?", found, near))
		}
		return exitCode(c.misused(name, "found the flag %s; the flags here are %s", found, strings.Join(flags, ", ")))
	case errors.As(err, &valueless):
		return exitCode(c.misused(name, "expected a value after --%s", valueless.GetFlag().Name))
	}
	return exitCode(c.misused(name, "%v", err))
}
