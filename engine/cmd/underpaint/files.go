package main

import (
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"underpaint/engine/rates"
	"underpaint/site/schema"
)

// samples are the files of the invented shops, by name.
var samples = map[string]func() ([]byte, error){
	"rates":     func() ([]byte, error) { return rates.Sample(), nil },
	"rates-uk":  func() ([]byte, error) { return rates.SampleUK(), nil },
	"past-jobs": samplePastJobs,
}

var sampleNames = []string{"rates", "rates-uk", "past-jobs"}

func (c command) sampleCommand() *cobra.Command {
	return c.printsOneOf("sample", sampleNames, func(name string) ([]byte, error) { return samples[name]() })
}

func (c command) schemaCommand() *cobra.Command {
	return c.printsOneOf("schema", schema.Names, schema.Of)
}

// printsOneOf is a command that prints the file with one of these names.
func (c command) printsOneOf(command string, names []string, file func(name string) ([]byte, error)) *cobra.Command {
	cmd := c.named(command)
	takesOneOf(cmd, names...)
	cmd.RunE = does(func(args []string) int {
		if len(args) != 1 || !slices.Contains(names, args[0]) {
			last := len(names) - 1
			return c.misused(command, "%s needs %s or %s", command, strings.Join(names[:last], ", "), names[last])
		}
		text, err := file(args[0])
		if err != nil {
			return c.fail(1, "%v", err)
		}
		return c.print(text)
	})
	return cmd
}
