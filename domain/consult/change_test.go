package consult

import (
	"encoding/json"
	"reflect"
	"slices"
	"strings"
	"testing"
)

// changeCases says for each key of the consult file what of the plan file must
// change with it and what must not; what is in neither list may do either.
var changeCases = []struct {
	key     string
	to      string
	base    changes // on top of the example
	must    string
	mustNot string
	why     string // where nothing changes, why
}{
	{key: "date", to: `"2026-05-18"`, must: "date resting maintenance target fat carbohydrate fibre", mustNot: "status protein"},
	{key: "client.name", to: `"Wren Hollowbrook"`, mustNot: all, why: "the plan file names nobody"},
	{key: "client.born", to: `"1970-05-17"`, must: "resting maintenance target fat carbohydrate fibre findings", mustNot: "status date protein"},
	{key: "client.equation_sex", to: `"male"`, must: "resting maintenance target fat carbohydrate fibre findings measures_per_day", mustNot: "status date protein"},
	{key: "height", to: `"180 cm"`, must: "resting maintenance target fat carbohydrate fibre", mustNot: "status date protein findings"},
	{key: "weight", to: `"85 kg"`, base: changes{"goal": `{"kind":"lose","weight":"66 kg"}`}, must: "resting maintenance target protein fat carbohydrate fibre measures_per_day meals", mustNot: "status date"},
	{key: "activity", to: `{"level":"very_active"}`, must: "maintenance target protein fat carbohydrate fibre measures_per_day meals", mustNot: "status date resting findings", why: "protein is at least 15 % of energy"},
	{key: "activity", to: `{"pal":1.95}`, must: "maintenance target protein fat carbohydrate fibre measures_per_day meals", mustNot: "status date resting findings", why: "protein is at least 15 % of energy"},
	{key: "goal.kind", to: `"maintain"`, must: "target protein fat carbohydrate fibre measures_per_day meals", mustNot: "status date resting maintenance"},
	{key: "goal.weight", to: `"69 kg"`, must: "target fat carbohydrate fibre", mustNot: "status date resting maintenance protein"},
	{key: "goal.by", to: `"2026-12-31"`, must: "target fat carbohydrate fibre", mustNot: "status date resting maintenance protein"},
	{key: "goal.kcal_per_day", to: `1700`, base: changes{"goal": `{"kind":"lose"}`}, must: "target fat carbohydrate fibre", mustNot: "status date resting maintenance protein"},
	{key: "goal.per_week", to: `"0.7 lb"`, base: changes{"goal": `{"kind":"lose","weight":"66 kg","per_week":"0.25 kg"}`}, must: "target static_target reached_on projection fat carbohydrate fibre", mustNot: "status date resting maintenance protein cross_checks resting_equations"},
	{key: "activity", to: `{"customary":"hard"}`, must: "maintenance target fat carbohydrate fibre cross_checks", mustNot: "status date resting resting_equations"},
	{key: "activity", to: `{"day":[{"what":"sleeping","hours":8},{"what":"05010","hours":5}]}`, must: "maintenance target fat carbohydrate fibre derivation", mustNot: "status date resting resting_equations"},
	{key: "body.neck", to: `"36 cm"`, base: tape, must: "target projection derivation", mustNot: "status date resting maintenance protein findings static_target cross_checks"},
	{key: "body.waist", to: `"88 cm"`, base: tape, must: "target projection derivation", mustNot: "status date resting maintenance protein findings static_target cross_checks"},
	{key: "body.hip", to: `"110 cm"`, base: tape, must: "target projection derivation", mustNot: "status date resting maintenance protein findings static_target cross_checks"},
	{key: "body.fat_percent", to: `24`, must: "target projection resting_equations derivation", mustNot: "status date resting maintenance protein findings static_target cross_checks"},
	{key: "body.points", to: `"asian"`, base: tape, mustNot: all, why: "the class of BMI is for the practitioner's screen"},
	{key: "measured_resting_kcal_per_day", to: `1600`, must: "resting maintenance target fat carbohydrate fibre projection derivation", mustNot: "status date protein findings cross_checks resting_equations"},
	{key: "exercise_kcal_per_day", to: `250`, must: "derivation", mustNot: "status date findings measures_per_day meals projection " + targets, why: "it speaks where energy availability is low"},
	{key: "training", to: `"strength"`, must: "protein fat carbohydrate measures_per_day meals", mustNot: "status date resting maintenance target fibre"},
	{key: "reproduction.weeks", to: `30`, base: expecting, must: "maintenance target cross_checks derivation", mustNot: "status date resting projection"},
	{key: "reproduction.weight_before", to: `"52 kg"`, base: expecting, must: "cross_checks derivation", mustNot: "status date projection " + targets},
	{key: "reproduction.breastfeeding", to: `"second_half_year"`, base: feeding, must: "cross_checks maintenance target protein derivation", mustNot: "status date resting projection"},
	{key: "usual_fibre_g_per_day", to: `9.5`, must: "findings", mustNot: "status date measures_per_day meals projection " + targets},
	{key: "scored.scoff", to: `2`, must: "status findings target", mustNot: "date resting maintenance"},
	{key: "scored.must", to: `2`, base: held, must: "findings", mustNot: "status date projection measures_per_day meals " + targets},
	{key: "scored.mst", to: `3`, base: held, must: "findings", mustNot: "status date projection measures_per_day meals " + targets},
	{key: "scored.recent_loss_percent", to: `7`, base: held, must: "findings", mustNot: "status date projection measures_per_day meals " + targets},
	{key: "scored.days_of_little_food", to: `7`, base: held, must: "findings", mustNot: "status date projection measures_per_day meals " + targets},
	{key: "scored.low_electrolytes", to: `true`, base: held, must: "status findings target", mustNot: "date resting maintenance"},
	{key: "scored.alcohol_or_listed_medicine", to: `true`, base: held, must: "findings", mustNot: "status date projection measures_per_day meals " + targets},
	{key: "fat_floor_g_per_kg", to: `1.2`, must: "fat carbohydrate measures_per_day meals", mustNot: "status date resting maintenance target protein fibre findings"},
	{key: "protein_basis", to: `"lean"`, base: changes{"protein_g_per_kg": `1.4`}, must: "protein fat carbohydrate derivation", mustNot: "status date resting maintenance target fibre findings"},
	{key: "carbohydrate_counted", to: `"available"`, must: "carbohydrate available_carbohydrate derivation", mustNot: "status date resting maintenance target protein fat fibre findings"},
	{key: "meals_per_day", to: `5`, must: "meals", mustNot: "status date " + targets + " findings"},
	{key: "eating_pattern", to: `"vegan"`, must: "measures_per_day meals derivation", mustNot: "status date " + targets + " findings"},
	{key: "avoid", to: `["milk","egg","fish","soybean","tree_nut"]`, must: "derivation", mustNot: "status date " + targets + " findings"},
	{key: "hand.palm_breadth", to: `"7.1 cm"`, must: "hand_factors measures_per_day meals derivation", mustNot: "status date projection " + targets},
	{key: "hand.palm_length", to: `"9.6 cm"`, must: "hand_factors measures_per_day meals derivation", mustNot: "status date projection " + targets},
	{key: "hand.hand_length", to: `"16 cm"`, must: "hand_factors derivation", mustNot: "status date projection " + targets},
	{key: "hand.weighed", to: `{"cupped_hand":{"food":"white_rice","grams":110}}`, must: "hand_factors measures_per_day meals alternatives derivation", mustNot: "status date projection " + targets},
	{key: "hand.basket", to: `[{"code":"salmon","share":3},{"code":"lentils"}]`, must: "measures_per_day meals alternatives derivation", mustNot: "status date hand_factors projection " + targets},
	{key: "hand.ranges", to: `true`, mustNot: all, why: "it says how the papers tell a count"},
	{key: "meal_wishes", to: `["meal 3: cupped hand 0", "day: palm at least 4"]`, must: "measures_per_day meals alternatives", mustNot: "status date hand_factors projection " + targets},
	{key: "meal_sizes", to: `["light", "usual", "large"]`, must: "meals", mustNot: "status date measures_per_day alternatives hand_factors projection findings derivation " + targets},
	{key: "screening.warfarin", to: `true`, must: "findings", mustNot: "status date measures_per_day meals derivation " + targets},
	{key: "screening.lithium", to: `true`, base: changes{"goal": `{"kind":"maintain"}`}, must: "findings", mustNot: "status date measures_per_day meals derivation " + targets},
	{key: "screening.kidney_disease", to: `true`, base: changes{"goal": `{"kind":"maintain"}`}, must: "findings protein fat carbohydrate measures_per_day", mustNot: "status date resting maintenance target fibre"},
	{key: "screening.type_1_diabetes", to: `true`, must: "status findings target measures_per_day meals", mustNot: "date resting maintenance"},
	{key: "carb_fat_balance_percent", to: `70`, must: "fat carbohydrate measures_per_day meals", mustNot: "status date resting maintenance target protein fibre findings"},
	{key: "fat_floor_percent", to: `40`, must: "fat carbohydrate measures_per_day meals", mustNot: "status date resting maintenance target protein fibre findings"},
	{key: "protein_g_per_kg", to: `1.7`, must: "protein fat carbohydrate measures_per_day meals", mustNot: "status date resting maintenance target fibre findings"},
	{key: "resting_equation", to: `"henry_2005_weight"`, must: "resting maintenance target fat carbohydrate fibre derivation", mustNot: "status date protein findings"},
	{key: "hold_reasons", to: `{"lithium":"kept though not needed"}`, must: "hold_reasons", mustNot: "status date findings measures_per_day meals derivation " + targets},
}

