package consult

import (
	"encoding/json"
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"handbreadth/domain"
	"handbreadth/domain/body"
	"handbreadth/domain/energy"
	"handbreadth/domain/food"
	"handbreadth/domain/macro"
	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
)

// The equivalences are exact: 1 lb = 0.45359237 kg, 1 ft = 30.48 cm
// (international yard and pound agreement, 1959).
func TestParseReadsEveryKey(t *testing.T) {
	visit := unit.Date{Year: 2026, Month: time.March, Day: 2}
	want := domain.Intake{
		Date:   visit,
		Client: domain.Client{Name: "Ødger Månelys", Born: unit.Date{Year: 1958, Month: time.November, Day: 12}, EquationSex: energy.Male},
		Height: 181, Weight: 98.5,
		Activity: energy.Activity{Day: []energy.Span{
			{Pursuit: pursuitOf(t, "07030"), Hours: 8}, {Pursuit: pursuitOf(t, "11580"), Hours: 6.5}, {Pursuit: pursuitOf(t, "17190"), Hours: 1},
		}},
		Goal:            energy.Goal{Kind: energy.Lose, Weight: 92, PerWeek: 0.25},
		Body:            domain.BodyMeasures{Neck: 41, Waist: 106.68, Hip: 106.5, Fat: 29.5, Points: body.AsianPoints},
		MeasuredResting: 1790, Exercise: 150, Training: macro.TrainingStrength,
		MealsPerDay: 4, Pattern: food.Pescatarian, Avoid: []food.Allergen{food.TreeNuts, food.Lupin}, UsualFibre: 17.5,
		Screening: screen.Answers{screen.Lithium: screen.Yes}.AllNo(),
		Scored: screen.Scored{
			Scores:     screen.Scores{screen.SCOFF: {Points: 1, Asked: true}, screen.MUST: {Asked: true}, screen.MST: {Points: 1, Asked: true}},
			RecentLoss: screen.Told[unit.Percent]{Asked: true}, DaysOfLittle: screen.Told[unit.Day]{Value: 2, Asked: true},
			LowElectrolytes: screen.No, AlcoholOrDrugs: screen.Yes,
		},
		CarbFatBalance: 62.5, FatFloor: 25, FatFloorPerKg: 0.75, ProteinPerKg: 1.1, ProteinBasis: macro.BasisAdjusted,
		Counting: macro.CountAvailable, RestingEquation: energy.KatchMcArdle,
		Reasons: screen.Reasons{
			"lithium":     {Text: "Agreed with the prescriber on 27 February", Date: visit},
			"older_adult": {Text: "Agreed with the doctor", Date: visit},
		},
	}
	if got := parsed(t, sample(t, "every-key.json")); !reflect.DeepEqual(got, want) {
		t.Errorf("got  %+v\nwant %+v", got, want)
	}
	us := parsed(t, sample(t, "us.json"))
	if math.Abs(float64(us.Weight)-160*0.45359237) > 1e-9 || math.Abs(float64(us.Height)-65*2.54) > 1e-9 {
		t.Errorf("160 lb is %v kg, 5 ft 5 in is %v cm", us.Weight, us.Height)
	}
}

