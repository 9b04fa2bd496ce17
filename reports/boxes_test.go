package reports

import (
	"fmt"
	"regexp"
	"strconv"
	"testing"
)

type wordBox struct {
	text                   string
	left, top, right, foot float64 // points
}

var (
	pageTag = regexp.MustCompile(`<page width="([\d.]+)" height="([\d.]+)">|<word xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">(.*?)</word>`)
	noWords = regexp.MustCompile(`^[^\pL\pN]*$`)
)

// checkBoxes checks that every word lies inside the margins of its page and
// that no word lies on another, as pdftotext sees them.
func checkBoxes(t testing.TB, path, name string) {
	t.Helper()
	var wide, high float64
	var words []wordBox
	pages := 0
	check := func() {
		for _, fault := range append(outside(words, wide, high), overlaps(words)...) {
			t.Errorf("%s, page %d: %s", name, pages, fault)
		}
	}
	for _, m := range pageTag.FindAllStringSubmatch(run(t, "pdftotext", "-bbox", path, "-"), -1) {
		if m[1] != "" {
			check()
			wide, high, words = number(m[1]), number(m[2]), nil
			pages++
			continue
		}
		if w := (wordBox{m[7], number(m[3]), number(m[4]), number(m[5]), number(m[6])}); !noWords.MatchString(w.text) {
			words = append(words, w)
		}
	}
	check()
	if pages == 0 {
		t.Errorf("%s: no page found", name)
	}
}

// outside returns the words that lie beyond the side margins, or within 8 mm of
// the upper or lower edge, which printers leave white.
func outside(words []wordBox, wide, high float64) (faults []string) {
	const slack, edge = 0.5, 8 * pointsPerMM
	least, most := marginSide*pointsPerMM-slack, wide-marginSide*pointsPerMM+slack
	for _, w := range words {
		if w.left < least || w.right > most || w.top < edge || w.foot > high-edge {
			faults = append(faults, fmt.Sprintf("%q lies outside the margins: %+v", w.text, w))
		}
	}
	return faults
}

// overlaps returns the words that lie on another. It compares the middles of
// lines, as boxes hold accents and tails that reach into the line over and under.
func overlaps(words []wordBox) (faults []string) {
	const slack, trim = 0.8, 0.3
	for i, a := range words {
		for _, b := range words[:i] {
			across := a.left < b.right-slack && b.left < a.right-slack
			aTop, aFoot := a.top+trim*(a.foot-a.top), a.foot-trim*(a.foot-a.top)
			bTop, bFoot := b.top+trim*(b.foot-b.top), b.foot-trim*(b.foot-b.top)
			if across && aTop < bFoot && bTop < aFoot {
				faults = append(faults, fmt.Sprintf("%q lies on %q", a.text, b.text))
			}
		}
	}
	return faults
}

func TestBoxChecksSeeFaults(t *testing.T) {
	a, b := wordBox{"one", 60, 100, 90, 116}, wordBox{"two", 80, 104, 110, 120}
	below, beside := wordBox{"three", 60, 116, 90, 132}, wordBox{"four", 92, 100, 120, 116}
	if got := overlaps([]wordBox{a, below, beside}); len(got) != 0 {
		t.Errorf("words apart: %v", got)
	}
	if got := overlaps([]wordBox{a, b}); len(got) != 1 {
		t.Errorf("words on each other: %v", got)
	}
	if got := outside([]wordBox{a, {"far", 500, 100, 590, 116}, {"low", 60, 820, 90, 836}}, 595, 842); len(got) != 2 {
		t.Errorf("words beyond the margins: %v", got)
	}
}

func number(text string) float64 {
	v, _ := strconv.ParseFloat(text, 64)
	return v
}
