package store

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// onlySQLite are words that PostgreSQL does not know, or knows otherwise.
var onlySQLite = regexp.MustCompile(`(?i)\b(pragma|vacuum|sqlite\w*|wal|rowid|autoincrement|without rowid|strict|` +
	`insert or|replace into|strftime|julianday|ifnull|glob|blob|datetime|raise|last_insert_rowid)\b`)

func TestOnlyOneFileKnowsSQLite(t *testing.T) {
	for _, name := range must(filepath.Glob("*.go"))(t) {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		found := sqliteWords(t, name)
		if name == "sqlite.go" {
			if len(found) < 10 {
				t.Errorf("sqlite.go has only %q: the search shows nothing", found)
			}
			continue
		}
		if len(found) > 0 {
			t.Errorf("%s speaks SQLite: %q", name, found)
		}
	}
	for _, name := range must(fs.Glob(shipped(), "*.sql"))(t) {
		for _, line := range strings.Split(string(must(fs.ReadFile(shipped(), name))(t)), "\n") {
			if words := onlySQLite.FindAllString(line, -1); len(words) > 0 && !strings.HasPrefix(line, "--") {
				t.Errorf("%s speaks SQLite: %q", name, words)
			}
		}
	}
}

// sqliteWords looks through the text and the imports of a Go file.
func sqliteWords(t *testing.T, name string) (found []string) {
	t.Helper()
	file := must(parser.ParseFile(token.NewFileSet(), name, nil, parser.SkipObjectResolution))(t)
	ast.Inspect(file, func(n ast.Node) bool {
		if text, ok := n.(*ast.BasicLit); ok && text.Kind == token.STRING {
			plain := must(strconv.Unquote(text.Value))(t)
			found = append(found, onlySQLite.FindAllString(plain, -1)...)
		}
		return true
	})
	return found
}

// Of the program's own packages the store knows the units and its vault only.
func TestTheStoreKnowsNoDomainStructs(t *testing.T) {
	for _, name := range must(filepath.Glob("*.go"))(t) {
		file := must(parser.ParseFile(token.NewFileSet(), name, nil, parser.ImportsOnly))(t)
		for _, spec := range file.Imports {
			path := must(strconv.Unquote(spec.Path.Value))(t)
			if strings.HasPrefix(path, "handbreadth/") && path != "handbreadth/domain/unit" && path != "handbreadth/store/vault" {
				t.Errorf("%s imports %s", name, path)
			}
		}
	}
}
