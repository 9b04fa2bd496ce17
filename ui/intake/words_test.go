package intake

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"handbreadth/domain/energy"
	"handbreadth/domain/food"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
	"handbreadth/ui/widgets"

	"pgregory.net/rapid"
)

func markIn(t *testing.T, key string, form draft.Form) widgets.FoldMark {
	t.Helper()
	for _, p := range parts {
		if p.Key == key {
			return markOf(p, form, draft.Read(form, unit.Style{}), unit.Style{})
		}
	}
	t.Fatalf("no part %q", key)
	return widgets.FoldMark{}
}

func says(text string) widgets.FoldMark { return widgets.FoldMark{Text: text} }
func wants(text string) widgets.FoldMark {
	return widgets.FoldMark{Text: text, Kind: widgets.MarkWanting}
}

func mends(text string) widgets.FoldMark {
	return widgets.FoldMark{Text: text, Kind: widgets.MarkWrong}
}

func TestMarksSayWhatIsMissingWrongOrFilledIn(t *testing.T) {
	for _, c := range []struct {
		name, key string
		form      draft.Form
		want      widgets.FoldMark
	}{
		{"nothing yet", "measurements", draft.Form{}, wants("Still needed: height and weight")},
		{"nothing yet", "who", draft.Form{}, wants("Still needed: the date of birth, the sex for the equation and the date")},
		{"nothing is needed for food", "food", draft.Form{}, says("Optional: pattern, allergies, dislikes")},
		{"consent is no option", "consent", draft.Form{}, says("Not asked yet")},
		{"wrong before missing", "measurements", draft.Form{draft.Weight: "heavy"}, mends("1 to mend")},
		{"wrong, though no plan reads it", "health", draft.Form{draft.BloodPressure: "high"}, mends("1 to mend")},
		{"filled", "who", filled(), says("Robin Sample, 35 years, female equation, visit of 2 March 2026")},
		{"filled", "why", told(), says("Tired after lunch, and the stairs have become ha…; matters 8 of 10; sure 6 of 10")},
		{"goals alone", "why", draft.Form{draft.OtherGoals: "Stairs"}, says("Stairs")},
		// BMI by hand: 160 lb = 72.57 kg, 66 in = 1.6764 m, 72.57 / 2.8103 = 25.8.
		{"filled", "measurements", filled(), says("167.6 cm, 72.6 kg, BMI 25.8")},
		{"filled", "body", told(), says("Waist 83.8 cm, hip 104 cm, neck 34.5 cm, body fat 33%, resting 1482 kcal, points for Asian populations")},
		{"filled", "activity", filled(), says("Low active, PAL 1.6")},
		{"a factor", "activity", with(filled(), "activity", "customary", "activity.customary", "light"), says("Light exercise 1-3 days a week, PAL 1.38")},
		{"a number", "activity", with(filled(), "activity", "pal", "activity.pal", "1.7"), says("PAL 1.70")},
		{"a day", "activity", told(), says("PAL 1.50, from the day")},
		{"filled", "training", told(), says("Strength, 90 kcal a day")},
		{"none, and asked", "training", draft.Form{draft.Training: draft.NoTraining}, says("No training")},
		{"filled", "goal", filled(), says("Lose weight, to 66 kg by 31 August 2026")},
		{"a rate", "goal", with(filled(), "goal.by", "", "goal.per_week", "0.5"), says("Lose weight, to 66 kg, 0.5 kg a week")},
		{"filled", "eaten", told(), says("Coffee and toast at seven, a sandwich at the des…; 16 g of fibre")},
		{"filled", "food", told(), says("Vegetarian, without peanuts and tree nuts, dislikes Liver, olives")},
		{"filled", "meals", told(), says("3 meals a day; 7:00, 12:30 and 20:00")},
		{"filled", "context", told(), says("Told: sleep, cooking and money")},
		{"filled", "health", told(), says("Thyroxine 50 micrograms; 128/82 mmHg; 2 values, 1 without a date")},
		{"filled", "consent", told(), says("Given, 2 March 2026, rather without numbers")},
		{"a PAL that was chosen and not given", "activity", draft.Form{draft.Activity: draft.ActivityAsNumber}, wants("Still needed: the PAL")},
		{"long notes", "notes", draft.Form{draft.Notes: strings.Repeat("porridge ", 20)}, says("porridge porridge porridge porridge porridge por…")},
	} {
		if got := markIn(t, c.key, c.form); got != c.want {
			t.Errorf("%s, %s: %+v, want %+v", c.name, c.key, got, c.want)
		}
	}
}