const (
	targets = "resting maintenance target protein fat carbohydrate fibre"
	all     = "status date findings hold_reasons measures_per_day meals alternatives hand_factors projection reached_on holding static_target " +
		"available_carbohydrate cross_checks resting_equations derivation " + targets
)

// Bases of several cases: a body measured with a tape; pregnancy and
// breastfeeding, which a plan that holds the weight may go with; a plan with the
// reasons of what screening finds.
var (
	tape      = changes{"body": `{"neck":"33 cm","waist":"80 cm","hip":"104 cm"}`}
	expecting = changes{
		"goal": `{"kind":"maintain"}`, "reproduction": `{"weeks":20,"weight_before":"68 kg"}`,
		"screening.pregnant_or_breastfeeding": `true`, "hold_reasons": allReasons(),
	}
	feeding = changes{
		"goal": `{"kind":"maintain"}`, "reproduction": `{"breastfeeding":"first_half_year"}`,
		"screening.pregnant_or_breastfeeding": `true`, "hold_reasons": allReasons(),
	}
	held = changes{"goal": `{"kind":"gain"}`, "hold_reasons": allReasons()}
)

func TestEveryInputChangesWhatDependsOnIt(t *testing.T) {
	for _, c := range changeCases {
		base := changed(t, sample(t, "example.json"), c.base)
		before := topLevel(t, encoded(t, base))
		after := topLevel(t, encoded(t, changed(t, base, changes{c.key: c.to})))
		for _, name := range strings.Fields(c.must) {
			if reflect.DeepEqual(before[name], after[name]) {
				t.Errorf("%s = %s leaves %s at %v", c.key, c.to, name, before[name])
			}
		}
		for _, name := range strings.Fields(c.mustNot) {
			if !reflect.DeepEqual(before[name], after[name]) {
				t.Errorf("%s = %s changes %s from %v to %v", c.key, c.to, name, before[name], after[name])
			}
		}
		if c.must == "" && c.why == "" {
			t.Errorf("%s changes nothing and nobody says why", c.key)
		}
	}
}

// Every key of the schema is among the cases, so that a new one is not forgotten.
func TestEveryKeyHasAChangeCase(t *testing.T) {
	tried := map[string]bool{}
	for _, c := range changeCases {
		tried[c.key] = true
	}
	check := func(prefix string, schema []field) {
		for _, f := range schema {
			if key := prefix + f.key; !tried[key] && !slices.Contains(append(sections, "screening"), key) {
				t.Errorf("no case changes %s", key)
			}
		}
	}
	check("", rootFields)
	check("client.", clientFields)
	check("goal.", goalFields)
	check("body.", bodyFields)
	check("reproduction.", reproductionFields)
	check("scored.", scoredFields())
	check("hand.", handFields)
}

// topLevel returns the values of a plan file by their short names: target for
// target_kcal_per_day.
func topLevel(t *testing.T, data []byte) map[string]any {
	t.Helper()
	var root map[string]any
	if err := json.Unmarshal(data, &root); err != nil {
		t.Fatal(err)
	}
	short := map[string]any{}
	for key, v := range root {
		key = strings.TrimSuffix(strings.TrimSuffix(key, "_kcal_per_day"), "_g_per_day")
		short[key] = v
	}
	return short
}
