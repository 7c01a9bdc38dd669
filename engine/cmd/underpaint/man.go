package main

import (
	"bytes"
	"fmt"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// manCommand prints the manual page.
func (c command) manCommand(root *cobra.Command) *cobra.Command {
	cmd := c.named("man")
	cmd.ValidArgsFunction = cobra.NoFileCompletions
	cmd.RunE = does(func(args []string) int {
		if len(args) > 0 {
			return c.misused("man", "man needs nothing after it, found %q", args[0])
		}
		return c.print(manual(root))
	})
	return cmd
}

// manual is the manual page of all commands, in the language of man(7).
func manual(root *cobra.Command) []byte {
	var b bytes.Buffer
	name := root.Name()
	fmt.Fprintf(&b, ".TH %s 1\n.SH NAME\n%s \\- %s\n.SH SYNOPSIS\n", strings.ToUpper(name), name, roff(root.Short))
	fmt.Fprintf(&b, ".B %s\n.I COMMAND\n[\\fIFILE\\fR ...] [\\fIFLAGS\\fR]\n.SH DESCRIPTION\n%s\n.PP\n%s\n.SH COMMANDS\n", name, roff(root.Long), roff(conventions))
	for _, d := range commands {
		cmd, _, err := root.Find([]string{d.name()})
		must(err)
		fmt.Fprintf(&b, ".SS %s\n", d.name())
		for _, f := range d.forms {
			if f.use[0] != '[' {
				fmt.Fprintf(&b, ".B %s %s\n.br\n", name, roff(f.use))
			}
		}
		fmt.Fprintf(&b, ".PP\n%s\n", roff(d.long))
		cmd.Flags().VisitAll(func(f *pflag.Flag) {
			if f.Hidden {
				return
			}
			value, says := pflag.UnquoteUsage(f)
			fmt.Fprintf(&b, ".TP\n%s\n%s\n", strings.TrimSpace("\\fB"+roff("--"+f.Name)+"\\fR \\fI"+roff(value)+"\\fR"), roff(says))
		})
		fmt.Fprintf(&b, ".PP\n.EX\n%s\n.EE\n", roff(strings.Join(d.examples, "\n")))
	}
	b.WriteString(".SH EXIT STATUS\n.TP\n0\nIt is done.\n.TP\n1\nA file cannot be used. The reason is on standard error.\n.TP\n2\nThe command line is wrong.\n")
	return b.Bytes()
}

// roff writes text so that no character of it is a command of the language.
func roff(text string) string {
	text = strings.NewReplacer(`\`, `\e`, "-", `\-`, "'", `\(aq`).Replace(strings.TrimSpace(text))
	lines := strings.Split(text, "\n")
	for k, line := range lines {
		if strings.HasPrefix(line, ".") {
			lines[k] = `\&` + line
		}
	}
	return strings.Join(lines, "\n")
}
