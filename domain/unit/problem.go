package unit

import (
	"strings"
	"unicode"
)

// Problem says what is wrong with one field: its name, what was given and
// what is accepted.
type Problem struct {
	Field    string // "weight", "goal.by"
	Given    string // as it was typed
	Accepted string // "a weight with its unit, such as 72.5 kg, 160 lb or 11 st 6 lb"
}

// Error tells the problem in one line: field, what was given, what is accepted.
func (p Problem) Error() string {
	given := p.Given
	if given == "" {
		given = "nothing"
	} else {
		given = `"` + oneLine(given) + `"`
	}
	return p.Field + ": given " + given + "; accepted: " + p.Accepted
}

// longestShown is the most characters of a given text that are told back.
const longestShown = 80

// oneLine makes a text fit for one line of a message: line ends and other
// characters that do not print become spaces, a long text is cut.
func oneLine(text string) string {
	shown := make([]rune, 0, longestShown)
	for _, r := range text {
		if len(shown) == longestShown {
			return string(shown) + "…"
		}
		if !unicode.IsPrint(r) {
			r = ' '
		}
		shown = append(shown, r)
	}
	return string(shown)
}

// Problems is a list of everything wrong with an input. A nil list is no error:
// return it through [Problems.Err].
type Problems []Problem

// Error has one problem a line.
func (ps Problems) Error() string {
	lines := make([]string, len(ps))
	for i, p := range ps {
		lines[i] = p.Error()
	}
	return strings.Join(lines, "\n")
}

// Err returns nil when the list is empty, else the list as an error.
func (ps Problems) Err() error {
	if len(ps) == 0 {
		return nil
	}
	return ps
}

// Add appends a problem.
func (ps *Problems) Add(field, given, accepted string) {
	*ps = append(*ps, Problem{Field: field, Given: given, Accepted: accepted})
}

// Keep adds err to the list when it is a Problem or Problems, and reports
// whether err was nil.
func (ps *Problems) Keep(err error) bool {
	switch e := err.(type) {
	case nil:
		return true
	case Problem:
		*ps = append(*ps, e)
	case Problems:
		*ps = append(*ps, e...)
	default:
		*ps = append(*ps, Problem{Accepted: e.Error()})
	}
	return false
}
