package reports

import (
	"slices"
	"strings"

	"handbreadth/domain/derive"
	"handbreadth/domain/energy"
	"handbreadth/domain/macro"
	"handbreadth/domain/unit"
)

// energyOf writes an energy and what it is an amount of.
func (w writer) energyOf(e unit.Kilocalorie) (value, unitName string) {
	amount, name := w.style.EnergyValue(e)
	return w.style.Number(amount, 0), name
}

// energyReasons lead from rest to the target.
func (w writer) energyReasons() []reason {
	p, t := w.plan, w.targets
	list := []reason{
		w.atRest(),
		{label: "Moving about", value: "× " + w.figureOf(float64(p.Activity.Value)), words: w.activityWords(), steps: p.Activity.Steps},
	}
	value, name := w.energyOf(p.Maintenance.Value)
	words := fill(wordsMaintenance, w.energyFrom(p.Maintenance.Low), w.energyAbout(p.Maintenance.High))
	if p.Intake.Reproduction.Told() {
		words += " " + wordsMaintenanceBaby
	}
	list = append(list, reason{label: "To hold your weight", value: value, unit: name, words: words, aside: w.crossChecks(), steps: p.Maintenance.Steps})
	value, name = w.change()
	list = append(list, reason{label: "Your goal", value: value, unit: name, words: w.goalWords(), steps: p.Goal.Rate.Steps})
	value, name = w.energyOf(t.Energy.Value)
	return append(list, reason{
		label: "Your target", value: value, unit: name, words: w.targetWords(),
		steps: slices.Concat(t.Energy.Steps, w.ruleSteps()),
	})
}

// atRest tells where resting energy comes from, and how far the other published
// equations agree.
func (w writer) atRest() reason {
	p := w.plan
	value, name := w.energyOf(p.Resting.Value)
	words := wordsResting
	if p.Intake.MeasuredResting > 0 {
		words = wordsRestingMeasured
	}
	if a := p.Agreement; a.Of > 0 {
		words += " " + fill(wordsRestingOthers, w.energyFrom(a.Least), w.energyAbout(a.Most))
	}
	steps := p.Resting.Steps
	if w.usesLean() {
		steps = slices.Concat(p.Body.Lean.Steps, steps)
	}
	return reason{label: "At rest", value: value, unit: name, words: words, steps: steps}
}

// usesLean reports whether resting energy was worked out from lean mass.
func (w writer) usesLean() bool {
	in := w.plan.Intake
	return in.MeasuredResting <= 0 && (in.RestingEquation == energy.Cunningham1980 || in.RestingEquation == energy.KatchMcArdle)
}

// crossChecks tells in one line what other published ways give.
func (w writer) crossChecks() string {
	var ways []string
	for _, c := range w.plan.CrossChecks {
		ways = append(ways, c.Name+", "+w.style.EnergyPerDay(c.Energy.Value))
	}
	if len(ways) == 0 {
		return ""
	}
	return "Other published ways: " + strings.Join(ways, "; ") + "."
}

// byModel reports that a weight was wished for by a day or at a rate, and that
// the model of weight dynamics found the energy for it.
func (w writer) byModel() bool {
	_, wished := w.plan.Goal.StaticTarget.Last()
	return wished && w.plan.Projection != nil
}

// ruleSteps is the sum of the static rule, where the model decided and not it.
func (w writer) ruleSteps() []derive.Step {
	if !w.byModel() {
		return nil
	}
	steps := slices.Clone(w.plan.Goal.StaticTarget.Steps)
	for i := range steps {
		steps[i].Label = "By the old rule"
	}
	return steps
}

// targetWords tell how the target came about. Where a weight was wished for by a
// day or at a rate, the model decided and the static rule stands beside it.
func (w writer) targetWords() string {
	o := w.plan.Goal
	low, high := energyRange(w.plan)
	about := " " + fill(wordsWhatRange, w.energyFrom(low), w.energyAbout(high))
	if !w.byModel() {
		return wordsTarget + about
	}
	words := wordsTargetModel
	if goal := w.plan.Intake.Goal; goal.Weight != 0 && !o.ReachedOn.IsZero() {
		words = fill(wordsTargetBy, w.style.Weight(goal.Weight), o.ReachedOn.Long())
	}
	return words + " " + fill(wordsTargetRule, w.style.EnergyPerDay(o.StaticTarget.Value)) + about
}

