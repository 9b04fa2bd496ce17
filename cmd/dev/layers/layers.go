// Package layers holds the rules about who may import whom in this module, and
// finds what breaks them.
//
// Every package has a place, every import is looked at in every file (whatever
// its build tags, tests included), and a package without a place is itself a
// violation. Because each import of each package is checked, what holds for
// one step holds for any number of steps inside the module; Reaching looks
// through the packages of others.
package layers

import (
	"fmt"
	"sort"
	"strings"
)

// File is what the rules need to know of one source file.
type File struct {
	Name    string   // path from the root of the module
	Test    bool     // the name ends in _test.go
	Imports []string // import paths
	Uses    []Use    // uses of names that only some packages may use
}

// Use is one mention of a watched name of an imported package.
type Use struct {
	Name string // "time.Now"
	Line int
}

// Package is one folder of source files.
type Package struct {
	Folder string // from the root of the module, "" for the root itself
	Files  []File
}

// Violation is one broken rule.
type Violation struct {
	File string
	Rule string // says what was found and what is allowed
}

// String gives the violation as one line.
func (v Violation) String() string { return v.File + ": " + v.Rule }

// Check applies every rule to the packages of a module and returns what breaks
// them, sorted by file.
func Check(module string, packages []Package) []Violation {
	var found []Violation
	for _, p := range packages {
		from, ok := placeOf(p.Folder)
		if !ok {
			found = append(found, Violation{p.Files[0].Name, "its folder has no place in the layers; give it one in cmd/dev/layers"})
			continue
		}
		for _, f := range p.Files {
			found = append(found, checkImports(module, from, f)...)
			found = append(found, checkUses(from, f)...)
		}
	}
	sort.Slice(found, func(i, j int) bool { return found[i].String() < found[j].String() })
	return found
}

// checkImports applies the rules on imports to one file.
func checkImports(module string, from place, f File) []Violation {
	var found []Violation
	for _, path := range f.Imports {
		var complaint string
		if inside, ok := within(module, path); ok {
			complaint = insideRule(from, inside)
		} else {
			complaint = outsideRule(from, path, f.Test)
		}
		if complaint != "" {
			found = append(found, Violation{f.Name, fmt.Sprintf("imports %s: %s", path, complaint)})
		}
	}
	return found
}

// checkUses applies the rules on the clock and on the goroutine of the window.
func checkUses(from place, f File) []Violation {
	var found []Violation
	for _, use := range f.Uses {
		var complaint string
		switch {
		case strings.HasPrefix(use.Name, "time.") && from.kind == domain && !f.Test:
			complaint = "the domain has no clock; take the date as an argument"
		case strings.HasPrefix(use.Name, "fyne.") && (from.kind != leaf || from.part != "task"):
			complaint = "only ui/task speaks to the goroutine of the window"
		}
		if complaint != "" {
			found = append(found, Violation{fmt.Sprintf("%s:%d", f.Name, use.Line), "uses " + use.Name + ": " + complaint})
		}
	}
	return found
}

// within returns the folder of an import path of the module itself.
func within(module, path string) (string, bool) {
	if path == module {
		return "", true
	}
	return strings.CutPrefix(path, module+"/")
}
