// Package domain composes the whole computation: from an intake to a plan in
// which every number carries its derivation. It knows no screen, no store, no
// paper and no clock.
//
// # From an intake to a plan
//
// [Intake.Validate] names everything that cannot be reckoned with, by the key of
// the consult file, with what was given and what is accepted. [NewPlan] is pure:
// the same intake gives the same plan. Its stages:
//
//	body         body mass index, body fat, lean mass, healthy and reference weight
//	spend        resting energy, activity level, maintenance energy; beside them the
//	             other equations and the Dietary Reference Intakes
//	goal         target energy by date, by weekly rate, by energy, or the default
//	targets      protein, fat, carbohydrate, fibre, and the day of hand measures
//	screening    findings, and the gate that they make
//	projection   the course of the weight with its range
//
// A plan that is referred has no goal, no targets and no projection; a plan that
// is held has them to be looked at, and [Plan.Issuable] is false.
//
// # The goal and its guards
//
// Where a date or a rate is named, the weight model of package body finds the
// energy that ends at the wish; [energy.Outcome.StaticTarget] says what the rule
// of 3500 kcal a pound would have asked for, and [Promise] what the model expects
// of that. A rate is the date that it comes to; without a goal weight it is
// looked at over twelve weeks. Nothing is changed silently: a wish beyond the
// guards keeps its target and gets a finding, with the earliest date and the
// least energy that are inside every guard beside it.
//
// The guards: a loss of at most 1 % of weight and 1 kg a week, a deficit of at
// most 1000 kcal, the least energy (1200 kcal for women, 1500 for men), and
// resting energy. The rate that counts is the higher of the wish and of what the
// deficit gives by the static rule. The first weeks of the model are not held
// against a plan: they are water, and would stop any deficit.
//
// A wish that no energy brings is said: a loss has a target of nought, which the
// screening refers; a gain is refused with the field that asks for it. A goal
// weight that the energy does not reach is said too, with the weight at which it
// settles ([Projection.Short], [Projection.Settles]).
//
// # The projection
//
// [Projection.Bands] has every day: the expected weight and the range that eight
// in ten courses keep to. There is one phase, or two where a goal weight is
// reached: the target, then the energy that holds the goal for good. The range
// comes from the band of resting energy, the width of the activity class, and
// how closely a plan is kept ([body.AdherenceSpread], a convention). In pregnancy
// and while breastfeeding there is none: the model does not know them, and the
// static rule answers what a date asks for.
//
// # Checks
//
// TestNothingUnsafeIsIssued tries twenty thousand random intakes with every
// field (HANDBREADTH_PLANS asks for more): nothing is issued inside the scope of
// a refer, or of a hold without its reason; nothing unasked counts as no; a
// target under a floor has its finding; fat holds its floors; grams times factors
// are the energy; every number, found by reflection, has a derivation that ends
// in it, with sources. TestNoFormulaWithoutASource reads the source code for the
// same. TestSafeDateIsSafeAndTheEarliest does what it says, on three thousand
// wishes.
package domain
