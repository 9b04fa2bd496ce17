package layers

import (
	"slices"
	"strings"
	"testing"
)

// one wraps a single source file as the whole module.
func one(t *testing.T, name, source string) []Package {
	t.Helper()
	file, err := Parse(name, []byte(source))
	if err != nil {
		t.Fatal(err)
	}
	folder := ""
	if i := strings.LastIndex(name, "/"); i >= 0 {
		folder = name[:i]
	}
	return []Package{{Folder: folder, Files: []File{file}}}
}

// Each row is a file that breaks exactly one rule.
func TestViolationsAreFound(t *testing.T) {
	for _, row := range []struct{ name, file, imported, says string }{
		{"domain to Fyne", "domain/plan.go", "fyne.io/fyne/v2", "the domain imports the standard library"},
		{"domain to the store", "domain/plan.go", "handbreadth/store", "domain does not import store"},
		{"domain upwards", "domain/energy/resting.go", "handbreadth/domain/hand", "downwards"},
		{"domain sideways", "domain/energy/resting.go", "handbreadth/domain/body", "downwards"},
		{"domain to its own root", "domain/menu/menu.go", "handbreadth/domain", "downwards"},
		{"root to consult", "domain/plan.go", "handbreadth/domain/consult", "downwards"},
		{"domain to files", "domain/food/table.go", "os", "no files"},
		{"domain to processes", "domain/food/table.go", "os/exec", "no files"},
		{"domain to the network", "domain/food/table.go", "net/http", "no files"},
		{"domain to SQL", "domain/food/table.go", "database/sql", "no files"},
		{"rapid outside tests", "domain/unit/parse.go", "pgregory.net/rapid", "the domain imports"},
		{"domain test to the store", "domain/plan_test.go", "handbreadth/store", "domain does not import store"},
		{"domain test to SQL", "domain/plan_test.go", "database/sql", "no database"},
		{"domain test to others", "domain/plan_test.go", "github.com/stretchr/testify", "the domain imports"},
		{"store to reports", "store/file.go", "handbreadth/reports", "store does not import reports"},
		{"reports to the store", "reports/handout.go", "handbreadth/store", "reports does not import store"},
		{"reports to ui", "reports/handout.go", "handbreadth/ui/theme", "reports does not import a leaf"},
		{"reports to Fyne", "reports/handout.go", "fyne.io/fyne/v2/theme", "without a window"},
		{"store test to ui", "store/file_test.go", "handbreadth/ui", "store does not import the shell"},
		{"screen to screen", "ui/intake/screen.go", "handbreadth/ui/targets", "a screen does not import a screen"},
		{"screen to the shell", "ui/intake/screen.go", "handbreadth/ui", "a screen does not import the shell"},
		{"screen to the store", "ui/intake/screen.go", "handbreadth/store", "a screen does not import store"},
		{"screen test to reports", "ui/handout/screen_test.go", "handbreadth/reports", "a screen does not import reports"},
		{"leaf to a screen", "ui/widgets/card.go", "handbreadth/ui/intake", "a leaf of ui does not import a screen"},
		{"leaf to the shell", "ui/theme/theme.go", "handbreadth/ui", "a leaf of ui does not import the shell"},
		{"program to a screen", "cmd/handbreadth/run.go", "handbreadth/ui/intake", "cmd/handbreadth does not import a screen"},
		{"screen to the window", "ui/intake/screen.go", "fyne.io/fyne/v2/app", "only cmd/handbreadth"},
		{"shell test to the window", "ui/shell_test.go", "fyne.io/fyne/v2/app", "only cmd/handbreadth"},
		{"batch to ui", "cmd/batch/main.go", "handbreadth/ui", "cmd/batch does not import the shell"},
		{"dev to others", "cmd/dev/main.go", "golang.org/x/mod", "standard library only"},
		{"dev to the domain", "cmd/dev/bench.go", "handbreadth/domain", "cmd/dev does not import domain"},
		{"to a folder without a place", "store/file.go", "handbreadth/helpers", "no place"},
	} {
		t.Run(row.name, func(t *testing.T) {
			packages := one(t, row.file, "package p\n\nimport _ \""+row.imported+"\"\n")
			found := Check(module, packages)
			if len(found) != 1 || !strings.Contains(found[0].String(), row.says) {
				t.Fatalf("found %q, want one violation that says %q", found, row.says)
			}
		})
	}
}

