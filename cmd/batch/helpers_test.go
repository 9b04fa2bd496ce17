package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"handbreadth/domain"
	"handbreadth/reports"
)

const samples = "../../testdata/consult/"

// table is a folder with a consult file and what may be there before.
type table struct {
	t              *testing.T
	folder         string
	stdout, stderr bytes.Buffer
	options        reports.Options // of the last paper
	fail           error           // of the next paper
}

func newTable(t *testing.T, consult []byte) *table {
	t.Helper()
	tb := &table{t: t, folder: t.TempDir()}
	tb.put("consult.json", string(consult))
	return tb
}

func (tb *table) path(name string) string { return filepath.Join(tb.folder, name) }

func (tb *table) put(name, text string) {
	tb.t.Helper()
	if err := os.WriteFile(tb.path(name), []byte(text), 0o644); err != nil {
		tb.t.Fatal(err)
	}
}

func (tb *table) read(name string) string {
	tb.t.Helper()
	data, err := os.ReadFile(tb.path(name))
	if err != nil {
		tb.t.Fatal(err)
	}
	return string(data)
}

// names lists the files of the folder.
func (tb *table) names() string {
	tb.t.Helper()
	entries, err := os.ReadDir(tb.folder)
	if err != nil {
		tb.t.Fatal(err)
	}
	var names []string
	for _, e := range entries {
		names = append(names, e.Name())
	}
	return strings.Join(names, " ")
}

// run runs the command with papers that say what they are; $ in an argument is
// the folder.
func (tb *table) run(args ...string) int {
	tb.stdout.Reset()
	tb.stderr.Reset()
	stub := func(text string) paper {
		return func(_ domain.Plan, opt reports.Options) ([]byte, error) {
			tb.options = opt
			return []byte(text), tb.fail
		}
	}
	full := make([]string, len(args))
	for i, a := range args {
		full[i] = strings.ReplaceAll(a, "$", tb.folder)
	}
	d := desk{
		stdout: &tb.stdout, stderr: &tb.stderr, disk: osFiles{},
		handout: stub("the handout"), referral: stub("the referral note"),
	}
	return d.run(full)
}

// both asks for both outputs.
func (tb *table) both() int {
	return tb.run("-consult", "$/consult.json", "-plan", "$/plan.json", "-handout", "$/paper.pdf")
}

func sample(t *testing.T, name string) []byte {
	t.Helper()
	data, err := os.ReadFile(samples + name)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// changes puts JSON at paths ("goal.by"), or leaves the key out for nothing.
type changes map[string]string

func changed(t *testing.T, file []byte, all ...changes) []byte {
	t.Helper()
	var root map[string]any
	if err := json.Unmarshal(file, &root); err != nil {
		t.Fatal(err)
	}
	for _, c := range all {
		for path, text := range c {
			object, key := root, path
			if section, rest, nested := strings.Cut(path, "."); nested {
				object, key = root[section].(map[string]any), rest
			}
			if text == "" {
				delete(object, key)
				continue
			}
			var v any
			if err := json.Unmarshal([]byte(text), &v); err != nil {
				t.Fatal(err)
			}
			object[key] = v
		}
	}
	data, err := json.Marshal(root)
	if err != nil {
		t.Fatal(err)
	}
	return data
}
