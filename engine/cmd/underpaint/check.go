package main

import (
	"errors"
	"fmt"
	"time"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/pastjobs"
	"underpaint/engine/pastjobs/invented"
	"underpaint/engine/rates"
	"underpaint/engine/strict"
)

// check says for each file what it is and whether it can be used.
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

// checkText recognizes a file by its format member.
func checkText(text []byte) (what string, err error) {
	f, err := strict.Parse(text)
	if err != nil {
		return "", err
	}
	format := f.Get("format").OneOf(rates.Format, carfile.Format, pastjobs.Format)
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
	if format == pastjobs.Format {
		return checkJobs(text)
	}
	decoded, err := carfile.Decode(text)
	if err != nil {
		return "", err
	}
	if wrong := decoded.Check(); len(wrong) > 0 {
		return "", errors.Join(wrong...)
	}
	return "a car file, ready to use", nil
}

func checkJobs(text []byte) (what string, err error) {
	j, faults := pastjobs.Decode(text)
	if len(faults) > 0 {
		return "", errors.Join(faults...)
	}
	return fmt.Sprintf("%d past jobs, check code %s", len(j.Jobs), j.CheckCode()), nil
}

// sampleJobs is the number of finished jobs of the invented shop.
const sampleJobs = 24

// samplePastJobs makes the finished jobs of the invented shop. Its floors are worse and
// its metalwork is slower than the starting figures say, so that there is something to
// learn.
func samplePastJobs() ([]byte, error) {
	r, err := rates.Decode(rates.Sample())
	if err != nil {
		return nil, err
	}
	truth := rates.NothingLearnt()
	truth.Rust = []rates.OwnRust{{Group: "floor", OwnFigure: rates.OwnFigure{Factor: 1.4, Jobs: 1}}}
	truth.Hours[car.Metal].Factor = 1.15
	j, err := invented.Shop{Rates: r, Truth: truth, Seed: 2, Year: 2024}.Jobs(sampleJobs)
	if err != nil {
		return nil, err
	}
	middle := make([]float64, len(j.Jobs))
	for n := range middle {
		middle[n] = j.Score(n).Half
	}
	invented.Explained(j, middle)
	return append(j.Text([][]byte{rates.Sample()}), '\n'), nil
}

func (c command) sample(args []string) int {
	if len(args) == 1 && args[0] == "rates" {
		return c.print(rates.Sample())
	}
	if len(args) == 1 && args[0] == "rates-uk" {
		return c.print(rates.SampleUK())
	}
	if len(args) == 1 && args[0] == "past-jobs" {
		text, err := samplePastJobs()
		if err != nil {
			return c.fail(1, "%v", err)
		}
		return c.print(text)
	}
	return c.fail(2, "sample needs rates, rates-uk or past-jobs\n%s", usage)
}
