package draft

import (
	"math"
	"strings"
	"testing"

	"handbreadth/domain"
	"handbreadth/domain/energy"
	"handbreadth/domain/macro"
	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
)

func with(form Form, pairs ...string) Form {
	for i := 0; i < len(pairs); i += 2 {
		form[Field(pairs[i])] = pairs[i+1]
	}
	return form
}

// The names of fields in problems are those of the domain, so that what it finds
// wrong is shown at the field.
func TestFieldsAreNamedAsInTheDomain(t *testing.T) {
	for field, name := range map[Field]string{
		Date: domain.FieldDate, Born: domain.FieldBorn, Sex: domain.FieldSex, Height: domain.FieldHeight, Weight: domain.FieldWeight,
		Neck: domain.FieldNeck, Waist: domain.FieldWaist, Hip: domain.FieldHip, FatPercent: domain.FieldFatPercent, Points: domain.FieldPoints,
		MeasuredResting: domain.FieldMeasuredResting, RestingEquation: domain.FieldEquation, Activity: domain.FieldActivity,
		Day: domain.FieldActivityDay, Customary: domain.FieldCustomary, Exercise: domain.FieldExercise, Training: domain.FieldTraining,
		GoalKind: domain.FieldGoalKind, GoalWeight: domain.FieldGoal, GoalBy: domain.FieldGoalBy, GoalPerWeek: domain.FieldGoalPerWeek,
		GoalEnergy: domain.FieldGoalKcal, Meals: domain.FieldMeals, Pattern: domain.FieldPattern, UsualFibre: domain.FieldUsualFibre,
		Balance: domain.FieldBalance, FatFloor: domain.FieldFloor, FatFloorPerKg: domain.FieldFloorPerKg, Protein: domain.FieldProtein,
		ProteinBasis: domain.FieldProteinBasis, Counting: domain.FieldCounting, PregnantWeeks: domain.FieldPregnantWeeks,
		WeightBefore: domain.FieldWeightBefore, Breastfeeding: domain.FieldBreastfeeding, RecentLoss: domain.FieldRecentLoss,
		LowElectrolytes:      domain.FieldLowElectrolytes,
		ScoreOf(screen.MUST): domain.ScoreField(screen.MUST),
	} {
		if string(field) != name {
			t.Errorf("the form has %q, the domain %q", field, name)
		}
	}
	for _, word := range domain.Breastfeeding() {
		if nursed[word] == energy.NotBreastfeeding {
			t.Errorf("%q is not read", word)
		}
	}
}

// Conversions: 1 in is 2.54 cm and 1 lb 0.45359237 kg exactly (international
// yard and pound agreement, 1959), 1 kcal is 4.184 kJ (SI brochure).
func TestOptionalMeasurementsAreRead(t *testing.T) {
	form := with(filled(), "body.neck", "36", "body.waist", "33 in", "body.hip", "1010 mm", "body.fat_percent", "31,5 %", "body.points", "asian",
		"measured_resting_kcal_per_day", "6276 kJ", "exercise_kcal_per_day", "120 kcal a day", "usual_fibre_g_per_day", "18 g", "training", "strength",
		"protein_basis", "lean", "fat_floor_g_per_kg", "0,6 g/kg", "carbohydrate_counted", "available", "resting_equation", "henry_2005_weight_height")
	r := Read(form, unit.Style{})
	if len(r.Problems)+len(r.Remarks) > 0 {
		t.Fatalf("%+v %+v", r.Problems, r.Remarks)
	}
	in := r.Intake
	if in.Body.Neck != 36 || math.Abs(float64(in.Body.Waist)-83.82) > 1e-9 || in.Body.Hip != 101 || in.Body.Fat != 31.5 || in.Body.Points != "asian" {
		t.Errorf("body %+v", in.Body)
	}
	if math.Abs(float64(in.MeasuredResting)-1500) > 1e-9 || in.Exercise != 120 || in.UsualFibre != 18 || in.Training != macro.TrainingStrength {
		t.Errorf("%v, %v, %v, %v", in.MeasuredResting, in.Exercise, in.UsualFibre, in.Training)
	}
	if in.ProteinBasis != macro.BasisLean || in.FatFloorPerKg != 0.6 || in.Counting != macro.CountAvailable || in.RestingEquation != "henry_2005_weight_height" {
		t.Errorf("%v, %v, %v, %v", in.ProteinBasis, in.FatFloorPerKg, in.Counting, in.RestingEquation)
	}
	for field, want := range map[Field]string{Waist: "83.8 cm", MeasuredResting: "1500 kcal a day", Exercise: "120 kcal a day", UsualFibre: "18 g a day"} {
		if r.Understood[field] != want {
			t.Errorf("%s understood as %q, want %q", field, r.Understood[field], want)
		}
	}
}

