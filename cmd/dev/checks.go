package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"handbreadth/cmd/dev/system"
)

// Packages that are tested in a step of their own, or in more than one.
const (
	programPackages = "handbreadth/cmd/handbreadth"
	rulesPackage    = "handbreadth/cmd/dev/layers"
)

// concurrent lists the packages, with those below them, in which goroutines
// share data: they are tested under the race detector and only there.
var concurrent = []string{"handbreadth/store", "handbreadth/ui/task"}

// journeyTag marks the journey; taggedCode is all code that no plain build sees:
// the journey and the probe of the program that it drives.
const (
	journeyTag = "journey"
	taggedCode = "journey,probe"
)

// floor is the window that start-up is measured against. It lies in testdata,
// which "./..." leaves out.
const floor = "./testdata/emptywindow"

func (c *checks) packages(ctx context.Context, log io.Writer) error {
	err := prepare(ctx, log, system.VirtualDisplay, system.Driving, system.Papers, system.Outside)
	if err == nil {
		c.program = c.buildBehind(ctx)
	}
	return err
}

// formatting fails when a file is not as gofumpt writes it.
func (c *checks) formatting(ctx context.Context, log io.Writer) error {
	var found bytes.Buffer
	command := prepared(ctx, c.environment, "go", "tool", "gofumpt", "-l", ".", "testdata")
	command.Stdout, command.Stderr = io.MultiWriter(&found, log), log
	if err := command.Run(); err != nil {
		return fmt.Errorf("gofumpt: %w", err)
	}
	if found.Len() > 0 {
		return errors.New("the files above are not formatted; run: go tool gofumpt -w . testdata")
	}
	return nil
}

func (c *checks) vet(ctx context.Context, log io.Writer) error {
	return errors.Join(
		run(ctx, log, c.environment, "go", "vet", "./...", floor),
		run(ctx, log, c.environment, "go", "vet", "-tags", taggedCode, "./cmd/handbreadth/..."),
	)
}

func (c *checks) staticcheck(ctx context.Context, log io.Writer) error {
	return errors.Join(
		run(ctx, log, c.environment, "go", "tool", "staticcheck", "./...", floor),
		run(ctx, log, c.environment, "go", "tool", "staticcheck", "-tags", taggedCode, "./cmd/handbreadth/..."),
	)
}

// insecure is a program with faults that gosec must find.
const insecure = "./testdata/insecure"

// security looks for habits that let a program be attacked, in all that works
// on files, keys and other programs. The screens are left out: reading the
// window library for each of them would take many minutes.
//
// G304 (a path from a variable) is left out, because in a program for a desk
// every path is chosen by the person at it. The release is the last one without
// a service client among its dependencies; with the present compiler its rules
// on the syntax run and those on data flow do not.
func (c *checks) security(ctx context.Context, log io.Writer) error {
	gosec := func(out io.Writer, folders ...string) error {
		arguments := append([]string{"tool", "gosec", "-quiet", "-severity", "medium", "-exclude", "G304"}, folders...)
		return run(ctx, out, replaced(c.environment, "CGO_ENABLED=1"), "go", arguments...)
	}
	var found bytes.Buffer
	if err := gosec(&found, insecure); err == nil || !strings.Contains(found.String(), "G306") {
		return errors.Join(fmt.Errorf("gosec does not find the fault in %s:\n%s", insecure, found.String()), err)
	}
	return gosec(log, "./assets/...", "./cmd/...", "./domain/...", "./reports/...", "./store/...")
}

// importRules always runs anew: the rules look at files of other packages.
func (c *checks) importRules(ctx context.Context, log io.Writer) error {
	return c.goTest(ctx, log, c.environment, "-count=1", rulesPackage)
}

// unit tests everything that needs neither a display nor the race detector,
// without cgo, as machines without a compiler would.
func (c *checks) unit(ctx context.Context, log io.Writer) error {
	all, err := c.list(ctx, "./...")
	if err != nil {
		return err
	}
	elsewhere := append([]string{programPackages, rulesPackage}, concurrent...)
	chosen := without(all, elsewhere)
	return c.goTest(ctx, log, replaced(c.environment, "CGO_ENABLED=0"), chosen...)
}

// race tests the packages with goroutines under the race detector. What kills
// the store runs in a step of its own: the detector sees nothing in a program
// that is killed.
func (c *checks) race(ctx context.Context, log io.Writer) error {
	all, err := c.list(ctx, "./...")
	if err != nil {
		return err
	}
	chosen := only(all, concurrent)
	if len(chosen) == 0 {
		return errors.New("none of " + strings.Join(concurrent, ", ") + " is there")
	}
	environment := replaced(c.environment, "CGO_ENABLED=1", killsVariable+"=5")
	return c.goTest(ctx, log, environment, append([]string{"-race", "-timeout=20m"}, chosen...)...)
}

func (c *checks) batch(ctx context.Context, log io.Writer) error {
	return run(ctx, log, replaced(c.environment, "CGO_ENABLED=0"), "go", "build", "-o", executable("batch"), "./cmd/batch")
}

// journey drives the real program in a virtual display; the test builds it with
// its probe itself.
func (c *checks) journey(ctx context.Context, log io.Writer) error {
	environment := replaced(c.environment, displayReady, "CGO_ENABLED=1")
	return withDisplay(ctx, log, environment, func(environment []string) error {
		return c.goTest(ctx, log, environment, "-count=1", "-timeout=20m", "-tags", journeyTag, "./cmd/handbreadth/...")
	})
}

// list returns the import paths that a pattern stands for.
func (c *checks) list(ctx context.Context, pattern string) ([]string, error) {
	out, err := prepared(ctx, c.environment, "go", "list", pattern).Output()
	if err != nil {
		return nil, fmt.Errorf("go list %s: %w", pattern, err)
	}
	return strings.Fields(string(out)), nil
}

// without returns the paths that are none of the roots nor below one.
func without(paths, roots []string) []string {
	return slices.DeleteFunc(slices.Clone(paths), func(path string) bool { return belowAny(path, roots) })
}

// only returns the paths that are one of the roots or below one.
func only(paths, roots []string) []string {
	return slices.DeleteFunc(slices.Clone(paths), func(path string) bool { return !belowAny(path, roots) })
}

func belowAny(path string, roots []string) bool {
	return slices.ContainsFunc(roots, func(root string) bool {
		return path == root || strings.HasPrefix(path, root+"/")
	})
}
