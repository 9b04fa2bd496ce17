package screen

import (
	"fmt"
	"sort"
	"strings"

	"handbreadth/domain/derive"
	"handbreadth/domain/energy"
	"handbreadth/domain/unit"
)

// Facts are the figures, told and computed, that screening looks at.
type Facts struct {
	Age     unit.Year
	Sex     energy.Sex
	BMI     unit.KilogramPerSquareMetre
	GoalBMI unit.KilogramPerSquareMetre // 0: no goal weight named
	// DaysToUnderweight is when a deficit without a goal weight brings BMI under
	// 18.5; 0: not within half a year.
	DaysToUnderweight unit.Day
	Goal              energy.GoalKind
	Outcome           energy.Outcome
	Resting           unit.Kilocalorie
	// Carbohydrate is available (digestible) carbohydrate a day, after floor and
	// balance; LeastCarbohydrate is asked for in pregnancy and while
	// breastfeeding, 0: none.
	Carbohydrate      unit.Gram
	LeastCarbohydrate unit.Gram
	// Fibre is what the plan brings a day and UsualFibre what is eaten now; 0: not
	// told.
	Fibre, UsualFibre unit.Gram
	// Exercise is the energy of training on an average day; 0: not told.
	Exercise unit.Kilocalorie
	// Availability has no steps where it was not assessed: see [Availability].
	Availability derive.Derived[EnergyAvailable]
	Reproduction energy.Reproduction
	Scored       Scored
	// MeasuresFar reports that no day of measures comes near the targets, and
	// MeasuresUnderFloor that wishes keep the fat of the measures under its floor.
	MeasuresFar, MeasuresUnderFloor bool
	// MealsWished reports that wishes bound the measures of meals.
	MealsWished bool
	// Brought is the day of measures; nil: not known.
	Brought *Brought
	// Weight is nought where the rate of what the measures bring is not looked at.
	Weight unit.Kilogram
	// ProteinLimited reports that protein was set lower than asked, to fit.
	ProteinLimited bool
}

// Limits of body mass index.
const (
	// UnderweightBMI. Source: WHO (seen in a secondary copy).
	UnderweightBMI unit.KilogramPerSquareMetre = 18.5
	// OverweightBMI. Source: WHO (seen in a secondary copy).
	OverweightBMI unit.KilogramPerSquareMetre = 25
	// ObesityBMI. Source: WHO (seen in a secondary copy).
	ObesityBMI unit.KilogramPerSquareMetre = 30
)

// Ages.
const (
	AdultAge unit.Year = 18
	// ChildbearingUntil is the last year counted as childbearing age (WHO: 15-49).
	ChildbearingUntil unit.Year = 49
)

// Findings returns everything that screening has to say, gravest first. No two
// have the same code and level.
func Findings(answers Answers, facts Facts) []derive.Finding {
	var all gathered
	all.add(fromAnswers(answers, facts)...)
	all.add(fromAge(answers, facts)...)
	all.add(fromWeight(facts)...)
	all.add(fromRefeeding(answers, facts)...)
	all.add(fromEnergy(facts)...)
	all.add(fromAvailability(facts)...)
	all.add(fromFood(answers, facts)...)
	all.add(fromBrought(answers, facts)...)
	if missing := Unasked(answers); len(missing) > 0 {
		all.add(notAsked(missing))
	}
	sort.SliceStable(all, func(i, j int) bool { return all[i].Level > all[j].Level })
	return all
}

// gathered are findings of which no two have the same code and level.
type gathered []derive.Finding

// add joins a finding to the one of its code and level, where there is one.
func (g *gathered) add(found ...derive.Finding) {
	for _, f := range found {
		if same := g.same(f); same != nil {
			same.Scope |= f.Scope
			same.Text += " " + f.Text
			continue
		}
		*g = append(*g, f)
	}
}

func (g gathered) same(f derive.Finding) *derive.Finding {
	for i := range g {
		if g[i].Code == f.Code && g[i].Level == f.Level {
			return &g[i]
		}
	}
	return nil
}

// fromAnswers returns what the questions give: those answered with yes, and
// those whose yes follows from what was told elsewhere, such as a score.
func fromAnswers(answers Answers, f Facts) []derive.Finding {
	var found []derive.Finding
	implied := implied(f)
	for _, q := range questions {
		told := strings.Join(implied[q.Code], " ")
		if !answers.Yes(q.Code) && told == "" {
			continue
		}
		if q.Code == Gallstones && !f.Lowers() {
			continue // gallstones speak where loss is planned
		}
		for _, e := range q.effects {
			if q.Code == GLP1 && keepsFluid(answers) {
				e.text = glp1WithoutFluid
			}
			found = append(found, derive.Finding{
				Code: string(q.Code), Level: e.level, Scope: e.scope,
				Text: strings.TrimSpace(told + " " + e.text), Source: q.Source,
			})
		}
	}
	return found
}

// implied returns for each question why its answer must be yes, whatever was
// answered: a score, a loss of weight, a pregnancy that were told.
func implied(f Facts) map[Code][]string {
	all := map[Code][]string{}
	tell := func(c Code, text string) {
		if text != "" {
			all[c] = append(all[c], text)
		}
	}
	tell(EatingDisorderNow, f.Scored.positive(SCOFF, f.BMI))
	tell(UnexplainedLoss, f.Scored.positive(MUST, f.BMI))
	tell(UnexplainedLoss, f.Scored.positive(MST, f.BMI))
	if loss := f.Scored.RecentLoss.Known(); loss > UnexplainedFrom {
		tell(UnexplainedLoss, fmt.Sprintf("A loss of %.3g %% without trying was told.", float64(loss)))
	}
	if f.Reproduction.Weeks > 0 {
		tell(Pregnant, fmt.Sprintf("Week %d of pregnancy was told.", f.Reproduction.Weeks))
	}
	if f.Reproduction.Breastfeeding != energy.NotBreastfeeding {
		tell(Pregnant, "Breastfeeding was told.")
	}
	if f.Reproduction.StageNotTold {
		tell(Pregnant, "No week and no age of the child was told, so energy counts the highest addition.")
	}
	return all
}

// UnexplainedFrom is the unplanned loss within six months above which the doctor
// looks for its cause.
// Source: GLIM 2019: more than 5 % within six months.
const UnexplainedFrom unit.Percent = 5

// keepsFluid reports that advice to drink more is stopped: the treating team sets
// fluid, in dialysis too.
func keepsFluid(answers Answers) bool {
	return answers.Yes(HeartOrLiver) || answers.Yes(Lithium) || answers.Yes(KidneySevere)
}

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