// foodReasons lead from the target to the measures.
func (w writer) foodReasons() []reason {
	t := w.targets
	brings, name := w.energyOf(t.Allotment.Brings.Energy)
	return []reason{
		{label: "Protein", value: w.style.Grams(t.Protein.Value), words: w.proteinWords(), steps: t.Protein.Steps},
		{label: "Fat and its floor", value: w.style.Grams(t.Fat.Value), words: w.fatWords(), steps: t.Fat.Steps},
		{label: "Carbohydrate", value: w.style.Grams(t.Carbohydrate.Value), words: w.carbohydrateWords(), steps: t.Carbohydrate.Steps},
		{label: "Fibre", value: w.style.Grams(t.Fibre.Value), words: w.fibreWords(), steps: t.Fibre.Steps},
		{label: "From numbers to hands", value: brings, unit: name, words: wordsMeasures, steps: w.allottedSteps()},
	}
}

// proteinWords name the weight that protein was counted on.
func (w writer) proteinWords() string {
	on, known := wordsProteinOn[w.targets.ProteinOn]
	if !known {
		return wordsProtein
	}
	return wordsProtein + " " + on
}

func (w writer) fatWords() string {
	t := w.targets
	words := fill(wordsFat, w.style.Grams(t.Floor.Grams.Value), w.style.Percent(t.FatFloor))
	if t.Floor.ByWeight {
		words += " " + wordsFatByWeight
	}
	return words
}

func (w writer) carbohydrateWords() string {
	if w.plan.Intake.Counting == macro.CountAvailable {
		return wordsCarbohydrate + " " + wordsCarbohydrateAvailable
	}
	return wordsCarbohydrate
}

// fibreWords tell in how many weeks the fibre of now is raised to the target.
func (w writer) fibreWords() string {
	usual := w.plan.Intake.UsualFibre
	rise, weeks := macro.FibreRise(w.targets.Fibre.Value, usual)
	switch {
	case usual <= 0:
		return wordsFibre + " " + wordsFibreSlowly
	case rise <= 0:
		return wordsFibre + " " + wordsFibreEnough
	case weeks <= 1:
		return wordsFibre + " " + fill(wordsFibreSoon, w.style.Grams(usual))
	}
	return wordsFibre + " " + fill(wordsFibreRise, w.style.Grams(usual), w.style.Grams(macro.FibreStep), w.style.Number(float64(weeks), 0))
}

// allottedSteps are the sums of what the day's measures bring.
func (w writer) allottedSteps() []derive.Step {
	var steps []derive.Step
	for _, s := range w.targets.Allotment.Steps {
		if s.Key == "allotted_energy" {
			steps = append(steps, s)
		}
	}
	return steps
}

func (w writer) activityWords() string {
	chosen := w.plan.Intake.Activity
	if chosen.PAL == 0 {
		for _, class := range energy.Classes() {
			if class.Category == chosen.Category {
				return wordsActivity + " " + wordsActivityClass[class.Category]
			}
		}
	}
	return wordsActivity + " " + wordsActivityGiven
}

// change is what the goal adds to maintenance energy.
func (w writer) change() (value, name string) {
	o := w.plan.Goal
	if !o.Lowers() && !o.Raises() {
		return "0", ""
	}
	amount, name := w.style.EnergyValue(o.Change)
	sign := "+"
	if amount < 0 {
		sign, amount = "−", -amount
	}
	return sign + w.style.Number(amount, 0), name
}

func (w writer) goalWords() string {
	o := w.plan.Goal
	rate := o.Rate.Value
	if rate < 0 {
		rate = -rate
	}
	switch {
	case o.Lowers():
		return fill(wordsGoalLower, w.style.Rate(rate))
	case o.Raises():
		return fill(wordsGoalRaise, w.style.Rate(rate))
	}
	return wordsGoalHold
}
