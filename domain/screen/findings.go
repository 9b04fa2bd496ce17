package screen

import (
	"fmt"
	"sort"
	"strings"

	"handbreadth/domain/derive"
	"handbreadth/domain/energy"
	"handbreadth/domain/macro"
	"handbreadth/domain/unit"
)

// Facts are the computed figures that screening looks at.
type Facts struct {
	Age     unit.Year
	Sex     energy.Sex
	BMI     unit.KilogramPerSquareMetre
	GoalBMI unit.KilogramPerSquareMetre // 0: no goal weight named
	Goal    energy.GoalKind
	Outcome energy.Outcome
	Resting unit.Kilocalorie
	// Carbohydrate a day and its share of energy, after floor and balance.
	Carbohydrate unit.Gram
	// MeasuresFar reports that no day of measures comes near the targets.
	MeasuresFar bool
	// ProteinLimited reports that protein was set lower than asked, to fit.
	ProteinLimited bool
}

// Limits of body mass index.
const (
	// UnderweightBMI. Source: WHO (seen in a secondary copy).
	UnderweightBMI unit.KilogramPerSquareMetre = 18.5
	// RefeedingBMI alone puts a person at high risk of refeeding problems.
	// Source: NICE CG32 (seen, quoted in PMC8672300).
	RefeedingBMI unit.KilogramPerSquareMetre = 16
	// ObesityBMI. Source: WHO (seen in a secondary copy).
	ObesityBMI unit.KilogramPerSquareMetre = 30
)

// Ages.
const (
	AdultAge unit.Year = 18
	// ChildbearingUntil is the last year counted as childbearing age (WHO: 15-49).
	ChildbearingUntil unit.Year = 49
)

// OlderMostDeficit is the deficit above which a plan for an older adult speaks
// up. Source: ESPEN 2022 (from memory).
const OlderMostDeficit unit.Kilocalorie = 500

// Findings returns everything that screening has to say, gravest first.
func Findings(answers Answers, facts Facts) []derive.Finding {
	var all []derive.Finding
	all = append(all, fromAnswers(answers, facts)...)
	all = append(all, fromAge(answers, facts)...)
	all = append(all, fromWeight(facts)...)
	all = append(all, fromEnergy(facts)...)
	all = append(all, fromFood(answers, facts)...)
	if missing := Unasked(answers); len(missing) > 0 {
		all = append(all, notAsked(missing))
	}
	sort.SliceStable(all, func(i, j int) bool { return all[i].Level > all[j].Level })
	return all
}

func fromAnswers(answers Answers, f Facts) []derive.Finding {
	var found []derive.Finding
	for _, q := range questions {
		if !answers.Yes(q.Code) || (q.Code == Gallstones && !f.Outcome.Lowers()) {
			continue // gallstones speak where loss is planned
		}
		for _, e := range q.effects {
			if q.Code == GLP1 && keepsFluid(answers) {
				e.text = glp1WithoutFluid
			}
			found = append(found, derive.Finding{Code: string(q.Code), Level: e.level, Scope: e.scope, Text: e.text, Source: q.Source})
		}
	}
	return found
}

// keepsFluid reports that advice to drink more is stopped.
func keepsFluid(answers Answers) bool { return answers.Yes(HeartOrLiver) || answers.Yes(Lithium) }

const glp1WithoutFluid = "A GLP-1 medicine: appetite is low, so place protein first; fluid stays as the treating team set it; lasting vomiting goes to the prescriber."

// Unasked lists the questions without an answer, in the order of the list.
func Unasked(answers Answers) []Code {
	var missing []Code
	for _, q := range questions {
		if answers.Of(q.Code) == NotAsked {
			missing = append(missing, q.Code)
		}
	}
	return missing
}

// NotAskedCode is the code of the finding for questions without an answer.
const NotAskedCode = "not_asked"

// mostNamed is how many unasked questions are named one by one.
const mostNamed = 6

func notAsked(missing []Code) derive.Finding {
	text := fmt.Sprintf("%d screening questions were not asked.", len(missing))
	if len(missing) == 1 {
		text = "One screening question was not asked."
	}
	if len(missing) <= mostNamed {
		names := make([]string, len(missing))
		for i, c := range missing {
			names[i] = strings.ReplaceAll(string(c), "_", " ")
		}
		text = strings.TrimSuffix(text, ".") + ": " + strings.Join(names, ", ") + "."
	}
	return derive.Finding{
		Code: NotAskedCode, Level: derive.Hold, Scope: plan | anyComparison,
		Text: text + " What was not asked is not taken as no.", Source: derive.CommonPractice,
	}
}

