package pastjobs

import (
	"crypto/sha256"
	"errors"
	"io"
	"slices"
	"strconv"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/money"
	"underpaint/engine/rates"
	"underpaint/engine/strict"
)

// Format is the first member of every file of past jobs.
const Format = "underpaint past jobs 1"

// Bounds of the file (assumption: a shop finishes a few dozen bodies a year).
const (
	MostBytes = 32 << 20
	MostJobs  = 5000
	mostRates = 20
	mostHours = 20_000
)

// Jobs are finished jobs with the rates at which they were priced.
type Jobs struct {
	Currency money.Currency
	Invented bool
	Rates    []*rates.Rates // each with a check code of its own
	Jobs     []Job

	code string
}

// Job is one finished job. All amounts are in minor units, with or without tax as the
// range was.
type Job struct {
	Name     string       // the shop's own word for it; not a person's name
	Finished string       // YYYY-MM-DD
	Rates    string       // check code of the rates of its day; "" = not known
	Car      *carfile.Car // nil = only the figures are known
	Said     *Said        // nil = the range is worked out again
	CameTo   money.Minor
	Hours    [car.Trades]float64 // worked in total, the strip and survey included; 0 = not entered
	More     [Causes]money.Minor
}

// Said is the range that the customer was first given.
type Said struct{ Low, High money.Minor }

// Cause is a reason why a job cost more than was first thought.
type Cause int

// The causes. Changes that were agreed are not the range's fault, so they are taken off
// before a job is scored.
const (
	RustFound Cause = iota
	MoreHours
	DearerParts
	ChangesAgreed
	Causes // the number of causes
)

// CauseIDs are the ids of the causes in files.
var CauseIDs = [Causes]string{"rust_found", "hours", "parts", "changes_agreed"}

// The members of each group of the file. The JSON Schema of the site lists the same
// names, and a test compares the two.
var (
	fileKeys = []string{"format", "note", "invented", "currency", "rates", "jobs"}
	jobKeys  = []string{"name", "finished", "rates", "car", "said", "came_to", "hours", "more_because"}
	saidKeys = []string{"low", "high"}
)

// CheckCode identifies these jobs: the first ten hexadecimal digits of the SHA-256 of
// their canonical form, in two groups of five.
func (j *Jobs) CheckCode() string { return j.code }

// RatesOf returns the rates of a job's day, nil when they are not in the file.
func (j *Jobs) RatesOf(job *Job) *rates.Rates {
	for _, r := range j.Rates {
		if r.CheckCode() == job.Rates {
			return r
		}
	}
	return nil
}

// Scored is the final price of a job within the scope of its range, without agreed
// changes, in minor units.
func (job *Job) Scored() money.Minor { return job.CameTo - job.More[ChangesAgreed] }

// Decode reads a file of past jobs. If there are faults, it returns no jobs but the
// first fault of each job, so that all can be fixed at once.
func Decode(data []byte) (*Jobs, []error) {
	head, parts, err := strict.SplitList(data, "jobs", MostBytes, MostJobs)
	if err != nil {
		return nil, []error{err}
	}
	j := &Jobs{}
	j.readHead(head)
	if head.Err() != nil {
		return nil, []error{head.Err()}
	}
	sum := sha256.New()
	sum.Write(strict.Canonical(head))
	var faults []error
	names := map[string]int{}
	for n, part := range parts {
		path := "jobs[" + strconv.Itoa(n) + "]"
		job, err := j.readPart(part, sum)
		if first, twice := names[job.Name]; err == nil && twice {
			err = &strict.Error{Path: "name", Found: job.Name, Expected: "a name of its own: jobs[" + strconv.Itoa(first) + "] has it already", Line: 1}
		}
		if err != nil {
			faults = append(faults, within(err, path, part.Line))
			continue
		}
		names[job.Name] = n
		j.Jobs = append(j.Jobs, job)
	}
	if len(faults) > 0 {
		return nil, faults
	}
	j.code = strict.CheckCode(sum)
	return j, nil
}

