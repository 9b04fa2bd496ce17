package layers

import (
	"bufio"
	"io"
	"sort"
	"strings"
)

// ListFormat is the -f of "go list -test" that Reaching reads: the import path,
// then all that it depends on.
const ListFormat = `{{.ImportPath}}{{range .Deps}}	{{.}}{{end}}`

// Reaching reads the output of go list in ListFormat and returns the folders of
// the module, sorted, that depend on target or on a package below it, through
// any number of packages of others and with their tests. The error is that of
// the reader.
func Reaching(module, target string, listing io.Reader) ([]string, error) {
	set := map[string]bool{}
	lines := bufio.NewScanner(listing)
	lines.Buffer(nil, 1<<22)
	for lines.Scan() {
		cells := strings.Split(lines.Text(), "\t")
		folder, ok := within(module, plainPath(cells[0]))
		if !ok {
			continue
		}
		for _, dependency := range cells[1:] {
			if under(plainPath(dependency), target) {
				set[folder] = true
				break
			}
		}
	}
	folders := make([]string, 0, len(set))
	for folder := range set {
		folders = append(folders, folder)
	}
	sort.Strings(folders)
	return folders, lines.Err()
}

// plainPath takes the marks of test variants off an import path:
// "a/b [a/b.test]", "a/b_test [a/b.test]" and "a/b.test" are all "a/b".
func plainPath(path string) string {
	path, _, _ = strings.Cut(path, " ")
	return strings.TrimSuffix(strings.TrimSuffix(path, ".test"), "_test")
}
