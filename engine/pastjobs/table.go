package pastjobs

import (
	"strconv"
	"strings"

	"underpaint/engine/car"
	"underpaint/engine/columns"
	"underpaint/engine/money"
	"underpaint/engine/strict"
)

// Headings are the columns of a table of past jobs, for spreadsheets. A job from a
// table has figures but no car, so it counts against the range that was given, and
// teaches nothing.
var Headings = []string{"job", "finished", "said low", "said high", "came to",
	"rust found", "more hours", "dearer parts", "changes agreed"}

func tableColumns(decimal columns.Decimal, c money.Currency) []columns.Column {
	amount := func(name string, optional bool) columns.Column {
		return columns.Column{Name: name, Kind: columns.Number, Low: 0, High: 1e12, Marks: []string{c.Symbol, c.Code}, Decimal: decimal, Optional: optional, Blank: optional}
	}
	return []columns.Column{{Name: Headings[0], Also: []string{"name"}}, {Name: Headings[1], Also: []string{"date"}},
		amount(Headings[2], false), amount(Headings[3], false), amount(Headings[4], false),
		amount(Headings[5], true), amount(Headings[6], true), amount(Headings[7], true), amount(Headings[8], true)}
}

// ReadTable reads jobs from a table. The table lists the rows that it refuses; the
// error is for a text that is not such a table.
func ReadTable(text string, decimal columns.Decimal, c money.Currency) (jobs []Job, table columns.Table, err error) {
	table, err = columns.Read(text, tableColumns(decimal, c))
	if err != nil {
		return nil, table, err
	}
	names := map[string]bool{}
	for _, row := range table.Rows {
		job, refusal := readRow(row, c)
		if refusal == nil && names[job.Name] {
			refusal = refuseCell(row, 0, "a name of its own: a row above has it already")
		}
		if refusal != nil {
			table.Refuse(refusal)
			continue
		}
		names[job.Name] = true
		jobs = append(jobs, job)
	}
	return jobs, table, nil
}

func refuseCell(row columns.Row, cell int, expected string) *columns.Refusal {
	return &columns.Refusal{Row: row.Number, Line: row.Line, Heading: Headings[cell], Found: row.Cells[cell].Text, Expected: expected}
}

func readRow(row columns.Row, c money.Currency) (job Job, refusal *columns.Refusal) {
	job.Name = strings.TrimSpace(row.Cells[0].Text)
	if job.Name == "" || len(job.Name) > 60 {
		return job, refuseCell(row, 0, "the shop's own word for the job, at most 60 characters")
	}
	if job.Finished = strings.TrimSpace(row.Cells[1].Text); !strict.IsDate(job.Finished) {
		return job, refuseCell(row, 1, "a date such as 2026-06-20")
	}
	var amounts [7]money.Minor
	for k := range amounts {
		cell := row.Cells[2+k]
		if cell.Blank {
			continue
		}
		d, err := money.Parse(cell.Text)
		m, exact := c.Round(d)
		if err != nil || !exact {
			return job, refuseCell(row, 2+k, "an amount without parts of the smallest coin")
		}
		amounts[k] = m
	}
	job.Said, job.CameTo = &Said{amounts[0], amounts[1]}, amounts[2]
	copy(job.More[:], amounts[3:])
	switch {
	case job.Said.Low <= 0:
		return job, refuseCell(row, 2, "an amount above 0")
	case job.Said.High <= job.Said.Low:
		return job, refuseCell(row, 3, "an amount above the low end")
	case job.Scored() <= 0:
		return job, refuseCell(row, 4, "more than the changes agreed")
	}
	return job, nil
}

// WriteTable writes the figures of jobs as a table. The ends are blank for a job whose
// range was worked out again, because the car gives them.
func (j *Jobs) WriteTable(separator byte, decimal columns.Decimal) (string, error) {
	var trades []string
	for _, id := range car.TradeIDs {
		trades = append(trades, id+" hours")
	}
	w, err := columns.NewWriter(separator, append(append([]string{}, Headings...), trades...)...)
	if err != nil {
		return "", err
	}
	for n := range j.Jobs {
		job := &j.Jobs[n]
		cells := []string{job.Name, job.Finished, "", "", columns.Figure(j.Currency.Plain(job.CameTo), decimal)}
		if job.Said != nil {
			cells[2], cells[3] = columns.Figure(j.Currency.Plain(job.Said.Low), decimal), columns.Figure(j.Currency.Plain(job.Said.High), decimal)
		}
		for _, m := range job.More {
			cell := ""
			if m > 0 {
				cell = columns.Figure(j.Currency.Plain(m), decimal)
			}
			cells = append(cells, cell)
		}
		for _, h := range job.Hours {
			cell := ""
			if h > 0 {
				cell = columns.Figure(strconv.FormatFloat(h, 'f', -1, 64), decimal)
			}
			cells = append(cells, cell)
		}
		if err := w.Row(cells...); err != nil {
			return "", err
		}
	}
	return w.Text(), nil
}
