package main

import (
	"fmt"
	"io"
	"strings"
)

const programName = "underpaint"

// described is what the help, the overview and the manual page say of one command.
type described struct {
	forms    []form
	long     string // whole sentences
	examples []string
}

// form is one way to call a command and what that does. One that begins with a bracket is
// a flag of the form above it.
type form struct{ use, does string }

func (d described) name() string {
	name, _, _ := strings.Cut(d.forms[0].use, " ")
	return name
}

func (d described) write(out io.Writer) {
	for _, f := range d.forms {
		f.write(out)
	}
}

func (f form) write(out io.Writer) {
	use := programName + " " + f.use
	if f.use[0] == '[' {
		use = strings.Repeat(" ", 35) + f.use
	}
	fmt.Fprintf(out, "  %-55s %s\n", use, f.does)
}

func describedAs(name string) described {
	for _, d := range commands {
		if d.name() == name {
			return d
		}
	}
	panic("underpaint: internal error: no words for the command " + name)
}

const conventions = `Use "-" as a file name for standard input. With --json you get the engine's own reply,
one line per car; without it, a report in words. "underpaint help COMMAND" says more.
`

// commands has the words of every command, in the order of the overview.
var commands = []described{
	{[]form{
		{"range CAR.json --rates RATES.json [--json]", "show the range of one car"},
		{"range FOLDER --rates RATES.json [--json]", "show the range of every car file in a folder"},
	}, "Shows the cost range of a car after each stage that its file holds, what the money goes on, and what is not in the range. In a folder, a file that cannot be used is skipped with its reason.",
		[]string{"underpaint range car.json --rates my-rates.json", "underpaint range cars --rates my-rates.json --json > ranges.jsonl"}},
	{[]form{{"stages CAR.json --rates RATES.json [--json]", "show its range at each stage, and what changed it"}},
		"Shows how the range narrowed, or grew, from the answers over the walk-around to the survey, and which records moved it.",
		[]string{"underpaint stages surveyed.json --rates my-rates.json"}},
	{[]form{
		{"worth CAR.json --rates RATES.json [--json]", "show what each later stage is worth, and the best checks"},
		{"[--for customer]", "only checks that the customer can do"},
	}, "Shows how much narrower each stage would probably make the range, and which quick checks would tell most.",
		[]string{"underpaint worth car.json --rates my-rates.json --for customer"}},
	{[]form{{"why CAR.json --rates RATES.json [--json]", "show what makes its range wide and what could make it worse"}},
		"Shows which causes have what share in the width of the range, and which parts could make the job much dearer.",
		[]string{"underpaint why car.json --rates my-rates.json"}},
	{[]form{{"plan CAR.json --rates RATES.json [--json]", "show the job in stages, and what it costs to stop at each"}},
		"Shows the job stage by stage: money, hours, weeks, and what the customer pays to stop there.",
		[]string{"underpaint plan surveyed.json --rates my-rates.json"}},
	{[]form{{"decide CAR.json --rates RATES.json [--json]", "show what other standards and scopes would change"}},
		"Shows what the job would cost at another standard or scope, worked out on the same simulated cars.",
		[]string{"underpaint decide car.json --rates my-rates.json"}},
	{[]form{{"ways CAR.json --rates RATES.json [--json]", "show how each damaged part can be repaired"}},
		"Shows the ways to repair each part that the survey found damaged, with hours and prices, and what each way opens up.",
		[]string{"underpaint ways surveyed.json --rates my-rates.json"}},
	{[]form{
		{"score JOBS.json --rates RATES.json [--json]", "show how the ranges of finished jobs came out, and what they teach"},
		{"score FOLDER --rates RATES.json [--json]", "the same for all files of past jobs in a folder together"},
		{"[--write NEW.json]", "save the rates with everything learnt, and the record"},
	}, "Scores finished jobs at the rates of their day, names what stands out, and offers what the jobs teach about your hours and about rust.",
		[]string{"underpaint score 2025.json --rates my-rates.json --write new-rates.json"}},
	{[]form{
		{"check FILE... [--json]", "say whether Underpaint can use these files"},
	}, "Says for each file of rates, of a car or of past jobs whether it can be used; where not, what was found at which entry and what was expected. For rates it prints the check code and points out what is allowed but usually a slip. With --json it prints one JSON document about all files.",
		[]string{"underpaint check my-rates.json", "underpaint check --json cars/*.json"}},
	{[]form{{"sample rates|rates-uk|past-jobs", "print an invented shop's rates or past jobs"}},
		"Prints a complete file of an invented shop to start from: rates in dollars, rates in pounds, or two dozen past jobs.",
		[]string{"underpaint sample rates > my-rates.json"}},
	{[]form{{"schema rates|car|past-jobs", "print the JSON Schema of such a file"}},
		"Prints the JSON Schema of a kind of file, for editors that complete names and mark slips. Only \"underpaint check\" says whether a file can be used: a schema does not know everything that a file must be.",
		[]string{"underpaint schema rates > rates.schema.json"}},
	{[]form{
		{"site --rates RATES.json --out DIR", "make the folder of pages for a web host"},
		{"[--engine FILE]", "use this engine instead of building one"},
		{"[--address URL]", "the folder's web address, for the picture beside a shared link"},
	}, "Makes the folder of pages with your rates, ready to copy to a web host. A released program has the engine in it; one built from the sources builds the engine with Go, or takes it from --engine.",
		[]string{"underpaint site --rates my-rates.json --out my-site --address https://your.site/range/"}},
	{[]form{
		{"serve [--rates RATES.json]", "show the pages on this computer only, until you press Ctrl-C"},
		{"[--listen ADDRESS]", "at this address instead of 127.0.0.1:8080"},
	}, "Makes the folder of pages in a temporary place and serves it to a browser on this computer. Without --rates it is an invented shop.",
		[]string{"underpaint serve --rates my-rates.json"}},
	{[]form{{"completion bash|zsh|fish|powershell", "print what your shell needs to complete commands"}},
		"Prints a script that makes your shell complete commands, flags and file names when you press Tab.",
		[]string{"bash:       source <(underpaint completion bash)", "zsh:        underpaint completion zsh > \"${fpath[1]}/_underpaint\"",
			"fish:       underpaint completion fish > ~/.config/fish/completions/underpaint.fish", "PowerShell: underpaint completion powershell | Out-String | Invoke-Expression"}},
	{[]form{{"man", "print the manual page"}},
		"Prints the manual page with all commands, for man.", []string{"underpaint man > underpaint.1", "underpaint man | man -l -"}},
	{[]form{{"help [COMMAND]", "show this list, or all there is to say about one command"}},
		"Shows the list of commands, or all there is to say about one of them.", []string{"underpaint help range"}},
}
