package macro

import "handbreadth/domain/unit"

// Energy of a gram of each macro in kilocalories: the general factors.
// Source: Regulation (EU) 1169/2011, annex XIV (seen). Fibre counts apart only
// where available carbohydrate is counted; see [Counting].
const (
	EnergyPerGramProtein      = 4
	EnergyPerGramFat          = 9
	EnergyPerGramCarbohydrate = 4
	EnergyPerGramFibre        = 2
)

// Bands and recommendations.
const (
	// LeastFatFloor and MostFatFloor bound what can be asked for. WHO/FAO 2010
	// names 15 % as the least for any adult (from memory).
	LeastFatFloor unit.Percent = 15
	MostFatFloor  unit.Percent = 40
	// DefaultFatFloor is the lower edge of the acceptable range for fat.
	// Source: IOM 2002/2005 and EFSA 2010: 20-35 % of energy (seen).
	DefaultFatFloor unit.Percent = 20
	// RaisedFatFloor is the least for women of childbearing age and for a BMI
	// under 18.5. Source: WHO/FAO 2010 (from memory).
	RaisedFatFloor unit.Percent = 20
	// DefaultBalance gives carbohydrate a little more than half of the energy
	// left after protein: near the lower edge of 45-65 % of energy where protein
	// is raised for losing weight, inside it otherwise.
	DefaultBalance unit.Percent = 55
	// CarbohydrateShareFloor is the lower edge of the acceptable range.
	// Source: IOM 2002/2005: 45-65 % of energy (seen).
	CarbohydrateShareFloor unit.Percent = 45
	// CarbohydrateRDA is the allowance for adults, of digestible (available)
	// carbohydrate. Source: IOM 2002/2005, summary tables: "carbohydrate, total
	// digestible", 130 g a day (seen).
	CarbohydrateRDA unit.Gram = 130
	// CarbohydratePregnant and CarbohydrateBreastfeeding are the allowances, of
	// digestible carbohydrate too.
	// Source: IOM 2002/2005, summary tables: 175 and 210 g a day (seen).
	CarbohydratePregnant      unit.Gram = 175
	CarbohydrateBreastfeeding unit.Gram = 210
	// LeastProteinShare and MostProteinShare are the edges of the acceptable range.
	// Source: IOM 2002/2005: 10-35 % of energy (seen).
	LeastProteinShare unit.Percent = 10
	MostProteinShare  unit.Percent = 35
	// MostFatShare and MostCarbohydrateShare are the upper edges of theirs.
	// Source: IOM 2002/2005: 20-35 % and 45-65 % of energy (seen).
	MostFatShare          unit.Percent = 35
	MostCarbohydrateShare unit.Percent = 65
	// UsualProteinShare is the least of energy where nothing limits protein:
	// common practice, no source; inside 10-35 % (IOM 2002/2005). With less,
	// starch and nuts alone would bring all of it and hardly a palm be left.
	UsualProteinShare unit.Percent = 15
	// FibrePer1000 is the adequate intake for each 1000 kcal.
	// Source: IOM 2002/2005: 14 g (from memory).
	FibrePer1000 unit.Gram = 14
)

// Bounds of protein.
const (
	// ProteinKidney is held for chronic kidney disease and never set lower.
	// Source: KDIGO 2024, recommendation 3.3.1.1: 0.8 g/kg in stages G3-G5 (seen
	// in a secondary copy); it equals the RDA of IOM 2002/2005 (seen).
	ProteinKidney unit.GramPerKilogram = 0.8
	// LeastProteinAfterBariatric is the least after bariatric surgery.
	// Source: AACE/ASMBS 2019: 60 g a day (seen in a secondary copy).
	LeastProteinAfterBariatric unit.Gram = 60
	// LeastProteinPerKg and MostProteinPerKg bound what can be asked for.
	// Source of the least: IOM 2002/2005, RDA 0.8 g/kg (seen).
	LeastProteinPerKg unit.GramPerKilogram = 0.8
	MostProteinPerKg  unit.GramPerKilogram = 2.5
)

// OlderAge is the age from which an adult counts as older.
// Source: ESPEN 2022 (from memory).
const OlderAge unit.Year = 65

// AdjustFromBMI is the body mass index from which the adjusted weight stands in
// for the weight: convention. The adjusted weight itself comes from package
// body, with the reference weight that it starts from.
const AdjustFromBMI unit.KilogramPerSquareMetre = 30
