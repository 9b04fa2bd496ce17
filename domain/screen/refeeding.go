package screen

import (
	"strings"

	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
)

// Refeeding is what the criteria for refeeding problems ask.
type Refeeding struct {
	BMI             unit.KilogramPerSquareMetre
	Loss            unit.Percent // unplanned, in the last 3 to 6 months
	DaysOfLittle    unit.Day     // of little or no food
	LowElectrolytes bool         // low potassium, phosphate or magnesium before feeding
	AlcoholOrDrugs  bool         // alcohol misuse, insulin, chemotherapy, antacids or diuretics
}

// The criteria of refeeding problems. One of the first kind, or two of the
// lesser, make a high risk.
//
// Source: NICE CG32, recommendation 1.4.6 (seen, quoted in PMC8672300 and in an
// Australian therapeutic guideline).
const (
	RefeedingBMI    unit.KilogramPerSquareMetre = 16
	refeedingLoss   unit.Percent                = 15
	refeedingDays   unit.Day                    = 10
	lesserBMI                                   = UnderweightBMI
	lesserLoss      unit.Percent                = 10
	lesserDays      unit.Day                    = 5
	lesserForHigh                               = 2
	refeedingRisk                               = "refeeding_risk"
	refeedingUnsure                             = "refeeding_not_asked"
)

// HighRisk reports a high risk of refeeding problems.
func (r Refeeding) HighRisk() bool {
	return r.BMI < RefeedingBMI || r.Loss > refeedingLoss || r.DaysOfLittle > refeedingDays || r.LowElectrolytes ||
		r.lesser() >= lesserForHigh
}

// lesser counts the lesser criteria that are met.
func (r Refeeding) lesser() int {
	return count(r.BMI < lesserBMI, r.Loss > lesserLoss, r.DaysOfLittle > lesserDays, r.AlcoholOrDrugs)
}

func count(met ...bool) int {
	n := 0
	for _, m := range met {
		if m {
			n++
		}
	}
	return n
}

// refeeding returns what is known of the criteria, and what is not. Alcohol and
// the listed medicines that were not asked about here count where another question
// was answered with yes: insulin, cancer treatment, a water tablet. Each of those
// asks for more than the criterion, so a no here takes it back.
func (s Scored) refeeding(answers Answers, bmi unit.KilogramPerSquareMetre) (known Refeeding, unasked []string) {
	ask := func(asked bool, words string) {
		if !asked {
			unasked = append(unasked, words)
		}
	}
	ask(s.RecentLoss.Asked, "the weight lost without trying in 3 to 6 months")
	ask(s.DaysOfLittle.Asked, "the days of little or no food")
	ask(s.AlcoholOrDrugs != NotAsked, "alcohol, insulin, chemotherapy, antacids and diuretics")
	ask(s.LowElectrolytes != NotAsked, "potassium, phosphate and magnesium in the blood")
	return Refeeding{
		BMI: bmi, Loss: s.RecentLoss.Known(), DaysOfLittle: s.DaysOfLittle.Known(),
		LowElectrolytes: s.LowElectrolytes == Yes,
		AlcoholOrDrugs:  s.AlcoholOrDrugs == Yes || s.AlcoholOrDrugs == NotAsked && listedMedicine(answers),
	}, unasked
}

// listedMedicine reports a yes to a question that has a listed medicine in it.
func listedMedicine(answers Answers) bool {
	return answers.Yes(GlucoseLowering) || answers.Yes(Type1Diabetes) || answers.Yes(CancerTreatment) || answers.Yes(BloodPressure)
}

// fromRefeeding refers at a high risk. Where a criterion is met and others were
// not asked, another answer can make the risk high, and it says what to ask. That
// holds a plan that raises energy; it holds any plan where the criterion was told
// here, so that the asking has begun, and more than blood values is missing,
// which are not at hand at every desk. Else it is a caution, and nothing where
// only a medicine points to it.
func fromRefeeding(answers Answers, f Facts) []derive.Finding {
	known, unasked := f.Scored.refeeding(answers, f.BMI)
	if known.HighRisk() {
		return []derive.Finding{{
			Code: refeedingRisk, Level: derive.Refer, Scope: plan | anyComparison,
			Text: highRiskWords(known, f.Scored.AlcoholOrDrugs == NotAsked), Source: niceRefeeding,
		}}
	}
	lossTold := answers.Yes(UnexplainedLoss) || f.Scored.RecentLoss.Known() > UnexplainedFrom
	if len(unasked) == 0 || (known.lesser() == 0 && !lossTold) {
		return nil
	}
	found := derive.Finding{
		Code: refeedingUnsure, Level: derive.Caution, Source: niceRefeeding,
		Text: "Eating more after a time of little can be dangerous. Before energy is raised ask for " + strings.Join(unasked, "; ") + ".",
	}
	onlyBlood := len(unasked) == 1 && f.Scored.LowElectrolytes == NotAsked
	toldHere := count(known.Loss > lesserLoss, known.DaysOfLittle > lesserDays, f.Scored.AlcoholOrDrugs == Yes) > 0
	onlyMedicine := !lossTold && !toldHere && f.BMI >= lesserBMI
	switch {
	case toldHere && !onlyBlood:
		found.Level, found.Scope = derive.Hold, plan|anyComparison
	case f.Raises() && (known.lesser() > 0 || !f.Scored.RecentLoss.Asked):
		found.Level, found.Scope = derive.Hold, derive.ScopeSurplus|anyComparison
	case onlyMedicine:
		return nil
	}
	return []derive.Finding{found}
}

func highRiskWords(r Refeeding, byOtherAnswer bool) string {
	met := []string{}
	for _, c := range []struct {
		met   bool
		words string
	}{
		{r.BMI < RefeedingBMI, "BMI under 16"},
		{r.BMI < lesserBMI && r.BMI >= RefeedingBMI, "BMI under 18.5"},
		{r.Loss > refeedingLoss, "a loss over 15 %"},
		{r.Loss > lesserLoss && r.Loss <= refeedingLoss, "a loss over 10 %"},
		{r.DaysOfLittle > refeedingDays, "over 10 days of little food"},
		{r.DaysOfLittle > lesserDays && r.DaysOfLittle <= refeedingDays, "over 5 days of little food"},
		{r.LowElectrolytes, "low potassium, phosphate or magnesium"},
		{r.AlcoholOrDrugs, "alcohol or one of the listed medicines"},
	} {
		if c.met {
			met = append(met, c.words)
		}
	}
	words := strings.Join(met, ", ")
	words = strings.ToUpper(words[:1]) + words[1:] + ": eating more after a long time of little can be dangerous. The doctor starts and watches it."
	if r.AlcoholOrDrugs && byOtherAnswer {
		words += " The medicine follows from the screening; ask whether it is insulin, chemotherapy, an antacid or a diuretic."
	}
	return words
}
