package intake

import (
	"fmt"
	"strconv"
	"strings"

	"handbreadth/domain/energy"
	"handbreadth/domain/food"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
)

const (
	goalLose = string(energy.Lose)
	goalHold = string(energy.Maintain)
	goalGain = string(energy.Gain)
)

// summaryOf tells in one line what was filled in under a fold; "" where nothing
// was.
func summaryOf(key string, form draft.Form, r draft.Reading, style unit.Style) string {
	switch key {
	case "who":
		return whoSummary(form, r)
	case "visit":
		return r.Intake.Date.Long()
	case "measurements":
		return measuredSummary(r, style)
	case "activity":
		return activitySummary(r, style)
	case "goal":
		return goalSummary(r, style)
	case "food":
		return foodSummary(form, r)
	}
	return brief(form.Get(draft.Notes))
}

func whoSummary(form draft.Form, r draft.Reading) string {
	var told []string
	if name := form.Get(draft.Name); name != "" {
		told = append(told, name)
	}
	if age := r.Intake.Age(); age >= 0 {
		told = append(told, years(age))
	}
	if sex := r.Intake.Client.EquationSex; sex.Valid() {
		told = append(told, string(sex)+" equation")
	}
	return strings.Join(told, ", ")
}

func measuredSummary(r draft.Reading, style unit.Style) string {
	h, w := r.Intake.Height, r.Intake.Weight
	if h == 0 || w == 0 {
		return ""
	}
	return fmt.Sprintf("%s, %s, BMI %s", style.Height(h), style.Weight(w), style.Number(float64(unit.BMI(w, h)), 1))
}

func activitySummary(r draft.Reading, style unit.Style) string {
	a := r.Intake.Activity
	if !a.Valid() {
		return ""
	}
	if a.PAL != 0 {
		return "PAL " + style.Number(float64(a.PAL), 2)
	}
	for _, c := range energy.Classes() {
		if c.Category == a.Category {
			return fmt.Sprintf("%s, PAL %s", c.Name, style.Number(float64(c.Level), 1))
		}
	}
	return ""
}

var goalWords = map[energy.GoalKind]string{
	energy.Lose: "Lose weight", energy.Maintain: "Hold the weight", energy.Gain: "Gain weight",
}

func goalSummary(r draft.Reading, style unit.Style) string {
	g := r.Intake.Goal
	words := goalWords[g.Kind]
	if g.Weight != 0 {
		words += ", to " + style.Weight(g.Weight)
	}
	if !g.By.IsZero() {
		words += " by " + g.By.Long()
	}
	if g.Energy != 0 {
		words += ", on " + style.EnergyPerDay(g.Energy)
	}
	return words
}

func foodSummary(form draft.Form, r draft.Reading) string {
	var told []string
	if form.Get(draft.Pattern) != "" {
		told = append(told, sentence(string(r.Intake.Pattern)))
	}
	if form.Get(draft.Meals) != "" {
		told = append(told, mealsWords(r.Intake.MealsPerDay))
	}
	if avoided := avoidedNames(r.Intake.Avoid); len(avoided) > 0 {
		told = append(told, "without "+joined(avoided))
	}
	return strings.Join(told, ", ")
}

func avoidedNames(avoid []food.Allergen) []string {
	names := make([]string, 0, len(avoid))
	for _, a := range food.Allergens() {
		for _, b := range avoid {
			if a == b {
				names = append(names, a.Name())
				break
			}
		}
	}
	return names
}

func mealsWords(n int) string {
	if n == 1 {
		return "1 meal a day"
	}
	return strconv.Itoa(n) + " meals a day"
}

// brief is the beginning of a text, on one line.
func brief(text string) string {
	const most = 60
	runes := []rune(strings.Join(strings.Fields(text), " "))
	if len(runes) <= most {
		return string(runes)
	}
	return strings.TrimSpace(string(runes[:most])) + "…"
}

func years(age unit.Year) string {
	if age == 1 {
		return "1 year"
	}
	return strconv.Itoa(int(age)) + " years"
}

func counted(n int) string { return strconv.Itoa(n) }

// sentence begins a text with a capital.
func sentence(text string) string {
	if text == "" {
		return ""
	}
	return strings.ToUpper(text[:1]) + text[1:]
}

// goalHint says what energy the goal comes to be reckoned with, so that nothing
// happens unseen where nothing is named.
func goalHint(r draft.Reading, style unit.Style) string {
	g := r.Intake.Goal
	switch {
	case !g.Kind.Valid():
		return ""
	case g.Energy != 0:
		return "The agreed energy is taken as it is. Targets shows where it leads."
	case g.Kind == energy.Maintain:
		return "Holding the weight takes the maintenance energy, unless another energy is agreed."
	case g.Weight != 0 && !g.By.IsZero():
		return "The energy is worked out from the weight and the date. Targets shows how."
	case g.Kind == energy.Gain:
		return fmt.Sprintf("Without a date or an energy, a customary %s over maintenance is used.", style.EnergyPerDay(energy.DefaultSurplus))
	}
	least := leastWords(r.Intake.Client.EquationSex, style)
	return fmt.Sprintf("Without a date or an energy, a customary %s under maintenance is used, and never less than %s.",
		style.EnergyPerDay(energy.DefaultDeficit), least)
}

func leastWords(sex energy.Sex, style unit.Style) string {
	if sex.Valid() {
		return style.EnergyPerDay(energy.LeastEnergy(sex))
	}
	return fmt.Sprintf("%s for women or %s for men", style.EnergyPerDay(energy.LeastEnergy(energy.Female)), style.EnergyPerDay(energy.LeastEnergy(energy.Male)))
}
