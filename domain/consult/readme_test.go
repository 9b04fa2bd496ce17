package consult

import (
	"fmt"
	"os"
	"reflect"
	"slices"
	"strings"
	"testing"

	"handbreadth/domain"
	"handbreadth/domain/body"
	"handbreadth/domain/energy"
	"handbreadth/domain/food"
	"handbreadth/domain/screen"
)

// part returns the README from one heading to the next of its rank or above.
func part(t *testing.T, readme, heading string) string {
	t.Helper()
	_, rest, found := strings.Cut(readme, heading+"\n")
	if !found {
		t.Fatalf("no heading %q", heading)
	}
	rank, _, _ := strings.Cut(heading, " ")
	for _, next := range []string{"\n## ", "\n### ", "\n" + rank + " "} {
		rest, _, _ = strings.Cut(rest, next)
	}
	return rest
}

// readmeText is the README of the project.
func readmeText(t *testing.T) string {
	t.Helper()
	text, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// codes returns what stands between backquotes.
func codes(text string) []string {
	var found []string
	for i, piece := range strings.Split(text, "`") {
		if i%2 == 1 {
			found = append(found, piece)
		}
	}
	return found
}

// sections are the keys that only hold others.
var sections = []string{"client", "goal", "body", "reproduction", "scored", "hand"}

func TestReadmeListsEveryKey(t *testing.T) {
	readme := readmeText(t)
	keys, _, _ := strings.Cut(part(t, readme, "### The keys"), "\n#### ")
	rows := map[string]string{}
	for _, line := range strings.Split(keys, "\n") {
		if cells := strings.Split(line, "|"); len(cells) > 4 {
			rows[strings.Trim(cells[1], " `")] = line
		}
	}
	delete(rows, "key")
	delete(rows, "---")
	var known []string
	add := func(prefix string, schema []field) {
		for _, f := range schema {
			known = append(known, prefix+f.key)
		}
	}
	add("", rootFields)
	add("client.", clientFields)
	add("activity.", activityFields)
	add("body.", bodyFields)
	add("reproduction.", reproductionFields)
	add("scored.", scoredFields())
	add("hand.", handFields)
	add("goal.", goalFields)
	for _, key := range known {
		if _, listed := rows[key]; !listed && !slices.Contains(sections, key) {
			t.Errorf("%s is not listed", key)
		}
	}
	for key := range rows {
		if !slices.Contains(known, key) {
			t.Errorf("%s is listed and not known", key)
		}
	}
	defaults := domain.NewIntake()
	for key, value := range map[string]string{
		"meals_per_day":            fmt.Sprint(defaults.MealsPerDay),
		"eating_pattern":           "`" + string(defaults.Pattern) + "`",
		"carb_fat_balance_percent": fmt.Sprint(defaults.CarbFatBalance),
		"fat_floor_percent":        fmt.Sprint(defaults.FatFloor),
		"resting_equation":         "`" + string(defaults.RestingEquation) + "`",
		"body.points":              "`" + string(body.WorldPoints) + "`",
		"training":                 "`" + noneYet + "`",
		"protein_basis":            "`" + byBMI + "`",
		"carbohydrate_counted":     "`" + total + "`",
	} {
		if cells := strings.Split(rows[key], "|"); strings.TrimSpace(cells[3]) != value {
			t.Errorf("%s: the default is %s, README says %s", key, value, cells[3])
		}
	}
	for _, m := range energy.Multipliers() {
		if !strings.Contains(rows["activity.customary"], fmt.Sprintf("`%s` (%v)", m.Code, m.Factor)) {
			t.Errorf("the factor %s of %v is not listed", m.Code, m.Factor)
		}
	}
	for _, equation := range energy.RestingEquations() {
		if !strings.Contains(rows["resting_equation"], "`"+string(equation)+"`") {
			t.Errorf("the equation %s is not listed", equation)
		}
	}
}

func TestReadmeListsEveryCode(t *testing.T) {
	readme := readmeText(t)
	screening := codes(part(t, readme, "#### `screening`"))
	for _, code := range questionCodes() {
		if !slices.Contains(screening, string(code)) {
			t.Errorf("the question %s is not listed", code)
		}
	}
	reasons := codes(part(t, readme, "#### `hold_reasons`"))
	slices.Sort(reasons)
	known := screen.HoldCodes()
	slices.Sort(known)
	if !reflect.DeepEqual(reasons, known) {
		t.Errorf("hold_reasons: README has %v, known are %v", reasons, known)
	}
}

func TestReadmeListsEveryActivity(t *testing.T) {
	table := part(t, readmeText(t), "#### `activity.day`")
	for _, p := range energy.Pursuits() {
		if row := fmt.Sprintf("| `%s` | `%s` | %s | %v |", pursuitWord(p), p.Code, p.Name, p.MET); !strings.Contains(table, row) {
			t.Errorf("not listed: %s", row)
		}
	}
	if rows := strings.Count(table, "\n|") - 2; rows != len(energy.Pursuits()) {
		t.Errorf("%d rows for %d activities", rows, len(energy.Pursuits()))
	}
}

func TestReadmeListsEveryWordToAvoid(t *testing.T) {
	var listed []string
	for _, line := range strings.Split(part(t, readmeText(t), "#### `avoid`"), "\n") {
		cells := strings.Split(line, "|")
		if len(cells) != 4 {
			continue
		}
		for _, word := range codes(cells[1]) {
			listed = append(listed, word)
			var want []string
			named, _ := food.ParseAllergen(word)
			for _, a := range named {
				want = append(want, string(a))
			}
			if got := codes(cells[2]); !reflect.DeepEqual(got, want) {
				t.Errorf("%s rules out %v, README says %v", word, want, got)
			}
		}
	}
	slices.Sort(listed)
	if !reflect.DeepEqual(listed, food.AllergenWords()) {
		t.Errorf("README has %v, known are %v", listed, food.AllergenWords())
	}
}

// The example in the README is the one that is tried.
func TestReadmeExample(t *testing.T) {
	if !strings.Contains(readmeText(t), strings.TrimSpace(string(sample(t, "example.json")))) {
		t.Error("the example of the README is another one than example.json")
	}
}
