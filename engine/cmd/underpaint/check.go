package main

import (
	"errors"
	"fmt"
	"time"

	"underpaint/engine/carfile"
	"underpaint/engine/rates"
	"underpaint/engine/strict"
)

// check says of each file what it is and whether it can be used.
func (c command) check(names []string) int {
	if len(names) == 0 {
		return c.fail(2, "check needs one file or more\n%s", usage)
	}
	code := 0
	for _, name := range names {
		text, err := c.read(name)
		if err != nil {
			code = c.fail(1, "%v", err)
			continue
		}
		what, err := checkText(text)
		if err != nil {
			code = c.fail(1, "%s: %v", name, err)
			continue
		}
		fmt.Fprintf(c.out, "%s: %s\n", name, what)
	}
	return code
}

// checkText finds the format by the file's format line.
func checkText(text []byte) (what string, err error) {
	f, err := strict.Parse(text)
	if err != nil {
		return "", err
	}
	format := f.Get("format").OneOf(rates.Format, carfile.Format)
	if f.Err() != nil {
		return "", f.Err()
	}
	if format == rates.Format {
		r, err := rates.Decode(text)
		if err != nil {
			return "", err
		}
		what = "rates of " + r.RatesOf + ", check code " + r.CheckCode()
		for _, w := range r.Warnings(time.Now().Format(time.DateOnly)) {
			what += "\n  warning: " + w.Text
		}
		return what, nil
	}
	car, err := carfile.Decode(text)
	if err != nil {
		return "", err
	}
	if wrong := car.Check(); len(wrong) > 0 {
		return "", errors.Join(wrong...)
	}
	return "a car file that can be used", nil
}

func (c command) sample(args []string) int {
	if len(args) == 1 && args[0] == "rates" {
		return c.print(rates.Sample())
	}
	if len(args) == 1 && args[0] == "rates-uk" {
		return c.print(rates.SampleUK())
	}
	return c.fail(2, "sample needs rates or rates-uk\n%s", usage)
}
