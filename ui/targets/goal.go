package targets

import (
	"strings"

	"handbreadth/domain"
	"handbreadth/domain/energy"
	"handbreadth/domain/unit"
	"handbreadth/ui/widgets"
)

// goalView is what was asked for and what is to be said about it.
type goalView struct {
	Kind        energy.GoalKind
	NamesWeight bool // a weight and a pace make sense for the goal
	Wish        wish // the way that the form uses
	Wishes      bool // the form names a way
	// Asked says the goal back: "To lose weight, to 66 kg by 31 August 2026."
	Asked string
	// Customary says what is reckoned with while no pace is agreed.
	Customary string
	// Trouble says what keeps the goal from being worked out, where no field shows
	// it.
	Trouble string
	// Unsafe says which guard is passed; Offers lead back inside, and Safe tells
	// the safe energy with how it came about.
	Unsafe string
	Offers []fix
	Safe   row
}

func goalOf(s Source) goalView {
	g := goalView{Kind: kindOf(s), NamesWeight: kindOf(s) != energy.Maintain}
	g.Wish, g.Wishes = wishOf(s.Get, g.Kind)
	g.Trouble = trouble(s, g)
	return g
}

// comesTo adds what is known once there is a target.
func (g *goalView) comesTo(p domain.Plan, style unit.Style) {
	g.Asked, g.Customary = asked(p.Intake.Goal, style), customary(p, style)
	if unsafe(*p.Goal) {
		g.Unsafe, g.Offers = unsafeWords(p, style), offers(p, style)
		g.Safe = row{Label: "Safe energy", Value: style.Energy(p.Goal.SafeEnergy), Steps: p.Goal.SafeSteps}
	}
}

// customary says what energy is taken where the goal names no pace.
func customary(p domain.Plan, style unit.Style) string {
	g := p.Intake.Goal
	if g.Kind == energy.Maintain || g.Energy != 0 || g.PerWeek != 0 || (g.Weight != 0 && !g.By.IsZero()) {
		return ""
	}
	beside := " under maintenance"
	if g.Kind == energy.Gain {
		beside = " over maintenance"
	}
	return "No pace is agreed yet, so a customary " + style.EnergyPerDay(max(p.Goal.Change, -p.Goal.Change)) + beside + " is taken."
}

// trouble tells what is wrong with the goal where the field that has it is not
// shown: two ways at once, or a problem of the other way.
func trouble(s Source, g goalView) string {
	var named []string
	for _, w := range wishes {
		if g.NamesWeight && s.Get(w.field()) != "" {
			named = append(named, map[wish]string{byDate: "a date", byRate: "a rate", byEnergy: "an energy"}[w])
		}
	}
	if len(named) > 1 {
		return "The goal names " + strings.Join(named, " and ") + ". Choose the one that decides; the others follow from it."
	}
	for _, w := range wishes {
		if p, wrong := s.Reading().Problems[w.field()]; wrong && w != g.Wish {
			return widgets.ProblemWords(p)
		}
	}
	return ""
}

func asked(g energy.Goal, style unit.Style) string {
	what := map[energy.GoalKind]string{
		energy.Lose: "To lose weight", energy.Maintain: "To hold the weight", energy.Gain: "To gain weight",
	}[g.Kind]
	var parts []string
	if g.Weight != 0 && g.Kind != energy.Maintain {
		parts = append(parts, "to "+style.Weight(g.Weight))
	}
	if !g.By.IsZero() && g.Kind != energy.Maintain {
		parts = append(parts, "by "+g.By.Long())
	}
	if g.PerWeek != 0 && g.Kind != energy.Maintain {
		parts = append(parts, "by "+style.Rate(g.PerWeek))
	}
	if g.Energy != 0 {
		parts = append(parts, "eating "+style.EnergyPerDay(g.Energy)+", as agreed")
	}
	if len(parts) == 0 {
		return what + "."
	}
	return what + ", " + strings.Join(parts, " ") + "."
}
