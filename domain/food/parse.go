package food

import (
	"encoding/csv"
	"errors"
	"io"
	"strconv"
	"strings"

	"handbreadth/domain/unit"
)

// parse reads the table. It is strict: the columns must be the known ones in
// their order, every cell must be what its column accepts, and the cells of a
// line must agree. The error is unit.Problems, one for each line that is wrong,
// whose field names line and column: "line 12, column fibre_g".
func parse(text string) ([]Food, error) {
	r := csv.NewReader(strings.NewReader(text))
	r.ReuseRecord = true
	r.FieldsPerRecord = len(columns)
	var problems unit.Problems
	if p, ok := readHeader(r); !ok {
		return nil, append(problems, p)
	}
	lines := strings.Count(text, "\n")
	foods := make([]Food, 0, lines)
	seen := newSeen(lines)
	for {
		cells, err := r.Read()
		if errors.Is(err, io.EOF) {
			return foods, problems.Err()
		}
		if err != nil {
			return nil, append(problems, malformed(err))
		}
		line, _ := r.FieldPos(0)
		var f Food
		column, refusal := f.read(cells)
		if refusal == "" {
			column, refusal = seen.add(&f, line)
		}
		if refusal != "" {
			problems.Add("line "+strconv.Itoa(line)+", column "+columns[column].name, cells[column], refusal)
			continue
		}
		foods = append(foods, f)
	}
}

func readHeader(r *csv.Reader) (unit.Problem, bool) {
	header, err := r.Read()
	if errors.Is(err, io.EOF) {
		return unit.Problem{Field: "line 1", Accepted: "the names of the columns"}, false
	}
	if err != nil {
		return malformed(err), false
	}
	for i, c := range columns {
		if header[i] != c.name {
			return unit.Problem{Field: "line 1, column " + strconv.Itoa(i+1), Given: header[i], Accepted: c.name}, false
		}
	}
	return unit.Problem{}, true
}

// malformed tells what is wrong with the form of the file, and where.
func malformed(err error) unit.Problem {
	var place *csv.ParseError
	if !errors.As(err, &place) {
		return unit.Problem{Field: "food table", Given: err.Error(), Accepted: "lines of comma-separated cells"}
	}
	return unit.Problem{
		Field: "line " + strconv.Itoa(place.Line) + ", character " + strconv.Itoa(place.Column),
		Given: place.Err.Error(), Accepted: "comma-separated cells, " + strconv.Itoa(len(columns)) + " a line",
	}
}

// read reads the cells of one line, or says which column is refused and what it
// accepts.
func (f *Food) read(cells []string) (column int, refusal string) {
	for i, c := range columns {
		if !c.set(f, cells[i]) {
			return i, c.accepts
		}
	}
	name, refusal := f.agrees()
	return columnAt(name), refusal
}

// seen is the line on which each value stands that must be in the table once.
type seen struct{ code, name, ndb map[string]int }

func newSeen(lines int) seen {
	return seen{make(map[string]int, lines), make(map[string]int, lines), make(map[string]int, lines)}
}

// add notes a food, or says where one of its values stands already.
func (s seen) add(f *Food, line int) (column int, refusal string) {
	for _, once := range [...]struct {
		column, value string
		lines         map[string]int
	}{
		{"code", f.Code, s.code}, {"name", strings.ToLower(f.Name), s.name}, {"ndb", f.NDB, s.ndb},
	} {
		if first, taken := once.lines[once.value]; taken {
			return columnAt(once.column), "what no other line has; line " + strconv.Itoa(first) + " has it"
		}
		once.lines[once.value] = line
	}
	return 0, ""
}

func columnAt(name string) int {
	for i, c := range columns {
		if c.name == name {
			return i
		}
	}
	return 0
}

// agrees reports which column of a food does not agree with the others, and
// what it would have to be.
func (f *Food) agrees() (column, refusal string) {
	n := f.per100
	// By difference, analysed sugars and rounding make up to a gram.
	const rounding = 1.0
	switch {
	case n.protein+n.fat+n.carbohydrate+n.alcohol.value > 100+rounding:
		return "carbohydrate_g", "at most what a hundred grams leave beside protein, fat and alcohol"
	case n.saturated.value > n.fat+rounding:
		return "saturated_g", "at most the fat"
	case n.fibre.value > n.carbohydrate+rounding:
		return "fibre_g", "at most the carbohydrate, which has it inside"
	case n.sugars.value > n.carbohydrate+rounding:
		return "sugars_g", "at most the carbohydrate, which has them inside"
	case !f.weighs(f.Portion, f.from):
		return "portion_from", "the measure and factor that make portion_g"
	case f.Cup > 0 && !f.weighs(f.Cup, f.cup):
		return "cup_from", "the measure and factor that make cup_g"
	case f.from.seq == 0 && f.Size != SizePalm:
		return "portion_from", "a household measure; only a palm is by weight"
	}
	if g, fills := f.Fills(); f.Share > 0 && (!fills || !sizeOf(g, f.Size)) {
		return "share", "0, as the figures do not let the food fill its measure"
	}
	return "", ""
}

func sizeOf(g Group, s Size) bool {
	of, ok := s.group()
	return ok && of == g
}

// weighs reports whether an amount is what it was made from, rounded to a tenth
// of a gram. What was borrowed from another food is checked against the source.
func (f *Food) weighs(amount unit.Gram, from derivedFrom) bool {
	const rounding = 0.06
	if from.ndb != "" {
		return true
	}
	if from.seq == 0 {
		return amount == palmWeight
	}
	for _, m := range f.measures {
		if m.Seq == from.seq {
			diff := float64(m.Grams)*from.factor - float64(amount)
			return diff > -rounding && diff < rounding
		}
	}
	return false
}