// The keys that the file of every key has no room for.
func TestParseReadsTheOtherKeys(t *testing.T) {
	base := sample(t, "example.json")
	for _, c := range []struct {
		c    changes
		set  func(*domain.Intake)
		name string
	}{
		{changes{"activity": `{"level":"active"}`}, func(in *domain.Intake) { in.Activity = energy.Activity{Category: energy.Active} }, "level"},
		{changes{"activity": `{"pal":1.62}`}, func(in *domain.Intake) { in.Activity = energy.Activity{PAL: 1.62} }, "PAL"},
		{changes{"activity": `{"customary":"light"}`}, func(in *domain.Intake) { in.Activity = energy.Activity{Customary: "light"} }, "customary factor"},
		{changes{"goal": `{"kind":"lose","kcal_per_day":1800}`}, func(in *domain.Intake) { in.Goal = energy.Goal{Kind: energy.Lose, Energy: 1800} }, "energy"},
		{changes{"goal": `{"kind":"lose","per_week":"1 lb"}`}, func(in *domain.Intake) { in.Goal = energy.Goal{Kind: energy.Lose, PerWeek: 0.45359237} }, "rate"},
		{changes{"reproduction": `{"weeks":20,"weight_before":"68 kg"}`}, func(in *domain.Intake) {
			in.Reproduction = energy.Reproduction{Weeks: 20, PrePregnant: 68}
		}, "pregnancy"},
		{changes{"reproduction": `{"breastfeeding":"second_half_year"}`}, func(in *domain.Intake) {
			in.Reproduction = energy.Reproduction{Breastfeeding: energy.SecondHalfYear}
		}, "breastfeeding"},
		{changes{"body": `{"points":"who"}`}, func(in *domain.Intake) { in.Body.Points = body.WorldPoints }, "points"},
		{
			changes{"training": `"none"`, "protein_basis": `"by_bmi"`, "carbohydrate_counted": `"total"`, "body": `{}`, "scored": `{}`, "reproduction": `{}`},
			func(*domain.Intake) {}, "the defaults by name",
		},
	} {
		want := parsed(t, base)
		c.set(&want)
		if got := parsed(t, changed(t, base, c.c)); !reflect.DeepEqual(got, want) {
			t.Errorf("%s: got %+v\nwant %+v", c.name, got, want)
		}
	}
}

func pursuitOf(t *testing.T, code string) energy.Pursuit {
	t.Helper()
	p, known := energy.PursuitByCode(code)
	if !known {
		t.Fatalf("no activity has the code %s", code)
	}
	return p
}

// An activity goes by its word and by its code, and no two share either.
func TestPursuitWords(t *testing.T) {
	seen := map[string]bool{}
	for _, p := range energy.Pursuits() {
		for _, name := range []string{p.Code, pursuitWord(p)} {
			if seen[name] {
				t.Errorf("%s stands for two activities", name)
			}
			seen[name] = true
			day := fmt.Sprintf(`{"day":[{"hours":1.5,"what":%q}]}`, name)
			got := parsed(t, changed(t, sample(t, "example.json"), changes{"activity": day})).Activity.Day
			if len(got) != 1 || got[0] != (energy.Span{Pursuit: p, Hours: 1.5}) {
				t.Errorf("%s: got %+v", name, got)
			}
		}
	}
}

// Every resting equation can be chosen: lean mass is estimated where body fat
// was not measured.
func TestEveryEquationCanBeChosen(t *testing.T) {
	codes := energy.RestingEquations()
	if len(codes) != 9 {
		t.Errorf("%d equations", len(codes))
	}
	resting := map[float64]energy.RestingEquation{}
	for _, code := range codes {
		plan := planned(t, changed(t, sample(t, "example.json"), changes{"resting_equation": fmt.Sprintf("%q", code)}))
		step, _ := plan.Resting.Last()
		if name := step.Inputs[0].Text; !strings.HasPrefix(name, code.Name()) {
			t.Errorf("%s was worked out by %s", code, name)
		}
		if other, same := resting[float64(plan.Resting.Value)]; same {
			t.Errorf("%s and %s give the same", code, other)
		}
		resting[float64(plan.Resting.Value)] = code
	}
}

func TestParseExample(t *testing.T) {
	in := parsed(t, sample(t, "example.json"))
	if math.Abs(float64(in.Weight)-(11*14+6)*0.45359237) > 1e-9 || in.Client.Name != "..." || in.CarbFatBalance != 55 {
		t.Errorf("got %+v", in)
	}
	if missing := screen.Unasked(in.Screening); len(missing) > 0 {
		t.Errorf("all asked, but %v count as not asked", missing)
	}
	if plan := planned(t, sample(t, "example.json")); !plan.Issuable() {
		t.Errorf("not issued: %+v", plan.Gate)
	}
}

func TestLeftOutKeysHaveTheStatedDefaults(t *testing.T) {
	in := parsed(t, sample(t, "us.json"))
	if in.MealsPerDay != 3 || in.Pattern != food.Omnivore || len(in.Avoid) != 0 || in.CarbFatBalance != 55 ||
		in.FatFloor != 20 || in.ProteinPerKg != 0 || in.RestingEquation != energy.MifflinStJeor || len(in.Reasons) != 0 {
		t.Errorf("got %+v", in)
	}
}

