package main

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"handbreadth/cmd/dev/gotest"
	"handbreadth/cmd/dev/layers"
)

func TestHelpNamesEveryCommand(t *testing.T) {
	var out strings.Builder
	if err := dispatch(context.Background(), &out, []string{"help"}); err != nil {
		t.Fatal(err)
	}
	for _, word := range []string{"start", "test", "verify", "bench", "audit", "pictures", "package", "help"} {
		if !strings.Contains(out.String(), "  "+word+" ") {
			t.Errorf("help does not name %q", word)
		}
	}
	if err := dispatch(context.Background(), &out, []string{"dance"}); err == nil || !strings.Contains(err.Error(), "dance") {
		t.Errorf("an unknown command: %v, want an error that names it", err)
	}
}

func TestReplaced(t *testing.T) {
	got := replaced([]string{"A=1", "LC_ALL=C", "B=2", "LANGUAGE=de"}, "A=3", "LC_ALL", "LANGUAGE", "C=")
	if want := []string{"B=2", "A=3", "C="}; !slices.Equal(got, want) {
		t.Errorf("replaced = %q, want %q", got, want)
	}
}

func TestPackagesAreTestedInOneStep(t *testing.T) {
	all := []string{
		"handbreadth/cmd/dev", "handbreadth/cmd/dev/layers", "handbreadth/cmd/handbreadth",
		"handbreadth/domain", "handbreadth/store", "handbreadth/store/sqlite", "handbreadth/storeroom", "handbreadth/ui/task",
	}
	unit := without(all, append([]string{programPackages, rulesPackage}, concurrent...))
	if want := []string{"handbreadth/cmd/dev", "handbreadth/domain", "handbreadth/storeroom"}; !slices.Equal(unit, want) {
		t.Errorf("unit tests of %q, want %q", unit, want)
	}
	race := only(all, concurrent)
	if want := []string{"handbreadth/store", "handbreadth/store/sqlite", "handbreadth/ui/task"}; !slices.Equal(race, want) {
		t.Errorf("race tests of %q, want %q", race, want)
	}
}

func TestVerdict(t *testing.T) {
	report := gotest.NewReport(&strings.Builder{}, &strings.Builder{})
	if verdict(report, nil) == nil {
		t.Error("a run without a test passes")
	}
	report.Passed = 3
	if err := verdict(report, nil); err != nil {
		t.Errorf("three passed: %v", err)
	}
	if verdict(report, context.Canceled) == nil {
		t.Error("the go command failed and the step passes")
	}
	report.Failed = 1
	if err := verdict(report, nil); err == nil || !strings.Contains(err.Error(), "1 failed") {
		t.Errorf("one failed: %v, want words with the count", err)
	}
}

