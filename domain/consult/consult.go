// Package consult reads the consult file, which is an intake as JSON, and
// writes and reads the plan file that comes of it. The README lists every key.
package consult

import (
	"strings"
	"unicode"

	"handbreadth/domain"
	"handbreadth/domain/energy"
	"handbreadth/domain/unit"
)

// Parse reads a consult file. Quantities are texts with their units ("168 cm",
// "11 st 6 lb"); what is left out has the value of [domain.NewIntake]. The
// error is [unit.Problems] and lists everything that is wrong at once: keys
// that are not known, given twice or of the wrong type, values that cannot be
// used and what is missing, each by its path ("client.born", "avoid[1]"). Only
// where the text is no JSON object does it say no more than that.
func Parse(data []byte) (domain.Intake, error) {
	r := &reader{}
	root, ok := r.document(data)
	if !ok {
		return domain.Intake{}, r.problems.Err()
	}
	in := domain.NewIntake()
	if _, isObject := r.fields(root, &in, rootFields); !isObject {
		return domain.Intake{}, r.problems.Err()
	}
	dateReasons(&in)
	r.missing(in)
	r.merge(checkable(in).Validate())
	if err := r.problems.Err(); err != nil {
		return domain.Intake{}, err
	}
	return in, nil
}

// fieldName is the only required key that the domain does not ask for: a plan
// can be computed without a name, a file for a client cannot do without.
const fieldName = "client.name"

func (r *reader) missing(in domain.Intake) {
	if !r.covers(fieldName) && !visible(in.Client.Name) {
		r.refuse(fieldName, "", nameAccepted)
	}
	if !r.covers(domain.FieldGoalKind) && in.Goal.Kind == "" {
		r.refuse(domain.FieldGoalKind, "", oneOf(goalKinds))
	}
}

// checkable returns the intake with a goal that can be checked further where
// its kind is missing or not known, which was named already.
func checkable(in domain.Intake) domain.Intake {
	if !in.Goal.Kind.Valid() {
		in.Goal.Kind = energy.Maintain
	}
	return in
}

// merge adds the problems of the intake as a whole, but for those of a field
// that was named already, or of one around or inside it.
func (r *reader) merge(err error) {
	var whole unit.Problems
	whole.Keep(err)
	for _, p := range whole {
		if !r.covers(p.Field) {
			r.problems = append(r.problems, p)
		}
	}
}

// covers reports whether a problem names the field, one around it or one in it.
func (r *reader) covers(field string) bool {
	for _, p := range r.problems {
		if p.Field == field || inside(p.Field, field) || inside(field, p.Field) {
			return true
		}
	}
	return false
}

// inside reports whether a path lies in another: goal.by in goal, avoid[1] in avoid.
func inside(path, other string) bool {
	rest, found := strings.CutPrefix(path, other)
	return found && other != "" && (strings.HasPrefix(rest, ".") || strings.HasPrefix(rest, "["))
}

// visible reports whether a text shows anything when printed.
func visible(text string) bool {
	return strings.ContainsFunc(text, func(c rune) bool { return unicode.IsGraphic(c) && !unicode.IsSpace(c) })
}
