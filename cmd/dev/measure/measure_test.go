package measure

import (
	"slices"
	"strings"
	"testing"
)

func TestBenchmarks(t *testing.T) {
	output := `goos: linux
BenchmarkNewPlan-2        	    5000	    210000 ns/op	   12000 B/op	     300 allocs/op
BenchmarkNewPlan-2        	    5000	    190000.5 ns/op
BenchmarkHandout/A4-2     	     100	  35000000 ns/op
BenchmarkOdd              	     100	  7 ns/op
BenchmarkSaid: something else
PASS
`
	got, err := Benchmarks(strings.NewReader(output))
	if err != nil {
		t.Fatal(err)
	}
	want := map[string][]float64{"BenchmarkNewPlan": {210000, 190000.5}, "BenchmarkHandout/A4": {35000000}, "BenchmarkOdd": {7}}
	for name, values := range want {
		if !slices.Equal(got[name], values) {
			t.Errorf("%s: %v, want %v", name, got[name], values)
		}
	}
	if len(got) != len(want) {
		t.Errorf("%d names, want %d: %v", len(got), len(want), got)
	}
}

func TestMedian(t *testing.T) {
	for _, row := range []struct {
		values []float64
		want   float64
		ok     bool
	}{{nil, 0, false}, {[]float64{3}, 3, true}, {[]float64{9, 1, 5}, 5, true}, {[]float64{4, 1, 2, 9}, 3, true}} {
		got, ok := Median(row.values)
		if got != row.want || ok != row.ok {
			t.Errorf("Median(%v) = %v, %v; want %v, %v", row.values, got, ok, row.want, row.ok)
		}
	}
}

func TestRowsAgainstTheirGoals(t *testing.T) {
	for _, row := range []struct {
		row           Row
		goal, verdict string
	}{
		{Row{Ours: 120, Floor: 100, MaxRatio: 1.3}, "under 1.30x", "met"},
		{Row{Ours: 130, Floor: 100, MaxRatio: 1.3}, "under 1.30x", "missed"},
		{Row{Ours: 4.9, Floor: 1, Unit: "ms", Max: 5}, "under 5.00 ms", "met"},
		{Row{Ours: 5, Floor: 1, Unit: "ms", Max: 5}, "under 5.00 ms", "missed"},
		{Row{Ours: 5, Floor: 1}, "none set", ""},
	} {
		if row.row.Goal() != row.goal || row.row.Verdict() != row.verdict {
			t.Errorf("%+v: goal %q, verdict %q; want %q, %q", row.row, row.row.Goal(), row.row.Verdict(), row.goal, row.verdict)
		}
	}
}

func TestTable(t *testing.T) {
	var out strings.Builder
	err := Table(&out, []Row{{Name: "start", FloorName: "an empty window", Ours: 260, Floor: 208, Unit: "ms", MaxRatio: 1.3}})
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(out.String(), "\n")
	want := []string{"start", "260 ms", "208 ms", "1.25x", "under 1.30x", "met", "an empty window"}
	got := strings.Split(strings.Join(strings.Fields(lines[1]), " "), " ")
	if strings.Join(got, " ") != strings.Join(want, " ") {
		t.Errorf("row %q, want %q", got, want)
	}
}

func TestFigure(t *testing.T) {
	for value, want := range map[float64]string{1234.5: "1234", 35.26: "35.3", 5: "5.00", 0.01234: "0.0123"} {
		if got := figure(value); got != want {
			t.Errorf("figure(%v) = %q, want %q", value, got, want)
		}
	}
}

func TestAwaitLine(t *testing.T) {
	if err := AwaitLine(strings.NewReader("hello\nfirst-frame\nmore\n"), FirstFrame); err != nil {
		t.Error(err)
	}
	if err := AwaitLine(strings.NewReader("hello\nno first-frame here\n"), FirstFrame); err == nil {
		t.Error("no error although the line never came")
	}
}

func TestResidentLine(t *testing.T) {
	got, err := ResidentLine("Name:\tx\nVmPeak:\t 9 kB\nVmRSS:\t  134020 kB\nThreads:\t3\n")
	if err != nil || got != 134020 {
		t.Errorf("ResidentLine = %d, %v; want 134020", got, err)
	}
	if _, err := ResidentLine("Name:\tx\n"); err == nil {
		t.Error("no error for a status without memory")
	}
}
