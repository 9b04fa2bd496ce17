package targets

import (
	"handbreadth/domain"
	"handbreadth/domain/derive"
	"handbreadth/domain/energy"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
)

// state says what a client file has come to.
type state int

const (
	waiting  state = iota // something is missing or could not be read
	referred              // a referral takes the plan's place
	held                  // a reason is missing
	open                  // may be issued
)

// row is a number as the section tells it, with how it came about.
type row struct {
	Value string // "1884 kcal"
	Note  string // "likely 1640 to 2130"
	Steps []derive.Step
}

// fix is a change of the form that one button makes.
type fix struct {
	Label   string
	Changes []change
}

type change struct {
	Field draft.Field
	Text  string
}

// view is everything that the section shows beside what was typed.
type view struct {
	State state
	// Lead says why there is no target, or that it is held; "" where it is open.
	Lead string
	Way  way // where the lead is answered

	NamesWeight bool // weight and date make sense for the goal
	Goal        goalWords

	HasMaintenance                 bool
	Resting, Activity, Maintenance row
	Target                         row
	Step                           string // what leads to the target: "− 339 kcal = target energy"

	HasTargets                        bool
	Protein, Fat, Carbohydrate, Fibre row
	Grams                             [3]unit.Gram // protein, fat, carbohydrate
	ProteinInForce                    string       // "1.2 by situation"
	ProteinWhy                        string
	Balance                           balance
}

// way leads to another section.
type way struct {
	Label   string
	Section string
	Field   draft.Field
}

func look(s Source) view {
	v := view{Step: "Target energy", NamesWeight: energy.GoalKind(s.Get(draft.GoalKind)) != energy.Maintain}
	plan, planned := s.Plan()
	if !planned {
		v.State, v.Lead = waiting, waitingLead(s.Reading())
		v.Way = wayToWant(s.Reading())
		return v
	}
	v.chain(plan, s.Style())
	if plan.Gate.Referred() {
		v.State, v.Lead = referred, referredLead(plan)
		v.Way = wayToCause(plan.Gate.Refers[0])
		return v
	}
	v.State = open
	if plan.Gate.Held() {
		v.State, v.Lead = held, heldLead(plan)
		v.Way = wayToReason(plan)
	}
	v.Goal = goalOf(plan, s.Style())
	v.targets(plan, s.Style())
	return v
}

func (v *view) chain(p domain.Plan, style unit.Style) {
	v.HasMaintenance = true
	v.Resting = row{style.Energy(p.Resting.Value), likely(p.Resting.Low, p.Resting.High, style), p.Resting.Steps}
	v.Activity = row{style.Number(float64(p.Activity.Value), 2), activityNote(p, style), p.Activity.Steps}
	v.Maintenance = row{style.Energy(p.Maintenance.Value), likely(p.Maintenance.Low, p.Maintenance.High, style), p.Maintenance.Steps}
}

func (v *view) targets(p domain.Plan, style unit.Style) {
	t := p.Targets
	v.HasTargets = true
	v.Target = row{style.Energy(t.Energy.Value), targetNote(p, v.State, style), t.Energy.Steps}
	v.Step = stepWords(*p.Goal, style)
	v.Protein = macroOf(t.Protein, t.Shares.Protein, proteinBand, style)
	v.Fat = macroOf(t.Fat, t.Shares.Fat, fatBand, style)
	v.Carbohydrate = macroOf(t.Carbohydrate, t.Shares.Carbohydrate, carbohydrateBand, style)
	v.Fibre = row{style.Grams(t.Fibre.Value), fibreNote(style), t.Fibre.Steps}
	v.Grams = [3]unit.Gram{t.Protein.Value, t.Fat.Value, t.Carbohydrate.Value}
	v.ProteinWhy = "Protein: " + proteinWhy(t.Protein.Steps, style) + "."
	v.ProteinInForce = style.Number(float64(t.ProteinPerKg), 1) + " by situation"
	v.Balance = balanceOf(p, style)
}
