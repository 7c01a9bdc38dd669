package main

import "github.com/spf13/cobra"

// The flags that several commands have.

func ratesFlag(cmd *cobra.Command, says string) *string {
	rates := cmd.Flags().String("rates", "", "take "+says+" from this `FILE`")
	completeFiles(cmd, "rates", "json")
	return rates
}

func jsonFlag(cmd *cobra.Command) *bool {
	return cmd.Flags().Bool("json", false, "print the engine's own reply")
}

// completeFiles has shells complete the value of a flag with names that end so.
func completeFiles(cmd *cobra.Command, flag string, ends ...string) {
	must(cmd.MarkFlagFilename(flag, ends...))
}

// takesFiles has shells complete the operands with files whose names end in .json.
func takesFiles(cmd *cobra.Command) {
	cmd.ValidArgsFunction = func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
		return []string{"json"}, cobra.ShellCompDirectiveFilterFileExt
	}
}

// takesOneOf has shells complete the one operand with these.
func takesOneOf(cmd *cobra.Command, names ...string) {
	cmd.ValidArgsFunction = func(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
		if len(args) > 0 {
			names = nil
		}
		return names, cobra.ShellCompDirectiveNoFileComp
	}
}

// must is for what fails only when a flag is misspelt here.
func must(err error) {
	if err != nil {
		panic("underpaint: internal error: " + err.Error())
	}
}