// Every key with every wrong type, a null among them: one problem, of that key.
func TestWrongTypesAreNamed(t *testing.T) {
	file := changed(t, sample(t, "every-key.json"), changes{
		"activity": `{"level":"active"}`, "goal": `{"kind":"lose"}`, "reproduction": `{}`,
	})
	right := map[string]string{
		"date": `""`, "height": `""`, "weight": `""`, "client": `{}`, "client.name": `""`, "client.born": `""`,
		"client.equation_sex": `""`, "activity": `{}`, "activity.level": `""`, "goal": `{}`, "goal.kind": `""`,
		"goal.weight": `""`, "goal.by": `""`, "goal.kcal_per_day": `0`, "meals_per_day": `0`, "eating_pattern": `""`,
		"avoid": `[]`, "screening": `{}`, "screening.all_asked": `true`, "screening.lithium": `true`, "screening.frail": `true`,
		"carb_fat_balance_percent": `0`, "fat_floor_percent": `0`, "protein_g_per_kg": `0`, "resting_equation": `""`,
		"hold_reasons": `{}`, "hold_reasons.lithium": `""`,
		"activity.pal": `0`, "activity.customary": `""`, "activity.day": `[]`, "goal.per_week": `""`,
		"body": `{}`, "body.neck": `""`, "body.waist": `""`, "body.hip": `""`, "body.fat_percent": `0`, "body.points": `""`,
		"measured_resting_kcal_per_day": `0`, "exercise_kcal_per_day": `0`, "training": `""`,
		"reproduction": `{}`, "reproduction.weeks": `0`, "reproduction.weight_before": `""`, "reproduction.breastfeeding": `""`,
		"usual_fibre_g_per_day": `0`, "scored": `{}`, "scored.scoff": `0`, "scored.must": `0`, "scored.mst": `0`,
		"scored.recent_loss_percent": `0`, "scored.days_of_little_food": `0`, "scored.low_electrolytes": `true`,
		"scored.alcohol_or_listed_medicine": `true`, "fat_floor_g_per_kg": `0`, "protein_basis": `""`, "carbohydrate_counted": `""`,
	}
	for path, kind := range right {
		for _, wrong := range []string{`null`, `true`, `[]`, `[1]`, `{}`, `{"a":1}`, `168`, `-0.5`, `"168"`, `"no such word"`} {
			if wrong[0] == kind[0] || strings.HasPrefix(kind, "0") && (wrong[0] == '-' || wrong == "168") {
				continue
			}
			if strings.HasPrefix(path, "hold_reasons.") && wrong[0] == '"' {
				continue
			}
			c := changes{path: wrong}
			if strings.HasPrefix(path, "activity.") && path != "activity.level" {
				c["activity.level"] = "" // one of the four may stand
			}
			ps := problemsOf(t, changed(t, file, c))
			if len(ps) != 1 || ps[0].Field != path || ps[0].Given == "" {
				t.Errorf("%s = %s: got %v", path, wrong, ps)
			}
		}
	}
}

