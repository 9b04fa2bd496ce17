package screen

import "handbreadth/domain/derive"

// The codes of the questions.
const (
	Pregnant           Code = "pregnant_or_breastfeeding"
	EatingDisorderNow  Code = "eating_disorder_current"
	EatingDisorderPast Code = "eating_disorder_history"
	SuicidalThoughts   Code = "suicidal_thoughts"
	UnexplainedLoss    Code = "unexplained_loss"
	Type1Diabetes      Code = "type_1_diabetes"
	GlucoseLowering    Code = "glucose_lowering_medicine"
	SGLT2              Code = "sglt2_inhibitor"
	GLP1               Code = "glp1_medicine"
	Kidney             Code = "kidney_disease"
	KidneySevere       Code = "kidney_disease_severe"
	BariatricRecent    Code = "bariatric_recent"
	BariatricPast      Code = "bariatric_past"
	CancerTreatment    Code = "cancer_treatment"
	HeartOrLiver       Code = "heart_failure_or_cirrhosis"
	Lithium            Code = "lithium"
	Warfarin           Code = "warfarin"
	BloodPressure      Code = "blood_pressure_medicine"
	ThyroidUntreated   Code = "thyroid_untreated"
	ThyroidTreated     Code = "thyroid_treated"
	MissedPeriods      Code = "missed_periods_or_stress_fracture"
	Gallstones         Code = "gallstones"
	GutNarrowing       Code = "gut_narrowing"
	Swallowing         Code = "swallowing_or_metabolic"
)

const anyComparison = derive.ScopeComparison

func refer(scope derive.Scope, text string) effect {
	return effect{derive.Refer, scope | anyComparison, text}
}

func hold(scope derive.Scope, text string) effect {
	return effect{derive.Hold, scope | anyComparison, text}
}
func caution(text string) effect { return effect{derive.Caution, 0, text} }

const (
	deficit = derive.ScopeDeficit
	plan    = derive.ScopePlan
	carb    = derive.ScopeCarbohydrate
	protein = derive.ScopeProtein
	fibre   = derive.ScopeFibre
	fluid   = derive.ScopeFluid
)

