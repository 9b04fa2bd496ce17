package consult

import (
	"encoding/json"
	"os"
	"strings"
	"testing"

	"handbreadth/domain"
	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
)

func sample(t testing.TB, name string) []byte {
	t.Helper()
	data, err := os.ReadFile("../../testdata/consult/" + name)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// changes says how a consult file differs from another: a path ("goal.by") and
// the JSON to put there, or nothing to leave the key out.
type changes map[string]string

// changed returns a consult file with changes.
func changed(t testing.TB, file []byte, c changes) []byte {
	t.Helper()
	var root map[string]any
	if err := json.Unmarshal(file, &root); err != nil {
		t.Fatal(err)
	}
	for path, text := range c {
		object, key := root, path
		if section, rest, nested := strings.Cut(path, "."); nested {
			if _, exists := root[section]; !exists {
				root[section] = map[string]any{}
			}
			object, key = root[section].(map[string]any), rest
		}
		if text == "" {
			delete(object, key)
		} else {
			object[key] = json.RawMessage(text)
		}
	}
	data, err := json.Marshal(root)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func parsed(t testing.TB, file []byte) domain.Intake {
	t.Helper()
	in, err := Parse(file)
	if err != nil {
		t.Fatalf("%s\n%v", file, err)
	}
	return in
}

func planned(t testing.TB, file []byte) domain.Plan {
	t.Helper()
	plan, err := domain.NewPlan(parsed(t, file))
	if err != nil {
		t.Fatal(err)
	}
	return plan
}

func written(t testing.TB, file []byte) File {
	t.Helper()
	data, err := Encode(planned(t, file))
	if err != nil {
		t.Fatal(err)
	}
	f, err := Decode(data)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// problemsOf returns the problems of a file that must have some.
func problemsOf(t testing.TB, file []byte) unit.Problems {
	t.Helper()
	in, err := Parse(file)
	ps, ok := err.(unit.Problems)
	if !ok || len(ps) == 0 {
		t.Fatalf("%s\ngave %v, want problems", file, err)
	}
	if in.Client.Name != "" || in.Weight != 0 {
		t.Errorf("an intake came with the problems: %+v", in)
	}
	for _, p := range ps {
		if p.Field == "" || p.Accepted == "" {
			t.Errorf("a problem without its field or what is accepted: %+v", p)
		}
	}
	if lines := strings.Split(err.Error(), "\n"); len(lines) != len(ps) {
		t.Errorf("%d problems on %d lines:\n%v", len(ps), len(lines), err)
	}
	return ps
}

// allReasons is a reason for every hold there is, as JSON.
func allReasons() string {
	reasons := map[string]string{}
	for _, code := range screen.HoldCodes() {
		reasons[code] = "known to the doctor"
	}
	text, _ := json.Marshal(reasons) // a map of texts cannot fail
	return string(text)
}

func fields(ps unit.Problems) string {
	names := make([]string, len(ps))
	for i, p := range ps {
		names[i] = p.Field
	}
	return strings.Join(names, " ")
}
