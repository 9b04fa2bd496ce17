package store

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"testing"
)

// The page on threats names tests; each must be there.
func TestThreatsNamesTestsThatExist(t *testing.T) {
	var sources []byte
	for _, pattern := range []string{"*_test.go", "vault/*_test.go"} {
		for _, name := range must(filepath.Glob(pattern))(t) {
			sources = append(sources, must(os.ReadFile(name))(t)...)
		}
	}
	named := regexp.MustCompile("`(Test[A-Za-z]+)`").FindAllSubmatch(must(os.ReadFile("THREATS.md"))(t), -1)
	if len(named) < 10 {
		t.Fatalf("only %d tests are named", len(named))
	}
	for _, name := range named {
		if !bytes.Contains(sources, append(append([]byte("func "), name[1]...), '(')) {
			t.Errorf("there is no %s", name[1])
		}
	}
}
