package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"time"

	"github.com/spf13/cobra"

	"underpaint/engine/message"
	"underpaint/engine/pastjobs"
	"underpaint/engine/rates"
	"underpaint/engine/session"
	"underpaint/engine/wording"
)

func (c command) scoreCommand() *cobra.Command {
	cmd := c.named("score")
	rates, asJSON := ratesFlag(cmd, "the shop's current rates"), jsonFlag(cmd)
	write := cmd.Flags().String("write", "", "save the rates with every learnt figure and the record in this `FILE`")
	completeFiles(cmd, "write", "json")
	takesFiles(cmd)
	cmd.RunE = does(func(args []string) int {
		if len(args) != 1 || *rates == "" {
			return c.misused("score", "score needs one file or one folder of past jobs, and --rates RATES.json")
		}
		return c.score(args[0], *rates, *write, *asJSON)
	})
	return cmd
}

// score reports how the ranges of finished jobs came out and what the jobs teach.
func (c command) score(name, ratesName, write string, asJSON bool) int {
	ratesText, err := c.read(ratesName)
	if err != nil {
		return c.fail(1, "%v", err)
	}
	r, err := rates.Decode(ratesText)
	if err != nil {
		return c.fail(1, "%s: %v", ratesName, err)
	}
	jobs, err := c.pastJobs(name)
	if err != nil {
		return c.fail(1, "%v", err)
	}
	all, again, err := c.scoreAll(jobs)
	if err != nil {
		return c.fail(1, "%v", err)
	}
	today := time.Now().Format(time.DateOnly)
	v, err := session.NewJobScores(jobs, all, again, r, today)
	if err != nil {
		return c.fail(1, "%v", err)
	}
	shop, err := session.NewShop(r)
	if err != nil {
		return c.fail(1, "%v", err)
	}
	text, err := wording.For(shop)
	if err != nil {
		return c.fail(1, "%v", err)
	}
	if asJSON {
		return c.print(append(message.Encode(0, message.NewScores(text, v)), '\n'))
	}
	if code := c.print(scoreReport(text, &v)); code != 0 || write == "" {
		return code
	}
	return c.writeLearnt(write, ratesText, &v)
}

// pastJobs reads one file, or every file of a folder, as one record.
func (c command) pastJobs(name string) (*pastjobs.Jobs, error) {
	names := []string{name}
	if info, err := os.Stat(name); err == nil && info.IsDir() {
		if names, err = filepath.Glob(filepath.Join(name, "*.json")); err != nil || len(names) == 0 {
			return nil, fmt.Errorf("%s: found no files of past jobs here; their names end in .json", name)
		}
		slices.Sort(names)
	}
	var all []*pastjobs.Jobs
	for _, n := range names {
		text, err := c.readUpTo(n, pastjobs.MostBytes)
		if err != nil {
			return nil, err
		}
		j, faults := pastjobs.Decode(text)
		if len(faults) > 0 {
			return nil, fmt.Errorf("%s: %w", n, errors.Join(faults...))
		}
		all = append(all, j)
	}
	return pastjobs.Together(all)
}

// scoreAll scores every job on all cores, then works each job out again with what the
// others teach.
func (c command) scoreAll(j *pastjobs.Jobs) ([]pastjobs.Score, []pastjobs.Again, error) {
	n := len(j.Jobs)
	all, again, errs := make([]pastjobs.Score, n), make([]pastjobs.Again, n), make([]error, n)
	for k, done := range spread(n, func(k int) { all[k] = j.Score(k) }) {
		<-done
		c.progress(k+1, 2*n)
	}
	for k, done := range spread(n, func(k int) { again[k], errs[k] = j.Again(k, all) }) {
		<-done
		c.progress(n+k+1, 2*n)
	}
	return all, again, errors.Join(errs...)
}

func (c command) writeLearnt(name string, ratesText []byte, v *session.JobScores) int {
	out, adopted, err := rates.Adopt(ratesText, v.Offered, v.Summary.Past(v.Jobs.CheckCode()))
	if err != nil {
		return c.fail(1, "%v", err)
	}
	if err := os.WriteFile(name, out, 0o644); err != nil {
		return c.fail(1, "%v", err)
	}
	fmt.Fprintf(c.out, "\nWritten to %s: rates check code %s.\n", name, adopted.CheckCode())
	return 0
}