func TestUnderstoodAsInTheUnitsOfThePractice(t *testing.T) {
	us, uk := unit.Style{System: unit.USCustomary}, unit.Style{System: unit.UKCustomary}
	for _, c := range []struct {
		style      unit.Style
		field      draft.Field
		text, want string // "" refuses
	}{
		{unit.Style{}, draft.Weight, "11 st 6 lb", "= 72.6 kg"},
		{unit.Style{}, draft.Weight, "72,5", "= 72.5 kg"},
		{us, draft.Weight, "160", "= 160 lb"},
		{uk, draft.Weight, "70", ""},
		{uk, draft.Weight, "11 st 6", "= 11 st 6 lb"},
		{unit.Style{}, draft.Height, "1.68", "= 168 cm"},
		{us, draft.Height, "66", "= 5 ft 6 in"},
		{unit.Style{}, draft.Born, "17/5/1990", "= 17 May 1990, 35 years old at this visit"},
		{unit.Style{}, draft.Born, "2031-01-01", ""},
		{unit.Style{}, draft.GoalBy, "31 Aug 2026", "= Monday 31 August 2026"},
		{unit.Style{}, draft.GoalWeight, "80 kg", ""},
		{unit.Style{EnergyIn: unit.InKilojoules}, draft.GoalEnergy, "7500", "= 7500 kJ a day"},
		{unit.Style{}, draft.GoalPerWeek, "1 lb", "= 0.5 kg a week"},
		{us, draft.GoalPerWeek, "1", "= 1 lb a week"},
		{uk, draft.GoalPerWeek, "1", ""},
		{us, draft.Waist, "33", "= 33 in"},
		{unit.Style{}, draft.Exercise, "1000 kJ", "= 239 kcal a day"},
		{unit.Style{}, draft.DayHours("07030"), "8", ""},
		{unit.Style{}, draft.Importance, "8", ""},
	} {
		form := filled()
		if c.field == draft.GoalEnergy || c.field == draft.GoalPerWeek {
			delete(form, draft.GoalBy) // only one of them stands
		}
		session := draft.NewSession(form, c.style)
		got, err := understand(session, c.field, c.text)
		if !maps.Equal(session.Form(), form) {
			t.Fatal("asking how a text is understood changed the form")
		}
		quiet := c.field == draft.Importance || strings.HasPrefix(string(c.field), string(draft.Day))
		if got != c.want || (err != nil) != (c.want == "" && !quiet) {
			t.Errorf("%s %q in system %d: %q, %v; want %q", c.field, c.text, c.style.System, got, err, c.want)
		}
	}
}

