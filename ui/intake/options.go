package intake

import (
	"strconv"

	"handbreadth/domain"
	"handbreadth/domain/body"
	"handbreadth/domain/energy"
	"handbreadth/domain/food"
	"handbreadth/domain/macro"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
	"handbreadth/ui/widgets"
)

// choice collects the answers of a choice and what they put into the form.
type choice struct {
	options []widgets.Option
	values  []string
}

func (c *choice) add(value, label, description string) {
	c.options = append(c.options, widgets.Option{Label: label, Description: description})
	c.values = append(c.values, value)
}

// optionsOf lists the answers of a choice and what they put into the form; none
// where the field is typed.
func optionsOf(field draft.Field) (options []widgets.Option, values []string) {
	var c choice
	switch field {
	case draft.Sex:
		c.add(string(energy.Female), "Female", "")
		c.add(string(energy.Male), "Male", "")
	case draft.Activity:
		for _, class := range energy.Classes() {
			c.add(string(class.Category), class.Name, class.Describes)
		}
	case draft.Customary:
		for _, m := range energy.Multipliers() {
			c.add(m.Code, m.Name+", "+unit.Style{}.Number(float64(m.Factor), decimalsOf(float64(m.Factor))), "")
		}
	case draft.GoalKind:
		for _, kind := range []energy.GoalKind{energy.Lose, energy.Maintain, energy.Gain} {
			c.add(string(kind), goalWords[kind], "")
		}
	case draft.Points:
		c.add(string(body.WorldPoints), "All populations", "")
		c.add(string(body.AsianPoints), "Asian populations", "")
	case draft.Training:
		c.add(draft.NoTraining, "None", "")
		c.add(string(macro.TrainingEndurance), trainingWords[macro.TrainingEndurance], "")
		c.add(string(macro.TrainingStrength), trainingWords[macro.TrainingStrength], "")
	case draft.Pattern:
		for _, p := range food.Patterns() {
			c.add(string(p), sentence(string(p)), "")
		}
	case draft.Meals:
		for n := domain.LeastMeals; n <= domain.MostMeals; n++ {
			c.add(strconv.Itoa(n), strconv.Itoa(n), "")
		}
	case draft.Consent:
		c.add(draft.AnswerYes, "Given", "")
		c.add(draft.AnswerNo, "Not given", "")
	case draft.WithoutNumbers:
		c.add(draft.AnswerNo, "Numbers are fine", "")
		c.add(draft.AnswerYes, "Without numbers", "")
	}
	return c.options, c.values
}

var trainingWords = map[macro.Training]string{
	macro.TrainingNone: "No training", macro.TrainingEndurance: "Endurance", macro.TrainingStrength: "Strength",
}

// decimalsOf is the fewest decimals, of one to three, that tell a factor.
func decimalsOf(value float64) int {
	for decimals := 1; decimals < 3; decimals++ {
		text := strconv.FormatFloat(value, 'f', decimals, 64)
		if told, err := strconv.ParseFloat(text, 64); err == nil && told == value {
			return decimals
		}
	}
	return 3
}

// rowsOf is how many lines of a text are shown at least; 0 where a field is one
// line.
func rowsOf(field draft.Field) int {
	switch field {
	case draft.UsualDay:
		return 4
	case draft.Why, draft.Notes, draft.Laboratory:
		return 3
	case draft.OtherGoals, draft.PastAttempts, draft.Medicines, draft.Supplements, draft.Sleep, draft.ShiftWork, draft.Cooking,
		draft.WhoCooks, draft.EatingOut, draft.Budget, draft.FoodInsecurity, draft.Fasting:
		return 2
	}
	return 0
}
