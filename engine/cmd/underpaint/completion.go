package main

import (
	"bytes"

	"github.com/spf13/cobra"
)

// completionCommand prints the script that a shell needs.
func (c command) completionCommand(root *cobra.Command) *cobra.Command {
	scripts := map[string]func(b *bytes.Buffer) error{
		"bash":       func(b *bytes.Buffer) error { return root.GenBashCompletionV2(b, true) },
		"zsh":        func(b *bytes.Buffer) error { return root.GenZshCompletion(b) },
		"fish":       func(b *bytes.Buffer) error { return root.GenFishCompletion(b, true) },
		"powershell": func(b *bytes.Buffer) error { return root.GenPowerShellCompletionWithDesc(b) },
	}
	return c.printsOneOf("completion", []string{"bash", "zsh", "fish", "powershell"}, func(shell string) ([]byte, error) {
		var b bytes.Buffer
		err := scripts[shell](&b)
		return b.Bytes(), err
	})
}
