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
	niceVeryLow     = seen("NICE CG189: very-low-calorie diets, 450 to 800 kcal, only with ongoing clinical support")
	niceEating      = seen("NICE NG69, recommendation 1.2.10: refer at once where it is suspected; Morgan 1999, BMJ 319:1467")
	glim            = second("GLIM 2019, Clin Nutr 38:1: over 5 % within six months; BAPEN 2003 (seen)")
	murdoch         = seen("Murdoch 2019, Br J Gen Pract 69:360; ADA Standards of Care (from memory)")
	ahaEnergy       = second("AHA/ACC/TOS 2013 guideline: 1200-1500 kcal for women, 1500-1800 for men")
	nihRate         = second("NIH 1998 clinical guidelines: 1 to 2 lb a week, 500 to 1000 kcal a day less")
	espenOlder      = memory("ESPEN 2022, clinical nutrition and hydration in geriatrics: weight-reducing diets only with obesity (seen), moderate, with exercise; 500 kcal and protein from memory")
	whoUnderweight  = second("WHO: under 18.5 is underweight")
	iocAvailability = seen("Burke 2018, Int J Sport Nutr Exerc Metab 28:350; IOC 2023 consensus: low under 30, healthy about 45")
	iomCarbohydrate = seen("IOM 2002/2005, digestible carbohydrate: 130 g a day, 175 g in pregnancy, 210 g while breastfeeding")
	faoFat          = memory("WHO/FAO 2010, Fats and fatty acids in human nutrition")
	efsaWater       = seen("EFSA 2010, EFSA Journal 8(3):1459, total water")
)
