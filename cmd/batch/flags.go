package main

import (
	"bytes"
	"flag"
	"fmt"
	"io"
	"strings"

	"handbreadth/domain"
	"handbreadth/domain/unit"
	"handbreadth/reports"
)

// The flags.
const (
	flagConsult  = "consult"
	flagPlan     = "plan"
	flagHandout  = "handout"
	flagPaper    = "paper"
	flagUnits    = "units"
	flagPractice = "practice"
	flagLifeSize = "life-size"
)

var (
	papers  = map[string]reports.Paper{"a4": reports.A4, "letter": reports.Letter}
	systems = map[string]unit.System{"metric": unit.Metric, "us": unit.USCustomary, "uk": unit.UKCustomary}
)

// settings is what the flags ask for.
type settings struct {
	consult, plan, handout string
	paper, units, practice string
	lifeSize               bool
}

func flagsOf(s *settings) *flag.FlagSet {
	set := flag.NewFlagSet("batch", flag.ContinueOnError)
	set.SetOutput(io.Discard)
	set.StringVar(&s.consult, flagConsult, "", "the consult `file` to read (required)")
	set.StringVar(&s.plan, flagPlan, "", "the plan `file` to write, JSON")
	set.StringVar(&s.handout, flagHandout, "", "the handout `file` to write, PDF; the referral note where one takes its place")
	set.StringVar(&s.paper, flagPaper, "a4", "the `size` of the paper: a4 or letter")
	set.StringVar(&s.units, flagUnits, "metric", "the `system` of units on paper: metric, us or uk")
	set.StringVar(&s.practice, flagPractice, "", "the `name` of the practice on paper")
	set.BoolVar(&s.lifeSize, flagLifeSize, false, "add the client's own hand at life size to the handout")
	return set
}

// parseFlags reads the arguments. The error is [unit.Problems], or
// [flag.ErrHelp] where help was asked for.
func parseFlags(args []string) (settings, error) {
	var s settings
	set := flagsOf(&s)
	if err := set.Parse(args); err != nil {
		if err == flag.ErrHelp {
			return settings{}, err
		}
		return settings{}, unit.Problems{{
			Field: "arguments", Given: strings.Join(args, " "), Accepted: flagNames(set) + " (" + err.Error() + ")",
		}}
	}
	var ps unit.Problems
	if set.NArg() > 0 {
		ps.Add("arguments", strings.Join(set.Args(), " "), flagNames(set)+", each with its value")
	}
	if s.consult == "" {
		ps.Add("-"+flagConsult, "", "the consult file to read")
	}
	set.Visit(func(f *flag.Flag) {
		if f.Value.String() == "" && (f.Name == flagPlan || f.Name == flagHandout) {
			ps.Add("-"+f.Name, "", "the file to write, or leave the flag out")
		}
	})
	if _, known := papers[s.paper]; !known {
		ps.Add("-"+flagPaper, s.paper, "a4 or letter")
	}
	if _, known := systems[s.units]; !known {
		ps.Add("-"+flagUnits, s.units, "metric, us or uk")
	}
	return s, ps.Err()
}

func flagNames(set *flag.FlagSet) string {
	var names []string
	set.VisitAll(func(f *flag.Flag) { names = append(names, "-"+f.Name) })
	return "the flags " + strings.Join(names, ", ")
}

func usage() string {
	var out bytes.Buffer
	fmt.Fprintln(&out, "batch turns a consult file into a plan file and a paper for the client.")
	set := flagsOf(new(settings))
	set.SetOutput(&out)
	set.PrintDefaults()
	fmt.Fprintln(&out, "The README lists every key of both files; testdata/consult has examples.")
	fmt.Fprintln(&out, "Exit status: 0 issued, 2 something given cannot be used, 3 referred, 4 held.")
	return out.String()
}

// options says how the papers look. A client is addressed by the first word of
// the name.
func (s settings) options(c domain.Client) reports.Options {
	first := ""
	if words := strings.Fields(c.Name); len(words) > 0 {
		first = words[0]
	}
	pages := reports.UsualPages()
	if s.lifeSize {
		pages = append(pages, reports.PageLifeSize)
	}
	return reports.Options{
		Pages:           pages,
		Paper:           papers[s.paper],
		Style:           unit.Style{System: systems[s.units]},
		Brand:           reports.Brand{Practice: s.practice},
		ClientFirstName: first,
	}
}
