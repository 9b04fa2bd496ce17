package body

import (
	"bufio"
	"encoding/csv"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// published is one row of a table of published values: what is put in and what
// must come out, with its source.
type published struct {
	check, source, confidence string
	within                    float64
	given                     map[string]string
	want                      float64
}

// readPublished reads the tables of testdata/reference, whose form energy.txt
// explains.
func readPublished(t *testing.T, name string) []published {
	t.Helper()
	file, err := os.Open(filepath.Join("..", "..", "testdata", "reference", name))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	var rows []published
	var block published
	lines := bufio.NewScanner(file)
	for lines.Scan() {
		word, rest, _ := strings.Cut(lines.Text(), " ")
		switch word {
		case "", "#":
		case "check":
			block = published{check: rest}
		case "source":
			block.source = rest
		case "confidence":
			block.confidence = rest
		case "within":
			block.within = parsed(t, strings.Fields(rest)[0])
		default:
			row := block
			given, want, _ := strings.Cut(lines.Text(), " : ")
			row.given, row.want = map[string]string{}, parsed(t, want)
			for _, pair := range strings.Fields(given) {
				key, value, _ := strings.Cut(pair, "=")
				row.given[key] = value
			}
			rows = append(rows, row)
		}
	}
	if err := lines.Err(); err != nil || len(rows) == 0 {
		t.Fatalf("%s: %d rows, %v", name, len(rows), err)
	}
	return rows
}

func (p published) number(t *testing.T, key string) float64 {
	t.Helper()
	if p.given[key] == "" {
		return 0
	}
	return parsed(t, p.given[key])
}

func parsed(t *testing.T, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// readFolder reads a table of the larger set, and skips the test where that is
// not there.
func readFolder(t *testing.T, name string) []map[string]string {
	t.Helper()
	folder := os.Getenv("HANDBREADTH_REFERENCE")
	if folder == "" {
		t.Skip("HANDBREADTH_REFERENCE names no folder: only the rows in testdata were checked")
	}
	file, err := os.Open(filepath.Join(folder, name))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	lines, err := csv.NewReader(file).ReadAll()
	if err != nil || len(lines) < 2 {
		t.Fatalf("%s: %d lines, %v", name, len(lines), err)
	}
	rows := make([]map[string]string, len(lines)-1)
	for i, line := range lines[1:] {
		rows[i] = map[string]string{}
		for column, heading := range lines[0] {
			rows[i][heading] = line[column]
		}
	}
	return rows
}
