// Package measure reads benchmark output, takes medians and sets our figures
// beside the floors that were measured in the same run.
package measure

import (
	"bufio"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"text/tabwriter"
)

// Benchmarks reads the output of "go test -bench" and returns the nanoseconds
// an operation of every line, by benchmark name without the processor count.
// The error is that of the reader.
func Benchmarks(output io.Reader) (map[string][]float64, error) {
	found := map[string][]float64{}
	lines := bufio.NewScanner(output)
	for lines.Scan() {
		name, value, ok := benchmarkLine(lines.Text())
		if ok {
			found[name] = append(found[name], value)
		}
	}
	return found, lines.Err()
}

// benchmarkLine reads "BenchmarkNewPlan-2   1000   123456 ns/op   12 B/op".
func benchmarkLine(line string) (name string, nanoseconds float64, ok bool) {
	fields := strings.Fields(line)
	if len(fields) < 4 || !strings.HasPrefix(fields[0], "Benchmark") {
		return "", 0, false
	}
	at := slices.Index(fields, "ns/op")
	if at < 2 {
		return "", 0, false
	}
	value, err := strconv.ParseFloat(fields[at-1], 64)
	if err != nil {
		return "", 0, false
	}
	return withoutCount(fields[0]), value, true
}

// withoutCount takes the number of processors off the name of a benchmark.
func withoutCount(name string) string {
	i := strings.LastIndex(name, "-")
	if i < 0 {
		return name
	}
	if _, err := strconv.Atoi(name[i+1:]); err != nil {
		return name
	}
	return name[:i]
}

// Median returns the middle value, the mean of the two middle ones for an even
// number, and false for none.
func Median(values []float64) (float64, bool) {
	if len(values) == 0 {
		return 0, false
	}
	sorted := slices.Sorted(slices.Values(values))
	middle := len(sorted) / 2
	if len(sorted)%2 == 1 {
		return sorted[middle], true
	}
	return (sorted[middle-1] + sorted[middle]) / 2, true
}

// Row is one line of the table: our median beside that of the floor.
type Row struct {
	Name      string  // "start to first frame"
	FloorName string  // "an empty window"
	Ours      float64 // in Unit
	Floor     float64 // in Unit
	Unit      string  // "ms", "MB"
	MaxRatio  float64 // goal as a ratio to the floor; 0 for none
	Max       float64 // goal as a figure in Unit; 0 for none
}

// Ratio returns ours over the floor.
func (r Row) Ratio() float64 { return r.Ours / r.Floor }

// Goal says what the design asks for.
func (r Row) Goal() string {
	switch {
	case r.MaxRatio > 0:
		return fmt.Sprintf("under %.2fx", r.MaxRatio)
	case r.Max > 0:
		return fmt.Sprintf("under %s %s", figure(r.Max), r.Unit)
	}
	return "none set"
}

// Verdict says whether the goal is met.
func (r Row) Verdict() string {
	switch {
	case r.MaxRatio == 0 && r.Max == 0:
		return ""
	case r.MaxRatio > 0 && r.Ratio() >= r.MaxRatio, r.Max > 0 && r.Ours >= r.Max:
		return "missed"
	}
	return "met"
}

// Table writes the rows as a table with the floors named.
func Table(out io.Writer, rows []Row) error {
	table := tabwriter.NewWriter(out, 0, 0, 2, ' ', 0)
	fmt.Fprintln(table, "what\tours\tfloor\tratio\tgoal\t\tthe floor is")
	for _, r := range rows {
		fmt.Fprintf(table, "%s\t%s %s\t%s %s\t%.2fx\t%s\t%s\t%s\n",
			r.Name, figure(r.Ours), r.Unit, figure(r.Floor), r.Unit, r.Ratio(), r.Goal(), r.Verdict(), r.FloorName)
	}
	return table.Flush()
}

// figure prints a value with three digits that count.
func figure(value float64) string {
	switch {
	case value >= 100:
		return strconv.FormatFloat(value, 'f', 0, 64)
	case value >= 10:
		return strconv.FormatFloat(value, 'f', 1, 64)
	case value >= 1:
		return strconv.FormatFloat(value, 'f', 2, 64)
	}
	return strconv.FormatFloat(value, 'g', 3, 64)
}
