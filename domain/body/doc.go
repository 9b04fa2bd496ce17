// Package body knows the body: its composition, its reference weights, and how
// its weight answers to energy over time.
//
// # Composition
//
// [Fat] is body fat by the method that is trusted most for what is known: as
// measured, by tape (Hodgdon and Beckett 1984), by Gallagher 2000 up to a body
// mass index of 35, and above it by the logarithmic form of Jackson 2002;
// [FatEstimates] has all of them, Deurenberg 1991 too. The range is one standard
// error either side. [LeanMass] is the rest of the weight. [BMILimits],
// [WaistLimits] and [WaistToHeightLimits] name the classes; [HealthyWeight] and
// [ReferenceWeights] are for reckoning and are no goal.
//
// # Weight over time
//
// The adult model of Hall et al. 2011 (Lancet 378:826-837) has five equations:
// glycogen, extracellular fluid, adaptive thermogenesis, fat and lean tissue.
// With G, E, A, F, L for these, and a change of intake from a baseline at which
// nothing moves,
//
//	17.6 MJ/kg × dG/dt = carbohydrate − k × G²
//	3220 mg/l  × dE/dt = −3000 × E − 4000 × (1 − carbohydrate / baseline)
//	14 days    × dA/dt = 0.14 × change − A
//	39.5 MJ/kg × dF/dt = (1 − p) × (intake − spent − energy into glycogen)
//	7.6 MJ/kg  × dL/dt =      p  × (intake − spent − energy into glycogen)
//	p     = C / (C + F), C = 10.4 kg × 7.6 / 39.5
//	spent = K + 13 F + 92 L + activity × weight + 0.10 × change + A
//	        + 750 dF/dt + 960 dL/dt                            (kJ a day)
//	weight = start + changes of F, L, E and 3.7 × G
//
// While the intake stays the same the first three have exact solutions, and the
// last two give L = L₀ + 10.4 ln(F / F₀), the Forbes curve, exactly. So only fat
// is stepped: by quarters of a day for three days, by days for two weeks, by
// weeks until adaptation has settled, then by four weeks, with days between by a
// cubic. The weight stays within a gram of the five equations stepped a hundred
// times a day; the tests print how near (0.3 g at most in 5000 random courses,
// 0.03 g over ten years).
//
// [Course], [After] and [Fan] go forward; [EnergyFor] turns it round by a
// bracketed search that always ends, warm from the linear form (six looks at
// most in 20 000 usual wishes); [DaysTo] finds the first day of a weight;
// [SettledWeight] is where an energy leads in the end, and [HoldingEnergy] the
// energy that settles at a weight. [LinearOf] is the linear form with the
// half-time of about a year.
//
// The model is for adults who are neither pregnant nor breastfeeding. It keeps
// sodium, the share of carbohydrate (half of the energy) and activity as they
// are.
//
// # The range
//
// [Fan] steps seven courses: the line and two for each uncertain thing, at
// the distance that keeps mean and variance. The range holds eight in ten. Tests
// compare it with a seeded simulation of four thousand people, in one phase and
// in two: the edges lie within a tenth of the width.
//
// # Checks
//
// testdata/reference/dynamics.txt has courses and linear forms by an independent
// program, the Forbes partition by the Lambert function, and published constants
// for single people; body.txt has body fat and reference weights. The calorie
// restriction trial (7.6 kg in two years, seen) and the rule of thumb (half in
// about a year, seen) are tests of their own. The parameters are from memory but
// for the glycogen equation.
package body
