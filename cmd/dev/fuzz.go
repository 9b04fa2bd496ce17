package main

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"
)

// shortFuzz is how long each target is fuzzed with every change.
const shortFuzz = 10 * time.Second

// fuzzTarget is one function for "go test -fuzz".
type fuzzTarget struct {
	folder string // "./domain/unit"
	name   string // "FuzzParse"
}

// fuzzAll fuzzes every target for a short time. Each counts as one check.
func (c *checks) fuzzAll(ctx context.Context, log io.Writer) error {
	targets, err := fuzzTargets(".")
	if err != nil {
		return err
	}
	if len(targets) == 0 {
		return errors.New("there is nothing to fuzz")
	}
	var trouble error
	for _, target := range targets {
		if err := c.counted(c.fuzz(target, shortFuzz))(ctx, log); err != nil {
			trouble = errors.Join(trouble, fmt.Errorf("%s in %s: %w", target.name, target.folder, err))
		}
	}
	return trouble
}

func (c *checks) fuzz(target fuzzTarget, time time.Duration) func(context.Context, io.Writer) error {
	environment := replaced(c.environment, "CGO_ENABLED=0")
	return func(ctx context.Context, log io.Writer) error {
		return run(ctx, log, environment, "go", "test", "-run", "^$",
			"-fuzz", "^"+target.name+"$", "-fuzztime", time.String(), target.folder)
	}
}

// How much of what fuzzing found is kept with the code: not too long, and not
// too many, because every plain test tries them.
const (
	keptInputs = 15
	keptLength = 2048 // bytes
)

// keepInputs copies some of the inputs that reached new code, short and long
// ones, from the cache of the go command into the target's testdata, where every
// plain test tries them.
func keepInputs(cache string, target fuzzTarget) (kept int, err error) {
	from := filepath.Join(cache, "fuzz", "handbreadth", filepath.FromSlash(target.folder), target.name)
	entries, err := os.ReadDir(from)
	if errors.Is(err, fs.ErrNotExist) {
		return 0, nil
	}
	if err != nil {
		return 0, err
	}
	type input struct {
		name string
		size int64
	}
	var inputs []input
	for _, entry := range entries {
		info, err := entry.Info()
		if err != nil {
			return 0, err
		}
		if info.Size() <= keptLength {
			inputs = append(inputs, input{entry.Name(), info.Size()})
		}
	}
	slices.SortFunc(inputs, func(a, b input) int {
		return cmp.Or(cmp.Compare(a.size, b.size), strings.Compare(a.name, b.name))
	})
	to := filepath.Join(filepath.FromSlash(target.folder), "testdata", "fuzz", target.name)
	for n := range min(len(inputs), keptInputs) {
		i := inputs[n*len(inputs)/min(len(inputs), keptInputs)]
		content, err := os.ReadFile(filepath.Join(from, i.name))
		if err != nil {
			return kept, err
		}
		if err := os.MkdirAll(to, 0o750); err != nil {
			return kept, err
		}
		if err := os.WriteFile(filepath.Join(to, i.name), content, 0o600); err != nil {
			return kept, err
		}
		kept++
	}
	return kept, nil
}

// fuzzTargets finds the fuzz targets in the test files below root, in the order
// of their files.
func fuzzTargets(root string) ([]fuzzTarget, error) {
	var found []fuzzTarget
	err := filepath.WalkDir(root, func(name string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if entry.IsDir() {
			if name != root && (entry.Name() == "testdata" || strings.HasPrefix(entry.Name(), ".")) {
				return filepath.SkipDir
			}
			return nil
		}
		if !strings.HasSuffix(name, "_test.go") {
			return nil
		}
		folder, err := filepath.Rel(root, filepath.Dir(name))
		if err != nil {
			return err
		}
		names, err := fuzzNames(name)
		for _, target := range names {
			found = append(found, fuzzTarget{folder: "./" + filepath.ToSlash(folder), name: target})
		}
		return err
	})
	return found, err
}

// fuzzNames returns the fuzz functions of one file.
func fuzzNames(file string) ([]string, error) {
	tree, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.SkipObjectResolution)
	if err != nil {
		return nil, err
	}
	var names []string
	for _, declaration := range tree.Decls {
		function, ok := declaration.(*ast.FuncDecl)
		if ok && function.Recv == nil && strings.HasPrefix(function.Name.Name, "Fuzz") && takesF(function) {
			names = append(names, function.Name.Name)
		}
	}
	return names, nil
}

// takesF reports whether the only argument is a *testing.F.
func takesF(function *ast.FuncDecl) bool {
	fields := function.Type.Params.List
	if len(fields) != 1 {
		return false
	}
	pointer, ok := fields[0].Type.(*ast.StarExpr)
	if !ok {
		return false
	}
	selector, ok := pointer.X.(*ast.SelectorExpr)
	return ok && selector.Sel.Name == "F"
}
