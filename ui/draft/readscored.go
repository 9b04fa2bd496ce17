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
	s := screen.Scored{Scores: screen.Scores{}}
	for _, q := range screen.Questionnaires() {
		if score := r.score(q); score.Asked {
			s.Scores[q.Code] = score
		}
	}
	s.RecentLoss = r.recentLoss()
	if days, ok := r.amount(DaysOfLittle, 0, float64(domain.MostDaysOfLittle), "0 to 365 days, or nothing where it was not asked", []string{"days", "day"}); ok {
		s.DaysOfLittle = screen.Told[unit.Day]{Value: unit.Day(days), Asked: true}
	}
	s.LowElectrolytes, s.AlcoholOrDrugs = r.answer(LowElectrolytes), r.answer(AlcoholOrDrugs)
	r.out.Intake.Scored = s
}

// score reads the score of the published form.
func (r *reader) score(q screen.Questionnaire) screen.Score {
	field := ScoreOf(q.Code)
	accepted := "a whole score of 0 to " + strconv.Itoa(q.Most) + ", or nothing where it was not asked"
	points, ok := r.number(field, 0, float64(q.Most), accepted)
	if ok && points != math.Trunc(points) {
		r.refuse(field, accepted)
		ok = false
	}
	return screen.Score{Points: int(points), Asked: ok}
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
