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
	case "why":
		return whySummary(form, r)
	case "goal":
		return goalSummary(r, style)
	case "measurements":
		return measuredSummary(r, style)
	case "body":
		return bodySummary(r, style)
	case "activity":
		return activitySummary(r, style)
	case "training":
		return trainingSummary(form, r, style)
	case "eaten":
		return eatenSummary(form, r, style)
	case "food":
		return foodSummary(form, r)
	case "meals":
		return mealsSummary(form, r)
	case "context":
		return contextSummary(form)
	case "health":
		return healthSummary(form, r)
	case "consent":
		return consentSummary(form, r)
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
	if date := r.Intake.Date; !date.IsZero() {
		told = append(told, "visit of "+date.Long())
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
	pal := "PAL " + style.Number(float64(a.Level().Value), 2)
	switch {
	case len(a.Day) > 0:
		return pal + ", from the day"
	case a.Customary != "":
		m, _ := energy.MultiplierByCode(a.Customary)
		return m.Name + ", " + pal
	case a.PAL != 0:
		return pal
	}
	for _, c := range energy.Classes() {
		if c.Category == a.Category {
			return c.Name + ", PAL " + style.Number(float64(c.Level), 1)
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
	if g.PerWeek != 0 {
		words += ", " + style.Rate(g.PerWeek)
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
	if avoided := avoidedNames(r.Intake.Avoid); len(avoided) > 0 {
		told = append(told, "without "+joined(avoided))
	}
	if dislikes := form.Get(draft.Dislikes); dislikes != "" {
		told = append(told, "dislikes "+brief(dislikes))
	}
	return sentence(strings.Join(told, ", "))
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

// brief is the beginning of a text, on one line.
func brief(text string) string {
	const most = 48
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
