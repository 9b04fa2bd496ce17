package main

import (
	"bytes"
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"runtime"

	"handbreadth/cmd/dev/measure"
	"handbreadth/cmd/dev/system"
)

// repeats is how often each benchmark runs; the median counts.
const repeats = "5"

// comparison is one of our benchmarks and its floor.
type comparison struct {
	name, ours       string // ours and floor are benchmark names
	floorName, floor string
	maxRatio         float64
	maxMilliseconds  float64
}

// comparisons lists the benchmarks with their goals from the design.
var comparisons = []comparison{
	{
		name: "whole plan anew", ours: "BenchmarkNewPlan",
		floorName: "decoding a consult file with encoding/json", floor: "BenchmarkDecodeConsult",
		maxMilliseconds: 5,
	},
	{
		name: "handout", ours: "BenchmarkHandout",
		floorName: "the bare PDF library writing the same pages", floor: "BenchmarkBareLibrary",
		maxRatio: 1.5,
	},
}

// bench measures everything and prints one table.
func bench(ctx context.Context, arguments []string) error {
	flags := flag.NewFlagSet("bench", flag.ContinueOnError)
	runs := flags.Int("runs", 9, "how often each window opens")
	if err := flags.Parse(arguments); err != nil {
		return errTold
	}
	if err := prepareBench(ctx); err != nil {
		return err
	}
	environment, err := apart()
	if err != nil {
		return err
	}
	fmt.Println("Running the benchmarks of the plan and the papers.")
	rows, err := benchmarkRows(ctx, os.Stdout, environment)
	if err != nil {
		return err
	}
	windows, err := windowRows(ctx, os.Stdout, environment, *runs)
	if err != nil {
		return err
	}
	fmt.Printf("\nMedians, %s on %s, %d processors:\n\n", runtime.GOOS, runtime.GOARCH, runtime.NumCPU())
	return measure.Table(os.Stdout, append(rows, windows...))
}

func prepareBench(ctx context.Context) error {
	if runtime.GOOS == "linux" {
		return prepare(ctx, os.Stdout, system.VirtualDisplay)
	}
	return prepare(ctx, os.Stdout)
}

// benchmarkRows runs our benchmarks and the floors in one go.
func benchmarkRows(ctx context.Context, out io.Writer, environment []string) ([]measure.Row, error) {
	pattern := "^("
	for i, c := range comparisons {
		if i > 0 {
			pattern += "|"
		}
		pattern += c.ours + "|" + c.floor
	}
	var output bytes.Buffer
	err := run(ctx, io.MultiWriter(out, &output), replaced(environment, "CGO_ENABLED=0"), "go", "test", "-run", "^$",
		"-bench", pattern+")$", "-count", repeats, "-p", "1", "./domain", "./reports", "./cmd/dev/measure")
	if err != nil {
		return nil, err
	}
	values, err := measure.Benchmarks(&output)
	if err != nil {
		return nil, err
	}
	return rowsOf(comparisons, values)
}

// rowsOf sets the medians of our benchmarks beside those of the floors.
func rowsOf(list []comparison, values map[string][]float64) ([]measure.Row, error) {
	var rows []measure.Row
	for _, c := range list {
		ours, haveOurs := measure.Median(values[c.ours])
		floor, haveFloor := measure.Median(values[c.floor])
		if !haveOurs || !haveFloor {
			return nil, errors.New("the benchmarks " + c.ours + " and " + c.floor + " must both run; one of them did not")
		}
		const perMillisecond = 1e6 // nanoseconds
		rows = append(rows, measure.Row{
			Name: c.name, FloorName: c.floorName,
			Ours: ours / perMillisecond, Floor: floor / perMillisecond, Unit: "ms",
			MaxRatio: c.maxRatio, Max: c.maxMilliseconds,
		})
	}
	return rows, nil
}
