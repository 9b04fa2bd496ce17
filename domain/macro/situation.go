package macro

// Direction is where target energy lies beside maintenance energy.
type Direction int

// The directions.
const (
	Level Direction = iota
	Lowering
	Raising
)

// Basis is the weight that protein is reckoned on.
type Basis string

// The weights that protein can be reckoned on.
const (
	BasisByBMI    Basis = ""         // current weight; adjusted from a BMI of 30
	BasisCurrent  Basis = "current"  // the weight as it is
	BasisAdjusted Basis = "adjusted" // reference weight and a part of what is above it
	BasisLean     Basis = "lean"     // weight without fat
)

// Bases lists the bases, the default first.
func Bases() []Basis { return []Basis{BasisByBMI, BasisCurrent, BasisAdjusted, BasisLean} }

// Training is how a client trains, as far as protein needs it.
type Training string

// The kinds of training.
const (
	TrainingNone      Training = ""
	TrainingEndurance Training = "endurance"
	TrainingStrength  Training = "strength"
)

// Trainings lists the kinds of training, none first.
func Trainings() []Training {
	return []Training{TrainingNone, TrainingEndurance, TrainingStrength}
}

// Stage is a stage of pregnancy or breastfeeding, as far as protein needs it.
type Stage int

// The stages. StageNotTold stands for "pregnant or breastfeeding, no more was
// told": the highest addition is then kept.
const (
	StageNone Stage = iota
	StageNotTold
	FirstTrimester
	SecondTrimester
	ThirdTrimester
	BreastfeedingFirstHalf  // the child's first six months
	BreastfeedingSecondHalf // after six months
)

// Counting is how carbohydrate and its energy are counted.
type Counting string

// The ways to count.
const (
	// CountTotal counts total carbohydrate, fibre inside it, at 4 kcal/g.
	CountTotal Counting = ""
	// CountAvailable counts available carbohydrate at 4 and fibre at 2 kcal/g,
	// as labels in the European Union do.
	CountAvailable Counting = "available"
)

// Countings lists the ways to count, the default first.
func Countings() []Counting { return []Counting{CountTotal, CountAvailable} }

// perGramFibre is the energy that a counting gives a gram of fibre.
func (c Counting) perGramFibre() float64 {
	if c == CountAvailable {
		return EnergyPerGramFibre
	}
	return EnergyPerGramCarbohydrate
}
