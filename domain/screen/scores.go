package screen

import (
	"fmt"

	"handbreadth/domain/unit"
)

// Score is the outcome of a questionnaire, and false where it was not asked.
type Score struct {
	Points int
	Asked  bool
}

// Positive reports whether a score that was asked for reaches a threshold.
func (s Score) Positive(threshold int) bool { return s.Asked && s.Points >= threshold }

// Scores holds the outcome of each questionnaire by its code; a missing one was
// not asked.
type Scores map[string]Score

// positive says that a questionnaire is positive, "" where it is not or was not
// asked. MUST counts for at least what BMI and a loss that was told give, the form
// scored or not: it has them inside. A low BMI without a loss is told as such, not
// as a loss.
func (s Scored) positive(code string, bmi unit.KilogramPerSquareMetre) string {
	q, _ := QuestionnaireByCode(code)
	score := s.Scores[code]
	if code == MUST {
		lost := s.RecentLoss.Known()
		score.Points = max(score.Points, ScoreMUST(MUSTInput{BMI: bmi, Loss: lost}))
		score.Asked = score.Asked || lost > 0
	}
	if !score.Positive(q.Positive) {
		return ""
	}
	return fmt.Sprintf("%s %d of %d, positive from %d.", q.Name, score.Points, q.Most, q.Positive)
}

// points returns the points of the numbered choice of an item.
func (q Questionnaire) points(item, choice int) int { return q.Items[item].Choices[choice].Points }

// ScoreSCOFF counts the yeses, as [Questionnaire] says.
func ScoreSCOFF(yes ...bool) int { return count(yes...) }

// MUSTInput is what MUST asks.
type MUSTInput struct {
	BMI unit.KilogramPerSquareMetre
	// Loss is the unplanned loss of weight in the last 3 to 6 months.
	Loss unit.Percent
	// AcutelyIll reports an acute illness with no intake for over 5 days.
	AcutelyIll bool
}

// ScoreMUST adds the three steps of MUST.
func ScoreMUST(in MUSTInput) int {
	q := must()
	return q.points(0, step(in.BMI <= 20, in.BMI < 18.5)) +
		q.points(1, step(in.Loss >= 5, in.Loss > 10)) +
		q.points(2, step(in.AcutelyIll))
}

// MSTInput is what MST asks.
type MSTInput struct {
	Unsure       bool          // whether weight was lost, or how much, is not known
	Loss         unit.Kilogram // without trying
	PoorAppetite bool
}

// ScoreMST adds weight loss and appetite. The form knows whole kilograms; parts
// belong to the next one up.
func ScoreMST(in MSTInput) int {
	const unsure = 1
	q := mst()
	appetite := q.points(1, step(in.PoorAppetite))
	if in.Unsure {
		return appetite + q.points(0, unsure)
	}
	if steps := step(in.Loss >= 1, in.Loss > 5, in.Loss > 10, in.Loss > 15); steps > 0 {
		return appetite + q.points(0, unsure+steps)
	}
	return appetite + q.points(0, 0)
}

// step counts how many steps up are reached.
func step(reached ...bool) int { return count(reached...) }