func TestAllowedImportsPass(t *testing.T) {
	for _, row := range []struct{ file, imported string }{
		{"domain/unit/unit.go", "math"},
		{"domain/energy/resting.go", "handbreadth/domain/derive"},
		{"domain/hand/allot.go", "gonum.org/v1/gonum/optimize"},
		{"domain/unit/parse_test.go", "pgregory.net/rapid"},
		{"domain/energy/published_test.go", "os"},
		{"domain/consult/parse.go", "handbreadth/domain"},
		{"domain/energy/internal/tables/t.go", "handbreadth/domain/energy"},
		{"store/file.go", "database/sql"},
		{"store/migrate/up.go", "handbreadth/store"},
		{"reports/handout.go", "handbreadth/assets"},
		{"ui/intake/screen.go", "handbreadth/ui/widgets"},
		{"ui/chart/fan.go", "handbreadth/ui/theme"},
		{"ui/shell.go", "handbreadth/ui/intake"},
		{"cmd/handbreadth/main.go", "fyne.io/fyne/v2/app"},
		{"cmd/handbreadth/run.go", "handbreadth/store"},
		{"cmd/batch/main.go", "handbreadth/reports"},
		{"cmd/dev/main.go", "os/exec"},
	} {
		packages := one(t, row.file, "package p\n\nimport _ \""+row.imported+"\"\n")
		if found := Check(module, packages); len(found) != 0 {
			t.Errorf("%s importing %s: %q, want nothing", row.file, row.imported, found)
		}
	}
}

func TestFolderWithoutAPlaceIsFound(t *testing.T) {
	for _, name := range []string{"helpers/h.go", "domain/magic/m.go", "cmd/other/main.go", "main.go"} {
		if found := Check(module, one(t, name, "package p\n")); len(found) != 1 {
			t.Errorf("%s: %q, want one violation", name, found)
		}
	}
}

func TestClockInTheDomainIsFound(t *testing.T) {
	source := "package p\n\nimport clock \"time\"\n\nvar now = clock.Now\n"
	found := Check(module, one(t, "domain/plan.go", source))
	if len(found) != 1 || !strings.HasPrefix(found[0].String(), "domain/plan.go:5: uses time.Now") {
		t.Errorf("found %q, want the use of time.Now on line 5", found)
	}
	for name, body := range map[string]string{
		"domain/plan_test.go": source,
		"store/file.go":       source,
		"domain/age.go":       "package p\n\nimport \"time\"\n\nvar day = time.Date\n",
		"domain/local.go":     "package p\n\ntype t struct{ Now int }\n\nfunc f() int { time := t{}; return time.Now }\n",
	} {
		if found := Check(module, one(t, name, body)); len(found) != 0 {
			t.Errorf("%s: %q, want nothing", name, found)
		}
	}
}

func TestWindowGoroutineOutsideTaskIsFound(t *testing.T) {
	source := "package p\n\nimport \"fyne.io/fyne/v2\"\n\nfunc f() { fyne.Do(f); fyne.DoAndWait(f) }\n"
	for _, name := range []string{"ui/intake/screen.go", "ui/shell_test.go", "cmd/handbreadth/run.go", "ui/widgets/w.go"} {
		if found := Check(module, one(t, name, source)); len(found) != 2 {
			t.Errorf("%s: %q, want two violations", name, found)
		}
	}
	if found := Check(module, one(t, "ui/task/task.go", source)); len(found) != 0 {
		t.Errorf("ui/task: %q, want nothing", found)
	}
	dotted := "package p\n\nimport . \"fyne.io/fyne/v2\"\n\nfunc f() { Do(f) }\n"
	if found := Check(module, one(t, "ui/intake/screen.go", dotted)); len(found) != 1 {
		t.Errorf("dot import: %q, want one violation", found)
	}
}

func TestReachingLooksThroughOthers(t *testing.T) {
	listing := "handbreadth/cmd/handbreadth\tfyne.io/fyne/v2\tfyne.io/fyne/v2/app\n" +
		"handbreadth/reports\texample.org/pdf\tfyne.io/fyne/v2/app\n" +
		"handbreadth/store [handbreadth/store.test]\tfyne.io/fyne/v2/app\n" +
		"handbreadth/ui_test [handbreadth/ui.test]\tfyne.io/fyne/v2\tfyne.io/fyne/v2/apple\n" +
		"example.org/pdf\tfyne.io/fyne/v2/app\n"
	got, err := Reaching(module, fyneApp, strings.NewReader(listing))
	want := []string{"cmd/handbreadth", "reports", "store"}
	if err != nil || !slices.Equal(got, want) {
		t.Errorf("Reaching = %q, %v; want %q", got, err, want)
	}
}
