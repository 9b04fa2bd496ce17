// Package screen holds the screening: what is asked, what the answers and the
// computed figures give, and whether a plan may be issued. It warns, holds or
// refers; it never diagnoses, it never speaks of a medicine's dose, and what was
// not asked is never read as "no".
//
// # Findings
//
// [Findings] returns findings, gravest first, no two of one code and level. A
// finding has a level (note, caution, hold, refer) and a scope: what it stops.
// [Judge] compares the scopes with what a plan would do: a refer stops it, a hold
// stops it until a reason is recorded, and a reason never lifts a refer.
// [HoldCodes] lists what a reason can be recorded for. Where a referral takes the
// plan's place, [WithoutFigures] takes the figures of the target out, and what
// speaks of the plan; maintenance energy is still told, as need and not as a target.
//
// # Questions
//
// [Questions] are asked at every visit, in our own words; each carries its source
// and what a yes does. A question without an answer is the finding not_asked, a
// hold on any plan. Some answers follow from what was told elsewhere, and then
// stand whatever was answered: a positive questionnaire, a loss of weight over
// 5 %, a week of pregnancy, breastfeeding. MUST counts without its form too, as far
// as BMI and a loss that was told reach it.
//
// # Questionnaires
//
// SCOFF (Morgan 1999), MUST (BAPEN 2003) and MST (Ferguson 1999) are scored
// exactly as published: [Questionnaire.Score] from answers to our own wording, or
// the score of the published form as it is. SCOFF from 2 refers any plan; MUST or
// MST from 2 refers a deficit and holds any plan, like an unexplained loss. A
// form with items left out is no score, unless it is positive already.
//
// # Refeeding
//
// [Refeeding.HighRisk] has the criteria of NICE CG32: one of BMI under 16, a loss
// over 15 %, more than 10 days of little food, low potassium, phosphate or
// magnesium; or two of BMI under 18.5, a loss over 10 %, more than 5 days,
// alcohol or the listed medicines. A high risk refers any plan. Where a criterion
// is met and others were not asked, refeeding_not_asked says what to ask: it
// holds a plan that raises energy; it holds any plan where the criterion was told
// among the refeeding questions; and it is a caution where only the BMI or an
// unexplained loss points to it (which speak for themselves) or only blood values
// are missing. A yes to insulin, cancer treatment or blood pressure medicine counts
// as a listed medicine until the question on those is answered with no.
//
// # What the measures bring
//
// The day of measures is what is eaten, so it is screened beside the target. Up to
// a fifth is the rounding of half measures; where wishes bind the day only a tenth
// is. Beyond it, what is brought decides deficit, surplus and carbohydrate; protein
// of kidney disease counts from a fifth, and floors (least energy, carbohydrate in
// pregnancy) from a twentieth. The finding measures_differ tells the energy.
//
// # Energy availability
//
// (intake − exercise) / fat-free mass; under 30 kcal/kg holds a deficit. It is
// assessed where training was told by its kind alone, too. See
// [Availability] for whom it is assessed. The line comes from lean young women
// who train; it is debated, and not established in men (Burke 2018, IOC 2023).
//
// # Sources
//
// Each source says how far it was confirmed: seen (the number or the sentence was
// read in a copy of the source), seen-2nd (in a copy by others), memory, or
// convention. screen_test.go has the safety table once more, apart from the code,
// with what was seen of each row; questionnaires, refeeding and availability are
// checked against testdata/reference/screening.csv. From memory still: the
// history of an eating disorder (NICE NG69), type 1 diabetes (ADA), bariatric
// surgery under 18 months (AACE/ASMBS 2019), untreated thyroid disorder (ATA
// 2014), missed periods and stress fractures (IOC 2023), the figures for older
// adults (ESPEN 2022) and the fat floor of 20 % (WHO/FAO 2010).
package screen
