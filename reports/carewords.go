package reports

const (
	wordsFoods      = "Mix and match. Weights are for your own hand."
	wordsFoodsPlain = "Mix and match. Pick what you like and what is in season."
	wordsAvoid      = "Foods with {} are left out."
	wordsAsk        = "There is one more point that we should talk about. Please ask us."
)

// careWords tells each finding that can stand on a handout in the client's
// words, by its code: what to do, and whom to ask. They hold no number, so that
// they serve the paper without numbers too.
var careWords = map[string]string{
	"pregnant_or_breastfeeding":         "You and your baby need enough food. Ask your midwife or doctor before you try to weigh less.",
	"eating_disorder_history":           "If thoughts of food or weight start to trouble you, stop this plan and call us.",
	"unexplained_loss":                  "Your doctor should know that you lost weight and did not try to.",
	"glucose_lowering_medicine":         "When you eat in a new way, your diabetes medicine may need a new dose. Ask the person who prescribes it. Know the signs of low blood sugar.",
	"sglt2_inhibitor":                   "Do not fast or cut out starch while you take your diabetes tablets. Ask the person who prescribes them.",
	"glp1_medicine":                     "You may not feel hungry. Eat your protein foods first. If you keep being sick, call your doctor.",
	"kidney_disease":                    "Keep to the protein foods in this plan. Ask your kidney team before you eat more or less of them.",
	"bariatric_past":                    "Take your vitamins each day. Ask your surgery team before you change this plan.",
	"cancer_treatment":                  "Show this plan to your cancer team. Weight loss can do harm while you are in treatment.",
	"heart_failure_or_cirrhosis":        "Drink as much as your care team told you. If your weight jumps up in a few days, call them at once.",
	"older_adult":                       "Keep your muscles strong: eat protein foods at each meal, and train them if you can.",
	"lithium":                           "Keep salt and drinks the same from day to day. Ask the person who prescribes your lithium before you change them.",
	"warfarin":                          "Eat about the same amount of leafy greens each week. Tell your clinic that you eat in a new way.",
	"blood_pressure_medicine":           "As you eat in a new way, your blood pressure medicine may need a new dose. If you feel dizzy when you stand up, call your doctor.",
	"thyroid_untreated":                 "Your thyroid needs care first. See your doctor about it.",
	"thyroid_treated":                   "Take your thyroid tablet some hours apart from high-fibre and soy foods.",
	"missed_periods_or_stress_fracture": "Your body may need more food. See your doctor, and do not eat less for now.",
	"gallstones":                        "Go slowly, and have some fat at each meal. If you get a sharp pain in your belly, see a doctor.",
	"gut_narrowing":                     "Some foods can get stuck. Cook your vegetables until soft, and ask your care team how much fibre is right for you.",
	"underweight_now":                   "Eat more step by step. Your doctor should know of this plan.",
	"course_underweight":                "Do not weigh less than we agreed. We will look at your weight together.",
	"energy_low":                        "This is not much food. Keep to it only as long as we agreed. If you feel faint or weak, call us.",
	"energy_very_low":                   "This is very little food. Your doctor must know of it. If you feel faint or weak, stop and call.",
	"energy_availability_low":           "Your body may need more food for the sport you do. Tell us if you feel worn out.",
	"refeeding_not_asked":               "We need to know a bit more of how you have eaten before you eat more. Tell us of any blood tests.",
	"rate_fast":                         "This plan is a quick one. If you feel weak, cold or faint, stop and call us.",
	"deficit_large":                     "This is a big step down in food. If it is too much, tell us. A slower way is fine.",
	"below_resting":                     "You may feel tired or hungry. If you do, tell us. A slower way is kinder.",
	"goal_and_energy_differ":            "Your goal and your food do not pull the same way yet. We will talk about it next time.",
	"not_asked":                         "We did not talk about all of your health. Tell us of any illness or medicine that we do not know.",
	"carbohydrate_low":                  "This plan has less starch and fruit than most. If you feel weak or foggy, tell us.",
	"fat_floor_raised":                  "Your plan keeps a fair share of fat, as your body needs it.",
	"fluid":                             "Drink through the day. Water is best. You need more when it is hot or when you sweat.",
	"surplus_large":                     "This is a lot of food. If it is too much, tell us. A slower way is fine.",
	"protein_limited":                   "Your protein foods are held a bit lower, so that all your foods fit in a day.",
	"measures_far":                      "These measures come near your plan, but not all the way. We will look at your foods together.",
	"measures_differ":                   "Your meals hold more or less food than your plan. We will look at them together.",
	"measures_under_floor":              "Your meals hold a bit less fat than they should. We will look at them together.",
	"fibre_step":                        "Add foods with fibre bit by bit, over some weeks.",
}
