package layers

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"sort"
	"strconv"
	"strings"
)

// watched lists the names whose use is bound to a place, by import path.
var watched = map[string][]string{
	"time":            {"Now", "Since", "Until", "Sleep", "After", "AfterFunc", "Tick", "NewTicker", "NewTimer"},
	"fyne.io/fyne/v2": {"Do", "DoAndWait"},
}

// Load reads every Go file below root, whatever its build tags, and groups the
// files by folder. It leaves out testdata, which the rules exempt, and folders
// that the go command ignores.
func Load(root string) ([]Package, error) {
	byFolder := map[string][]File{}
	err := filepath.WalkDir(root, func(name string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if entry.IsDir() {
			if name != root && ignored(entry.Name()) {
				return filepath.SkipDir
			}
			return nil
		}
		if !strings.HasSuffix(name, ".go") {
			return nil
		}
		short, err := filepath.Rel(root, name)
		if err != nil {
			return err
		}
		file, err := readFile(name, filepath.ToSlash(short))
		if err != nil {
			return err
		}
		folder := strings.TrimPrefix(path.Dir(file.Name), ".")
		byFolder[folder] = append(byFolder[folder], file)
		return nil
	})
	if err != nil {
		return nil, err
	}
	return sorted(byFolder), nil
}

func ignored(folder string) bool {
	return folder == "testdata" || folder == "vendor" ||
		strings.HasPrefix(folder, ".") || strings.HasPrefix(folder, "_")
}

func sorted(byFolder map[string][]File) []Package {
	packages := make([]Package, 0, len(byFolder))
	for folder, files := range byFolder {
		packages = append(packages, Package{Folder: folder, Files: files})
	}
	sort.Slice(packages, func(i, j int) bool { return packages[i].Folder < packages[j].Folder })
	return packages
}

func readFile(name, short string) (File, error) {
	source, err := os.ReadFile(name)
	if err != nil {
		return File{}, err
	}
	return Parse(short, source)
}

// Parse reads one source file. Name is its path from the root of the module.
// The error is that of the Go parser.
func Parse(name string, source []byte) (File, error) {
	fileSet := token.NewFileSet()
	tree, err := parser.ParseFile(fileSet, name, source, 0)
	if err != nil {
		return File{}, err
	}
	file := File{Name: name, Test: strings.HasSuffix(name, "_test.go")}
	local := map[string]string{} // the name in this file -> import path
	for _, spec := range tree.Imports {
		importPath, err := strconv.Unquote(spec.Path.Value)
		if err != nil {
			return File{}, err
		}
		file.Imports = append(file.Imports, importPath)
		if _, ok := watched[importPath]; ok {
			local[localName(spec, importPath)] = importPath
		}
	}
	file.Uses = uses(fileSet, tree, local)
	return file, nil
}

// localName returns the name by which a file speaks of an import.
func localName(spec *ast.ImportSpec, importPath string) string {
	if spec.Name != nil {
		return spec.Name.Name
	}
	return shortName(importPath)
}

func shortName(importPath string) string {
	if importPath == "fyne.io/fyne/v2" {
		return "fyne"
	}
	return path.Base(importPath)
}

// uses finds the watched names in a file. A dot import of a watched package
// counts as a use, since its names can no longer be told.
func uses(fileSet *token.FileSet, tree *ast.File, local map[string]string) []Use {
	var found []Use
	if importPath, ok := local["."]; ok {
		found = append(found, Use{Name: shortName(importPath) + ".*", Line: fileSet.Position(tree.Name.Pos()).Line})
	}
	ast.Inspect(tree, func(node ast.Node) bool {
		selector, ok := node.(*ast.SelectorExpr)
		if !ok {
			return true
		}
		left, ok := selector.X.(*ast.Ident)
		if !ok || left.Obj != nil { // a local variable of the same name
			return true
		}
		importPath := local[left.Name]
		for _, name := range watched[importPath] {
			if selector.Sel.Name == name {
				line := fileSet.Position(selector.Pos()).Line
				found = append(found, Use{Name: shortName(importPath) + "." + name, Line: line})
			}
		}
		return true
	})
	return found
}