func fromAge(answers Answers, f Facts) []derive.Finding {
	if f.Age < AdultAge {
		return []derive.Finding{{
			Code: "under_18", Level: derive.Refer, Scope: plan | anyComparison,
			Text:   "Under 18: growth comes first. A paediatric dietitian or the family doctor advises.",
			Source: derive.Source{Text: "trade consensus", Confidence: derive.Custom},
		}}
	}
	if f.Age < macro.OlderAge {
		return nil
	}
	source := memory("ESPEN 2022 guideline on nutrition in geriatrics")
	frail := answers.Of(Frail)
	if f.BMI < ObesityBMI || frail != No {
		text := "65 or over with a BMI under 30: losing weight can cost muscle and bone. Agree it with the doctor."
		switch {
		case frail == Yes:
			text = "65 or over and frail: losing weight can cost muscle and bone. Agree it with the doctor."
		case f.BMI >= ObesityBMI:
			text = "65 or over, and frailty was not asked about: ask before losing weight is planned."
		}
		return []derive.Finding{{Code: "older_adult", Level: derive.Hold, Scope: deficit | anyComparison, Text: text, Source: source}}
	}
	text := "65 or over: keep a deficit to 500 kcal a day at most, protein at 1.0-1.2 g/kg, and strength exercise."
	if -f.Outcome.Change > OlderMostDeficit {
		text = "65 or over, and this deficit is over 500 kcal a day: a smaller one protects muscle; protein at 1.0-1.2 g/kg, and strength exercise."
	}
	return []derive.Finding{{Code: "older_adult", Level: derive.Caution, Text: text, Source: source}}
}

func fromWeight(f Facts) []derive.Finding {
	var found []derive.Finding
	if f.GoalBMI != 0 && f.GoalBMI < UnderweightBMI {
		found = append(found, derive.Finding{
			Code: "target_underweight", Level: derive.Refer, Scope: plan | anyComparison,
			Text: fmt.Sprintf("The goal weight gives a BMI of %.2f, under 18.5: no plan is made for it.", float64(f.GoalBMI)), Source: seen("WHO: under 18.5 is underweight"),
		})
	}
	if f.BMI < RefeedingBMI {
		found = append(found, derive.Finding{
			Code: "refeeding_risk", Level: derive.Refer, Scope: plan | anyComparison,
			Text: "BMI under 16: eating more after a long time of little can be dangerous. The doctor starts and watches it.", Source: seen("NICE CG32"),
		})
	}
	if f.BMI < UnderweightBMI {
		found = append(found,
			derive.Finding{
				Code: "underweight_now", Level: derive.Refer, Scope: deficit | anyComparison,
				Text: fmt.Sprintf("BMI %.1f, under 18.5: energy is not set below need.", float64(f.BMI)), Source: memory("NICE CG32"),
			})
		if f.Outcome.Raises() {
			found = append(found, derive.Finding{
				Code: "underweight_now", Level: derive.Caution,
				Text: "BMI under 18.5: raise energy in steps and watch for refeeding problems; a doctor should know of the plan.", Source: memory("NICE CG32"),
			})
		}
	}
	return found
}

func fromEnergy(f Facts) []derive.Finding {
	var found []derive.Finding
	target, least := f.Outcome.Target.Value, energy.LeastEnergy(f.Sex)
	if target < energy.VeryLowEnergy {
		found = append(found, derive.Finding{
			Code: "energy_very_low", Level: derive.Refer, Scope: deficit | anyComparison,
			Text: fmt.Sprintf("A target of %.0f kcal is under 800 kcal a day, which belongs in clinical care.", float64(target)), Source: memory("NICE CG189"),
		})
	}
	if target < least {
		found = append(found, derive.Finding{
			Code: "energy_low", Level: derive.Hold, Scope: deficit | anyComparison,
			Text: fmt.Sprintf("A target of %.0f kcal is under %.0f kcal a day.", float64(target), float64(least)), Source: memory("AHA/ACC/TOS 2013 guideline"),
		})
	}
	if f.Outcome.TooFast {
		found = append(found, tooFast(f))
	}
	if f.Outcome.Lowers() && -f.Outcome.Change > energy.MostDeficit {
		found = append(found, derive.Finding{
			Code: "deficit_large", Level: derive.Caution,
			Text: fmt.Sprintf("A deficit of %.0f kcal a day is over the customary 1000.", -float64(f.Outcome.Change)), Source: memory("NIH 1998 clinical guidelines"),
		})
	}
	if f.Outcome.Change > energy.MostSurplus {
		found = append(found, derive.Finding{
			Code: "surplus_large", Level: derive.Caution,
			Text: "The target is more than 1000 kcal a day over maintenance: with a later date more of the gain is lean, and it is easier to eat.", Source: derive.CommonPractice,
		})
	}
	if f.Outcome.Lowers() && target < f.Resting {
		found = append(found, derive.Finding{
			Code: "below_resting", Level: derive.Caution,
			Text: "The target is below resting energy: expect tiredness and hunger; a slower course is kinder.", Source: derive.CommonPractice,
		})
	}
	wants := map[energy.GoalKind]bool{energy.Lose: f.Outcome.Raises(), energy.Gain: f.Outcome.Lowers(), energy.Maintain: f.Outcome.Lowers() || f.Outcome.Raises()}
	if wants[f.Goal] {
		found = append(found, derive.Finding{
			Code: "goal_and_energy_differ", Level: derive.Caution,
			Text: fmt.Sprintf("The goal is to %s weight, but the agreed energy is %+.0f kcal a day beside maintenance.", f.Goal, float64(f.Outcome.Change)), Source: derive.FromSteps,
		})
	}
	return found
}