func TestHintsSayHowABareNumberIsRead(t *testing.T) {
	for _, c := range []struct {
		style unit.Style
		field draft.Field
		want  string
	}{
		{unit.Style{}, draft.Weight, "A bare number is kg."},
		{unit.Style{System: unit.USCustomary}, draft.Weight, "A bare number is pounds."},
		{unit.Style{System: unit.UKCustomary}, draft.Weight, "The unit is needed."},
		{unit.Style{}, draft.Height, "A bare number is cm or m."},
		{unit.Style{System: unit.USCustomary}, draft.Height, "A bare number is inches."},
		{unit.Style{System: unit.UKCustomary}, draft.Height, "The unit is needed."},
		{unit.Style{EnergyIn: unit.InKilojoules}, draft.GoalEnergy, "A bare number is kJ."},
		{unit.Style{}, draft.GoalEnergy, "A bare number is kcal."},
		{unit.Style{}, draft.Waist, "A bare number is cm."},
		{unit.Style{System: unit.USCustomary}, draft.Neck, "A bare number is inches."},
		{unit.Style{System: unit.UKCustomary}, draft.Hip, "The unit is needed."},
		{unit.Style{}, draft.GoalPerWeek, "A bare number is kg."},
		{unit.Style{System: unit.USCustomary}, draft.GoalPerWeek, "A bare number is pounds."},
		{unit.Style{System: unit.UKCustomary}, draft.GoalPerWeek, "The unit is needed."},
		{unit.Style{EnergyIn: unit.InKilojoules}, draft.MeasuredResting, "A bare number is kJ."},
		{unit.Style{}, draft.Exercise, "A bare number is kcal."},
	} {
		if got := hintNow(c.field, draft.Form{}, c.style); !strings.HasSuffix(got, c.want) {
			t.Errorf("%s: %q does not end in %q", c.field, got, c.want)
		}
	}
	if got := hintNow(draft.GoalEnergy, draft.Form{draft.GoalKind: goalHold}, unit.Style{}); !strings.Contains(got, "optional") {
		t.Errorf("holding the weight: %q", got)
	}
	if hintNow(draft.Meals, filled(), unit.Style{}) != "" {
		t.Error("the default is told though a number was chosen")
	}
}

func TestGoalHintTellsTheDefault(t *testing.T) {
	with := func(pairs ...string) draft.Form {
		return with(with(filled(), "goal.weight", "", "goal.by", ""), pairs...)
	}
	for _, c := range []struct {
		form draft.Form
		want string
	}{
		{draft.Form{}, ""},
		{with(), "a customary 500 kcal a day under maintenance is used, and never less than 1200 kcal a day."},
		{with("client.equation_sex", ""), "1200 kcal a day for women or 1500 kcal a day for men."},
		{with("goal.kind", "gain"), "a customary 360 kcal a day over maintenance is used."},
		{with("goal.kind", "maintain"), "takes the maintenance energy"},
		{with("goal.per_week", "0.5"), "worked out from the change a week"},
		{with("goal.weight", "66 kg", "goal.by", "2026-08-31"), "worked out from the weight and the date"},
		{with("goal.kcal_per_day", "1700"), "The agreed energy is taken as it is."},
	} {
		got := goalHint(draft.Read(c.form, unit.Style{}), unit.Style{})
		if !strings.Contains(got, c.want) || (c.want == "" && got != "") {
			t.Errorf("%v: %q does not say %q", c.form, got, c.want)
		}
	}
}

func TestFieldsShowWhenTheyAreOfUse(t *testing.T) {
	open := with(filled(), "goal.by", "")
	hold := with(filled(), "goal.kind", goalHold)
	for _, c := range []struct {
		field  draft.Field
		form   draft.Form
		picked draft.Field
		want   bool
	}{
		{draft.GoalWeight, draft.Form{}, "", false},
		{draft.GoalWeight, filled(), "", true},
		{goalWay, hold, "", false},
		{draft.GoalBy, hold, "", false},
		{draft.GoalBy, filled(), "", true},
		{draft.GoalBy, filled(), draft.GoalPerWeek, true},
		{draft.GoalPerWeek, filled(), draft.GoalPerWeek, false},
		{draft.GoalPerWeek, open, draft.GoalPerWeek, true},
		{draft.GoalEnergy, open, "", false},
		{draft.GoalEnergy, hold, "", true},
		{draft.GoalEnergy, draft.Form{}, "", false},
		{draft.GoalEnergy, draft.Form{draft.GoalEnergy: "x"}, "", true},
		{draft.PAL, filled(), "", false},
		{draft.PAL, draft.Form{draft.Activity: draft.ActivityAsNumber}, "", true},
		{draft.Activity, draft.Form{draft.Activity: draft.ActivityAsDay}, "", false},
		{draft.Day, draft.Form{draft.Activity: draft.ActivityAsDay}, "", true},
		{draft.Name, draft.Form{}, "", true},
	} {
		if got := isShown(c.field, c.form, c.picked); got != c.want {
			t.Errorf("%s with %q and %q picked: %v", c.field, c.form[draft.GoalKind], c.picked, got)
		}
	}
}

