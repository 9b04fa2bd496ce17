package derive

// Confidence says how well a source was confirmed when it was coded.
type Confidence string

// How well a figure was confirmed.
const (
	Seen       Confidence = "seen"       // the number was read in a copy of the source
	SeenSecond Confidence = "seen-2nd"   // read in a secondary copy
	Memory     Confidence = "memory"     // known, not confirmed against a copy
	Custom     Confidence = "convention" // common practice, no source
	Arithmetic Confidence = "arithmetic" // follows from the steps before
)

// Source names where a formula or figure was published.
type Source struct {
	Text       string
	Confidence Confidence
}

// Common sources that are not publications.
var (
	CommonPractice = Source{"common practice, no source", Custom}
	FromSteps      = Source{"arithmetic on the steps above", Arithmetic}
)

// Input is one value put into a formula.
type Input struct {
	Name  string
	Value float64
	Unit  string
	Text  string // where the input is not a number: "low active"
}

// Range is the span that a result carries. Low is never above High.
type Range struct{ Low, High float64 }

// Step is one line of a derivation.
type Step struct {
	Key     string // stable name: "resting", "maintenance", "fat"
	Label   string // "Resting energy"
	Formula string // "10 x weight + 6.25 x height - 5 x age - 161"
	Inputs  []Input
	Result  float64
	Unit    string // "kcal/day", "g/day", "" for a bare number
	Range   *Range // nil where the result has no range of its own
	Source  Source
	Note    string // one plain sentence, where there is something to say
}

// Derived is a value with its range and the steps that led to it.
type Derived[T ~float64] struct {
	Value     T
	Low, High T // equal to Value where the number carries no range
	Steps     []Step
}

// Exact wraps a value that carries no range of its own.
func Exact[T ~float64](value T, steps ...Step) Derived[T] {
	return Derived[T]{Value: value, Low: value, High: value, Steps: steps}
}

// Within wraps a value with the range that it carries.
func Within[T ~float64](value, low, high T, steps ...Step) Derived[T] {
	return Derived[T]{Value: value, Low: low, High: high, Steps: steps}
}

// Last returns the step that gave the value itself, and false when there is none.
func (d Derived[T]) Last() (Step, bool) {
	if len(d.Steps) == 0 {
		return Step{}, false
	}
	return d.Steps[len(d.Steps)-1], true
}
