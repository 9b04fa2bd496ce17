package draft

import (
	"strconv"
	"strings"

	"handbreadth/domain"
	"handbreadth/domain/energy"
	"handbreadth/domain/food"
	"handbreadth/domain/macro"
	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
)

// Reading is what a form was understood to say.
type Reading struct {
	Intake domain.Intake
	// Problems has what is wrong with a field that was filled in.
	Problems map[Field]unit.Problem
	// Missing lists what a plan still needs, in the order of the form.
	Missing []Field
	// Understood tells how a quantity was read, in the units of the practice:
	// "72.6 kg" for "11 st 6 lb".
	Understood map[Field]string
}

// Complete reports whether a plan can be computed.
func (r Reading) Complete() bool { return len(r.Problems) == 0 && len(r.Missing) == 0 }

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
		Intake: domain.NewIntake(), Problems: map[Field]unit.Problem{}, Understood: map[Field]string{},
	}}
	r.person()
	r.measurements()
	r.activity()
	r.goal()
	r.food()
	r.settings()
	r.screening()
	r.missing()
	r.validate()
	return r.out
}

func (r *reader) keep(field Field, err error) bool {
	if err == nil {
		return true
	}
	if p, ok := err.(unit.Problem); ok {
		r.out.Problems[field] = p
	} else {
		r.out.Problems[field] = unit.Problem{Field: string(field), Given: r.form.Get(field), Accepted: err.Error()}
	}
	return false
}

func (r *reader) date(field Field) unit.Date {
	text := r.form.Get(field)
	if text == "" {
		return unit.Date{}
	}
	d, err := unit.ParseDate(string(field), text)
	if r.keep(field, err) {
		r.out.Understood[field] = d.Long()
	}
	return d
}

func (r *reader) weight(field Field) unit.Kilogram {
	text := r.form.Get(field)
	if text == "" {
		return 0
	}
	w, err := unit.ParseWeightIn(string(field), text, r.style.System)
	if r.keep(field, err) {
		r.out.Understood[field] = r.style.Weight(w)
	}
	return w
}

func (r *reader) person() {
	in := &r.out.Intake
	in.Date = r.date(Date)
	in.Client.Name = r.form.Get(Name)
	in.Client.Born = r.date(Born)
	in.Client.EquationSex = energy.Sex(r.form.Get(Sex))
}

func (r *reader) measurements() {
	in := &r.out.Intake
	in.Weight = r.weight(Weight)
	if text := r.form.Get(Height); text != "" {
		h, err := unit.ParseHeightIn(string(Height), text, r.style.System)
		if r.keep(Height, err) {
			r.out.Understood[Height] = r.style.Height(h)
		}
		in.Height = h
	}
}

func (r *reader) activity() {
	in := &r.out.Intake
	chosen := r.form.Get(Activity)
	if chosen != ActivityAsNumber {
		in.Activity = energy.Activity{Category: energy.Category(chosen)}
		return
	}
	pal, ok := r.number(PAL, float64(energy.LeastPAL), float64(energy.MostPAL), "a PAL of 1.0 to 2.5")
	if ok {
		in.Activity = energy.Activity{PAL: unit.PAL(pal)}
	}
}

func (r *reader) number(field Field, least, most float64, accepted string) (float64, bool) {
	text := r.form.Get(field)
	if text == "" {
		return 0, false
	}
	value, err := strconv.ParseFloat(strings.Replace(text, ",", ".", 1), 64)
	if err != nil || !(value >= least && value <= most) {
		r.out.Problems[field] = unit.Problem{Field: string(field), Given: text, Accepted: accepted}
		return 0, false
	}
	return value, true
}

func (r *reader) goal() {
	g := energy.Goal{Kind: energy.GoalKind(r.form.Get(GoalKind))}
	if g.Kind != energy.Maintain {
		g.Weight = r.weight(GoalWeight)
		g.By = r.date(GoalBy)
	}
	if text := r.form.Get(GoalEnergy); text != "" {
		e, err := unit.ParseEnergyIn(string(GoalEnergy), text, r.style.EnergyIn)
		if r.keep(GoalEnergy, err) {
			r.out.Understood[GoalEnergy] = r.style.EnergyPerDay(e)
		}
		g.Energy = e
	}
	r.out.Intake.Goal = g
}

