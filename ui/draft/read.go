package draft

import (
	"slices"

	"handbreadth/domain"
	"handbreadth/domain/energy"
	"handbreadth/domain/unit"
)

// Reading is what a form was understood to say.
type Reading struct {
	Intake domain.Intake
	// Problems has what is wrong with a field that was filled in.
	Problems map[Field]unit.Problem
	// Remarks has what is wrong with a field that no computation reads. It is
	// told at the field and stops no plan.
	Remarks map[Field]unit.Problem
	// Missing lists what a plan still needs, in the order of the form.
	Missing []Field
	// Understood tells how a quantity was read, in the units of the practice:
	// "72.6 kg" for "11 st 6 lb".
	Understood map[Field]string
}

// Complete reports whether a plan can be computed.
func (r Reading) Complete() bool { return len(r.Problems) == 0 && len(r.Missing) == 0 }

// Wrong returns what is wrong with a field, whether or not it stops a plan.
func (r Reading) Wrong(field Field) (unit.Problem, bool) {
	if p, wrong := r.Problems[field]; wrong {
		return p, true
	}
	p, wrong := r.Remarks[field]
	return p, wrong
}

// note adds what only the computation finds: a wish that no energy brings.
func (r *Reading) note(form Form, err error) {
	problems, ok := err.(unit.Problems)
	if !ok {
		return
	}
	for _, p := range problems {
		p.Given = form.Get(Field(p.Field))
		r.Problems[Field(p.Field)] = p
	}
}

// needed lists the fields that no plan can do without.
var needed = []Field{Date, Born, Sex, Height, Weight, Activity, GoalKind}

type reader struct {
	form  Form
	style unit.Style
	out   Reading
}

// Read understands a form in the units of the practice: a number without a unit
// is read in them.
func Read(form Form, style unit.Style) Reading {
	r := reader{form: form, style: style, out: Reading{
		Intake: domain.NewIntake(), Problems: map[Field]unit.Problem{},
		Remarks: map[Field]unit.Problem{}, Understood: map[Field]string{},
	}}
	r.person()
	r.measurements()
	r.activity()
	r.goal()
	r.food()
	r.hand()
	r.settings()
	r.screening()
	r.scored()
	r.reproduction()
	r.conversation()
	r.missing()
	r.validate()
	return r.out
}

func (r *reader) keep(field Field, err error) bool {
	return r.keepIn(r.out.Problems, field, err)
}

func (r *reader) keepIn(problems map[Field]unit.Problem, field Field, err error) bool {
	if err == nil {
		return true
	}
	if p, ok := err.(unit.Problem); ok {
		problems[field] = p
	} else {
		problems[field] = unit.Problem{Field: string(field), Given: r.form.Get(field), Accepted: err.Error()}
	}
	return false
}

// refuse notes that a field holds something else than what is accepted.
func (r *reader) refuse(field Field, accepted string) {
	r.out.Problems[field] = unit.Problem{Field: string(field), Given: r.form.Get(field), Accepted: accepted}
}

func (r *reader) date(field Field) unit.Date { return r.dateIn(r.out.Problems, field) }

func (r *reader) dateIn(problems map[Field]unit.Problem, field Field) unit.Date {
	text := r.form.Get(field)
	if text == "" {
		return unit.Date{}
	}
	d, err := unit.ParseDate(string(field), text)
	if r.keepIn(problems, field, err) {
		r.out.Understood[field] = d.Long()
	}
	return d
}

// choice reads one of several words; nothing, or the word for it, is the first
// of them.
func choice[T ~string](r *reader, field Field, words []T, nothing, accepted string) T {
	text := T(r.form.Get(field))
	if text == "" || string(text) == nothing {
		return words[0]
	}
	if !slices.Contains(words, text) {
		r.refuse(field, accepted)
		return words[0]
	}
	return text
}

func (r *reader) person() {
	in := &r.out.Intake
	in.Date = r.date(Date)
	in.Client.Name = r.form.Get(Name)
	in.Client.Born = r.date(Born)
	in.Client.EquationSex = energy.Sex(r.form.Get(Sex))
}

func (r *reader) missing() {
	for _, field := range needed {
		if r.form.Get(field) == "" {
			r.out.Missing = append(r.out.Missing, field)
		}
		if field == Activity {
			r.missingActivity()
		}
	}
}

// validate adds what the intake itself finds wrong with fields that were filled
// in and read; what is empty is missing, which is no fault.
func (r *reader) validate() {
	problems, ok := r.out.Intake.Validate().(unit.Problems)
	if !ok {
		return
	}
	for _, p := range problems {
		field := Field(p.Field)
		if _, known := r.out.Problems[field]; known {
			continue
		}
		switch {
		case field == GoalWeight && r.form.Get(GoalWeight) == "":
			r.out.Missing = append(r.out.Missing, GoalWeight)
			continue
		case field == Day: // typed nowhere: the sum is what was given
			r.out.Problems[field] = p
			continue
		case r.form.Get(field) == "" || (field == Activity && isWay(r.form.Get(Activity))):
			continue
		}
		p.Given = r.form.Get(field)
		r.out.Problems[field] = p
	}
}
