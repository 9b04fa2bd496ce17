package macro

import (
	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
)

// leastProtein is an amount under which protein does not go. Its formula is that
// of the amount alone.
type leastProtein struct {
	grams unit.Gram
	step  derive.Step
}

// leasts lists the amounts under which protein does not go: the RDA of 0.8 g/kg,
// pregnancy and breastfeeding, 60 g after bariatric surgery, and 15 % of energy
// where the situation decides. For kidney disease there are none.
func (in ProteinInput) leasts() []leastProtein {
	if in.Kidney {
		return nil
	}
	all := []leastProtein{in.allowance()}
	if in.Stage != StageNone {
		all = append(all, in.forTwo())
	}
	if in.AfterBariatric {
		all = append(all, leastProtein{LeastProteinAfterBariatric, derive.Step{
			Label: "Protein, at least 60 g after bariatric surgery", Formula: "60",
			Source: derive.Source{Text: "AACE/ASMBS 2019: at least 60 g a day", Confidence: derive.SeenSecond},
		}})
	}
	if in.Asked == 0 {
		all = append(all, leastProtein{gramsAt(in.Energy, UsualProteinShare, EnergyPerGramProtein), derive.Step{
			Label: "Protein, at least 15 % of energy", Formula: "15 % × target energy / 4",
			Inputs: []derive.Input{in.energyInput()}, Source: derive.CommonPractice,
			Note: "Inside the 10-35 % of energy of IOM 2002/2005.",
		}})
	}
	return all
}

// allowance matters where lean weight is the basis and little was asked for.
func (in ProteinInput) allowance() leastProtein {
	on := in.least()
	return leastProtein{unit.Gram(float64(LeastProteinPerKg) * float64(on.weight)), derive.Step{
		Label: "Protein, at least 0.8 g/kg", Formula: "0.8 × " + on.name,
		Inputs: []derive.Input{weightInput(on)},
		Source: derive.Source{Text: "IOM 2002/2005, RDA 0.8 g/kg", Confidence: derive.Seen},
	}}
}

// ReferenceIntake is protein for each kilogram that pregnancy and breastfeeding
// add to. Source: EFSA 2012, EFSA Journal 10(2):2557 (seen).
const ReferenceIntake unit.GramPerKilogram = 0.83

// stageRow is what a stage adds a day.
type stageRow struct {
	adds unit.Gram
	name string
}

// stages: EFSA 2012, EFSA Journal 10(2):2557 (seen): 1, 9 and 28 g by trimester;
// 19 g in the first six months of breastfeeding and 13 g after.
var stages = map[Stage]stageRow{
	StageNotTold:            {28, "the highest, as no stage was told"},
	FirstTrimester:          {1, "first trimester"},
	SecondTrimester:         {9, "second trimester"},
	ThirdTrimester:          {28, "third trimester"},
	BreastfeedingFirstHalf:  {19, "breastfeeding, first six months"},
	BreastfeedingSecondHalf: {13, "breastfeeding, after six months"},
}

func (in ProteinInput) forTwo() leastProtein {
	row, on := stages[in.Stage], in.least()
	return leastProtein{unit.Gram(float64(ReferenceIntake)*float64(on.weight)) + row.adds, derive.Step{
		Label: "Protein, at least what pregnancy or breastfeeding needs", Formula: "0.83 × " + on.name + " + addition",
		Inputs: []derive.Input{
			weightInput(on),
			{Name: "stage", Text: row.name},
			{Name: "addition", Value: float64(row.adds), Unit: "g/day"},
		},
		Source: derive.Source{Text: "EFSA 2012, EFSA Journal 10(2):2557, reference intake for protein", Confidence: derive.Seen},
	}}
}
