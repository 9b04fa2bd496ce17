package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"os"
	"runtime"
	"slices"
	"strings"
	"testing"

	"handbreadth/domain"
	"handbreadth/domain/unit"
	"handbreadth/reports"
)

// Nothing is written or changed where something given cannot be used, or where
// the plan is held.
func TestNothingIsTouched(t *testing.T) {
	held := string(changed(t, sample(t, "example.json"), changes{"screening": ""}))
	cases := []struct {
		name, consult string
		want          int
	}{
		{"faults", string(sample(t, "faults.json")), statusBadInput},
		{"no JSON", "{", statusBadInput},
		{"a hold", held, statusHeld},
	}
	for _, c := range cases {
		tb := newTable(t, []byte(c.consult))
		tb.put("plan.json", "the plan of before")
		tb.put("paper.pdf", "the paper of before")
		if got := tb.both(); got != c.want {
			t.Errorf("%s: status %d, want %d", c.name, got, c.want)
		}
		if tb.read("plan.json") != "the plan of before" || tb.read("paper.pdf") != "the paper of before" || tb.names() != "consult.json paper.pdf plan.json" {
			t.Errorf("%s: files were touched: %s", c.name, tb.names())
		}
		if tb.stdout.Len() > 0 || tb.stderr.Len() == 0 {
			t.Errorf("%s: said %q and %q", c.name, tb.stdout.String(), tb.stderr.String())
		}
	}
}

func TestOneLineAProblem(t *testing.T) {
	tb := newTable(t, sample(t, "faults.json"))
	tb.both()
	lines := strings.Split(strings.TrimSuffix(tb.stderr.String(), "\n"), "\n")
	if len(lines) != 22 {
		t.Errorf("%d lines", len(lines))
	}
	for _, line := range lines {
		if !strings.Contains(line, ": given ") || !strings.Contains(line, "; accepted: ") {
			t.Errorf("not field, given, accepted: %q", line)
		}
	}
}

func TestFlags(t *testing.T) {
	cases := []struct {
		args string
		want int
		says []string
	}{
		{"-consult $/consult.json", 0, nil},
		{"--consult=$/consult.json --plan=$/p.json", 0, nil},
		{"-consult $/consult.json -handout $/h.pdf -paper letter -units us", 0, nil},
		{"", 2, []string{"-consult: given nothing"}},
		{"-consult $/none.json", 2, []string{"-consult: given ", "no such file"}},
		{"-consult $", 2, []string{"-consult: given "}},
		{"-consult $/consult.json -paper a5 -units si", 2, []string{`-paper: given "a5"; accepted: a4 or letter`, `-units: given "si"; accepted: metric, us or uk`}},
		{"-consult $/consult.json -plans x", 2, []string{"arguments: given", "-practice"}},
		{"-consult $/consult.json more", 2, []string{`arguments: given "more"`}},
		{"-consult $/consult.json -plan $/consult.json", 2, []string{"-plan: given "}},
		{"-consult $/consult.json -plan $/a -handout $/./a", 2, []string{"-handout: given "}},
		{"-consult $/consult.json -plan $/none/plan.json", 2, []string{"-plan: given ", "no such file"}},
		{"-consult $/consult.json -plan $/p.json -handout $/none/h.pdf", 2, []string{"-handout: given "}},
		{"-consult $/consult.json -plan $", 2, []string{"-plan: given ", "something else"}},
	}
	for _, c := range cases {
		tb := newTable(t, sample(t, "example.json"))
		if got := tb.run(strings.Fields(c.args)...); got != c.want {
			t.Errorf("%s: status %d, want %d: %s", c.args, got, c.want, tb.stderr.String())
		}
		for _, words := range c.says {
			if !strings.Contains(tb.stderr.String(), words) {
				t.Errorf("%s: said %q, want %q in it", c.args, tb.stderr.String(), words)
			}
		}
		if c.want != 0 && tb.names() != "consult.json" {
			t.Errorf("%s: left %s", c.args, tb.names())
		}
		if tb.read("consult.json") != string(sample(t, "example.json")) {
			t.Errorf("%s: the consult file has changed", c.args)
		}
	}
	tb := newTable(t, sample(t, "example.json"))
	if got := tb.run("-consult", "$/consult.json", "-plan", ""); got != statusBadInput {
		t.Errorf("an empty name: status %d", got)
	}
}

