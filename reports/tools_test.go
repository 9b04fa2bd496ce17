package reports

import (
	"os/exec"
	"strings"
	"testing"
)

// packageOf names the Debian package of each program that looks into a PDF.
var packageOf = map[string]string{
	"qpdf": "qpdf", "pdffonts": "poppler-utils", "pdftotext": "poppler-utils", "pdfinfo": "poppler-utils",
}

// run calls a program that looks into a PDF and returns what it prints.
func run(t testing.TB, program string, args ...string) string {
	t.Helper()
	path, err := exec.LookPath(program)
	if err != nil {
		t.Fatalf("%s is missing: install the package %s (apt-get install %s)", program, packageOf[program], packageOf[program])
	}
	out, err := exec.Command(path, args...).CombinedOutput()
	if err != nil {
		t.Fatalf("%s %s: %v\n%s", program, strings.Join(args, " "), err, out)
	}
	return string(out)
}

// textOf returns the text of a PDF with every run of space as one.
func textOf(t testing.TB, path string) string {
	t.Helper()
	return strings.Join(strings.Fields(run(t, "pdftotext", "-layout", path, "-")), " ")
}

// flow returns the text in the order in which it was written, so that the lines
// of a paragraph follow each other.
func flow(t testing.TB, path string) string {
	t.Helper()
	return strings.Join(strings.Fields(run(t, "pdftotext", "-raw", path, "-")), " ")
}

func mustHold(t testing.TB, text string, wanted ...string) {
	t.Helper()
	for _, want := range wanted {
		if !strings.Contains(text, want) {
			t.Errorf("the paper lacks %q; it has:\n%s", want, text)
		}
	}
}