func within(err error, path string, line int) error {
	var at *strict.Error
	if errors.As(err, &at) {
		return at.Within(path, line)
	}
	return err
}

func (j *Jobs) readHead(f strict.Field) {
	f.Get("format").Format(Format)
	f.Keys(fileKeys...)
	if f.Has("note") {
		f.Get("note").Text(300)
	}
	j.Invented = f.Has("invented") && f.Get("invented").Bool()
	code := f.Get("currency").Text(3)
	c, err := money.CurrencyOf(code)
	if err != nil {
		f.Get("currency").Complain("the three capital letters of a currency, such as \"USD\"")
	}
	j.Currency = c
	items := f.Get("rates").Items()
	if len(items) > mostRates {
		f.Get("rates").Complain("at most " + strconv.Itoa(mostRates) + " rates files")
	}
	for n, item := range items {
		j.readRates(item, n)
	}
	f.Get("jobs").Items()
}

func (j *Jobs) readRates(f strict.Field, n int) {
	if f.Err() != nil {
		return
	}
	r, err := rates.Decode(strict.Canonical(f))
	var at *strict.Error
	switch {
	case errors.As(err, &at):
		f.ComplainFound(at.Found, at.Expected+" (at "+at.Path+" of these rates)")
	case r.Currency.Code != j.Currency.Code:
		f.ComplainFound("rates in "+r.Currency.Code, "rates in the currency of the file, "+j.Currency.Code)
	case slices.ContainsFunc(j.Rates, func(o *rates.Rates) bool { return o.CheckCode() == r.CheckCode() }):
		f.ComplainFound("rates that are listed above already", "each rates file once")
	default:
		j.Rates = append(j.Rates, r)
	}
}

// readPart reads one job and adds it to the check code.
func (j *Jobs) readPart(part strict.Part, sum io.Writer) (job Job, err error) {
	f, err := part.Parse()
	if err != nil {
		return job, err
	}
	j.readJob(f, &job)
	if f.Err() != nil {
		return job, f.Err()
	}
	sum.Write(strict.Canonical(f))
	return job, err
}

func (j *Jobs) readJob(f strict.Field, job *Job) {
	f.Keys(jobKeys...)
	if job.Name = f.Get("name").Text(60); job.Name == "" {
		f.Get("name").Complain("the shop's own word for the job, such as \"2024-17\"; not a person's name")
	}
	job.Finished = f.Get("finished").Date()
	if f.Has("rates") {
		job.Rates = f.Get("rates").Text(20)
	}
	if f.Has("car") && !f.Get("car").IsNull() {
		job.Car = carfile.Read(f.Get("car"))
	}
	if f.Has("said") {
		said := f.Get("said")
		said.Keys(saidKeys...)
		job.Said = &Said{j.amount(said.Get("low"), 1), j.amount(said.Get("high"), 1)}
		if job.Said.High <= job.Said.Low {
			said.Get("high").Complain("an amount above low")
		}
	}
	job.CameTo = j.amount(f.Get("came_to"), 1)
	job.Hours = carfile.ReadHours(f, "hours", mostHours)
	if f.Has("more_because") {
		more := f.Get("more_because")
		more.Keys(CauseIDs[:]...)
		for k, id := range CauseIDs {
			if more.Has(id) {
				job.More[k] = j.amount(more.Get(id), 0)
			}
		}
	}
	if f.Err() == nil && job.Scored() <= 0 {
		f.Get("more_because").Get("changes_agreed").Complain("less than the whole that the job came to")
	}
}

func (j *Jobs) amount(f strict.Field, least money.Minor) money.Minor {
	literal := f.Decimal()
	d, err := money.Parse(literal)
	if literal == "" {
		return 0
	}
	m, exact := j.Currency.Round(d)
	if err != nil || !exact || m < least || m > 1e14 {
		f.Complain("an amount with at most " + strconv.Itoa(j.Currency.Digits) + " decimals, 0 or more")
		return 0
	}
	return m
}
