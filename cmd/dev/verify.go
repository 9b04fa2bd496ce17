package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"time"

	"handbreadth/cmd/dev/layers"
	"handbreadth/cmd/dev/steps"
)

// effort is how long the long checks take.
type effort struct {
	cases int           // random cases a property
	kills int           // kills of the store
	fuzz  time.Duration // each fuzz target
}

var (
	thorough = effort{cases: 20000, kills: 1000, fuzz: 10 * time.Minute}
	taste    = effort{cases: 1000, kills: 25, fuzz: 10 * time.Second}
)

// verify runs the checks that take too long for every change.
func verify(ctx context.Context, arguments []string) error {
	flags := flag.NewFlagSet("verify", flag.ContinueOnError)
	short := flags.Bool("short", false, "a taste: few cases and kills, ten seconds a fuzz target")
	keep := flags.Bool("keep", false, "keep the inputs that reached new code in the testdata folders")
	fuzzTime := flags.Duration("fuzztime", 0, "time for each fuzz target (default 10m, with -short 10s)")
	if err := flags.Parse(arguments); err != nil {
		return errTold
	}
	how := thorough
	if *short {
		how = taste
	}
	if *fuzzTime > 0 {
		how.fuzz = *fuzzTime
	}
	environment, err := apart()
	if err != nil {
		return err
	}
	c := &checks{environment: replaced(environment, "CGO_ENABLED=0")}
	list, err := c.longSteps(how)
	if err != nil {
		return err
	}
	if *keep {
		list = append(list, steps.Step{Name: "keeping inputs of the fuzzing", Run: c.counted(keepAllInputs)})
	}
	return finish(ctx, os.Stdout, c, list)
}

func keepAllInputs(_ context.Context, log io.Writer) error {
	targets, err := fuzzTargets(".")
	if err != nil {
		return err
	}
	cache, err := goEnv("GOCACHE")
	if err != nil {
		return err
	}
	for _, target := range targets {
		kept, err := keepInputs(cache, target)
		if err != nil {
			return err
		}
		fmt.Fprintf(log, "%s in %s: %d inputs\n", target.name, target.folder, kept)
	}
	return nil
}

// longSteps lists the long checks that the module has.
func (c *checks) longSteps(how effort) ([]steps.Step, error) {
	packages, err := layers.Load(".")
	if err != nil {
		return nil, err
	}
	targets, err := fuzzTargets(".")
	if err != nil {
		return nil, err
	}
	list := []steps.Step{
		{Name: fmt.Sprintf("properties, %d cases each", how.cases), Run: c.properties(withProperties(packages), how.cases)},
		{Name: fmt.Sprintf("the store killed %d times, as many bits flipped", how.kills), Run: c.kills(how.kills, killTests+"|Flipped")},
	}
	for _, target := range targets {
		list = append(list, steps.Step{
			Name: fmt.Sprintf("fuzzing %s for %s", target.name, how.fuzz),
			Run:  c.counted(c.fuzz(target, how.fuzz)),
		})
	}
	return list, nil
}

// withProperties returns the folders whose tests draw random cases.
func withProperties(packages []layers.Package) []string {
	var folders []string
	for _, p := range packages {
		if drawsCases(p) {
			folders = append(folders, "./"+p.Folder)
		}
	}
	return folders
}

func drawsCases(p layers.Package) bool {
	for _, file := range p.Files {
		for _, path := range file.Imports {
			if file.Test && path == "pgregory.net/rapid" {
				return true
			}
		}
	}
	return false
}

func (c *checks) properties(folders []string, cases int) func(context.Context, io.Writer) error {
	return func(ctx context.Context, log io.Writer) error {
		if len(folders) == 0 {
			return errors.New("no test draws random cases")
		}
		arguments := append([]string{"-count=1", "-timeout=0"}, folders...)
		return c.goTest(ctx, log, c.environment, append(arguments, "-args", fmt.Sprintf("-rapid.checks=%d", cases))...)
	}
}

// How often the store is killed: the variable that its tests read, the usual
// number, and the tests that kill.
const (
	killsVariable = "HANDBREADTH_KILLS"
	flipsVariable = "HANDBREADTH_FLIPS"
	usualKills    = 50
	killTests     = "Killed|NothingAcknowledged"
)

// kills runs the tests of the store that match a pattern, killing it so often.
func (c *checks) kills(count int, tests string) func(context.Context, io.Writer) error {
	return func(ctx context.Context, log io.Writer) error {
		environment := replaced(c.environment, "CGO_ENABLED=0",
			fmt.Sprintf("%s=%d", killsVariable, count), fmt.Sprintf("%s=%d", flipsVariable, count))
		return c.goTest(ctx, log, environment, "-count=1", "-timeout=0", "-run", tests, "./store/...")
	}
}
