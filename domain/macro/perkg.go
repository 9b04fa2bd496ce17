package macro

import (
	"fmt"

	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
)

// perKg is protein for each kilogram in one situation: the value that is
// reckoned with and the published range around it, nought where there is none.
type perKg struct {
	value, low, high unit.GramPerKilogram
	why              string
	source           derive.Source
}

// Protein by situation, for each kilogram of weight a day.
var (
	general = perKg{
		value: 1.0, why: "holding weight",
		source: derive.Source{Text: "common practice, no source; above the RDA of 0.8 g/kg (IOM 2002/2005) and the reference intake of 0.83 (EFSA 2012)", Confidence: derive.Custom},
	}
	losing = perKg{
		value: 1.2, low: 1.2, high: 1.6, why: "losing weight",
		source: derive.Source{Text: "Leidy 2015, Am J Clin Nutr 101:1320S", Confidence: derive.Memory},
	}
	gaining = perKg{
		value: 1.4, low: 1.4, high: 2.0, why: "gaining weight",
		source: issn,
	}
	older = perKg{
		value: 1.2, low: 1.0, high: 1.2, why: "65 or over",
		source: derive.Source{Text: "Deutz 2014 (ESPEN), Clin Nutr 33:929; Bauer 2013 (PROT-AGE), J Am Med Dir Assoc 14:542", Confidence: derive.Seen},
	}
	endurance = perKg{
		value: 1.4, low: 1.2, high: 2.0, why: "endurance training",
		source: derive.Source{Text: "ACSM, AND and Dietitians of Canada 2016, Med Sci Sports Exerc 48:543: 1.2-2.0 g/kg", Confidence: derive.SeenSecond},
	}
	strength = perKg{
		value: 1.6, low: 1.4, high: 2.0, why: "strength training",
		source: issn,
	}
	// The upper end of both ranges; for lean weight it comes to 2.5 g/kg, inside
	// the 2.3-3.1 g/kg that ISSN 2017 names for resistance training with less
	// energy. Not from 65 years on, where no source was found for it.
	strengthLosing = perKg{
		value: 2.0, low: 1.4, high: 2.0, why: "strength training while losing weight",
		source: issn,
	}
	kidney = perKg{
		value: ProteinKidney, why: "kidney disease",
		source: derive.Source{Text: "KDIGO 2024, recommendation 3.3.1.1: 0.8 g/kg; equals the RDA of IOM 2002/2005", Confidence: derive.SeenSecond},
	}
	issn = derive.Source{Text: "ISSN 2017 (Jäger), J Int Soc Sports Nutr 14:20: 1.4-2.0 g/kg with training", Confidence: derive.Seen}
)

// choosePerKg returns protein for each kilogram: as asked, for kidney disease
// 0.8 g, else the highest of the situations that apply.
func choosePerKg(in ProteinInput) perKg {
	switch {
	case in.Asked != 0:
		return perKg{value: in.Asked, why: "as set by the practitioner", source: derive.Source{Text: "set by the practitioner", Confidence: derive.Arithmetic}}
	case in.Kidney:
		return kidney
	}
	chosen := general
	for _, s := range situations(in) {
		if s.value > chosen.value {
			chosen = s
		}
	}
	return chosen
}

// situations lists what applies to a client; of equals the first counts.
func situations(in ProteinInput) []perKg {
	var all []perKg
	if in.Age >= OlderAge {
		all = append(all, older)
	}
	switch in.Direction {
	case Lowering:
		all = append(all, losing)
	case Raising:
		all = append(all, gaining)
	}
	switch in.Training {
	case TrainingEndurance:
		all = append(all, endurance)
	case TrainingStrength:
		all = append(all, strength)
		if in.Direction == Lowering && in.Age < OlderAge {
			all = append(all, strengthLosing)
		}
	}
	return all
}

// note tells the published range, where there is one.
func (p perKg) note() string {
	if p.high == 0 {
		return ""
	}
	return fmt.Sprintf("Published range: %.3g to %.3g g for each kilogram of weight.", float64(p.low), float64(p.high))
}