func TestFlagsAndFileAreToldTogether(t *testing.T) {
	tb := newTable(t, []byte(`{}`))
	tb.run("-consult", "$/consult.json", "-paper", "a5")
	for _, words := range []string{"-paper:", "client.name:", "weight:"} {
		if !strings.Contains(tb.stderr.String(), words) {
			t.Errorf("%q is missing from %s", words, tb.stderr.String())
		}
	}
}

func TestHelp(t *testing.T) {
	tb := newTable(t, nil)
	if got := tb.run("-h"); got != 0 || !strings.Contains(tb.stdout.String(), "-handout") || tb.stderr.Len() > 0 {
		t.Errorf("status %d, %q, %q", got, tb.stdout.String(), tb.stderr.String())
	}
}

func TestFlagsReachThePaper(t *testing.T) {
	tb := newTable(t, sample(t, "us.json"))
	tb.run("-consult", "$/consult.json", "-handout", "$/h.pdf", "-paper", "letter", "-units", "uk", "-practice", "Tidewater Room")
	o := tb.options
	if o.Paper != reports.Letter || o.Style.System != unit.UKCustomary || o.Brand.Practice != "Tidewater Room" || o.ClientFirstName != "Wren" {
		t.Errorf("got %+v", o)
	}
}

func TestPaperThatFailsLeavesNothing(t *testing.T) {
	tb := newTable(t, sample(t, "example.json"))
	tb.fail = errors.New("the paper could not be made")
	if got := tb.both(); got != statusBadInput || tb.names() != "consult.json" || !strings.Contains(tb.stderr.String(), "could not be made") {
		t.Errorf("status %d, left %s, said %q", got, tb.names(), tb.stderr.String())
	}
}

func TestOutputsAreTheirOwnersOnly(t *testing.T) {
	tb := newTable(t, sample(t, "example.json"))
	tb.put("plan.json", "the plan of before, which all may read")
	if got := tb.both(); got != 0 {
		t.Fatal(tb.stderr.String())
	}
	for _, name := range []string{"plan.json", "paper.pdf"} {
		info, err := os.Stat(tb.path(name))
		if err != nil || (info.Mode().Perm() != 0o600 && runtime.GOOS != "windows") {
			t.Errorf("%s: %v, %v", name, info.Mode(), err)
		}
	}
	if !json.Valid([]byte(tb.read("plan.json"))) {
		t.Error("the plan file is not JSON")
	}
}

// The papers themselves, through the real engine.
func TestRealPapers(t *testing.T) {
	for answer, want := range map[string]int{"false": statusIssued, "true": statusReferred} {
		tb := newTable(t, changed(t, sample(t, "us.json"), changes{"screening.type_1_diabetes": answer}))
		d := desk{stdout: &tb.stdout, stderr: &tb.stderr, disk: osFiles{}, handout: reports.Handout, referral: reports.Referral}
		got := d.run([]string{"-consult", tb.path("consult.json"), "-plan", tb.path("plan.json"), "-handout", tb.path("paper.pdf")})
		if got != want || !bytes.HasPrefix([]byte(tb.read("paper.pdf")), []byte("%PDF-")) {
			t.Errorf("type 1 diabetes %s: status %d, want %d: %s", answer, got, want, tb.stderr.String())
		}
	}
}

// The examples that the README names come to a plan and a real paper.
func TestEveryExample(t *testing.T) {
	entries, err := os.ReadDir(samples)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if e.Name() == "faults.json" {
			continue
		}
		tb := newTable(t, sample(t, e.Name()))
		d := desk{stdout: &tb.stdout, stderr: &tb.stderr, disk: osFiles{}, handout: reports.Handout, referral: reports.Referral}
		if got := d.run([]string{"-consult", tb.path("consult.json"), "-plan", tb.path("plan.json"), "-handout", tb.path("paper.pdf")}); got != statusIssued {
			t.Errorf("%s: status %d: %s", e.Name(), got, tb.stderr.String())
		}
	}
}

// The client's own hand at life size comes only where it is asked for.
func TestLifeSizeIsAskedFor(t *testing.T) {
	for _, c := range []struct {
		args []string
		want bool
	}{{nil, false}, {[]string{"-life-size"}, true}} {
		s, err := parseFlags(append([]string{"-consult", "consult.json"}, c.args...))
		if err != nil {
			t.Fatal(err)
		}
		pages := s.options(domain.Client{}).Pages
		if got := slices.Contains(pages, reports.PageLifeSize); got != c.want || !slices.Contains(pages, reports.PageGlance) {
			t.Errorf("%v: pages %v", c.args, pages)
		}
	}
}