// By hand: 7.5 h at 0.95 MET and 16.5 h at 1.3 are 28.575 MET hours, over 24 h and
// 0.9 that is 1.32, a tenth either side; 24 h asleep is 0.95 / 0.9 = 1.06.
func TestDayWords(t *testing.T) {
	sleep, _ := energy.PursuitByCode("07030")
	for hours, want := range map[energy.Hour]dayWords{
		0:   {Sum: "Nothing told yet of 24 h. What is not told counts as sitting quietly."},
		7.5: {Share: 0.3125, Sum: "7 h 30 min told of 24 h; the other 16 h 30 min count as sitting quietly.", Level: "PAL 1.32, within 1.19 and 1.46"},
		24:  {Share: 1, Sum: "24 h told: the whole day.", Level: "PAL 1.06, within 1.00 and 1.16"},
		36:  {Share: 1.5, Sum: "36 h told, 12 h more than a day has."},
	} {
		var spans []energy.Span
		if hours > 0 {
			spans = []energy.Span{{Pursuit: sleep, Hours: hours}}
		}
		if got := dayWordsOf(spans, unit.Style{}); got != want {
			t.Errorf("%v h: %+v, want %+v", hours, got, want)
		}
	}
}

func TestAllergensKeepWhatWasTyped(t *testing.T) {
	for _, c := range []struct {
		text   string
		toggle food.Allergen
		want   string
	}{
		{"", food.Peanuts, "peanut"},
		{"peanut", food.Peanuts, ""},
		{"peanut, moonbeams", food.Milk, "peanut, moonbeams, milk"},
		{"nuts", food.Peanuts, "tree_nut"},
		{"shellfish, egg", food.Molluscs, "crustacean, egg"},
		{"gluten", food.Wheat, ""},
		{"gluten", food.Gluten, ""},
		{"cereal", food.Gluten, "wheat"},
		{"gluten, wheat", food.Gluten, "wheat"},
	} {
		chosen := avoided(c.text)
		if at := slices.Index(chosen, c.toggle); at >= 0 {
			chosen = slices.Delete(chosen, at, at+1)
		} else {
			chosen = append(chosen, c.toggle)
		}
		if got := withAllergens(c.text, chosen); got != c.want {
			t.Errorf("%q with %s turned round: %q, want %q", c.text, c.toggle, got, c.want)
		}
	}
	if got := known("peanut, moonbeams, nuts"); got != "peanut, nuts" {
		t.Errorf("known words: %q", got)
	}
}

// Taking one allergen back lets no other in, but for wheat and gluten, of which
// one is part of the other.
func TestTakingOneAllergenBackLetsNoOtherIn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := strings.Join(rapid.SliceOfN(rapid.SampledFrom(food.AllergenWords()), 1, 6).Draw(t, "words"), ", ")
		before := avoided(text)
		back := rapid.SampledFrom(before).Draw(t, "taken back")
		chosen := slices.DeleteFunc(slices.Clone(before), func(a food.Allergen) bool { return a == back })
		after := avoided(withAllergens(text, chosen))
		if slices.Contains(after, back) {
			t.Fatalf("%q still rules out %s", text, back)
		}
		for _, a := range chosen {
			grain := (back == food.Wheat && a == food.Gluten) || (back == food.Gluten && a == food.Wheat)
			if !slices.Contains(after, a) && !grain {
				t.Fatalf("%q without %s lets %s in", text, back, a)
			}
		}
	})
}

func TestEveryFieldHasItsWords(t *testing.T) {
	for _, p := range parts {
		for _, field := range p.Fields {
			if _, isHours := pursuitOf(field); labels[field] == "" && !isHours {
				t.Errorf("%s has no label", field)
			}
		}
	}
	for _, way := range []string{draft.ActivityAsNumber, draft.ActivityAsCustomary, draft.ActivityAsDay} {
		for _, field := range draft.Read(draft.Form{draft.Activity: way, draft.GoalKind: goalLose, draft.GoalBy: "2026-09-01"}, unit.Style{}).Missing {
			if needs[field] == "" || partOf(field) < 0 {
				t.Errorf("%s is needed and has no words or no place", field)
			}
		}
	}
}