func TestBareNumbersAreInTheUnitsOfThePractice(t *testing.T) {
	us := unit.Style{System: unit.USCustomary, EnergyIn: unit.InKilojoules}
	in := Read(with(filled(), "height", "66", "weight", "160", "goal.weight", "150", "goal.by", "", "goal.per_week", "1", "body.waist", "33", "exercise_kcal_per_day", "418.4"), us).Intake
	if math.Abs(float64(in.Goal.PerWeek)-0.45359237) > 1e-9 || math.Abs(float64(in.Body.Waist)-83.82) > 1e-9 || math.Abs(float64(in.Exercise)-100) > 1e-9 {
		t.Errorf("%v a week, %v, %v", in.Goal.PerWeek, in.Body.Waist, in.Exercise)
	}
	uk := unit.Style{System: unit.UKCustomary}
	if _, wrong := Read(with(filled(), "body.waist", "33"), uk).Problems[Waist]; !wrong {
		t.Error("a bare waist is taken where inches and centimetres are both in use")
	}
}

func TestNothingAndTheWordForItAreTheDefault(t *testing.T) {
	r := Read(with(filled(), "training", "none", "protein_basis", "by_bmi", "carbohydrate_counted", "total"), unit.Style{})
	in := r.Intake
	if len(r.Problems) > 0 || in.Training != "" || in.ProteinBasis != "" || in.Counting != "" {
		t.Errorf("%v: %q %q %q", r.Problems, in.Training, in.ProteinBasis, in.Counting)
	}
}

func TestOneWayOfTellingActivity(t *testing.T) {
	form := with(filled(), "activity.pal", "1.7", "activity.customary", "moderate", "activity.day.07030", "8")
	for _, c := range []struct {
		way  string
		want float64
	}{{"low_active", 1.6}, {"pal", 1.7}, {"customary", 1.55}} {
		p, ok := NewSession(with(form, "activity", c.way), unit.Style{}).Plan()
		if !ok || math.Abs(float64(p.Activity.Value)-c.want) > 1e-9 {
			t.Errorf("%s: PAL %v, want %v", c.way, p.Activity.Value, c.want)
		}
	}
	for way, lacks := range map[string]Field{"pal": PAL, "customary": Customary, "day": Day} {
		r := Read(with(filled(), "activity", way), unit.Style{})
		if len(r.Problems) > 0 || len(r.Missing) != 1 || r.Missing[0] != lacks {
			t.Errorf("%s without more: missing %v, problems %v", way, r.Missing, r.Problems)
		}
	}
	if p := Read(with(filled(), "activity", "customary", "activity.customary", "frantic"), unit.Style{}).Problems[Customary]; p.Accepted == "" {
		t.Error("an unknown factor is taken")
	}
}

