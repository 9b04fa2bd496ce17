package sheet

import (
	"handbreadth/domain"
	composition "handbreadth/domain/body"
	"handbreadth/domain/derive"
	"handbreadth/domain/energy"
	"handbreadth/domain/hand"
	"handbreadth/domain/unit"
	"handbreadth/ui/chart"
	"handbreadth/ui/draft"
)

// Source is what the sheet reads: the open client file.
type Source interface {
	Plan() (domain.Plan, bool)
	Reading() draft.Reading
	Get(field draft.Field) string
	Style() unit.Style
	Hear(f func(changed draft.Field))
}

// state says what a client file has come to.
type state int

const (
	empty    state = iota // nothing was entered yet
	waiting               // something is missing or could not be read
	referred              // a referral takes the plan's place
	held                  // a reason is missing
	open                  // may be issued
)

// figure is a number as the sheet tells it, with how it came about.
type figure struct {
	Value string // "1884 kcal"; "" where there is none yet
	Note  string // "likely 1640 to 2130"
	Steps []derive.Step
	More  string // what other ways say to the same; may be empty
}

// view is everything that the sheet shows, in words and numbers.
type view struct {
	State state
	// Lead says what to do, or why there is no target; "" where nothing needs saying.
	Lead string
	// Held is the way to the first reason that is missing; empty where none is.
	Held action

	Target, Resting, Maintenance figure
	Aside                        string // "500 kcal under maintenance"
	// Expected is the weight when the goal is reached, or at the end of the course;
	// empty where there is no course.
	Expected figure
	When     string
	Course   chart.Course
	// Targets is nil where there is no target.
	Targets                    *domain.Targets
	Protein, Fat, Carbohydrate figure
	Fibre                      figure
	Day                        hand.Measures
	DayWords                   string // "over 3 meals"
	Wants                      []want
	Groups                     []group
}

// look reads the client file.
func look(s Source) view {
	v := view{Wants: wantsOf(s.Reading())}
	plan, planned := s.Plan()
	if !planned {
		v.unplanned(s)
		return v
	}
	v.Groups = grouped(plan)
	if plan.Gate.Referred() {
		v.State, v.Lead = referred, referredLead(len(plan.Gate.Refers))
		return v
	}
	v.State = open
	if plan.Gate.Held() {
		v.State, v.Held = held, answerTo(plan.Gate.Holds[0], plan.Intake.Screening)
	}
	v.base(plan.Resting, plan.Activity, plan.Maintenance, s.Style())
	v.Resting.More, v.Maintenance.More = otherEquations(plan, s.Style()), otherTotals(plan, s.Style())
	v.targets(plan, s.Style())
	v.course(plan, s.Style())
	return v
}

// unplanned tells what can be told before a plan is complete. An answer that
// stops any plan is told at once: it must not wait for the weight.
func (v *view) unplanned(s Source) {
	reading := s.Reading()
	found := fromAnswers(reading.Intake.Screening)
	v.Groups = found.groups()
	switch {
	case found.stops > 0:
		v.State, v.Lead = referred, earlyLead(found.stops)
	case untouched(s):
		v.State, v.Lead = empty, emptyLead
	default:
		v.State, v.Lead = waiting, waitingLead
		v.early(reading, s.Style())
	}
}

// untouched reports whether none of the answers that a plan needs was given;
// the date of the visit fills itself in.
func untouched(s Source) bool {
	for _, field := range []draft.Field{draft.Born, draft.Sex, draft.Height, draft.Weight, draft.Activity, draft.GoalKind} {
		if s.Get(field) != "" {
			return false
		}
	}
	return true
}

// early tells resting and maintenance energy as soon as their own answers are
// there.
func (v *view) early(r draft.Reading, style unit.Style) {
	if !usable(r, draft.Date, draft.Born, draft.Sex, draft.Height, draft.Weight) {
		return
	}
	in := r.Intake
	resting := energy.Resting(in.RestingEquation, restingInput(in))
	v.Resting = energyFigure(resting, style)
	if usable(r, draft.Activity, draft.PAL, draft.Customary, draft.Day) {
		level := in.Activity.Level()
		v.base(resting, level, energy.WithReproduction(energy.Maintenance(resting, level), in.Reproduction), style)
	}
}

// restingInput is what the equations need of an intake that is not a plan yet.
func restingInput(in domain.Intake) energy.RestingInput {
	figure := composition.Figure{
		Sex: in.Client.EquationSex, Age: in.Age(), Weight: in.Weight, Height: in.Height,
		Neck: in.Body.Neck, Waist: in.Body.Waist, Hip: in.Body.Hip, MeasuredFat: in.Body.Fat,
	}
	lean := composition.LeanMass(figure)
	return energy.RestingInput{
		Sex: figure.Sex, Age: figure.Age, Weight: figure.Weight, Height: figure.Height,
		LeanMass: lean.Value, LeanError: (lean.High - lean.Low) / 2, LeanMeasured: composition.Fat(figure).Measured(),
		Measured: in.MeasuredResting,
	}
}

// usable reports whether the fields were given and understood.
func usable(r draft.Reading, fields ...draft.Field) bool {
	for _, field := range fields {
		if _, wrong := r.Problems[field]; wrong {
			return false
		}
		for _, missing := range r.Missing {
			if missing == field {
				return false
			}
		}
	}
	return true
}

func (v *view) base(resting derive.Derived[unit.Kilocalorie], level derive.Derived[unit.PAL], maintenance derive.Derived[unit.Kilocalorie], style unit.Style) {
	v.Resting = energyFigure(resting, style)
	v.Maintenance = energyFigure(maintenance, style)
	v.Maintenance.Steps = joined(resting.Steps, level.Steps, maintenance.Steps)
}

func (v *view) targets(p domain.Plan, style unit.Style) {
	t := p.Targets
	v.Targets = t
	v.Target = figure{
		Value: style.Energy(t.Energy.Value), Note: targetNote(p, style),
		Steps: joined(v.Maintenance.Steps, t.Energy.Steps),
	}
	v.Aside = aside(*p.Goal, style)
	v.Protein = gramFigure(t.Protein, t.Shares.Protein, style)
	v.Fat = gramFigure(t.Fat, t.Shares.Fat, style)
	v.Carbohydrate = gramFigure(t.Carbohydrate, t.Shares.Carbohydrate, style)
	v.Fibre = figure{Value: style.Grams(t.Fibre.Value), Steps: t.Fibre.Steps}
	v.Day = t.Allotment.Day
	v.DayWords = overMeals(p.Intake.MealsPerDay)
}

// course tells the expected weight of the day that matters most.
func (v *view) course(p domain.Plan, style unit.Style) {
	course, known := chart.Of(p, style)
	if !known {
		return
	}
	words := course.Summary(style)
	v.Course, v.When = course, words.Date
	v.Expected = figure{Value: words.Expected, Note: expectedNote(words), Steps: joined(p.Goal.MeanRate.Steps, p.Projection.Final.Steps, p.Projection.Holding.Steps)}
}

// wantsShown lists what the sheet asks for. Once there is a plan, the hold for
// questions that were not asked says so better; before the first answer the
// one button does.
func (v view) wantsShown() []want {
	switch v.State {
	case empty, held, open:
		return nil
	}
	return v.Wants
}

func joined(lists ...[]derive.Step) []derive.Step {
	var all []derive.Step
	for _, list := range lists {
		all = append(all, list...)
	}
	return all
}
