package screen

import (
	"slices"

	"handbreadth/domain/derive"
)

// Choice is one answer to an item, with the points that it gives.
type Choice struct {
	Key    string
	Label  string
	Points int
}

// Item is one line of a questionnaire in our own words, with its answers.
type Item struct {
	Key     string
	Ask     string
	Choices []Choice
}

// Class is what a score from a number of points on is called.
type Class struct {
	From int
	Name string
}

// Questionnaire is a published questionnaire: what it is, how it counts and
// where it was published. It is scored exactly as published. The items are in
// our own words; where the practitioner used the published form, its score is
// taken as it is.
type Questionnaire struct {
	Code    string
	Name    string
	About   string // what it looks for
	Wording string // says that the words are ours, and whose form it is
	Source  derive.Source
	Items   []Item
	// Positive is the score from which it counts as positive.
	Positive int
	// Most is the highest score.
	Most int
	// Classes are what scores are called, lowest first.
	Classes []Class
}

// The questionnaires.
const (
	SCOFF = "scoff"
	MUST  = "must"
	MST   = "mst"
)

// Questionnaires lists the questionnaires.
func Questionnaires() []Questionnaire { return []Questionnaire{scoff(), must(), mst()} }

// QuestionnaireByCode returns a questionnaire, and false where none has the code.
func QuestionnaireByCode(code string) (Questionnaire, bool) {
	for _, q := range Questionnaires() {
		if q.Code == code {
			return q, true
		}
	}
	return Questionnaire{}, false
}

// Score returns the score of the given answers, by the keys of items and
// choices, and the items that have no known answer. A score with items missing
// counts as asked only where it is positive already: more answers only add to it.
func (q Questionnaire) Score(given map[string]string) (score Score, missing []string) {
	for _, item := range q.Items {
		i := slices.IndexFunc(item.Choices, func(c Choice) bool { return c.Key == given[item.Key] })
		if i < 0 {
			missing = append(missing, item.Key)
			continue
		}
		score.Points += item.Choices[i].Points
	}
	score.Asked = len(missing) == 0 || score.Points >= q.Positive
	return score, missing
}

// Class returns what a number of points is called.
func (q Questionnaire) Class(points int) string {
	name := ""
	for _, c := range q.Classes {
		if points >= c.From {
			name = c.Name
		}
	}
	return name
}

// The keys of yes-or-no answers.
const (
	KeyNo  = "no"
	KeyYes = "yes"
)

// yesNo returns the answers of an item where a yes gives points.
func yesNo(points int) []Choice {
	return []Choice{{KeyNo, "No", 0}, {KeyYes, "Yes", points}}
}

// Source: Morgan 1999, BMJ 319:1467 (seen): five questions, a point for each
// yes, 2 or more is positive. In general practice it finds about 78 of 100 and
// about 1 in 10 of those found has an eating disorder (PMC2656502, seen), so it
// refers and never diagnoses.
func scoff() Questionnaire {
	return Questionnaire{
		Code: SCOFF, Name: "SCOFF", About: "signs of an eating disorder", Positive: 2, Most: 5,
		Wording: "The questions are in this program's own words. The published form is by Morgan, Reid and Lacey (BMJ 1999;319:1467). Where you used that form, enter its score.",
		Source:  morgan,
		Items: []Item{
			{"sick", "Ever makes themselves sick because of feeling too full?", yesNo(1)},
			{"control", "Worries that eating has got out of hand?", yesNo(1)},
			{"stone", "Lost more than about a stone (6.35 kg) within three months?", yesNo(1)},
			{"fat", "Sees themselves as fat while others say they are thin?", yesNo(1)},
			{"food", "Thinks about food so much that it rules their life?", yesNo(1)},
		},
		Classes: []Class{{0, "negative"}, {2, "positive"}},
	}
}

// Source: BAPEN 2003 (seen): BMI over 20 gives 0, 18.5 to 20 gives 1, under 18.5
// gives 2; unplanned loss under 5 % gives 0, 5 to 10 % gives 1, over 10 % gives
// 2; acute illness gives 2; 0 is low, 1 medium, 2 or more high risk.
func must() Questionnaire {
	return Questionnaire{
		Code: MUST, Name: "MUST", About: "risk of malnutrition", Positive: 2, Most: 6,
		Wording: "The questions are in this program's own words. The published form is the Malnutrition Universal Screening Tool of BAPEN (2003). Where you used that form, enter its score.",
		Source:  bapen,
		Items: []Item{
			{"bmi", "Body mass index", []Choice{{"over_20", "Over 20", 0}, {"18.5_to_20", "18.5 to 20", 1}, {"under_18.5", "Under 18.5", 2}}},
			{"loss", "Weight lost without trying in the last three to six months", []Choice{{"under_5", "Under 5 %", 0}, {"5_to_10", "5 to 10 %", 1}, {"over_10", "Over 10 %", 2}}},
			{"ill", "Acutely ill, and nothing eaten for more than five days, or likely so?", yesNo(2)},
		},
		Classes: []Class{{0, "low"}, {1, "medium"}, {2, "high"}},
	}
}

// Source: Ferguson 1999, Nutrition 15:458-464 (the points seen on two reprints of
// the form): loss unsure 2, 1-5 kg 1, 6-10 kg 2, 11-15 kg 3, more 4; poor appetite
// 1; 2 or more is at risk.
func mst() Questionnaire {
	return Questionnaire{
		Code: MST, Name: "MST", About: "risk of malnutrition", Positive: 2, Most: 5,
		Wording: "The questions are in this program's own words. The published form is the Malnutrition Screening Tool of Ferguson and others (Nutrition 1999;15:458). Where you used that form, enter its score.",
		Source:  ferguson,
		Items: []Item{
			{"loss", "Weight lost without trying, of late", []Choice{
				{"none", "None", 0},
				{"unsure", "Not sure, or not how much", 2},
				{"1_to_5", "1 to 5 kg", 1},
				{"6_to_10", "6 to 10 kg", 2},
				{"11_to_15", "11 to 15 kg", 3},
				{"over_15", "Over 15 kg", 4},
			}},
			{"appetite", "Eats less because the appetite is poor?", yesNo(1)},
		},
		Classes: []Class{{0, "not at risk"}, {2, "at risk"}},
	}
}