func TestRules(t *testing.T) {
	goal := func(text string) changes { return changes{"goal": text} }
	day := func(parts string) changes { return changes{"activity": `{"day":[` + parts + `]}`} }
	cases := []struct {
		name  string
		c     changes
		field string // "" for no problem
		says  string
	}{
		{"no date", changes{"date": ""}, "date", "2026-03-02"},
		{"a day that does not exist", changes{"date": `"2026-02-30"`}, "date", "exists"},
		{"born after the visit", changes{"client.born": `"2026-03-03"`}, "client.born", "before"},
		{"no name", changes{"client.name": ""}, "client.name", "blank"},
		{"blank name", changes{"client.name": `" \u00a0\t"`}, "client.name", "blank"},
		{"a name that shows nothing", changes{"client.name": `"\u200b\u2060"`}, "client.name", "blank"},
		{"any script in a name", changes{"client.name": `"Ἀλκμήνη 𝒬 明 👋🏽 \u0301"`}, "", ""},
		{"half a surrogate pair", changes{"client.name": `"a\ud83d"`}, "client.name", "Unicode"},
		{"no sex", changes{"client.equation_sex": ""}, "client.equation_sex", "female or male"},
		{"bare height", changes{"height": `"168"`}, "height", "with its unit"},
		{"height as a number", changes{"height": `168`}, "height", "with its unit"},
		{"bare weight", changes{"weight": `"72.5"`}, "weight", "with its unit"},
		{"height of a house", changes{"height": `"7 m"`}, "height", "100 to 250 cm"},
		{"weight of a car", changes{"weight": `"900 kg"`}, "weight", "20 to 400 kg"},
		{"weight with a length", changes{"weight": `"168 cm"`}, "weight", "with its unit"},
		{"bare goal weight", changes{"goal.weight": `"66"`}, "goal.weight", "with its unit"},
		{"no activity", changes{"activity": ""}, "activity", "PAL"},
		{"activity without either", changes{"activity": `{}`}, "activity", "one of level, pal, customary and day"},
		{"activity with both", changes{"activity": `{"level":"active","pal":1.6}`}, "activity", "one of level, pal, customary and day"},
		{"no such level", changes{"activity": `{"level":"sedentary"}`}, "activity.level", "inactive, low_active"},
		{"PAL 0", changes{"activity": `{"pal":0}`}, "activity.pal", "1.0 to 2.5"},
		{"PAL 0.99", changes{"activity": `{"pal":0.99}`}, "activity.pal", "1.0 to 2.5"},
		{"PAL 1.0", changes{"activity": `{"pal":1.0}`, "goal": `{"kind":"maintain"}`}, "", ""},
		{"PAL 2.5", changes{"activity": `{"pal":2.5}`}, "", ""},
		{"PAL 2.51", changes{"activity": `{"pal":2.51}`}, "activity.pal", "1.0 to 2.5"},
		{"no such factor", changes{"activity": `{"customary":"lively"}`}, "activity.customary", "little, light"},
		{"an empty day", changes{"activity": `{"day":[]}`}, "activity.day", "hours"},
		{"a day of something else", changes{"activity": `{"day":["sleeping"]}`}, "activity.day[0]", "what, hours"},
		{"no such activity", day(`{"what":"levitating","hours":1}`), "activity.day[0].what", "desk_work"},
		{"no activity named", day(`{"what":"sleeping","hours":8},{"hours":1}`), "activity.day[1].what", "desk_work"},
		{"no hours", day(`{"what":"sleeping"}`), "activity.day[0].hours", "0.01 to 24"},
		{"no hours at all", day(`{"what":"sleeping","hours":0}`), "activity.day[0].hours", "0.01 to 24"},
		{"hours as text", day(`{"what":"sleeping","hours":"8 h"}`), "activity.day[0].hours", "number"},
		{"hours beyond a day", day(`{"what":"sleeping","hours":24.5}`), "activity.day[0].hours", "0.01 to 24"},
		{"a day too long", day(`{"what":"sleeping","hours":20},{"what":"yoga","hours":4.5}`), "activity.day", "24"},
		{"a full day", day(`{"what":"sleeping","hours":20},{"what":"yoga","hours":4}`), "", ""},
		{"an unknown key in a day", day(`{"what":"sleeping","hours":8,"met":1}`), "activity.day[0].met", "no such key"},
		{"no goal", changes{"goal": ""}, "goal.kind", "lose, maintain or gain"},
		{"goal without a kind", goal(`{"kcal_per_day":1800}`), "goal.kind", "lose, maintain or gain"},
		{"lose without more", goal(`{"kind":"lose"}`), "", ""},
		{"gain without more", goal(`{"kind":"gain"}`), "", ""},
		{"maintain with what makes no sense", goal(`{"kind":"maintain","weight":"66 kg","by":"2026-08-31"}`), "", ""},
		{"date without a weight", goal(`{"kind":"lose","by":"2026-08-31"}`), "goal.weight", "reached by"},
		{"date of the visit", goal(`{"kind":"lose","weight":"66 kg","by":"2026-03-02"}`), "goal.by", "after the visit"},
		{"lose to more", goal(`{"kind":"lose","weight":"90 kg"}`), "goal.weight", "below"},
		{"gain to less", goal(`{"kind":"gain","weight":"60 kg"}`), "goal.weight", "above"},
		{"energy instead", goal(`{"kind":"lose","kcal_per_day":1800}`), "", ""},
		{"energy of nought", goal(`{"kind":"lose","kcal_per_day":0}`), "goal.kcal_per_day", "400 to 10000"},
		{"energy 399", goal(`{"kind":"lose","kcal_per_day":399}`), "goal.kcal_per_day", "400 to 10000"},
		{"energy as text", goal(`{"kind":"lose","kcal_per_day":"1800 kcal"}`), "goal.kcal_per_day", "number"},
		{"energy beyond numbers", goal(`{"kind":"lose","kcal_per_day":1e999}`), "goal.kcal_per_day", "number"},
		{"energy and date", goal(`{"kind":"lose","weight":"66 kg","by":"2026-08-31","kcal_per_day":1800}`), "goal.by", "not both"},
		{"a rate", goal(`{"kind":"lose","weight":"66 kg","per_week":"500 g a week"}`), "", ""},
		{"a rate without a weight", goal(`{"kind":"gain","per_week":"0,25 kg"}`), "", ""},
		{"a bare rate", goal(`{"kind":"lose","per_week":"0.5"}`), "goal.per_week", "with its unit"},
		{"a rate with a sign", goal(`{"kind":"lose","per_week":"-0.5 kg"}`), "goal.per_week", "without a sign"},
		{"a rate that is no rate", goal(`{"kind":"lose","per_week":"3 kg"}`), "goal.per_week", "0.05 to 2 kg"},
		{"a rate to maintain", goal(`{"kind":"maintain","per_week":"0.5 kg"}`), "goal.per_week", "maintain"},
		{"rate and date", goal(`{"kind":"lose","weight":"66 kg","by":"2026-08-31","per_week":"0.5 kg"}`), "goal.per_week", "not both"},
		{"rate and energy", goal(`{"kind":"lose","per_week":"0.5 kg","kcal_per_day":1800}`), "goal.per_week", "not both"},
		{"a neck like a house", changes{"body": `{"neck":"81 cm"}`}, "body.neck", "80 cm"},
		{"a bare waist", changes{"body": `{"waist":"90"}`}, "body.waist", "with its unit"},
		{"a waist that is none", changes{"body": `{"waist":"9 cm"}`}, "body.waist", "20 to 250 cm"},
		{"a waist under the neck", changes{"body": `{"waist":"34 cm","neck":"36 cm"}`}, "body.waist", "neck"},
		{"fat 2.9", changes{"body": `{"fat_percent":2.9}`}, "body.fat_percent", "3 to 65"},
		{"fat 65", changes{"body": `{"fat_percent":65}`}, "", ""},
		{"other points", changes{"body": `{"points":"world"}`}, "body.points", "who or asian"},
		{"measured 499", changes{"measured_resting_kcal_per_day": `499`}, "measured_resting_kcal_per_day", "500 to 5000"},
		{"exercise 4001", changes{"exercise_kcal_per_day": `4001`}, "exercise_kcal_per_day", "0 to 4000"},
		{"no exercise", changes{"exercise_kcal_per_day": `0`}, "", ""},
		{"no such training", changes{"training": `"chess"`}, "training", "none, endurance or strength"},
		{"week 43", changes{"reproduction": `{"weeks":43}`}, "reproduction.weeks", "1 to 42"},
		{"half a week", changes{"reproduction": `{"weeks":20.5}`}, "reproduction.weeks", "whole"},
		{"another half year", changes{"reproduction": `{"breastfeeding":"third"}`}, "reproduction.breastfeeding", "first_half_year"},
		{"a weight before like a car", changes{"reproduction": `{"weeks":20,"weight_before":"900 kg"}`}, "reproduction.weight_before", "20 to 400"},
		{"no fibre at all", changes{"usual_fibre_g_per_day": `0`}, "usual_fibre_g_per_day", "1 to 150"},
		{"SCOFF 6", changes{"scored": `{"scoff":6}`}, "scored.scoff", "0 to 5"},
		{"MUST 7", changes{"scored": `{"must":7}`}, "scored.must", "0 to 6"},
		{"MST -1", changes{"scored": `{"mst":-1}`}, "scored.mst", "0 to 5"},
		{"half a point", changes{"scored": `{"mst":0.5}`}, "scored.mst", "whole"},
		{"a loss of more than all", changes{"scored": `{"recent_loss_percent":61}`}, "scored.recent_loss_percent", "0 to 60"},
		{"a year of days", changes{"scored": `{"days_of_little_food":366}`}, "scored.days_of_little_food", "0 to 365"},
		{"no such questionnaire", changes{"scored": `{"eat26":3}`}, "scored.eat26", "no such key"},
		{"a floor of 0.2 g/kg", changes{"fat_floor_g_per_kg": `0.2`}, "fat_floor_g_per_kg", "0.3 to 1.5"},
		{"no such basis", changes{"protein_basis": `"ideal"`}, "protein_basis", "by_bmi, current, adjusted or lean"},
		{"no such counting", changes{"carbohydrate_counted": `"net"`}, "carbohydrate_counted", "total or available"},
		{"no meals", changes{"meals_per_day": `0`}, "meals_per_day", "1 to 6"},
		{"seven meals", changes{"meals_per_day": `7`}, "meals_per_day", "1 to 6"},
		{"two and a half meals", changes{"meals_per_day": `2.5`}, "meals_per_day", "whole"},
		{"meals as text", changes{"meals_per_day": `"3"`}, "meals_per_day", "whole"},
		{"one meal", changes{"meals_per_day": `1`}, "", ""},
		{"six meals", changes{"meals_per_day": `6.0`}, "", ""},
		{"no such pattern", changes{"eating_pattern": `"keto"`}, "eating_pattern", "omnivore, pescatarian, vegetarian or vegan"},
		{"capitals", changes{"eating_pattern": `"Vegan"`}, "eating_pattern", "vegan"},
		{"no such allergen", changes{"avoid": `["peanut","kryptonite"]`}, "avoid[1]", "peanut"},
		{"an empty allergen", changes{"avoid": `[""]`}, "avoid[0]", "peanut"},
		{"singular and plural", changes{"avoid": `["eggs","egg","tree_nuts","soybeans"]`}, "", ""},
		{"a code that is no question", changes{"screening.under_18": `false`}, "screening.under_18", "no such key"},
		{"balance under 0", changes{"carb_fat_balance_percent": `-1`}, "carb_fat_balance_percent", "0 to 100"},
		{"balance over 100", changes{"carb_fat_balance_percent": `100.5`}, "carb_fat_balance_percent", "0 to 100"},
		{"balance 0", changes{"carb_fat_balance_percent": `0`}, "", ""},
		{"balance 100", changes{"carb_fat_balance_percent": `100`}, "", ""},
		{"floor 14.9", changes{"fat_floor_percent": `14.9`}, "fat_floor_percent", "15 to 40"},
		{"floor 0", changes{"fat_floor_percent": `0`}, "fat_floor_percent", "15 to 40"},
		{"floor 15", changes{"fat_floor_percent": `15`}, "", ""},
		{"floor 40", changes{"fat_floor_percent": `40`}, "", ""},
		{"floor 40.1", changes{"fat_floor_percent": `40.1`}, "fat_floor_percent", "15 to 40"},
		{"protein 0", changes{"protein_g_per_kg": `0`}, "protein_g_per_kg", "0.8 to 2.5"},
		{"protein 0.79", changes{"protein_g_per_kg": `0.79`}, "protein_g_per_kg", "0.8 to 2.5"},
		{"no such equation", changes{"resting_equation": `"no_such"`}, "resting_equation", "mifflin_st_jeor"},
		{"an equation that needs lean mass", changes{"resting_equation": `"katch_mcardle"`}, "", ""},
		{"a reason for a caution", changes{"hold_reasons": `{"warfarin":"x"}`}, "hold_reasons.warfarin", "no such key"},
		{"a reason for a referral", changes{"hold_reasons": `{"under_18":"x"}`}, "hold_reasons.under_18", "no such key"},
		{"a reason that is not needed", changes{"hold_reasons": `{"lithium":"x","rate_fast":""}`}, "", ""},
		{"unknown key", changes{"wieght": `"72 kg"`}, "wieght", "no such key"},
		{"unknown key in client", changes{"client.email": `"x"`}, "client.email", "no such key"},
		{"unknown key in activity", changes{"activity.met": `3`}, "activity.met", "no such key"},
		{"unknown key in goal", changes{"goal.rate": `3`}, "goal.rate", "no such key"},
	}
	for _, c := range cases {
		file := changed(t, sample(t, "example.json"), c.c)
		if c.field == "" {
			if _, err := Parse(file); err != nil {
				t.Errorf("%s: %v", c.name, err)
			}
			continue
		}
		ps := problemsOf(t, file)
		if len(ps) != 1 || ps[0].Field != c.field || !strings.Contains(ps[0].Accepted, c.says) {
			t.Errorf("%s: got %v; want one problem with %s that says %q", c.name, ps, c.field, c.says)
		}
	}
}

