package screen

import (
	"fmt"

	"handbreadth/domain/derive"
	"handbreadth/domain/energy"
	"handbreadth/domain/macro"
	"handbreadth/domain/unit"
)

// fromFood returns what the macros, the fibre and the measures give.
func fromFood(answers Answers, f Facts) []derive.Finding {
	found := fromCarbohydrate(f)
	raised := RaisesFloor(f.Sex, f.Age, f.BMI)
	if raised || Expects(answers, f.Reproduction) {
		why := "pregnancy or breastfeeding"
		if raised {
			why = "women of childbearing age, or a BMI under 18.5"
		}
		found = append(found, derive.Finding{
			Code: "fat_floor_raised", Level: derive.Note,
			Text: "The fat floor is kept at 20 % of energy or more (" + why + ").", Source: faoFat,
		})
	}
	if f.ProteinLimited {
		found = append(found, derive.Finding{
			Code: "protein_limited", Level: derive.Note,
			Text:   "Protein is held within 35 % of energy, or within what the fat floor leaves; the situation or the wish asks for more.",
			Source: derive.Source{Text: "IOM 2002/2005: protein 10-35 % of energy", Confidence: derive.Seen},
		})
	}
	found = append(found, fromMeasures(f)...)
	if !keepsFluid(answers) {
		found = append(found, derive.Finding{
			Code: "fluid", Level: derive.Note,
			Text: "For information: " + waterWords(answers, f.Reproduction) + ", food included.", Source: efsaWater,
		})
	}
	return append(found, fibreStep(answers, f)...)
}

// waterWords tells the adequate intake of water. Source: EFSA 2010: 2.0 litres a
// day for women and 2.5 for men; 0.3 more in pregnancy, 0.7 while breastfeeding.
func waterWords(answers Answers, r energy.Reproduction) string {
	switch {
	case r.Breastfeeding != energy.NotBreastfeeding:
		return "about 2.7 litres of water a day while breastfeeding"
	case r.Weeks > 0:
		return "about 2.3 litres of water a day in pregnancy"
	case Expects(answers, r):
		return "about 2.3 litres of water a day in pregnancy and 2.7 while breastfeeding"
	}
	return "about 2.0 litres of water a day for women and 2.5 for men"
}

// Expects reports that a pregnancy or breastfeeding was told, by the question or
// by its stage.
func Expects(answers Answers, r energy.Reproduction) bool { return answers.Yes(Pregnant) || r.Told() }

// fromMeasures returns what the day of measures gives.
func fromMeasures(f Facts) []derive.Finding {
	var found []derive.Finding
	if f.MeasuresFar {
		text := "With the foods that are left, no day of half measures comes within a fifth of every target. Move the balance, or look at the pattern and the foods that are left out."
		if f.MealsWished {
			text = "With these wishes for the meals, no day of half measures comes within a fifth of every target. Take a wish back, move the balance, or look at the foods that are left out."
		}
		found = append(found, derive.Finding{Code: "measures_far", Level: derive.Caution, Text: text, Source: derive.FromSteps})
	}
	if f.MeasuresUnderFloor {
		found = append(found, derive.Finding{
			Code: "measures_under_floor", Level: derive.Caution,
			Text:   "The wishes for the meals keep the fat of the measures under its floor. Let the day have more thumbs, or fattier protein foods.",
			Source: derive.FromSteps,
		})
	}
	return found
}

func fromCarbohydrate(f Facts) []derive.Finding {
	const rounding = 1e-6
	var found []derive.Finding
	if f.Carbohydrate < macro.CarbohydrateRDA-rounding {
		found = append(found, derive.Finding{
			Code: "carbohydrate_low", Level: derive.Note,
			Text: fmt.Sprintf("Carbohydrate without fibre of %.0f g a day is under the allowance of 130 g.", float64(f.Carbohydrate)), Source: iomCarbohydrate,
		})
	}
	if f.Carbohydrate < f.LeastCarbohydrate-rounding {
		found = append(found, derive.Finding{
			Code: string(Pregnant), Level: derive.Refer, Scope: plan | anyComparison,
			Text: fmt.Sprintf("Pregnancy or breastfeeding: with this energy, protein and fat floor, carbohydrate cannot be kept at %.0f g. The maternity team's dietitian sets the plan.",
				float64(f.LeastCarbohydrate)),
			Source: iomCarbohydrate,
		})
	}
	return found
}

// fibreStep speaks where fibre rises by more than a gut takes well in a week, or
// where what is eaten now was not told.
func fibreStep(answers Answers, f Facts) []derive.Finding {
	rise, weeks := macro.FibreRise(f.Fibre, f.UsualFibre)
	text := "Raise fibre by no more than about 5 g a week"
	switch {
	case f.UsualFibre == 0:
	case rise <= macro.FibreStep:
		return nil
	default:
		text = fmt.Sprintf("Fibre rises by %.0f g, from %.0f to %.0f g a day: at about 5 g a week that takes %d weeks",
			float64(rise), float64(f.UsualFibre), float64(f.Fibre), weeks)
	}
	if keepsFluid(answers) {
		text += "; fluid stays as the treating team set it."
	} else {
		text += ", and drink with it."
	}
	return []derive.Finding{{Code: "fibre_step", Level: derive.Note, Text: text, Source: derive.CommonPractice}}
}

// RaisesFloor reports whether sex, age and BMI keep the fat floor at 20 % of energy
// or more. Pregnancy and breastfeeding do so too, whatever the equations' sex.
//
// Source: WHO/FAO 2010 (from memory).
func RaisesFloor(sex energy.Sex, age unit.Year, bmi unit.KilogramPerSquareMetre) bool {
	return bmi < UnderweightBMI || (sex == energy.Female && age <= ChildbearingUntil)
}
