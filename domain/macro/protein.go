package macro

import (
	"fmt"

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
	lean := in.Basis == BasisLean && in.Lean.Value > 0
	if lean && in.Asked == 0 {
		choice = choice.onLean()
	}
	p := proteinDay{in: in, on: on}
	p.steps = append(p.steps, on.steps...)
	p.set(unit.Gram(float64(choice.value)*float64(on.weight)), perKgStep(choice, on, lean && in.Asked == 0))
	for _, least := range in.leasts() {
		if p.grams < least.grams {
			p.set(least.grams, least.step)
		}
	}
	capped := p.hold()
	return ProteinTarget{Grams: derive.Exact(p.grams, p.steps...), PerKg: choice.value, Basis: on.weight, On: on.name, Capped: capped}
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

// hold lowers protein to its limit, and reports whether it did.
func (p *proteinDay) hold() bool {
	limit, words := p.in.limit()
	if p.grams <= limit {
		return false
	}
	p.set(limit, derive.Step{
		Label: "Protein, held within " + words, Formula: "the lower of " + words + " and what the situation asks",
		Inputs: []derive.Input{p.in.energyInput(), weightInput(p.in.least()), {Name: "fat floor", Value: float64(p.in.FatFloor), Unit: "%"}},
		Source: derive.Source{Text: "IOM 2002/2005: protein 10-35 % of energy", Confidence: derive.Seen},
	})
	return true
}

func perKgStep(choice perKg, on reckoned, carried bool) derive.Step {
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
		step.Formula = "grams per kg of weight / 0.8 × lean weight"
		step.Note += " A body with middling fat is lean by 0.8 of its weight (convention)."
	}
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

// limit returns the most protein that fits, and words for it.
func (in ProteinInput) limit() (unit.Gram, string) {
	limit, words := gramsAt(in.Energy, MostProteinShare, EnergyPerGramProtein), "35 % of energy"
	if least := unit.Gram(float64(LeastProteinPerKg) * float64(in.least().weight)); least > limit {
		limit, words = least, "0.8 g/kg"
	}
	if room := gramsAt(in.Energy, 100-in.FatFloor, EnergyPerGramProtein); room < limit {
		return room, fmt.Sprintf("what the fat floor of %.3g %% leaves", float64(in.FatFloor))
	}
	return limit, words
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