func (r *reader) food() {
	in := &r.out.Intake
	if text := r.form.Get(Pattern); text != "" {
		in.Pattern = food.Pattern(text)
	}
	if n, ok := r.number(Meals, domain.LeastMeals, domain.MostMeals, "1 to 6 meals a day"); ok {
		if n != float64(int(n)) {
			r.out.Problems[Meals] = unit.Problem{Field: string(Meals), Given: r.form.Get(Meals), Accepted: "1 to 6 meals a day, as a whole number"}
			return
		}
		in.MealsPerDay = int(n)
	}
	for _, word := range AvoidWords(r.form.Get(Avoid)) {
		found, ok := food.ParseAllergen(word)
		if !ok {
			r.out.Problems[Avoid] = unit.Problem{Field: string(Avoid), Given: word, Accepted: "allergens of the EU and US lists, such as peanut, milk or gluten"}
			continue
		}
		in.Avoid = append(in.Avoid, found...)
	}
}

// AvoidWords splits the text of [Avoid] into its words.
func AvoidWords(text string) []string {
	var list []string
	for _, word := range strings.Split(text, ",") {
		if word = strings.TrimSpace(word); word != "" {
			list = append(list, word)
		}
	}
	return list
}

func (r *reader) settings() {
	in := &r.out.Intake
	in.CarbFatBalance = r.percent(Balance, 0, 100, in.CarbFatBalance)
	in.FatFloor = r.percent(FatFloor, macro.LeastFatFloor, macro.MostFatFloor, in.FatFloor)
	if v, ok := r.number(Protein, float64(macro.LeastProteinPerKg), float64(macro.MostProteinPerKg), "0.8 to 2.5 g/kg, or nothing"); ok {
		in.ProteinPerKg = unit.GramPerKilogram(v)
	}
}

func (r *reader) percent(field Field, low, high, otherwise unit.Percent) unit.Percent {
	text := r.form.Get(field)
	if text == "" {
		return otherwise
	}
	p, err := unit.ParsePercent(string(field), text, low, high)
	if !r.keep(field, err) {
		return otherwise
	}
	return p
}

func (r *reader) screening() {
	answers, reasons := screen.Answers{}, screen.Reasons{}
	for field, value := range r.form {
		name := string(field)
		if code, ok := strings.CutPrefix(name, screeningPrefix); ok {
			switch strings.TrimSpace(value) {
			case AnswerNo:
				answers[screen.Code(code)] = screen.No
			case AnswerYes:
				answers[screen.Code(code)] = screen.Yes
			}
			continue
		}
		rest, ok := strings.CutPrefix(name, reasonPrefix)
		if code, isText := strings.CutSuffix(rest, "."+string(ReasonText)); ok && isText {
			reasons[code] = r.reason(code)
		}
	}
	r.out.Intake.Screening, r.out.Intake.Reasons = answers, reasons
}

func (r *reader) reason(code string) screen.Reason {
	return screen.Reason{
		Text:         r.form.Get(Reason(code, ReasonText)),
		By:           r.form.Get(Reason(code, ReasonBy)),
		Registration: r.form.Get(Reason(code, ReasonRegistration)),
		Date:         r.date(Reason(code, ReasonDate)),
		Prescriber:   r.form.Get(Reason(code, ReasonPrescriber)),
	}
}

func (r *reader) missing() {
	for _, field := range needed {
		if r.form.Get(field) == "" {
			r.out.Missing = append(r.out.Missing, field)
		}
		if field == Activity && r.form.Get(Activity) == ActivityAsNumber && r.form.Get(PAL) == "" {
			r.out.Missing = append(r.out.Missing, PAL)
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
		if field == GoalWeight && r.form.Get(GoalWeight) == "" {
			r.out.Missing = append(r.out.Missing, GoalWeight)
			continue
		}
		if r.form.Get(field) == "" || (field == Activity && r.form.Get(Activity) == ActivityAsNumber) {
			continue
		}
		p.Given = r.form.Get(field)
		r.out.Problems[field] = p
	}
}