// A day by hand, after FAO/WHO/UNU 2004, chapter 5, with METs of the Compendium
// 2011: 8 h asleep at 0.95, 8 h desk work at 1.5, 8 h not told at 1.3 (sitting
// quietly): (7.6 + 12 + 10.4) / 24 / 0.9 = 1.3889.
func TestTheDayAddsUp(t *testing.T) {
	form := with(filled(), "activity", "day", "activity.day.07030", "8", "activity.day.11580", "8:00", "activity.day.no_such", "9")
	p, ok := NewSession(form, unit.Style{}).Plan()
	if !ok || math.Abs(float64(p.Activity.Value)-1.3889) > 1e-4 {
		t.Fatalf("PAL %v", p.Activity.Value)
	}
	r := Read(with(form, "activity.day.16010", "9"), unit.Style{})
	if problem := r.Problems[Day]; !strings.Contains(problem.Given, "25") || !strings.Contains(problem.Accepted, "24") {
		t.Errorf("25 hours: %+v", r.Problems)
	}
	r = Read(with(form, "activity.day.16010", "long"), unit.Style{})
	if _, wrong := r.Problems[DayHours("16010")]; !wrong || r.Complete() {
		t.Errorf("hours in words: %+v", r.Problems)
	}
}

func TestHours(t *testing.T) {
	for text, want := range map[string]float64{
		"8": 8, "7,5": 7.5, "7½": 7.5, "½ h": 0.5, "7 h 30 min": 7.5, "7:30": 7.5, "1h30": 1.5, "45 min": 0.75, "0": 0,
		"3.5 h a week": 0.5, "7 hours per week": 1, "210 min/week": 0.5, "1 h 45 min weekly": 0.25, "2 h a day": 2, "7 h/week": 1,
	} {
		if got, ok := parseHours(text); !ok || math.Abs(float64(got)-want) > 1e-9 {
			t.Errorf("%q: %v, %v; want %v", text, got, ok, want)
		}
	}
	for _, text := range []string{"", "long", "-1", "1e1", "NaN", "0x8", "7:75", "7 h 30 x", "8 kg", "1.2.3", "½½", "7.5½", "+2", "8 h a month"} {
		if got, ok := parseHours(text); ok {
			t.Errorf("%q is taken as %v hours", text, got)
		}
	}
}

func TestHourText(t *testing.T) {
	for hours, want := range map[energy.Hour]string{0: "0 h", 8: "8 h", 7.5: "7 h 30 min", 0.75: "45 min", 1.9999: "2 h"} {
		if got := HourText(hours, unit.Style{}); got != want {
			t.Errorf("%v: %q, want %q", hours, got, want)
		}
	}
}

// What only the computation finds is told at its field: 200 kg within a month
// asks for more than any energy that is looked at.
func TestAWishThatNoEnergyBringsIsTold(t *testing.T) {
	s := NewSession(with(filled(), "goal.kind", "gain", "goal.weight", "200 kg", "goal.by", "2026-04-01"), unit.Style{})
	p, wrong := s.Reading().Problems[GoalBy]
	if _, planned := s.Plan(); planned || !wrong || p.Given != "2026-04-01" || p.Accepted == "" {
		t.Errorf("planned %v, %+v", planned, s.Reading().Problems)
	}
	if s.Set(GoalBy, "2035-04-01"); len(s.Reading().Problems) > 0 {
		t.Errorf("a later date: %+v", s.Reading().Problems)
	}
}

func TestAskingForARateGoesWithNoDate(t *testing.T) {
	form := with(filled(), "goal.by", "", "goal.per_week", "½ lb")
	r := Read(form, unit.Style{})
	if len(r.Problems) > 0 || math.Abs(float64(r.Intake.Goal.PerWeek)-0.226796185) > 1e-9 || r.Understood[GoalPerWeek] != "0.2 kg a week" {
		t.Errorf("%v, %v, %q", r.Problems, r.Intake.Goal.PerWeek, r.Understood[GoalPerWeek])
	}
	if _, wrong := Read(with(form, "goal.by", "2026-08-31"), unit.Style{}).Problems[GoalPerWeek]; !wrong {
		t.Error("a rate beside a date is taken")
	}
	if r := Read(with(form, "goal.kind", "maintain"), unit.Style{}); len(r.Problems) > 0 || r.Intake.Goal.PerWeek != 0 {
		t.Errorf("holding the weight with an old rate: %v", r.Problems)
	}
}

