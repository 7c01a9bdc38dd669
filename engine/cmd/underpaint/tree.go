package main

import (
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"underpaint/engine/strict"
)

// tree returns the program with all its commands.
func (c command) tree() *cobra.Command {
	cobra.MousetrapHelpText = "Underpaint works at the prompt: open a terminal in this folder and type\n\n  underpaint help\n\n"
	root := &cobra.Command{
		Use:               programName,
		Short:             "an honest cost range for the body of an old car",
		Long:              "Works out at a shop's rates what the body work of an old car would cost, as a range. It also checks the files that this needs, learns from finished jobs, and makes the pages for a web host.",
		Args:              cobra.ArbitraryArgs,
		ValidArgsFunction: cobra.NoFileCompletions,
		SilenceErrors:     true,
		SilenceUsage:      true,
		CompletionOptions: cobra.CompletionOptions{DisableDefaultCmd: true},
	}
	root.SetIn(c.in)
	root.SetOut(c.out)
	root.SetErr(c.complaints)
	root.SetHelpFunc(func(cmd *cobra.Command, _ []string) { c.print(helpFor(cmd)) })
	root.SetFlagErrorFunc(c.wrongFlag)
	helpFlag(root)
	version := root.Flags().Bool("version", false, "say which version this is and which files it reads")
	root.RunE = does(func(args []string) int {
		if *version {
			return c.version()
		}
		if len(args) == 0 {
			c.complaints.Write(overview())
			return 2
		}
		return c.unknown(root, args[0])
	})
	root.AddCommand(c.rangeCommand())
	for _, name := range carCommands {
		root.AddCommand(c.carCommand(name))
	}
	root.AddCommand(c.scoreCommand(), c.checkCommand(), c.sampleCommand(), c.schemaCommand(), c.siteCommand(), c.serveCommand(),
		c.completionCommand(root), c.manCommand(root))
	root.SetHelpCommand(c.helpCommand(root))
	root.InitDefaultHelpCmd()
	return root
}

// helpCommand is help with or without the name of a command.
func (c command) helpCommand(root *cobra.Command) *cobra.Command {
	help := c.named("help")
	help.ValidArgsFunction = func(_ *cobra.Command, args []string, _ string) (names []string, _ cobra.ShellCompDirective) {
		if len(args) == 0 {
			for _, cmd := range root.Commands() {
				names = append(names, cobra.CompletionWithDesc(cmd.Name(), cmd.Short))
			}
		}
		return names, cobra.ShellCompDirectiveNoFileComp
	}
	help.RunE = does(func(args []string) int {
		if len(args) == 0 {
			return c.print(overview())
		}
		cmd, rest, err := root.Find(args)
		if err != nil || len(rest) > 0 {
			return c.unknown(root, args[0])
		}
		return c.print(helpFor(cmd))
	})
	return help
}

// unknown refuses a command that does not exist.
func (c command) unknown(root *cobra.Command, name string) int {
	var names []string
	for _, cmd := range root.Commands() {
		names = append(names, cmd.Name())
	}
	if near := strict.Nearest(name, names); near != "" {
		return c.misused("", "found the command %q; did you mean %q?", name, near)
	}
	return c.misused("", "found the command %q; use one of these", name)
}

// longFlags doubles the dash of every known flag that is given with one: both spellings
// are in use, and no flag here has a short form that could be meant instead.
func longFlags(root *cobra.Command, args []string) []string {
	known := map[string]bool{}
	for _, cmd := range append(root.Commands(), root) {
		cmd.Flags().VisitAll(func(f *pflag.Flag) { known[f.Name] = true })
	}
	out := []string{} // not nil, or the program's own arguments would be read instead
	for n, arg := range args {
		if arg == "--" {
			return append(out, args[n:]...)
		}
		if name, _, _ := strings.Cut(strings.TrimPrefix(arg, "-"), "="); strings.HasPrefix(arg, "-") && known[name] {
			arg = "-" + arg
		}
		out = append(out, arg)
	}
	return out
}