// The domain names its fields as the consult file does, so that a problem leads
// to its key.
func TestFieldsAreKeys(t *testing.T) {
	known := map[string]bool{}
	for section, schema := range map[string][]field{
		"": rootFields, "client.": clientFields, "activity.": activityFields, "goal.": goalFields, "body.": bodyFields,
		"reproduction.": reproductionFields, "scored.": scoredFields(), "activity.day[0].": spanFields(new(energy.Span)),
	} {
		for _, f := range schema {
			known[section+f.key] = true
		}
	}
	for _, name := range []string{
		domain.FieldDate, domain.FieldBorn, domain.FieldSex, domain.FieldHeight, domain.FieldWeight, domain.FieldNeck, domain.FieldWaist,
		domain.FieldHip, domain.FieldFatPercent, domain.FieldPoints, domain.FieldActivity, domain.FieldActivityDay, domain.FieldCustomary,
		domain.FieldExercise, domain.FieldGoalKind, domain.FieldGoal, domain.FieldGoalBy, domain.FieldGoalPerWeek, domain.FieldGoalKcal,
		domain.FieldMeals, domain.FieldPattern, domain.FieldBalance, domain.FieldFloor, domain.FieldFloorPerKg, domain.FieldProtein,
		domain.FieldProteinBasis, domain.FieldTraining, domain.FieldUsualFibre, domain.FieldCounting, domain.FieldEquation,
		domain.FieldMeasuredResting, domain.FieldPregnantWeeks, domain.FieldWeightBefore, domain.FieldBreastfeeding, domain.FieldScored,
		domain.ScoreField(screen.SCOFF), domain.ScoreField(screen.MUST), domain.ScoreField(screen.MST), domain.FieldRecentLoss,
		domain.FieldDaysOfLittle, domain.FieldLowElectrolytes, domain.FieldAlcoholOrDrugs,
		domain.SpanField(0, energy.DayPursuit), domain.SpanField(0, energy.DayHours),
	} {
		if !known[name] {
			t.Errorf("no key is named %s", name)
		}
	}
}

