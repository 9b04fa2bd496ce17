package draft

import (
	"math"
	"strconv"

	"handbreadth/domain"
	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
)

// scored reads what was scored, and the details that the refeeding criteria ask
// for. Nought is an answer; nothing is not asked.
func (r *reader) scored() {
	s := screen.Scored{Scores: screen.Scores{}, RecentLoss: r.recentLoss()}
	if days, ok := r.amount(DaysOfLittle, 0, float64(domain.MostDaysOfLittle), "0 to 365 days, or nothing where it was not asked", []string{"days", "day"}); ok {
		s.DaysOfLittle = screen.Told[unit.Day]{Value: unit.Day(days), Asked: true}
	}
	s.LowElectrolytes, s.AlcoholOrDrugs = r.answer(LowElectrolytes), r.answer(AlcoholOrDrugs)
	r.out.Intake.Scored = s
	for _, q := range screen.Questionnaires() {
		score, ok := r.published(q)
		if !ok {
			score, _ = OwnWords(q, r.form, r.out.Intake)
		}
		if score.Asked {
			s.Scores[q.Code] = score
		}
	}
}

// published reads the score of the published form, which counts before that of
// our own words.
func (r *reader) published(q screen.Questionnaire) (screen.Score, bool) {
	field := ScoreOf(q.Code)
	if r.form.Get(field) == "" {
		return screen.Score{}, false
	}
	accepted := "a whole score of 0 to " + strconv.Itoa(q.Most) + ", or nothing where it was not asked"
	points, ok := r.number(field, 0, float64(q.Most), accepted)
	if ok && points != math.Trunc(points) {
		r.refuse(field, accepted)
		ok = false
	}
	return screen.Score{Points: int(points), Asked: ok}, true
}

// OwnWords returns the score of the answers in our own words, and the items that
// have none. What the intake tells already is not asked again: the steps of MUST
// for BMI and for the loss of weight. Without any answer nothing was asked.
func OwnWords(q screen.Questionnaire, form Form, in domain.Intake) (score screen.Score, missing []string) {
	given, begun := map[string]string{}, false
	for _, item := range q.Items {
		given[item.Key] = form.Get(ScoreItem(q.Code, item.Key))
		begun = begun || given[item.Key] != ""
		if given[item.Key] == "" {
			given[item.Key], _ = KnownAnswer(q, item, in)
		}
	}
	score, missing = q.Score(given)
	if !begun {
		return screen.Score{}, missing
	}
	return score, missing
}

// KnownAnswer returns the answer to an item that follows from the intake, and
// false where none does.
func KnownAnswer(q screen.Questionnaire, item screen.Item, in domain.Intake) (key string, known bool) {
	if q.Code != screen.MUST {
		return "", false
	}
	const noPoints unit.KilogramPerSquareMetre = 25
	points := -1
	switch {
	case item.Key == "bmi" && in.Weight > 0 && in.Height > 0:
		points = screen.ScoreMUST(screen.MUSTInput{BMI: unit.BMI(in.Weight, in.Height)})
	case item.Key == "loss" && in.Scored.RecentLoss.Asked:
		points = screen.ScoreMUST(screen.MUSTInput{BMI: noPoints, Loss: in.Scored.RecentLoss.Value})
	}
	for _, c := range item.Choices {
		if c.Points == points {
			return c.Key, true
		}
	}
	return "", false
}

func (r *reader) answer(field Field) screen.Answer { return answerOf(r.form.Get(field)) }

func answerOf(text string) screen.Answer {
	switch text {
	case AnswerNo:
		return screen.No
	case AnswerYes:
		return screen.Yes
	}
	return screen.NotAsked
}

// recentLoss reads a loss as a part of the weight before it, or as the weight
// that was lost.
func (r *reader) recentLoss() screen.Told[unit.Percent] {
	text := r.form.Get(RecentLoss)
	if text == "" {
		return screen.Told[unit.Percent]{}
	}
	percent, ok := parseAmount(text, map[string]float64{"": 1, "%": 1})
	if !ok {
		percent, ok = r.lostWeight(text)
	}
	if !ok || percent > float64(domain.MostRecentLoss) {
		r.refuse(RecentLoss, "a part of the weight before, such as 6 %, or the weight lost, such as 4 kg or 9 lb, once the weight now is known; 0 for none")
		return screen.Told[unit.Percent]{}
	}
	r.out.Understood[RecentLoss] = r.style.Percent(unit.Percent(percent)) + " of the weight before"
	return screen.Told[unit.Percent]{Value: unit.Percent(percent), Asked: true}
}

// lostWeight reads a lost weight as a part of the weight before, in percent.
func (r *reader) lostWeight(text string) (float64, bool) {
	lost, ok := parseAmount(text, map[string]float64{
		"kg": 1, "kilos": 1, "lb": unit.KilogramPerPound, "lbs": unit.KilogramPerPound, "pounds": unit.KilogramPerPound,
		"st": unit.KilogramPerPound * unit.PoundPerStone, "stone": unit.KilogramPerPound * unit.PoundPerStone,
	})
	now := float64(r.out.Intake.Weight)
	if !ok || now <= 0 {
		return 0, false
	}
	return 100 * lost / (now + lost), true
}
