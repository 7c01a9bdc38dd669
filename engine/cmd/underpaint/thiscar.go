package main

import (
	"bytes"

	"github.com/spf13/cobra"

	"underpaint/engine/carfile"
	"underpaint/engine/message"
)

// answers maps each command about one car to the function that answers it. The function
// works until the answer is settled, writes a report in words to out and returns the
// engine's own reply.
var answers = map[string]func(q question, out *bytes.Buffer) (message.Reply, error){
	"stages": question.stages, "worth": question.worth, "ways": question.ways, "why": question.why, "plan": question.plan, "decide": question.decide}

// carCommands are the commands about one car, in the order of the overview.
var carCommands = []string{"stages", "worth", "why", "plan", "decide", "ways"}

func (c command) carCommand(of string) *cobra.Command {
	cmd := c.named(of)
	rates, asJSON := ratesFlag(cmd, "the shop's rates"), jsonFlag(cmd)
	whom := cmd.Flags().String("for", "shop", "checks for the `customer` or for the shop")
	must(cmd.RegisterFlagCompletionFunc("for", cobra.FixedCompletions([]string{"shop", "customer"}, cobra.ShellCompDirectiveNoFileComp)))
	if of != "worth" { // the others take it and have no use for it
		must(cmd.Flags().MarkHidden("for"))
	}
	takesFiles(cmd)
	cmd.RunE = does(func(args []string) int {
		if len(args) != 1 || *rates == "" || *whom != "shop" && *whom != "customer" {
			return c.misused(of, "%s needs one car file, --rates RATES.json and, if given, --for shop or --for customer", of)
		}
		return c.thisCar(of, args[0], *rates, *whom, *asJSON)
	})
	return cmd
}

// thisCar answers one of the commands about one car.
func (c command) thisCar(of, name, rates, whom string, asJSON bool) int {
	ratesText, err := c.read(rates)
	if err != nil {
		return c.fail(1, "%v", err)
	}
	text, err := c.read(name)
	if err != nil {
		return c.fail(1, "%v", err)
	}
	q := question{whom: whom}
	if q.s, q.t, err = openSession(ratesText); err != nil {
		return c.fail(1, "%s: %v", rates, err)
	}
	if q.car, err = carfile.Decode(text); err != nil {
		return c.fail(1, "%s: %v", name, err)
	}
	var report bytes.Buffer
	reply, err := answers[of](q, &report)
	if err != nil {
		return c.fail(1, "%s: %v", name, err)
	}
	if asJSON {
		return c.print(append(message.Encode(0, reply), '\n'))
	}
	return c.print(report.Bytes())
}
