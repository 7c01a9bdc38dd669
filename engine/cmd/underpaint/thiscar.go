package main

import (
	"bytes"
	"flag"

	"underpaint/engine/carfile"
	"underpaint/engine/message"
)

// answers work a question out until nothing is to come, and give the engine's own
// reply, or write a report in words when there is something to write to.
var answers = map[string]func(q question, out *bytes.Buffer) (message.Reply, error){
	"stages": question.stages, "worth": question.worth, "ways": question.ways, "why": question.why, "plan": question.plan, "decide": question.decide}

// thisCar answers the commands about one car.
func (c command) thisCar(name string, args []string) int {
	flags := flag.NewFlagSet(name, flag.ContinueOnError)
	rates := flags.String("rates", "", "the shop's rates file")
	asJSON := flags.Bool("json", false, "print the engine's own reply")
	whom := flags.String("for", "shop", "looks for a customer or for the shop")
	operands, ok := c.parse(args, flags)
	if !ok {
		return 2
	}
	if len(operands) != 1 || *rates == "" || *whom != "shop" && *whom != "customer" {
		return c.fail(2, "one car file and --rates RATES.json are needed\n%s", usage)
	}
	ratesText, err := c.read(*rates)
	if err != nil {
		return c.fail(1, "%v", err)
	}
	text, err := c.read(operands[0])
	if err != nil {
		return c.fail(1, "%v", err)
	}
	q := question{whom: *whom}
	if q.s, q.t, err = openSession(ratesText); err != nil {
		return c.fail(1, "%s: %v", *rates, err)
	}
	if q.car, err = carfile.Decode(text); err != nil {
		return c.fail(1, "%s: %v", operands[0], err)
	}
	var report bytes.Buffer
	reply, err := answers[name](q, &report)
	if err != nil {
		return c.fail(1, "%s: %v", operands[0], err)
	}
	if *asJSON {
		return c.print(append(message.Encode(0, reply), '\n'))
	}
	return c.print(report.Bytes())
}
