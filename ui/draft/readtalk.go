package draft

import (
	"math"
	"regexp"
	"strconv"
	"strings"

	"handbreadth/domain/unit"
)

// conversation looks at the fields that no computation reads, so that a slip of
// the pen is told. It stops no plan.
func (r *reader) conversation() {
	for _, field := range []Field{Importance, Confidence} {
		r.rated(field)
	}
	for _, field := range []Field{PressureDate, ConsentDate} {
		r.dateIn(r.out.Remarks, field)
	}
	r.pressure()
	r.laboratory()
}

func (r *reader) remark(field Field, accepted string) {
	r.out.Remarks[field] = unit.Problem{Field: string(field), Given: r.form.Get(field), Accepted: accepted}
}

// rated looks at a rating of 0 to 10.
func (r *reader) rated(field Field) {
	text := r.form.Get(field)
	if text == "" {
		return
	}
	const most = 10
	value, ok := plainNumber(withoutWord(text, []string{"/10", "of 10", "out of 10"}))
	if !ok || value > most || value != math.Trunc(value) {
		r.remark(field, "a whole number from 0 to 10")
		return
	}
	r.out.Understood[field] = strconv.Itoa(int(value)) + " of 10"
}

var pressureText = regexp.MustCompile(`^(\d{2,3})\s*(?:/|over)\s*(\d{2,3})(?:\s*mm\s*Hg)?$`)

// The pressures that are taken as written rightly, in millimetres of mercury:
// this program's choice, no source.
const (
	leastPressure = 30
	mostPressure  = 300
)

// pressure looks at a blood pressure: the higher value, then the lower one.
func (r *reader) pressure() {
	text := r.form.Get(BloodPressure)
	if text == "" {
		return
	}
	m := pressureText.FindStringSubmatch(text)
	if m == nil {
		r.remark(BloodPressure, "two values in mmHg, such as 128/82")
		return
	}
	high, _ := strconv.Atoi(m[1]) // digits only, by the pattern
	low, _ := strconv.Atoi(m[2])
	if low < leastPressure || high > mostPressure || low >= high {
		r.remark(BloodPressure, "the higher value first, each of 30 to 300 mmHg, such as 128/82")
		return
	}
	r.out.Understood[BloodPressure] = m[1] + "/" + m[2] + " mmHg"
}

// Line is one laboratory value as it was written.
type Line struct {
	Text string
	Date unit.Date // zero where none was written
}

// LaboratoryLines parts the text of [Laboratory] in its values. The date of a
// line stands behind its last comma.
func LaboratoryLines(text string) []Line {
	var lines []Line
	for _, line := range strings.Split(text, "\n") {
		line = strings.TrimSpace(line)
		if line == "" {
			continue
		}
		l := Line{Text: line}
		if at := strings.LastIndex(line, ","); at >= 0 {
			if d, err := unit.ParseDate(string(Laboratory), strings.TrimSpace(line[at+1:])); err == nil {
				l.Text, l.Date = strings.TrimSpace(line[:at]), d
			}
		}
		lines = append(lines, l)
	}
	return lines
}

// laboratory tells how many values were written and asks for dates that lack.
func (r *reader) laboratory() {
	lines := LaboratoryLines(r.form.Get(Laboratory))
	if len(lines) == 0 {
		return
	}
	undated := 0
	for _, l := range lines {
		if l.Date.IsZero() {
			undated++
		}
	}
	words := counted(len(lines), "value", "values")
	if undated > 0 {
		words += ", " + strconv.Itoa(undated) + " without a date"
	}
	r.out.Understood[Laboratory] = words
}

func counted(n int, one, more string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + more
}
