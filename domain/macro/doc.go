// Package macro splits a day's target energy into protein, fat, carbohydrate and
// fibre.
//
// # Order
//
// The fat floor comes first ([FatFloor]), then protein ([Protein]), which leaves
// room for the floor; the carbohydrate-fat balance shares out what is left
// ([Divide]), and fibre ([Fibre]) lies inside the carbohydrate. [Bands] says how
// the day stands beside the acceptable ranges.
//
// # Protein
//
// Grams for each kilogram are chosen by situation; of several the highest
// counts. What the practitioner sets stands above all of them, and kidney
// disease above the situations.
//
//	holding weight        1.0           common practice, no source
//	losing weight         1.2 (1.2-1.6) Leidy 2015, from memory
//	gaining weight        1.4 (1.4-2.0) ISSN 2017, seen
//	65 or over            1.2 (1.0-1.2) ESPEN (Deutz 2014), PROT-AGE (Bauer 2013), seen
//	endurance training    1.4 (1.2-2.0) ACSM/AND/DC 2016, seen in a secondary copy
//	strength training     1.6 (1.4-2.0) ISSN 2017, seen
//	strength, losing      2.0 (1.4-2.0) ISSN 2017, seen; under 65
//	kidney disease        0.8           KDIGO 2024, seen in a secondary copy
//
// The weight is the weight as it is, and the adjusted weight from a BMI of 30:
// reference weight and a part of what is above it, both from package body and
// shown in the derivation. It can be set to current, adjusted or lean weight. On
// lean weight the situation's amount is divided by [LeanShare], 0.8; an amount
// set by the practitioner is taken for each kilogram of the basis as it is.
// Kidney disease keeps 0.8 g for each kilogram of full weight, whatever else is
// set but for an amount set with a reason, and nothing raises it.
//
// Then the leasts: 0.8 g/kg (IOM 2002/2005); 0.83 g/kg and 1, 9 or 28 g by
// trimester, 19 or 13 g while breastfeeding (EFSA 2012, seen), 28 g while the
// stage is not told; 60 g after bariatric surgery (AACE/ASMBS 2019, seen in a secondary copy);
// 15 % of energy (common practice). And the most: 35 % of energy (IOM 2002/2005)
// but not under 0.8 g/kg, and what the fat floor leaves.
//
// # Fat and the balance
//
// With b the carbohydrate-fat balance and R the energy left after protein,
//
//	fat = max(floor, (1 − b) × R / 9)      carbohydrate = the rest
//
// so the floor is a wall: at b = 1 − 9 × floor / R ([Split.WallBalance]) moving
// the balance on changes nothing. The floor is the higher of a part of the
// energy (20 %; 15 % is the least for anyone, WHO/FAO 2010) and, as an option,
// grams for each kilogram (convention). In pregnancy and while breastfeeding
// carbohydrate is kept at 175 or 210 g or more by taking from the fat above its
// floor (IOM 2002/2005, seen).
//
// # Counting
//
// The USDA table and US labels count total carbohydrate, fibre inside it, at
// 4 kcal/g; labels in the European Union count available carbohydrate at 4 and
// fibre at 2 kcal/g. [Divide] works under either, always gives both, and the
// grams times their factors are the target energy exactly (to rounding of
// floating point). The allowances of 130, 175 and 210 g are for digestible
// carbohydrate, so they are compared with the available grams. [Amounts.Label]
// gives the label's energy: kJ by 17/37/17/8, which are rounded for themselves,
// so that they lie a little beside 4.184 × kcal.
//
// # Checks
//
// testdata/reference/macros.csv (Regulation (EU) 1169/2011, seen; 4/9/4
// arithmetic; WHO limits, seen; fibre and thermic effect, from memory) and
// published-values.csv; property tests for the floor, the energy identity under
// both countings, and the bounds of protein.
package macro