// questions: every row marked Q of the safety table. The wordings are our own;
// scored questionnaires are not reproduced.
var questions = []Question{
	{Pregnant, SectionLife, "Pregnant, or breastfeeding?", seen("IOM 2002/2005, digestible carbohydrate 175 and 210 g a day; IOM 2009, Weight gain during pregnancy (from memory)"), []effect{
		refer(deficit, "Pregnancy or breastfeeding: energy is not set below need. The maternity or health team advises on weight."),
		hold(plan, "Pregnancy or breastfeeding: a plan needs the agreement of the maternity or health team; carbohydrate is kept at 175 g (210 g while breastfeeding) or more."),
	}},
	{EatingDisorderNow, SectionLife, "An eating disorder now, or vomiting, laxatives or hard exercise to make up for eating?", niceEating, []effect{
		refer(plan, "A possible eating disorder: a service that treats eating disorders should advise before any plan with measures or targets."),
	}},
	{EatingDisorderPast, SectionLife, "An eating disorder in the past?", memory("NICE NG69; the hold is trade consensus"), []effect{
		hold(deficit, "An eating disorder in the past: eating less can bring it back. Agree it with the clinician who knows the history, and think of the view without numbers."),
	}},
	{MissedPeriods, SectionLife, "Periods that stopped, or a stress fracture?", memory("IOC 2023 consensus on relative energy deficiency in sport"), []effect{
		refer(deficit, "Missed periods or a stress fracture may mean that energy is too low already: a clinician should look into it before eating less."),
	}},
	{UnexplainedLoss, SectionWeight, "Lost more than 5 % of weight in six months without trying?", glim, []effect{
		refer(deficit, "Weight lost without trying: the doctor should look for the cause before any plan that lowers weight."),
		hold(plan, "Weight lost without trying: check with the doctor before any plan."),
	}},
	{SuicidalThoughts, SectionWeight, "Thoughts of ending their life, or of harming themselves?", second("NICE NG225, self-harm: an assessment at the earliest opportunity"), []effect{
		refer(plan, "Thoughts of suicide or self-harm: help is needed the same day. Stay with the person, call the local crisis line, the doctor or emergency services; the plan can wait."),
	}},
	{Type1Diabetes, SectionDiabetes, "Type 1 diabetes?", memory("ADA Standards of Care"), []effect{
		refer(plan, "Type 1 diabetes: food and insulin are matched by the diabetes team, who come first."),
	}},
	{GlucoseLowering, SectionDiabetes, "Insulin or a sulfonylurea (such as gliclazide or glimepiride)?", murdoch, []effect{
		hold(deficit|carb, "A medicine that can cause low blood sugar: eating less, or less carbohydrate, may need a new dose first. Contact the prescriber."),
	}},
	{SGLT2, SectionDiabetes, "An SGLT2 inhibitor (a medicine whose name ends in -gliflozin)?", seen("Murdoch 2019, Br J Gen Pract 69:360; FDA 2015 and EMA 2016 on ketoacidosis"), []effect{
		hold(carb, "An SGLT2 inhibitor: little carbohydrate or fasting can bring on ketoacidosis. Contact the prescriber."),
	}},
	{GLP1, SectionDiabetes, "A GLP-1 medicine (such as semaglutide, liraglutide or tirzepatide)?", second("joint advisory 2025 on nutrition with GLP-1 therapy (ACLM, ASN, OMA, TOS)"), []effect{
		caution("A GLP-1 medicine: appetite is low, so place protein first and sip fluid through the day; lasting vomiting goes to the prescriber."),
	}},
	{Kidney, SectionOrgans, "Kidney disease (stage G3, or a stage not known)?", second("KDIGO 2024, recommendation 3.3.1.1: 0.8 g/kg in G3-G5; KDOQI 2020, Am J Kidney Dis 76 suppl 1"), []effect{
		hold(deficit|protein, "Kidney disease: protein stays at 0.8 g/kg and is never set lower here; a change, or eating less, is agreed with the kidney team or dietitian."),
	}},
	{KidneySevere, SectionOrgans, "Dialysis, a kidney transplant, or an eGFR under 30?", seen("KDOQI 2020, Am J Kidney Dis 76 suppl 1 (1.0-1.2 g/kg in dialysis); KDIGO 2024"), []effect{
		refer(plan, "Advanced kidney disease: the renal dietitian sets the plan."),
	}},
	{HeartOrLiver, SectionOrgans, "Heart failure, or cirrhosis of the liver?", seen("European Society of Cardiology, heartfailurematters.org: over 2 kg in three days; EASL 2019, nutrition in chronic liver disease"), []effect{
		refer(deficit|fluid, "Heart failure or cirrhosis: eating less and drinking more are matters for the treating team. A gain of over 2 kg in three days is urgent."),
	}},
	{BariatricRecent, SectionOrgans, "Bariatric surgery in the last 18 months, or vomiting after it?", memory("AACE/ASMBS 2019 guideline"), []effect{
		refer(plan, "Recent bariatric surgery, or vomiting after it: the surgical team's dietitian sets the plan."),
	}},
	{BariatricPast, SectionOrgans, "Bariatric surgery longer ago?", second("AACE/ASMBS 2019 guideline: at least 60 g of protein a day (quoted in Faria 2020, Bariatric Times)"), []effect{
		hold(deficit|fibre, "Past bariatric surgery: at least 60 g of protein a day (kidney disease comes first) and lifelong supplements; agree eating less, and more fibre, with the surgical team."),
	}},
	{GutNarrowing, SectionOrgans, "A narrowing in the gut, or slow stomach emptying?", derive.CommonPractice, []effect{
		hold(fibre, "A narrowed or slow gut: more fibre or raw vegetables can block it. Agree the texture and the amount with the treating team."),
	}},
	{Gallstones, SectionOrgans, "Gallstones, now or in the past?", seen("Weinsier 1995, Am J Med 98:115 (rate of loss); Gebhard 1996, Hepatology 24:544 (fat in a meal)"), []effect{
		caution("Gallstones: fast loss can bring them on. Keep the loss slow and some fat in each meal."),
	}},
	{Swallowing, SectionOrgans, "Trouble swallowing, or an inborn disorder of metabolism such as phenylketonuria?", derive.CommonPractice, []effect{
		refer(plan, "Trouble swallowing or a metabolic disorder: the specialist dietitian sets foods and textures."),
	}},
	{CancerTreatment, SectionMedicines, "In treatment for cancer?", second("ESPEN 2021, clinical nutrition in cancer: energy is not restricted"), []effect{
		refer(deficit, "During cancer treatment, losing weight can do harm: the oncology team advises."),
		hold(plan, "During cancer treatment: agree any plan with the oncology team."),
	}},
	{Lithium, SectionMedicines, "Lithium?", second("product labelling of lithium salts: steady salt and fluid"), []effect{
		hold(deficit|fluid, "Lithium: its level follows salt and fluid, so these stay steady; agree eating less with the prescriber."),
	}},
	{Warfarin, SectionMedicines, "Warfarin, or another vitamin K antagonist?", seen("Lurie 2010, Br J Clin Pharmacol 70:164 (vitamin K eaten shifts the response); CHEST antithrombotic guideline"), []effect{
		caution("Warfarin: keep leafy greens steady from week to week and tell the clinic that eating changes."),
	}},
	{BloodPressure, SectionMedicines, "Medicine for blood pressure, or a water tablet?", derive.CommonPractice, []effect{
		caution("Blood pressure medicine: the dose may need a review as weight falls; dizziness on standing goes to the prescriber."),
	}},
	{ThyroidUntreated, SectionMedicines, "A thyroid disorder that is not treated yet?", memory("ATA 2014 guideline"), []effect{
		refer(deficit, "An untreated thyroid disorder changes energy needs: treatment comes first."),
	}},
	{ThyroidTreated, SectionMedicines, "Thyroid hormone tablets?", second("ATA 2014 guideline: levothyroxine apart from food; fibre and soy from memory"), []effect{
		caution("Thyroid hormone: keep fibre and soy foods some hours away from the tablet."),
	}},
}
