package domain

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strings"
	"testing"
)

// unsourced lists what in a file can give a number without a source: a step or
// a source that leaves it out, a derived number without steps, and one that is
// put together by hand outside package derive.
func unsourced(file *ast.File) []ast.Node {
	var found []ast.Node
	inDerive := file.Name.Name == "derive"
	name := func(e ast.Expr) string {
		if index, ok := e.(*ast.IndexExpr); ok {
			e = index.X
		}
		if selector, ok := e.(*ast.SelectorExpr); ok {
			if pkg, ok := selector.X.(*ast.Ident); ok && pkg.Name == "derive" {
				return selector.Sel.Name
			}
			return ""
		}
		if ident, ok := e.(*ast.Ident); ok && inDerive {
			return ident.Name
		}
		return ""
	}
	ast.Inspect(file, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.CompositeLit:
			if bad := incomplete(name(n.Type), n, inDerive); bad {
				found = append(found, n)
			}
		case *ast.CallExpr:
			least := map[string]int{"Exact": 2, "Within": 4}[name(n.Fun)]
			if len(n.Args) < least {
				found = append(found, n)
			}
		case *ast.FuncDecl:
			if givesNothing(n, name) {
				found = append(found, n)
			}
		}
		return true
	})
	return found
}

func incomplete(kind string, n *ast.CompositeLit, inDerive bool) bool {
	switch kind {
	case "Step":
		return !inDerive && !hasKey(n, "Source")
	case "Source":
		if len(n.Elts) == 2 && !keyed(n) {
			return blank(n.Elts[0]) || blank(n.Elts[1])
		}
		return !hasKey(n, "Text") || !hasKey(n, "Confidence")
	case "Derived":
		return !inDerive && len(n.Elts) > 0
	}
	return false
}

// givesNothing reports an exported function whose only result is a derived
// number and which returns an empty one, but for those that say when nothing is
// worked out: their comment names the case with the words "no steps" or "not
// assessed".
func givesNothing(f *ast.FuncDecl, name func(ast.Expr) string) bool {
	if !f.Name.IsExported() || f.Type.Results == nil || len(f.Type.Results.List) != 1 || name(f.Type.Results.List[0].Type) != "Derived" || f.Body == nil {
		return false
	}
	told := f.Doc != nil && (strings.Contains(f.Doc.Text(), "no steps") || strings.Contains(f.Doc.Text(), "not assessed"))
	empty := false
	ast.Inspect(f.Body, func(n ast.Node) bool {
		if r, ok := n.(*ast.ReturnStmt); ok && len(r.Results) == 1 {
			if lit, ok := r.Results[0].(*ast.CompositeLit); ok && name(lit.Type) == "Derived" && len(lit.Elts) == 0 {
				empty = true
			}
		}
		return true
	})
	return empty && !told
}

func keyed(n *ast.CompositeLit) bool {
	_, ok := n.Elts[0].(*ast.KeyValueExpr)
	return ok
}

func hasKey(n *ast.CompositeLit, key string) bool {
	for _, e := range n.Elts {
		if pair, ok := e.(*ast.KeyValueExpr); ok && pair.Key.(*ast.Ident).Name == key {
			return !blank(pair.Value)
		}
	}
	return false
}

func blank(e ast.Expr) bool {
	lit, ok := e.(*ast.BasicLit)
	return ok && strings.TrimSpace(strings.Trim(lit.Value, "\"`")) == ""
}

// Every package of the domain is read: no formula stands without its source.
func TestNoFormulaWithoutASource(t *testing.T) {
	files, steps := 0, 0
	set := token.NewFileSet()
	err := filepath.WalkDir(".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		file, err := parser.ParseFile(set, path, nil, parser.ParseComments)
		if err != nil {
			return err
		}
		files++
		ast.Inspect(file, func(n ast.Node) bool {
			if lit, ok := n.(*ast.CompositeLit); ok && fmt.Sprint(lit.Type) == "&{derive Step}" {
				steps++
			}
			return true
		})
		for _, n := range unsourced(file) {
			t.Errorf("%s: a number without a source", set.Position(n.Pos()))
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if t.Logf("%d files, %d steps", files, steps); files < 40 || steps < 30 {
		t.Errorf("only %d files and %d steps were read", files, steps)
	}
}

// The search finds what it is for.
func TestUnsourcedFindsNumbersWithoutASource(t *testing.T) {
	const head = "package energy\nimport \"handbreadth/domain/derive\"\n"
	for code, want := range map[string]int{
		`var s = derive.Step{Key: "a", Formula: "b"}`:                                                                      1,
		`var s = derive.Step{Key: "a", Source: derive.FromSteps}`:                                                          0,
		`var s = derive.Source{}`:                                                                                          1,
		`var s = derive.Source{Text: "WHO"}`:                                                                               1,
		`var s = derive.Source{Text: "", Confidence: derive.Seen}`:                                                         1,
		`var s = derive.Source{"WHO", derive.Seen}`:                                                                        0,
		`var s = derive.Source{Text: "WHO", Confidence: derive.Seen}`:                                                      0,
		`func F() derive.Derived[float64] { return derive.Exact(1.0) }`:                                                    1,
		`func F() derive.Derived[float64] { return derive.Within(1.0, 0, 2) }`:                                             1,
		`func F(s derive.Step) derive.Derived[float64] { return derive.Exact(1.0, s) }`:                                    0,
		`func F() derive.Derived[float64] { return derive.Derived[float64]{Value: 1} }`:                                    1,
		`func F() derive.Derived[float64] { return derive.Derived[float64]{} }`:                                            1,
		"// F has no steps where nothing is known.\nfunc F() derive.Derived[float64] { return derive.Derived[float64]{} }": 0,
	} {
		file, err := parser.ParseFile(token.NewFileSet(), "x.go", head+code, parser.ParseComments)
		if err != nil {
			t.Fatal(err)
		}
		if got := len(unsourced(file)); got != want {
			t.Errorf("%s: found %d, want %d", code, got, want)
		}
	}
}
