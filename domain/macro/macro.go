// Package macro splits target energy into protein, fat and carbohydrate, with
// the fat floor that the carbohydrate-fat balance cannot cross, and adds fibre.
package macro

import "handbreadth/domain/unit"

// Energy of a gram of each macro in kilocalories.
// Source: Regulation (EU) 1169/2011, annex XIV (general factors).
const (
	EnergyPerGramProtein      = 4
	EnergyPerGramFat          = 9
	EnergyPerGramCarbohydrate = 4
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
	// CarbohydrateRDA is the allowance for adults. Source: IOM 2002/2005: 130 g
	// a day (seen in a secondary copy).
	CarbohydrateRDA unit.Gram = 130
	// CarbohydratePregnant and CarbohydrateBreastfeeding are the allowances.
	// Source: IOM 2002/2005: 175 and 210 g a day (from memory).
	CarbohydratePregnant      unit.Gram = 175
	CarbohydrateBreastfeeding unit.Gram = 210
	// MostProteinShare is the upper edge of the acceptable range.
	// Source: IOM 2002/2005: 10-35 % of energy (seen).
	MostProteinShare unit.Percent = 35
	// UsualProteinShare is the least of energy where nothing limits protein:
	// common practice, no source; inside 10-35 % (IOM 2002/2005). With less,
	// starch and nuts alone would bring all of it and hardly a palm be left.
	UsualProteinShare unit.Percent = 15
	// FibrePer1000 is the adequate intake for each 1000 kcal.
	// Source: IOM 2002/2005: 14 g (from memory).
	FibrePer1000 unit.Gram = 14
)

// Protein for each kilogram of weight a day.
const (
	// ProteinKidney is held for chronic kidney disease and never set lower.
	// Source: KDIGO 2024 (from memory); it equals the RDA of IOM 2002/2005 (seen).
	ProteinKidney unit.GramPerKilogram = 0.8
	// ProteinGeneral: common practice, no source; above the RDA of 0.8 g/kg.
	ProteinGeneral unit.GramPerKilogram = 1.0
	// ProteinLowering is for a target below maintenance.
	// Source: Leidy 2015, Am J Clin Nutr 101:1320S: 1.2-1.6 g/kg (from memory).
	ProteinLowering unit.GramPerKilogram = 1.2
	// ProteinRaising is for a target above maintenance.
	// Source: ISSN 2017: 1.4-2.0 g/kg with training (from memory).
	ProteinRaising unit.GramPerKilogram = 1.4
	// ProteinOlder is for 65 years and over.
	// Source: ESPEN (Deutz 2014) and PROT-AGE (Bauer 2013): 1.0-1.2 g/kg (seen).
	ProteinOlder unit.GramPerKilogram = 1.2
	// LeastProteinAfterBariatric is the least after bariatric surgery.
	// Source: AACE/ASMBS 2019: 60 g a day (from memory).
	LeastProteinAfterBariatric unit.Gram = 60
	// LeastProteinPerKg and MostProteinPerKg bound what can be asked for.
	LeastProteinPerKg unit.GramPerKilogram = 0.8
	MostProteinPerKg  unit.GramPerKilogram = 2.5
)

// OlderAge is the age from which an adult counts as older.
// Source: ESPEN 2022 (from memory).
const OlderAge unit.Year = 65

// The adjusted weight used for protein where BMI is 30 or more: the weight at
// BMI 25 and a quarter of what is above it.
// Source: convention; a factor of 0.25 to 0.4 is in use (from memory).
const (
	AdjustFromBMI     unit.KilogramPerSquareMetre = 30
	ReferenceBMI      unit.KilogramPerSquareMetre = 25
	AdjustedPartAbove                             = 0.25
)
