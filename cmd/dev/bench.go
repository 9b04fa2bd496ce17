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
	{
		name: "save of a sealed draft", ours: "BenchmarkSaveDraftSealed",
		floorName: "the same bytes in plain SQLite, as durable", floor: "BenchmarkPlainSave",
	},
	{
		name: "save of a draft without sealing", ours: "BenchmarkSaveDraft",
		floorName: "the same bytes in plain SQLite, as durable", floor: "BenchmarkPlainSave",
	},
	{
		name: "unlock", ours: "BenchmarkUnlockFile",
		floorName: "bare scrypt of the same effort", floor: "BenchmarkBareScrypt",
	},
	{
		name: "backup of 500 clients, verified", ours: "BenchmarkBackUp",
		floorName: "copying the file", floor: "BenchmarkCopyFile",
	},
	{
		name: "restore of 500 clients, checked", ours: "BenchmarkRestore",
		floorName: "copying the file", floor: "BenchmarkCopyFile",
	},
}

// figureTests are the tests of the store whose figures belong beside the table:
// kills survived, bytes searched.
const figureTests = killTests + "|NoTrace|LeavesNoPlainText"

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
	fmt.Println("Running the benchmarks of the plan, the papers and the store.")
	rows, err := benchmarkRows(ctx, os.Stdout, environment)
	if err != nil {
		return err
	}
	c := &checks{environment: replaced(environment, "CGO_ENABLED=0")}
	fmt.Println("Killing the store, and searching what it writes.")
	if err := c.goTest(ctx, io.Discard, c.environment, "-count=1", "-run", figureTests, "./store/..."); err != nil {
		return err
	}
	windows, err := windowRows(ctx, os.Stdout, environment, *runs)
	if err != nil {
		return err
	}
	fmt.Printf("\nMedians, %s on %s, %d processors:\n\n", runtime.GOOS, runtime.GOARCH, runtime.NumCPU())
	if err := measure.Table(os.Stdout, append(rows, windows...)); err != nil {
		return err
	}
	fmt.Println()
	for _, figure := range c.figures {
		fmt.Println(figure)
	}
	return nil
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
		"-bench", pattern+")$", "-count", repeats, "-p", "1", "./domain", "./reports", "./cmd/dev/measure", "./store")
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
