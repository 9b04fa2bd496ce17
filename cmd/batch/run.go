package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"io/fs"

	"handbreadth/domain"
	"handbreadth/domain/consult"
	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
	"handbreadth/reports"
)

// The exit statuses.
const (
	statusIssued   = 0
	statusBadInput = 2
	statusReferred = 3
	statusHeld     = 4
)

// paper makes a PDF of a plan: the handout, or the note to a clinician.
type paper func(domain.Plan, reports.Options) ([]byte, error)

// desk is what the command works with.
type desk struct {
	stdout, stderr io.Writer
	disk           files
	handout        paper
	referral       paper
}

// output is one file to be written.
type output struct {
	flag string // that named it
	path string
	data []byte
}

// files reads and writes: the disk, or what stands for it in a test.
type files interface {
	// Read returns a whole file.
	Read(path string) ([]byte, error)
	// Same reports whether two paths lead to one file.
	Same(a, b string) bool
	// Write writes all outputs or none. The error is a [unit.Problem].
	Write(outputs []output) error
}

// run does what the arguments ask for and returns the exit status.
func (d desk) run(args []string) int {
	s, err := parseFlags(args)
	if errors.Is(err, flag.ErrHelp) {
		_, _ = fmt.Fprint(d.stdout, usage())
		return statusIssued
	}
	var ps unit.Problems
	ps.Keep(err)
	in := d.intake(s.consult, &ps)
	d.checkPaths(s, &ps)
	if len(ps) > 0 {
		return d.refuse(ps)
	}
	plan, err := domain.NewPlan(in)
	if err != nil {
		return d.refuse(err)
	}
	if plan.Gate.Held() {
		d.tell(plan.Gate.Holds, "held", func(f derive.Finding) string {
			return " To go on, give the reason in hold_reasons." + f.Code
		})
		return statusHeld
	}
	return d.hand(plan, s)
}

// intake reads the consult file; what is wrong with it goes to the problems.
func (d desk) intake(path string, ps *unit.Problems) domain.Intake {
	if path == "" {
		return domain.Intake{}
	}
	data, err := d.disk.Read(path)
	if err != nil {
		ps.Add("-"+flagConsult, path, "a file that can be read ("+cause(err)+")")
		return domain.Intake{}
	}
	in, err := consult.Parse(data)
	ps.Keep(err)
	return in
}

// checkPaths refuses outputs that would overwrite the input or each other.
func (d desk) checkPaths(s settings, ps *unit.Problems) {
	apart := func(name, path, other string) {
		if path != "" && other != "" && d.disk.Same(path, other) {
			ps.Add("-"+name, path, "a file of its own, not one that another flag names")
		}
	}
	apart(flagPlan, s.plan, s.consult)
	apart(flagHandout, s.handout, s.consult)
	apart(flagHandout, s.handout, s.plan)
}

// hand makes and writes the files of a plan that is issued or referred.
func (d desk) hand(plan domain.Plan, s settings) int {
	outputs, err := d.make(plan, s)
	if err == nil {
		err = d.disk.Write(outputs)
	}
	if err != nil {
		return d.refuse(err)
	}
	for _, o := range outputs {
		_, _ = fmt.Fprintf(d.stdout, "written: %s\n", o.path)
	}
	if !plan.Gate.Referred() {
		return statusIssued
	}
	d.tell(plan.Gate.Refers, "referred", func(derive.Finding) string { return "" })
	return statusReferred
}

func (d desk) make(plan domain.Plan, s settings) ([]output, error) {
	var outputs []output
	if s.plan != "" {
		data, err := consult.Encode(plan)
		if err != nil {
			return nil, err
		}
		outputs = append(outputs, output{flagPlan, s.plan, data})
	}
	if s.handout != "" {
		print := d.handout
		if plan.Gate.Referred() {
			print = d.referral
		}
		data, err := print(plan, s.options(plan.Intake.Client))
		if err != nil {
			return nil, err
		}
		outputs = append(outputs, output{flagHandout, s.handout, data})
	}
	return outputs, nil
}

// refuse tells an error, one line a problem.
func (d desk) refuse(err error) int {
	_, _ = fmt.Fprintln(d.stderr, err)
	return statusBadInput
}

// tell writes one line for each finding that stops the plan.
func (d desk) tell(found []derive.Finding, how string, then func(derive.Finding) string) {
	for _, f := range found {
		_, _ = fmt.Fprintf(d.stderr, "%s: %s: %s%s\n", f.Code, how, f.Text, then(f))
	}
}

// cause returns what a failed file operation says, without the path that the
// problem names already.
func cause(err error) string {
	var path *fs.PathError
	if errors.As(err, &path) {
		return path.Err.Error()
	}
	return err.Error()
}
