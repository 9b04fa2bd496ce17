package macro

import (
	"fmt"
	"strings"

	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
)

// ProteinInput is what decides a protein target.
type ProteinInput struct {
	Weights
	Age            unit.Year
	Direction      Direction
	Training       Training
	Stage          Stage
	Kidney         bool                 // chronic kidney disease
	AfterBariatric bool                 // bariatric surgery in the past
	Asked          unit.GramPerKilogram // of the basis; 0: by situation
	Basis          Basis
	Energy         unit.Kilocalorie // target, a day
	FatFloor       unit.Percent     // in force, of energy
}

// ProteinTarget is protein a day and how it came about.
type ProteinTarget struct {
	Grams derive.Derived[unit.Gram]
	// PerKg is for each kilogram of Basis.
	PerKg unit.GramPerKilogram
	// Basis is the weight that it is reckoned on, and On its name: "weight",
	// "adjusted weight" or "lean weight".
	Basis  unit.Kilogram
	On     string
	Capped bool // set lower than the situation asks, to fit the energy
}

// Protein returns protein a day: grams a kilogram by situation times the weight
// of the basis; raised to the least of [ProteinInput.leasts]; at most 35 % of
// energy (but not under 0.8 g/kg) and never so much that the fat floor does not
// fit. For kidney disease it is 0.8 g for each kilogram of full weight, whatever
// the basis, and nothing raises it.
func Protein(in ProteinInput) ProteinTarget {
	if in.Kidney {
		in.Basis = BasisCurrent
	}
	on := in.on(in.Basis)
	choice := choosePerKg(in)
	perKg, carried := choice.value, in.Basis == BasisLean && in.Lean.Value > 0 && in.Asked == 0
	if carried {
		perKg /= LeanShare
	}
	p := proteinDay{in: in, on: on}
	p.steps = append(p.steps, on.steps...)
	p.set(unit.Gram(float64(perKg)*float64(on.weight)), in.perKgStep(choice, on, carried))
	for _, least := range in.leasts() {
		if p.grams < least.grams {
			p.bound(least.grams, "higher", least.step)
		}
	}
	capped := p.hold()
	return ProteinTarget{Grams: derive.Exact(p.grams, p.steps...), PerKg: perKg, Basis: on.weight, On: on.name, Capped: capped}
}

// proteinDay is protein while it is worked out.
type proteinDay struct {
	in    ProteinInput
	on    reckoned
	grams unit.Gram
	steps []derive.Step
}

func (p *proteinDay) set(grams unit.Gram, step derive.Step) {
	step.Key, step.Result, step.Unit = "protein", float64(grams), "g/day"
	p.grams, p.steps = grams, append(p.steps, step)
}

// bound sets protein to an amount that is the higher, or the lower, of that and
// what it was.
func (p *proteinDay) bound(grams unit.Gram, which string, step derive.Step) {
	const before = "protein before"
	step.Formula = "the " + which + " of " + step.Formula + " and " + before
	step.Inputs = append(step.Inputs, derive.Input{Name: before, Value: float64(p.grams), Unit: "g/day"})
	p.set(grams, step)
}

// hold lowers protein to its limit, and reports whether it did.
func (p *proteinDay) hold() bool {
	limit, step := p.in.limit()
	if p.grams <= limit {
		return false
	}
	p.bound(limit, "lower", step)
	return true
}

func (in ProteinInput) perKgStep(choice perKg, on reckoned, carried bool) derive.Step {
	step := derive.Step{
		Label: "Protein", Formula: "grams per kg × " + on.name,
		Inputs: []derive.Input{
			{Name: "situation", Text: choice.why},
			{Name: "grams per kg", Value: float64(choice.value), Unit: "g/kg"},
			weightInput(on),
		},
		Source: choice.source, Note: choice.note(),
	}
	if carried {
		step.Formula = "grams per kg / 0.8 × lean weight"
		step.Note += " These are for each kilogram of weight; a body with middling fat is lean by 0.8 of it (convention)."
	}
	if on.name == adjustedName && on.weight < in.Current && in.Current > 0 {
		step.Note += fmt.Sprintf(" It counts on adjusted weight, where published ranges count on weight: %.2f g for each kilogram of weight.",
			float64(choice.value)*float64(on.weight/in.Current))
	}
	step.Note = strings.TrimSpace(step.Note)
	return step
}

// least returns the weight that the least and the most of protein are reckoned
// on: full weight for kidney disease, else the weight by BMI.
func (in ProteinInput) least() reckoned {
	if in.Kidney {
		return in.on(BasisCurrent)
	}
	return in.on(BasisByBMI)
}

// limit returns the most protein that fits, and the step that says so.
func (in ProteinInput) limit() (unit.Gram, derive.Step) {
	words := "35 % of energy"
	step := derive.Step{
		Formula: "35 % × target energy / 4", Inputs: []derive.Input{in.energyInput()},
		Source: derive.Source{Text: "IOM 2002/2005: protein 10-35 % of energy", Confidence: derive.Seen},
	}
	limit := gramsAt(in.Energy, MostProteinShare, EnergyPerGramProtein)
	if on := in.least(); unit.Gram(float64(LeastProteinPerKg)*float64(on.weight)) > limit {
		limit, words = unit.Gram(float64(LeastProteinPerKg)*float64(on.weight)), "0.8 g/kg"
		step.Formula, step.Inputs = "0.8 × "+on.name, []derive.Input{weightInput(on)}
		step.Note = "35 % of energy is less than this."
	}
	if room := gramsAt(in.Energy, 100-in.FatFloor, EnergyPerGramProtein); room < limit {
		limit, words = room, fmt.Sprintf("what the fat floor of %.3g %% leaves", float64(in.FatFloor))
		step.Formula = "(1 − fat floor) × target energy / 4"
		step.Inputs = []derive.Input{{Name: "fat floor", Value: float64(in.FatFloor), Unit: "%"}, in.energyInput()}
		step.Source, step.Note = derive.FromSteps, "The fat floor does not give way."
	}
	step.Label = "Protein, held within " + words
	return limit, step
}

func (in ProteinInput) energyInput() derive.Input {
	return derive.Input{Name: "target energy", Value: float64(in.Energy), Unit: "kcal/day"}
}

func weightInput(on reckoned) derive.Input {
	return derive.Input{Name: on.name, Value: float64(on.weight), Unit: "kg"}
}

func gramsAt(energy unit.Kilocalorie, share unit.Percent, perGram float64) unit.Gram {
	return unit.Gram(float64(energy) * float64(share) / 100 / perGram)
}
