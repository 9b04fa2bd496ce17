package screen

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"handbreadth/domain/unit"
)

// mostOf is the highest score that the items can give.
func mostOf(q Questionnaire) int {
	total := 0
	for _, item := range q.Items {
		most := 0
		for _, c := range item.Choices {
			most = max(most, c.Points)
		}
		total += most
	}
	return total
}

func TestQuestionnairesAreWhole(t *testing.T) {
	for _, q := range Questionnaires() {
		if got := mostOf(q); got != q.Most {
			t.Errorf("%s: items give %d at most, want %d", q.Code, got, q.Most)
		}
		if !strings.Contains(q.Wording, "own words") || !strings.Contains(q.Wording, "enter its score") || q.Source.Text == "" {
			t.Errorf("%s does not say whose words and whose form: %q", q.Code, q.Wording)
		}
		for _, item := range q.Items {
			if item.Key == "" || item.Ask == "" || len(item.Choices) < 2 || item.Choices[0].Points != 0 {
				t.Errorf("%s: item %+v", q.Code, item)
			}
		}
		if found, ok := QuestionnaireByCode(q.Code); !ok || found.Name != q.Name {
			t.Errorf("%s is not found by its code", q.Code)
		}
	}
	if _, ok := QuestionnaireByCode("other"); ok {
		t.Error("a code that is not there is found")
	}
}

// Answers in our own words come to the same score as the typed functions, which
// are checked against published rows.
func TestItemsScoreLikeTheFunctions(t *testing.T) {
	yes := map[bool]string{false: KeyNo, true: KeyYes}
	rapid.Check(t, func(t *rapid.T) {
		bools := rapid.SliceOfN(rapid.Bool(), 5, 5).Draw(t, "answers")
		given := map[string]string{}
		for i, item := range scoff().Items {
			given[item.Key] = yes[bools[i]]
		}
		if got, _ := scoff().Score(given); got != (Score{ScoreSCOFF(bools...), true}) {
			t.Fatalf("SCOFF %v: %+v", bools, got)
		}
		bmi, lost := rapid.SampledFrom([]float64{17, 18.5, 19, 20, 20.1}).Draw(t, "bmi"), rapid.SampledFrom([]float64{0, 4.9, 5, 10, 10.1}).Draw(t, "loss")
		given = map[string]string{"bmi": "over_20", "loss": "under_5", "ill": yes[bools[0]]}
		switch {
		case bmi < 18.5:
			given["bmi"] = "under_18.5"
		case bmi <= 20:
			given["bmi"] = "18.5_to_20"
		}
		switch {
		case lost > 10:
			given["loss"] = "over_10"
		case lost >= 5:
			given["loss"] = "5_to_10"
		}
		want := ScoreMUST(MUSTInput{unit.KilogramPerSquareMetre(bmi), unit.Percent(lost), bools[0]})
		if got, _ := must().Score(given); got != (Score{want, true}) {
			t.Fatalf("MUST %v: %+v, want %d", given, got, want)
		}
	})
	for kg, key := range map[unit.Kilogram]string{0: "none", 3: "1_to_5", 8: "6_to_10", 12: "11_to_15", 20: "over_15"} {
		got, _ := mst().Score(map[string]string{"loss": key, "appetite": KeyYes})
		if want := ScoreMST(MSTInput{Loss: kg, PoorAppetite: true}); got != (Score{want, true}) {
			t.Errorf("MST %v kg: %+v, want %d", kg, got, want)
		}
	}
	if got, _ := mst().Score(map[string]string{"loss": "unsure", "appetite": KeyNo}); got.Points != ScoreMST(MSTInput{Unsure: true}) {
		t.Errorf("MST unsure: %+v", got)
	}
}

// A form with items left out is no score, unless it is positive already.
func TestMissingItemsAreNotNo(t *testing.T) {
	got, missing := scoff().Score(map[string]string{"sick": KeyYes, "control": KeyNo})
	if got.Asked || len(missing) != 3 {
		t.Errorf("got %+v, missing %v", got, missing)
	}
	if got, missing = scoff().Score(map[string]string{"sick": KeyYes, "food": KeyYes}); !got.Positive(2) || len(missing) != 3 {
		t.Errorf("got %+v, missing %v", got, missing)
	}
	if got, missing = must().Score(map[string]string{"bmi": "unheard of"}); got.Asked || len(missing) != 3 {
		t.Errorf("got %+v, missing %v", got, missing)
	}
}
