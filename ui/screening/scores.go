package screening

import (
	"fmt"
	"strings"

	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
)

const (
	scoresTitle = "Scored questionnaires"
	scoresLead  = "Optional: where something points to one, or local rules ask for it. A score refers and holds like the questions above; it never diagnoses."
)

// scoreWords is what a questionnaire comes to.
type scoreWords struct {
	Mark    string // for the head while the card is closed
	Result  string
	Meaning string
}

// scoreOf tells the score of a questionnaire.
func scoreOf(q screen.Questionnaire, form draft.Form, r draft.Reading) scoreWords {
	own, missing := draft.OwnWords(q, form, r.Intake)
	score, asked := r.Intake.Scored.Scores[q.Code]
	begun := len(ownAnswers(q, form)) > 0
	switch {
	case !asked && !begun:
		return scoreWords{Mark: "Not asked", Result: "Not asked yet"}
	case !asked:
		return scoreWords{
			Mark:    fmt.Sprintf("Begun, %s", counted(len(missing), "answer missing", "answers missing")),
			Result:  fmt.Sprintf("%s so far", counted(own.Points, "point", "points")),
			Meaning: counted(len(missing), "question has no answer yet.", "questions have no answer yet.") + " What was not asked is not taken as no.",
		}
	}
	words := scoreWords{Result: fmt.Sprintf("%d of %d: %s", score.Points, q.Most, q.Class(score.Points)), Meaning: meaningOf(q, score)}
	fromForm := form.Get(draft.ScoreOf(q.Code)) != ""
	if !fromForm && len(missing) > 0 {
		words.Result = fmt.Sprintf("At least %d of %d: %s", score.Points, q.Most, q.Class(score.Points))
	}
	words.Mark = words.Result
	if least := leastOf(q, r); fromForm && least > score.Points {
		words.Meaning += fmt.Sprintf(" BMI and the loss that was told give %d by themselves, which count.", least)
	}
	if fromForm && begun && own.Points != score.Points {
		words.Meaning += fmt.Sprintf(" The answers here come to %d; the published form counts.", own.Points)
	}
	return words
}

// leastOf is what a questionnaire gives by what the intake tells alone.
func leastOf(q screen.Questionnaire, r draft.Reading) int {
	in := r.Intake
	if q.Code != screen.MUST || in.Weight == 0 || in.Height == 0 {
		return 0
	}
	return screen.ScoreMUST(screen.MUSTInput{BMI: unit.BMI(in.Weight, in.Height), Loss: in.Scored.RecentLoss.Known()})
}

// ownAnswers returns the items that were answered here.
func ownAnswers(q screen.Questionnaire, form draft.Form) []string {
	var answered []string
	for _, item := range q.Items {
		if form.Get(draft.ScoreItem(q.Code, item.Key)) != "" {
			answered = append(answered, item.Key)
		}
	}
	return answered
}

// meaningOf says what a score means, and who comes first.
func meaningOf(q screen.Questionnaire, score screen.Score) string {
	positive := score.Positive(q.Positive)
	switch {
	case positive && q.Code == screen.SCOFF:
		return "This is no diagnosis. A service that treats eating disorders, or the doctor, looks at it before any plan with measures or targets."
	case positive:
		return "This is no diagnosis. The doctor or the dietitian in charge looks for the cause before any plan, by local rules."
	case q.Code == screen.MUST && score.Points == 1:
		return "Watch what is eaten and weigh again, as local rules have it. The treating clinician comes first."
	}
	return "A low score rules nothing out. Where something else worries you, the treating clinician comes first."
}

// isYesNo reports whether an item is answered with yes or no.
func isYesNo(item screen.Item) bool {
	return len(item.Choices) == 2 && item.Choices[0].Key == screen.KeyNo && item.Choices[1].Key == screen.KeyYes
}

// knownWords tells an answer that follows from the intake: "Body mass index:
// under 18.5, from height and weight."
func knownWords(q screen.Questionnaire, item screen.Item, r draft.Reading) (string, bool) {
	key, known := draft.KnownAnswer(q, item, r.Intake)
	if !known {
		return "", false
	}
	from := map[string]string{"bmi": "from height and weight", "loss": "from the loss that was told"}[item.Key]
	for _, c := range item.Choices {
		if c.Key == key {
			return item.Ask + ": " + strings.ToLower(c.Label[:1]) + c.Label[1:] + ", " + from + ".", true
		}
	}
	return "", false
}

// scoreHint says what the score of the published form may be.
func scoreHint(q screen.Questionnaire) string {
	return fmt.Sprintf("A whole number from 0 to %d. %d or more is positive.", q.Most, q.Positive)
}
