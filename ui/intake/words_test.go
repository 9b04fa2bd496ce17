package intake

import (
	"slices"
	"strings"
	"testing"

	"handbreadth/domain/food"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"

	"pgregory.net/rapid"
)

func markIn(t *testing.T, key string, form draft.Form) mark {
	t.Helper()
	for _, p := range parts {
		if p.Key == key {
			return markOf(p, form, draft.Read(form, unit.Style{}), unit.Style{})
		}
	}
	t.Fatalf("no part %q", key)
	return mark{}
}

func TestMarksSayWhatIsMissingWrongOrFilledIn(t *testing.T) {
	for _, c := range []struct {
		name, key string
		form      draft.Form
		want      mark
	}{
		{"nothing yet", "measurements", draft.Form{}, mark{"Still needed: height and weight", wanting}},
		{"nothing yet", "who", draft.Form{}, mark{"Still needed: the date of birth and the sex for the equation", wanting}},
		{"nothing is needed for food", "food", draft.Form{}, mark{"", summary}},
		{"wrong before missing", "measurements", draft.Form{draft.Weight: "heavy"}, mark{"1 to mend", wrong}},
		{"filled", "who", filled(), mark{"Robin Sample, 35 years, female equation", summary}},
		{"filled", "visit", filled(), mark{"2 March 2026", summary}},
		// BMI by hand: 160 lb = 72.57 kg, 66 in = 1.6764 m, 72.57 / 2.8103 = 25.8.
		{"filled", "measurements", filled(), mark{"167.6 cm, 72.6 kg, BMI 25.8", summary}},
		{"filled", "activity", filled(), mark{"Low active, PAL 1.6", summary}},
		{"filled", "goal", filled(), mark{"Lose weight, to 66 kg by 31 August 2026", summary}},
		{"filled", "food", filled(), mark{"Vegetarian, 3 meals a day, without peanuts and tree nuts", summary}},
		{"a PAL that was chosen and not given", "activity", draft.Form{draft.Activity: draft.ActivityAsNumber}, mark{"Still needed: the PAL", wanting}},
		{"long notes", "notes", draft.Form{draft.Notes: strings.Repeat("porridge ", 20)}, mark{"porridge porridge porridge porridge porridge porridge porrid…", summary}},
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
		{unit.Style{EnergyIn: unit.InKilojoules}, draft.GoalEnergy, "7500", ""},
	} {
		form := filled()
		got, err := understand(form, c.style, c.field, c.text)
		if c.field == draft.GoalEnergy { // an energy and a date exclude each other, told at the date
			delete(form, draft.GoalBy)
			if got, err = understand(form, c.style, c.field, c.text); err != nil || got != "= 7500 kJ a day" {
				t.Errorf("energy: %q, %v", got, err)
			}
			continue
		}
		if got != c.want || (err != nil) != (c.want == "") {
			t.Errorf("%s %q in system %d: %q, %v; want %q", c.field, c.text, c.style.System, got, err, c.want)
		}
	}
	if form := filled(); form[draft.Weight] != "11 st 6 lb" {
		t.Error("asking how a text is understood changed the form")
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
	} {
		if got := hintNow(c.field, draft.Form{}, c.style); !strings.HasSuffix(got, c.want) {
			t.Errorf("%s: %q does not end in %q", c.field, got, c.want)
		}
	}
	if hintNow(draft.Meals, filled(), unit.Style{}) != "" {
		t.Error("the default is told though a number was chosen")
	}
}

func TestGoalHintTellsTheDefault(t *testing.T) {
	with := func(pairs ...string) draft.Form {
		form := filled()
		for _, f := range []draft.Field{draft.GoalWeight, draft.GoalBy} {
			delete(form, f)
		}
		for i := 0; i < len(pairs); i += 2 {
			form[draft.Field(pairs[i])] = pairs[i+1]
		}
		return form
	}
	for _, c := range []struct {
		form draft.Form
		want string
	}{
		{draft.Form{}, ""},
		{with(), "a customary 500 kcal a day under maintenance is used, and never less than 1200 kcal a day."},
		{with("client.equation_sex", ""), "1200 kcal a day for women or 1500 kcal a day for men."},
		{with("goal.kind", "gain"), "a customary 350 kcal a day over maintenance is used."},
		{with("goal.kind", "maintain"), "takes the maintenance energy"},
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
	lose, hold := filled(), filled()
	hold[draft.GoalKind] = goalHold
	for _, c := range []struct {
		field draft.Field
		form  draft.Form
		want  bool
	}{
		{draft.GoalWeight, draft.Form{}, false},
		{draft.GoalWeight, lose, true},
		{draft.GoalBy, hold, false},
		{draft.GoalEnergy, hold, true},
		{draft.GoalEnergy, draft.Form{}, false},
		{draft.GoalEnergy, draft.Form{draft.GoalEnergy: "x"}, true},
		{draft.PAL, lose, false},
		{draft.PAL, draft.Form{draft.Activity: draft.ActivityAsNumber}, true},
		{draft.Name, draft.Form{}, true},
	} {
		if got := isShown(c.field, c.form); got != c.want {
			t.Errorf("%s with %q: %v", c.field, c.form[draft.GoalKind], got)
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
			if labels[field] == "" {
				t.Errorf("%s has no label", field)
			}
		}
	}
	for _, field := range draft.Read(draft.Form{draft.Activity: draft.ActivityAsNumber, draft.GoalKind: goalLose, draft.GoalBy: "2026-09-01"}, unit.Style{}).Missing {
		if needs[field] == "" || partOf(field) < 0 {
			t.Errorf("%s is needed and has no words or no place", field)
		}
	}
}