func tooFast(f Facts) derive.Finding {
	text := fmt.Sprintf("A loss of %.2f kg a week is over 1 %% of weight or over 1 kg a week.", -float64(f.Outcome.Rate.Value))
	if !f.Outcome.SafeDate.IsZero() {
		text += fmt.Sprintf(" The earliest date inside the guards is %s, at %.0f kcal a day.", f.Outcome.SafeDate.Long(), float64(f.Outcome.SafeEnergy))
	} else {
		text += fmt.Sprintf(" Inside the guards the least is %.0f kcal a day.", float64(f.Outcome.SafeEnergy))
	}
	return derive.Finding{Code: "rate_fast", Level: derive.Hold, Scope: deficit | anyComparison, Text: text, Source: memory("NIH 1998 clinical guidelines")}
}

func fromFood(answers Answers, f Facts) []derive.Finding {
	var found []derive.Finding
	if RaisesFloor(f.Sex, f.Age, f.BMI) {
		found = append(found, derive.Finding{
			Code: "fat_floor_raised", Level: derive.Note,
			Text: "The fat floor is kept at 20 % of energy or more (women of childbearing age, or a BMI under 18.5).", Source: memory("WHO/FAO 2010, Fats and fatty acids in human nutrition"),
		})
	}
	if f.Carbohydrate < macro.CarbohydrateRDA {
		found = append(found, derive.Finding{
			Code: "carbohydrate_low", Level: derive.Note,
			Text: fmt.Sprintf("Carbohydrate of %.0f g a day is under the allowance of 130 g.", float64(f.Carbohydrate)), Source: derive.Source{Text: "IOM 2002/2005: 130 g a day", Confidence: derive.SeenSecond},
		})
	}
	if f.ProteinLimited {
		found = append(found, derive.Finding{
			Code: "protein_limited", Level: derive.Note,
			Text:   "Protein is held within 35 % of energy, or within what the fat floor leaves; the situation or the wish asks for more.",
			Source: derive.Source{Text: "IOM 2002/2005: protein 10-35 % of energy", Confidence: derive.Seen},
		})
	}
	if answers.Yes(Pregnant) && f.Carbohydrate < macro.CarbohydrateBreastfeeding-1e-6 {
		found = append(found, derive.Finding{
			Code: string(Pregnant), Level: derive.Refer, Scope: plan | anyComparison,
			Text:   "Pregnancy or breastfeeding: with this energy, protein and fat floor, carbohydrate cannot be kept at 175 g (210 g while breastfeeding). The maternity team's dietitian sets the plan.",
			Source: memory("IOM 2005, Dietary Reference Intakes"),
		})
	}
	if f.MeasuresFar {
		found = append(found, derive.Finding{
			Code: "measures_far", Level: derive.Caution,
			Text:   "With the foods that are left, no day of half measures comes within a fifth of every target. Move the balance, or look at the pattern and the foods that are left out.",
			Source: derive.FromSteps,
		})
	}
	noMore := keepsFluid(answers)
	step := "Raise fibre by no more than about 5 g a week"
	if noMore {
		step += "; fluid stays as the treating team set it."
	} else {
		step += ", and drink with it."
		found = append(found, derive.Finding{
			Code: "fluid", Level: derive.Note,
			Text: "For information: about 2.0 litres of water a day for women and 2.5 for men, food included.", Source: memory("EFSA 2010, Dietary reference values for water"),
		})
	}
	return append(found, derive.Finding{Code: "fibre_step", Level: derive.Note, Text: step, Source: derive.CommonPractice})
}

// RaisesFloor reports whether the fat floor is kept at 20 % of energy or more.
//
// Source: WHO/FAO 2010 (from memory).
func RaisesFloor(sex energy.Sex, age unit.Year, bmi unit.KilogramPerSquareMetre) bool {
	return bmi < UnderweightBMI || (sex == energy.Female && age <= ChildbearingUntil)
}