func TestReproductionIsReadWhereItWasAnswered(t *testing.T) {
	form := with(filled(), "reproduction.weeks", "24 weeks", "reproduction.weight_before", "68 kg", "reproduction.breastfeeding", "second_half_year")
	if got := Read(form, unit.Style{}).Intake.Reproduction; got != (energy.Reproduction{}) {
		t.Errorf("answered no, and yet %+v", got)
	}
	if got := Read(with(form, "screening.pregnant_or_breastfeeding", ""), unit.Style{}).Intake.Reproduction; got.Weeks != 24 {
		t.Errorf("not asked is taken as no: %+v", got)
	}
	want := energy.Reproduction{Weeks: 24, PrePregnant: 68, Breastfeeding: energy.SecondHalfYear}
	if got := Read(with(form, "screening.pregnant_or_breastfeeding", "yes"), unit.Style{}).Intake.Reproduction; got != want {
		t.Errorf("%+v, want %+v", got, want)
	}
	for field, text := range map[string]string{"reproduction.weeks": "43", "reproduction.breastfeeding": "often"} {
		if _, wrong := Read(with(form.Clone(), field, text), unit.Style{}).Problems[Field(field)]; !wrong {
			t.Errorf("%s = %q is taken", field, text)
		}
	}
}

// 4 kg lost from 72.6 + 4 is 5.2219 % by hand.
func TestDetailsOfRefeedingTellNoughtFromNotAsked(t *testing.T) {
	if s := Read(filled(), unit.Style{}).Intake.Scored; s.RecentLoss.Asked || s.DaysOfLittle.Asked || s.LowElectrolytes != screen.NotAsked || len(s.Scores) > 0 {
		t.Errorf("nothing was asked, and yet %+v", s)
	}
	s := Read(with(filled(), "scored.recent_loss_percent", "0", "scored.days_of_little_food", "0 days", "scored.low_electrolytes", "no",
		"scored.alcohol_or_listed_medicine", "yes", "scored.scoff", "0"), unit.Style{}).Intake.Scored
	if !s.RecentLoss.Asked || s.RecentLoss.Value != 0 || !s.DaysOfLittle.Asked || s.LowElectrolytes != screen.No || s.AlcoholOrDrugs != screen.Yes || !s.Scores[screen.SCOFF].Asked {
		t.Errorf("nought is lost: %+v", s)
	}
	r := Read(with(filled(), "scored.recent_loss_percent", "4 kg"), unit.Style{})
	if got := float64(r.Intake.Scored.RecentLoss.Value); math.Abs(got-5.2219) > 1e-4 || r.Understood[RecentLoss] != "5.2% of the weight before" {
		t.Errorf("%v, %q", got, r.Understood[RecentLoss])
	}
	for field, text := range map[string]string{
		"scored.recent_loss_percent": "61", "scored.days_of_little_food": "-1", "scored.scoff": "6", "scored.must": "1.5", "scored.mst": "high",
	} {
		if _, wrong := Read(with(filled(), field, text), unit.Style{}).Problems[Field(field)]; !wrong {
			t.Errorf("%s = %q is taken", field, text)
		}
	}
}

func TestWhatNoComputationReadsStopsNoPlan(t *testing.T) {
	wrong := map[Field]string{
		Importance: "11", Confidence: "7.5", BloodPressure: "82/128", PressureDate: "soon", ConsentDate: "31.2.2026",
	}
	form := filled()
	for field, text := range wrong {
		form[field] = text
	}
	r := Read(form, unit.Style{})
	if !r.Complete() {
		t.Fatalf("%v", r.Problems)
	}
	for field := range wrong {
		if p, told := r.Wrong(field); !told || p.Accepted == "" {
			t.Errorf("%s is not told", field)
		}
	}
	r = Read(with(filled(), "importance", "8/10", "confidence", "0", "blood_pressure", "128 / 82 mmHg", "consent_date", "2.3.2026",
		"laboratory", "HbA1c 41 mmol/mol, 2 March 2026\n\nFerritin 20 µg/l"), unit.Style{})
	for field, want := range map[Field]string{
		Importance: "8 of 10", Confidence: "0 of 10", BloodPressure: "128/82 mmHg", ConsentDate: "2 March 2026", Laboratory: "2 values, 1 without a date",
	} {
		if got := r.Understood[field]; got != want || len(r.Remarks) > 0 {
			t.Errorf("%s understood as %q, want %q; %v", field, got, want, r.Remarks)
		}
	}
}