// A file full of faults: all are told at once, a field never twice but for the
// key that stands there twice.
func TestAllProblemsAtOnce(t *testing.T) {
	const want = "date client.name client.born client.equation_sex client.email height weight weight activity " +
		"goal.kcal_per_day meals_per_day eating_pattern avoid[1] screening.all_asked screening.lithium " +
		"carb_fat_balance_percent fat_floor_percent protein_g_per_kg resting_equation hold_reasons.warfarin weigth goal.weight"
	if got := fields(problemsOf(t, sample(t, "faults.json"))); got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
	const missing = "client.name goal.kind date client.born client.equation_sex height weight activity"
	if got := fields(problemsOf(t, []byte(`{}`))); got != missing {
		t.Errorf("of an empty object: got %s, want %s", got, missing)
	}
}

// The problem of the kind hides none of the others.
func TestGoalIsCheckedWhereItsKindIsNotKnown(t *testing.T) {
	file := changed(t, sample(t, "example.json"), changes{"goal": `{"kind":"shrink","weight":"66 kg","by":"2026-01-01"}`})
	if got := fields(problemsOf(t, file)); got != "goal.kind goal.by" {
		t.Errorf("got %s", got)
	}
}

func TestBrokenFiles(t *testing.T) {
	good := string(sample(t, "example.json"))
	cases := []struct{ name, file, field, says string }{
		{"empty", "", wholeFile, "one JSON object"},
		{"spaces", " \n\t", wholeFile, "one JSON object"},
		{"cut short", good[:len(good)-20], wholeFile, "too early"},
		{"a comma too many", `{"date":"2026-03-02",}`, wholeFile, "line 1, character 22"},
		{"not JSON", "date: 2026-03-02", wholeFile, "cannot be read"},
		{"UTF-16", "\xff\xfe{\x00}\x00", wholeFile, "cannot be read"},
		{"a list", `[]`, wholeFile, "an object"},
		{"a text", `"x"`, wholeFile, "an object"},
		{"null", `null`, wholeFile, "an object"},
		{"text after the end", good + "x", wholeFile, "nothing after the end"},
		{"another object", good + good, wholeFile, "nothing after the end"},
		{"a key twice", strings.Replace(good, `"height":`, `"date":"2026-03-02","height":`, 1), "date", "once"},
		{"a key twice inside", strings.Replace(good, `"born":`, `"name":"x","born":`, 1), "client.name", "once"},
		{"an unknown key of several lines", strings.Replace(good, `"height":`, `"a\nb":1,"height":`, 1), `"a\nb"`, "no such key"},
		{"a name that is no UTF-8", strings.Replace(good, `"..."`, "\"a\xff\"", 1), "client.name", "UTF-8"},
		{"far too long", good + strings.Repeat(" ", longestFile), wholeFile, "at most 1 MiB"},
	}
	for _, c := range cases {
		ps := problemsOf(t, []byte(c.file))
		if len(ps) != 1 || ps[0].Field != c.field || !strings.Contains(ps[0].Accepted, c.says) {
			t.Errorf("%s: got %v; want one problem with %s that says %q", c.name, ps, c.field, c.says)
		}
	}
	if _, err := Parse([]byte("\xef\xbb\xbf" + good)); err != nil {
		t.Errorf("with a byte order mark: %v", err)
	}
	for _, name := range []string{`"\ufffd"`, "\"\uFFFD\"", `"\\ud800"`, `"\\ufffd"`, `"\ud83d\udc4b"`} {
		if _, err := Parse(changed(t, []byte(good), changes{"client.name": name})); err != nil {
			t.Errorf("name %s: %v", name, err)
		}
	}
}

