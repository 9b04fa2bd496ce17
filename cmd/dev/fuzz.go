package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strings"
)

// fuzzTarget is one function for "go test -fuzz".
type fuzzTarget struct {
	folder string // "./domain/unit"
	name   string // "FuzzParse"
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
