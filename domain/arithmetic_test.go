package domain

import (
	"fmt"
	"math"
	"sort"
	"strconv"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"handbreadth/domain/derive"
	"handbreadth/domain/energy"
)

// inWords are the formulas that are no arithmetic: what was agreed or measured,
// and what the model's course gives.
var inWords = map[string]bool{
	"as measured": true, "energy as agreed": true,
	"the energy a day that ends the course at the goal weight": true,
}

// reckonedKeys are the steps whose formula gives the result from the inputs.
var reckonedKeys = []string{
	"bmi", "lean_mass", "waist_to_height", "reference_weight", "adjusted_weight",
	"resting", "maintenance", "cross_check", "target", "static_target", "rate", "mean_rate", "later_rate", "safe_energy",
	"protein", "fat_floor", "fat", "carbohydrate", "carbohydrate_total", "carbohydrate_available", "fibre",
	"share_protein", "share_fat", "share_carbohydrate", "saturated_fat", "free_sugars", "free_sugars_better",
	"label_kcal", "label_kj", "half_time",
}

// Whoever follows a derivation with a pocket calculator gets the number that it
// tells: every formula of these steps is worked out here from the names and values
// of its inputs alone.
func TestDerivationsMultiplyOut(t *testing.T) {
	reckoned := map[string]int{}
	for _, key := range reckonedKeys {
		reckoned[key] = 0
	}
	const plans = 1500
	for number := range plans {
		in := intakeOf(number)
		if in.Validate() != nil {
			continue
		}
		p, o := outcomeOf(in)
		if o.Target.Value <= 0 {
			continue // nothing to share out; such a wish is referred
		}
		p.Goal, p.Targets = &o, newTargets(p, o)
		if p.followed() && !o.OutOfReach {
			p.Projection = project(p, courseOf(p), o)
		}
		for _, s := range allSteps(p) {
			if _, asked := reckoned[s.Key]; !asked || inWords[s.Formula] {
				continue
			}
			if err := multipliesOut(s); err != nil {
				t.Fatalf("intakeOf(%d): %v", number, err)
			}
			reckoned[s.Key]++
		}
	}
	for key, times := range reckoned {
		if times < plans/100 {
			t.Errorf("%s was worked out %d times: too few to say anything", key, times)
		}
	}
}

func allSteps(p Plan) []derive.Step {
	steps := p.Derivation()
	for _, c := range p.CrossChecks {
		steps = append(steps, c.Energy.Steps...)
	}
	for _, c := range p.Equations {
		steps = append(steps, c.Resting.Steps...)
	}
	for _, r := range p.Body.References {
		steps = append(steps, r.Weight.Steps...)
	}
	return append(steps, p.Body.Adjusted.Steps...)
}

// multipliesOut compares the result of a step with its formula. The static rule is
// printed as 7716 kcal a kilogram and reckoned with 7716.18: hence the margin.
func multipliesOut(s derive.Step) error {
	got, err := workOut(s)
	if err != nil {
		return fmt.Errorf("%s, %q: %w", s.Key, s.Formula, err)
	}
	if off := math.Abs(got - s.Result); !(off <= 1e-6+5e-5*largest(s)) {
		return fmt.Errorf("%s, %q with %v gives %v, the step says %v", s.Key, s.Formula, s.Inputs, got, s.Result)
	}
	return nil
}

func largest(s derive.Step) float64 {
	most := math.Abs(s.Result)
	for _, in := range s.Inputs {
		if in.Unit == s.Unit {
			most = math.Max(most, math.Abs(in.Value))
		}
	}
	return most
}

// workOut evaluates a formula: numbers, per cents, the names of inputs, + − × / ²
// and brackets; "the higher of a and b", "the lower of a and b", "the highest of a,
// b and c"; and after it "rounded up; never over a".
func workOut(s derive.Step) (value float64, err error) {
	r := reader{left: s.Formula, inputs: append([]derive.Input(nil), s.Inputs...)}
	// The longest name first: "weight on day 14" begins with "weight".
	sort.SliceStable(r.inputs, func(i, j int) bool { return len(r.inputs[i].Name) > len(r.inputs[j].Name) })
	defer func() {
		if fault, is := recover().(fault); is {
			err = fault
		}
	}()
	value = r.chosen()
	if r.takes(", rounded up; never over") {
		// The 7716 is itself rounded: within a twentieth of a whole kilocalorie both
		// the one below and the one above are right.
		most := r.sum()
		below, above := math.Min(math.Ceil(value-0.05), most), math.Min(math.Ceil(value+0.05), most)
		if value = below; s.Result == above {
			value = above
		}
	}
	if r.left = strings.TrimSpace(r.left); r.left != "" {
		r.fail()
	}
	return value, nil
}

type fault string

func (f fault) Error() string { return string(f) }

type reader struct {
	left   string
	inputs []derive.Input
}

func (r *reader) fail() { panic(fault(fmt.Sprintf("no meaning for %q", r.left))) }

