package screen

import "handbreadth/domain/derive"

func memory(text string) derive.Source { return derive.Source{Text: text, Confidence: derive.Memory} }
func seen(text string) derive.Source   { return derive.Source{Text: text, Confidence: derive.Seen} }
func second(text string) derive.Source {
	return derive.Source{Text: text, Confidence: derive.SeenSecond}
}

// The sources of what is computed.
var (
	morgan          = seen("Morgan, Reid and Lacey 1999, BMJ 319:1467: 2 or more of 5")
	bapen           = seen("BAPEN 2003, Malnutrition Universal Screening Tool: 2 or more is high risk")
	ferguson        = second("Ferguson 1999, Nutrition 15:458-464: 2 or more is at risk")
	niceRefeeding   = seen("NICE CG32, nutrition support for adults, criteria for refeeding problems")
	niceVeryLow     = memory("NICE CG189")
	ahaEnergy       = memory("AHA/ACC/TOS 2013 guideline")
	nihRate         = memory("NIH 1998 clinical guidelines")
	espenOlder      = memory("ESPEN 2022 guideline on nutrition in geriatrics")
	whoUnderweight  = second("WHO: under 18.5 is underweight")
	iocAvailability = seen("Burke 2018, Int J Sport Nutr Exerc Metab 28:350; IOC 2023 consensus: low under 30, healthy about 45")
	iomCarbohydrate = seen("IOM 2002/2005, digestible carbohydrate: 130 g a day, 175 g in pregnancy, 210 g while breastfeeding")
	faoFat          = memory("WHO/FAO 2010, Fats and fatty acids in human nutrition")
	efsaWater       = memory("EFSA 2010, Dietary reference values for water")
)