// A form of an older or a newer version may have fields that this one does not
// know: they are kept, and they change nothing.
func TestUnknownFieldsNeverBreak(t *testing.T) {
	form := with(filled(), "body.wrist", "17 cm", "activity.day", "8", "activity.day.", "1", "scored.other.item", "yes", "screening.other", "yes", "goal", "x", "", "y")
	r := Read(form, unit.Style{})
	if !r.Complete() {
		t.Errorf("%v, %v", r.Problems, r.Missing)
	}
	data, err := form.JSON()
	if err != nil {
		t.Fatal(err)
	}
	again, err := FromJSON(data)
	if err != nil || again["body.wrist"] != "17 cm" {
		t.Errorf("%v, %v", again, err)
	}
}

// Points of the published forms: Morgan 1999, BMJ 319:1467 (2 or more of 5);
// BAPEN 2003 (BMI under 18.5 gives 2, a loss of 5 to 10 % gives 1, acute illness
// 2); Ferguson 1999, Nutrition 15:458 (unsure 2, poor appetite 1).
func TestScoresFromOurOwnWords(t *testing.T) {
	thin := with(filled(), "weight", "50 kg", "goal.kind", "maintain") // BMI 17.7 at 168 cm
	for _, c := range []struct {
		name, code string
		form       Form
		want       screen.Score
	}{
		{"nothing", screen.SCOFF, filled(), screen.Score{}},
		{"one yes, the rest not asked", screen.SCOFF, with(filled(), "scored.scoff.sick", "yes"), screen.Score{Points: 1}},
		{"positive before all is asked", screen.SCOFF, with(filled(), "scored.scoff.sick", "yes", "scored.scoff.food", "yes"), screen.Score{Points: 2, Asked: true}},
		{"the published form counts first", screen.SCOFF, with(filled(), "scored.scoff", "1", "scored.scoff.sick", "yes", "scored.scoff.food", "yes"), screen.Score{Points: 1, Asked: true}},
		{"nothing asked, though the BMI is known", screen.MUST, thin, screen.Score{}},
		{"BMI from the intake", screen.MUST, with(thin.Clone(), "scored.must.ill", "no"), screen.Score{Points: 2, Asked: true}},
		{"and the loss", screen.MUST, with(thin.Clone(), "scored.must.ill", "no", "scored.recent_loss_percent", "6"), screen.Score{Points: 3, Asked: true}},
		{"an answer before what is known", screen.MUST, with(filled(), "scored.must.ill", "no", "scored.must.bmi", "18.5_to_20", "scored.must.loss", "under_5"), screen.Score{Points: 1, Asked: true}},
		{"unsure", screen.MST, with(filled(), "scored.mst.loss", "unsure", "scored.mst.appetite", "yes"), screen.Score{Points: 3, Asked: true}},
		{"an answer of another version", screen.MST, with(filled(), "scored.mst.loss", "some", "scored.mst.appetite", "no"), screen.Score{}},
	} {
		r := Read(c.form, unit.Style{})
		got, asked := r.Intake.Scored.Scores[c.code]
		if asked != c.want.Asked || (asked && got != c.want) || len(r.Problems) > 0 {
			t.Errorf("%s: %+v, want %+v; %v", c.name, got, c.want, r.Problems)
		}
	}
}
