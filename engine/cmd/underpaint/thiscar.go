package main

import (
	"bytes"
	"flag"

	"underpaint/engine/carfile"
	"underpaint/engine/message"
)

// answers maps each command about one car to the function that answers it. The function
// works until the answer is settled, writes a report in words to out and returns the
// engine's own reply.
var answers = map[string]func(q question, out *bytes.Buffer) (message.Reply, error){
	"stages": question.stages, "worth": question.worth, "ways": question.ways, "why": question.why, "plan": question.plan, "decide": question.decide}

// thisCar answers the commands about one car.
func (c command) thisCar(name string, args []string) int {
	flags := flag.NewFlagSet(name, flag.ContinueOnError)
	rates := flags.String("rates", "", "the shop's rates file")
	asJSON := flags.Bool("json", false, "print the engine's own reply")
	whom := flags.String("for", "shop", "checks for the customer or for the shop")
	operands, ok := c.parse(args, flags)
	if !ok {
		return 2
	}
	if len(operands) != 1 || *rates == "" || *whom != "shop" && *whom != "customer" {
		return c.fail(2, "%s needs one car file, --rates RATES.json and, if given, --for shop or --for customer\n%s", name, usage)
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
