package main

import (
	"context"
	"fmt"
	"io"
	"runtime"

	"handbreadth/cmd/dev/measure"
)

// How both programs are asked to show their first frame, and to wait after it.
const (
	benchStart = "-bench-start"
	benchHold  = "-bench-hold"
)

// maxStart is the design's goal for start-up against an empty window.
const maxStart = 1.3

// windowRows builds the program and the empty window and opens them in turns.
func windowRows(ctx context.Context, out io.Writer, environment []string, runs int) ([]measure.Row, error) {
	ours, err := buildProgram(ctx, out, environment)
	if err != nil {
		return nil, err
	}
	empty := executable("emptywindow")
	if err := buildTo(ctx, out, environment, empty, floor); err != nil {
		return nil, err
	}
	fmt.Fprintf(out, "Opening the program and the empty window in turns, %d times.\n", runs)
	if runtime.GOOS != "linux" {
		return measureWindows(ctx, out, environment, ours, empty, runs)
	}
	var rows []measure.Row
	err = withDisplay(ctx, out, environment, func(environment []string) error {
		var err error
		rows, err = measureWindows(ctx, out, environment, ours, empty, runs)
		return err
	})
	return rows, err
}

// measureWindows opens both windows in turns, once unmeasured so that both
// files are in memory, and returns start-up time and resident memory.
func measureWindows(ctx context.Context, out io.Writer, environment []string, ours, empty string, runs int) ([]measure.Row, error) {
	start := measure.Row{
		Name: "start to first frame", FloorName: "an empty window of the same library",
		Unit: "ms", MaxRatio: maxStart,
	}
	var err error
	start.Ours, start.Floor, err = inTurns(runs, ours, empty, func(program string) (float64, error) {
		elapsed, err := measure.Start(ctx, program, environment, benchStart)
		return float64(elapsed.Microseconds()) / 1000, err
	})
	if err != nil {
		return nil, err
	}
	if runtime.GOOS != "linux" {
		fmt.Fprintln(out, "Resident memory is measured on Linux only.")
		return []measure.Row{start}, nil
	}
	memory := measure.Row{Name: "resident memory", FloorName: start.FloorName, Unit: "MB"}
	memory.Ours, memory.Floor, err = inTurns(memoryRuns(runs), ours, empty, func(program string) (float64, error) {
		kilobytes, err := measure.Resident(ctx, program, environment, benchStart, benchHold)
		return float64(kilobytes) / 1024, err
	})
	return []measure.Row{start, memory}, err
}

// memoryRuns is how often memory is read: it varies less than time does.
func memoryRuns(runs int) int { return (runs + 1) / 2 }

// inTurns measures two programs in turns and returns the medians. The first
// turn does not count.
func inTurns(runs int, first, second string, one func(program string) (float64, error)) (a, b float64, err error) {
	var values [2][]float64
	for turn := range runs + 1 {
		for i, program := range []string{first, second} {
			value, err := one(program)
			if err != nil {
				return 0, 0, err
			}
			if turn > 0 {
				values[i] = append(values[i], value)
			}
		}
	}
	a, _ = measure.Median(values[0])
	b, _ = measure.Median(values[1])
	return a, b, nil
}