func TestScreeningIsNeverReadAsNo(t *testing.T) {
	cases := []struct {
		screening string
		unasked   int
	}{
		{"", len(screen.Questions())},
		{`{}`, len(screen.Questions())},
		{`{"all_asked":false}`, len(screen.Questions())},
		{`{"lithium":false,"warfarin":true}`, len(screen.Questions()) - 2},
		{`{"all_asked":true}`, 0},
		{`{"warfarin":true,"all_asked":true}`, 0},
	}
	for _, c := range cases {
		in := parsed(t, changed(t, sample(t, "example.json"), changes{"screening": c.screening}))
		if got := len(screen.Unasked(in.Screening)); got != c.unasked {
			t.Errorf("%s: %d not asked, want %d", c.screening, got, c.unasked)
		}
		if yes := in.Screening.Yes(screen.Warfarin); yes != strings.Contains(c.screening, "warfarin") {
			t.Errorf("%s: warfarin is %v", c.screening, yes)
		}
	}
}

func TestAnyNameIsKept(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		name := "n" + rapid.String().Draw(rt, "name") + "n"
		text, err := json.Marshal(name)
		if err != nil {
			rt.Fatal(err)
		}
		if got := parsed(t, changed(t, sample(t, "example.json"), changes{"client.name": string(text)})); got.Client.Name != name {
			rt.Fatalf("got %q, want %q", got.Client.Name, name)
		}
	})
}

// Every word that is accepted rules out what it means, in the singular and in
// the plural; a word said twice counts once.
func TestAvoidWords(t *testing.T) {
	for _, word := range food.AllergenWords() {
		want, _ := food.ParseAllergen(word)
		text := fmt.Sprintf(`[%q,%q,%q]`, word, word, plural(word))
		got := parsed(t, changed(t, sample(t, "example.json"), changes{"avoid": text})).Avoid
		if !reflect.DeepEqual(got, want) {
			t.Errorf("%s rules out %v, want %v", text, got, want)
		}
	}
}

func plural(word string) string {
	if strings.HasSuffix(word, "s") {
		return word
	}
	return word + "s"
}
