package main

import (
	"encoding/json"
	"fmt"
	"io"
)

func whyInWords(out io.Writer, reply []byte) error {
	var r struct {
		Shares []struct {
			Name, Why string
			Share     string `json:"share_text"`
		}
		Rest       string `json:"rest_text"`
		SharesNote string `json:"shares_note"`
		Worse      []struct {
			Name   string
			Likely string `json:"likely_line"`
			Cost   string `json:"cost_line"`
			Find   string `json:"find_line"`
		}
		WorseNote string `json:"worse_note"`
	}
	if err := json.Unmarshal(reply, &r); err != nil {
		return err
	}
	fmt.Fprintln(out, "What makes it wide:")
	for _, s := range r.Shares {
		fmt.Fprintf(out, "  %5s  %s. %s\n", s.Share, s.Name, s.Why)
	}
	fmt.Fprintf(out, "  %s\n%s\n\nWhat could make it worse:\n", r.Rest, r.SharesNote)
	for n, p := range r.Worse {
		fmt.Fprintf(out, "%d. %s\n   %s\n   %s\n   %s\n", n+1, p.Name, p.Likely, p.Cost, p.Find)
	}
	fmt.Fprintln(out, r.WorseNote)
	return nil
}

func planInWords(out io.Writer, reply []byte) error {
	var r struct {
		Stages []struct {
			Name   string
			Money  string `json:"money_text"`
			Hours  string `json:"hours_text"`
			Weeks  string `json:"weeks_text"`
			ByThen string `json:"by_then_text"`
			Stop   string `json:"stop_line"`
			Actual string `json:"actual_line"`
		}
		SoFar string `json:"so_far_line"`
		Note  string
	}
	if err := json.Unmarshal(reply, &r); err != nil {
		return err
	}
	for n, s := range r.Stages {
		fmt.Fprintf(out, "%d. %s: %s, %s, %s\n   %s %s\n", n+1, s.Name, s.Money, s.Hours, s.Weeks, s.ByThen, s.Stop)
		if s.Actual != "" {
			fmt.Fprintf(out, "   %s\n", s.Actual)
		}
	}
	if r.SoFar != "" {
		fmt.Fprintln(out, r.SoFar)
	}
	fmt.Fprintln(out, r.Note)
	return nil
}

func decideInWords(out io.Writer, reply []byte) error {
	var r struct {
		Options []struct {
			Name, Note string
			Difference string `json:"difference_text"`
			Saving     string `json:"saving_text"`
		}
		Note string
	}
	if err := json.Unmarshal(reply, &r); err != nil {
		return err
	}
	for _, o := range r.Options {
		fmt.Fprintf(out, "%s: %s; %s.\n", o.Name, o.Difference, o.Saving)
		if o.Note != "" {
			fmt.Fprintf(out, "  %s\n", o.Note)
		}
	}
	fmt.Fprintln(out, r.Note)
	return nil
}