func TestFuzzTargets(t *testing.T) {
	root := t.TempDir()
	write := func(name, source string) {
		t.Helper()
		path := filepath.Join(root, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(source), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	body := "package p\nimport \"testing\"\nfunc FuzzParse(f *testing.F) {}\nfunc FuzzyHelper(s string) {}\nfunc TestX(t *testing.T) {}\n"
	write("domain/unit/parse_test.go", body)
	write("domain/unit/parse.go", body)
	write("domain/unit/testdata/old_test.go", body)
	got, err := fuzzTargets(root)
	if want := []fuzzTarget{{"./domain/unit", "FuzzParse"}}; err != nil || !slices.Equal(got, want) {
		t.Errorf("targets %v, %v; want %v", got, err, want)
	}
}

func TestKeepInputs(t *testing.T) {
	cache := t.TempDir()
	t.Chdir(t.TempDir())
	from := filepath.Join(cache, "fuzz", "handbreadth", "domain", "unit", "FuzzParse")
	if err := os.MkdirAll(from, 0o755); err != nil {
		t.Fatal(err)
	}
	for i := range 3 * keptInputs {
		put(t, filepath.Join(from, fmt.Sprintf("%03d", i)), strings.Repeat("x", 100+i))
	}
	put(t, filepath.Join(from, "long"), strings.Repeat("x", keptLength+1))
	target := fuzzTarget{"./domain/unit", "FuzzParse"}
	if kept, err := keepInputs(cache, target); err != nil || kept != keptInputs {
		t.Errorf("%d kept, %v", kept, err)
	}
	names, err := filepath.Glob(filepath.Join("domain", "unit", "testdata", "fuzz", "FuzzParse", "*"))
	if err != nil || len(names) != keptInputs || filepath.Base(names[0]) != "000" || filepath.Base(names[keptInputs-1]) != "042" {
		t.Errorf("files %v, %v", names, err)
	}
	if kept, err := keepInputs(cache, fuzzTarget{"./domain/unit", "FuzzOther"}); err != nil || kept != 0 {
		t.Errorf("of a target that was never fuzzed: %d, %v", kept, err)
	}
}

func TestWithProperties(t *testing.T) {
	file := func(test bool) []layers.File {
		return []layers.File{{Test: test, Imports: []string{"testing", "pgregory.net/rapid"}}}
	}
	got := withProperties([]layers.Package{{Folder: "domain", Files: file(true)}, {Folder: "store", Files: file(false)}, {Folder: "ui"}})
	if want := []string{"./domain"}; !slices.Equal(got, want) {
		t.Errorf("folders %q, want %q", got, want)
	}
}

func TestWithoutNetwork(t *testing.T) {
	for output, want := range map[string]bool{
		"govulncheck: fetching vulnerabilities: Get \"x\": dial tcp: no such host\n": true,
		"go: golang.org/x/vuln@v1: Get \"x\": dial tcp: lookup x: no such host\n":    true,
		"Vulnerability #1: dial tcp hangs in net\nexit status 3\n":                   false,
		"No vulnerabilities found.\n":                                                false,
	} {
		if got := withoutNetwork(output); got != want {
			t.Errorf("%q: %v, want %v", output, got, want)
		}
	}
}

func TestRowsOf(t *testing.T) {
	list := []comparison{{name: "plan", ours: "BenchmarkA", floor: "BenchmarkB", maxMilliseconds: 5}}
	rows, err := rowsOf(list, map[string][]float64{"BenchmarkA": {2e6, 9e6, 4e6}, "BenchmarkB": {2e6}})
	if err != nil || len(rows) != 1 || rows[0].Ratio() != 2 || rows[0].Verdict() != "met" {
		t.Errorf("rows %+v, %v; want a ratio of 2 that meets its goal", rows, err)
	}
	if _, err := rowsOf(list, map[string][]float64{"BenchmarkA": {1}}); err == nil {
		t.Error("no error although the floor did not run")
	}
}

func TestInTurns(t *testing.T) {
	var order []string
	ours, floor, err := inTurns(2, "a", "b", func(program string) (float64, error) {
		order = append(order, program)
		return float64(len(order)), nil
	})
	if want := []string{"a", "b", "a", "b", "a", "b"}; err != nil || !slices.Equal(order, want) {
		t.Errorf("order %q, %v; want %q", order, err, want)
	}
	if ours != 4 || floor != 5 { // the medians of 3, 5 and 4, 6: the first turn is left out
		t.Errorf("medians %v and %v, want 4 and 5", ours, floor)
	}
}

func TestManifestVersion(t *testing.T) {
	got, err := manifestVersion("[Details]\nName = \"Handbreadth\"\nVersion = \"0.1.0\"\n")
	if err != nil || got != "0.1.0" {
		t.Errorf("version %q, %v; want 0.1.0", got, err)
	}
	if _, err := manifestVersion("[Details]\n"); err == nil {
		t.Error("no error for a file without a version")
	}
}

func TestTellStamp(t *testing.T) {
	name := filepath.Join(t.TempDir(), "program")
	for content, warns := range map[string]bool{"...0.1.0+4cf6f7b...": false, "...": true} {
		put(t, name, content)
		var out strings.Builder
		if err := tellStamp(&out, name, "0.1.0+4cf6f7b"); err != nil {
			t.Fatal(err)
		}
		if got := strings.Contains(out.String(), "main.version"); got != warns || !strings.Contains(out.String(), name) {
			t.Errorf("%q: said %q, want a warning: %v", content, out.String(), warns)
		}
	}
}