func (r *reader) takes(word string) bool {
	left := strings.TrimLeft(r.left, " ")
	if !strings.HasPrefix(left, word) {
		return false
	}
	r.left = left[len(word):]
	return true
}

func (r *reader) chosen() float64 {
	var better func(a, b float64) float64
	switch {
	case r.takes("the highest of "), r.takes("the higher of "):
		better = math.Max
	case r.takes("the lower of "):
		better = math.Min
	default:
		return r.sum()
	}
	value := r.sum()
	for {
		switch rounded := strings.HasPrefix(r.left, ", rounded"); {
		case !rounded && r.takes(","):
			value = better(value, r.sum())
		case r.takes("and "):
			return better(value, r.sum())
		default:
			r.fail()
		}
	}
}

func (r *reader) sum() float64 {
	value := r.product()
	for {
		switch {
		case r.takes("+"):
			value += r.product()
		case r.takes("−"):
			value -= r.product()
		default:
			return value
		}
	}
}

func (r *reader) product() float64 {
	value := r.factor()
	for {
		switch {
		case r.takes("×"):
			value *= r.factor()
		case r.takes("/"):
			value /= r.factor()
		default:
			return value
		}
	}
}

func (r *reader) factor() float64 {
	value := r.single()
	if r.takes("²") {
		return value * value
	}
	return value
}

func (r *reader) single() float64 {
	switch {
	case r.takes("−"):
		return -r.single()
	case r.takes("ln "):
		return math.Log(r.single())
	case r.takes("("):
		value := r.chosen()
		if !r.takes(")") {
			r.fail()
		}
		return value
	}
	for _, in := range r.inputs {
		if in.Text == "" && r.takesWhole(in.Name) {
			if in.Unit == "%" {
				return in.Value / 100
			}
			return in.Value
		}
	}
	return r.number()
}

func (r *reader) takesWhole(name string) bool {
	before := r.left
	if !r.takes(name) {
		return false
	}
	if next, _ := utf8.DecodeRuneInString(r.left); unicode.IsLetter(next) || unicode.IsDigit(next) {
		r.left = before
		return false
	}
	return true
}

func (r *reader) number() float64 {
	left := strings.TrimLeft(r.left, " ")
	digits := left[:len(left)-len(strings.TrimLeft(left, "0123456789."))]
	value, err := strconv.ParseFloat(digits, 64)
	if err != nil {
		r.fail()
	}
	r.left = left[len(digits):]
	if r.takes("%") {
		return value / 100
	}
	return value
}

// The calculator itself: what it must work out, and what it must not take.
func TestWorkOut(t *testing.T) {
	inputs := []derive.Input{{Name: "weight", Value: 80}, {Name: "weight on day 7", Value: 79}, {Name: "share", Value: 20, Unit: "%"}, {Name: "said", Text: "so"}}
	for formula, want := range map[string]float64{
		"weight − weight on day 7":                               1,
		"(1 − share) × weight / 4":                               16,
		"the higher of 35 % × weight and (2 + 3) × weight / 4":   100,
		"the lower of 0.5 × weight and −10":                      -10,
		"the highest of 1, 2.5 and 2, rounded up; never over 80": 3,
		"weight² / 2": 3200,
	} {
		if got, err := workOut(derive.Step{Formula: formula, Inputs: inputs, Result: want}); err != nil || math.Abs(got-want) > 1e-9 {
			t.Errorf("%s: %v, %v, want %v", formula, got, err, want)
		}
	}
	for _, formula := range []string{"height", "weights", "said", "weight weight", "the higher of 1", "(1 + 2", "by class", ""} {
		if got, err := workOut(derive.Step{Formula: formula, Inputs: inputs}); err == nil {
			t.Errorf("%s: %v without a fault", formula, got)
		}
	}
	wrong := derive.Step{Key: "protein", Formula: "2 × weight", Inputs: inputs, Result: 161}
	if multipliesOut(wrong) == nil {
		t.Error("a result that does not follow passes")
	}
}

// What is put in is in the formula's own unit and under its own name, for lean
// weight and for the carbohydrate that pregnancy asks for, too.
func TestRareDerivationsMultiplyOut(t *testing.T) {
	for name, change := range map[string]func(*Intake){
		"lean weight": func(in *Intake) { in.ProteinBasis = "lean" },
		"carbohydrate raised": func(in *Intake) {
			in.Goal = energy.Goal{Kind: energy.Maintain}
			in.CarbFatBalance, in.Reproduction.Weeks = 0, 20
		},
		"fat by weight gives way": func(in *Intake) { in.FatFloorPerKg = 3 },
	} {
		in := exampleIntake()
		change(&in)
		p, o := outcomeOf(in)
		targets := newTargets(p, o)
		if name == "carbohydrate raised" && !targets.Split.RaisedCarbohydrate {
			t.Errorf("%s: nothing was raised", name)
		}
		for _, s := range append(append([]derive.Step{}, targets.Protein.Steps...), targets.Fat.Steps...) {
			if s.Key == "body_fat" {
				continue
			}
			if err := multipliesOut(s); err != nil {
				t.Errorf("%s: %v", name, err)
			}
		}
	}
}
