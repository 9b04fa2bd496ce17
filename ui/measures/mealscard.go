package measures

import (
	"strconv"

	"fyne.io/fyne/v2"

	"handbreadth/domain"
	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// mealsCard shows the day and each meal, drawn. It keeps a row for each meal
// that there can be.
type mealsCard struct {
	object *widgets.Card
	source Source
	choice *widgets.Choice
	day    *mealLine
	meals  [domain.MostMeals]*mealLine
	rows   *fyne.Container
}

// mealSize is the height of the drawings of a meal: four cupped hands stand
// side by side in a quarter of the section.
const mealSize float32 = 36

func newMealsCard(s Source) *mealsCard {
	c := &mealsCard{source: s, day: newMealLine("measures.day"), rows: widgets.ColumnGap(theme.Unit)}
	options := make([]widgets.Option, domain.MostMeals)
	for i := range options {
		options[i].Label = strconv.Itoa(i + domain.LeastMeals)
	}
	c.choice = widgets.Name(widgets.NewChoice("Meals a day", options, c.onMeals), "measures."+string(draft.Meals))
	c.rows.Add(c.day.row)
	for i := range c.meals {
		c.meals[i] = newMealLine("measures.meal" + strconv.Itoa(i+1))
		c.rows.Add(c.meals[i].row)
	}
	c.object = widgets.NewCard("Meal by meal", widgets.ColumnGap(theme.Two, c.choice, c.rows))
	return c
}

func (c *mealsCard) show(v view) {
	c.object.Hidden = v.State == referred
	c.choice.SetSelected(v.Meals - domain.LeastMeals)
	c.rows.Hidden = !v.HasMeals
	if !v.HasMeals {
		return
	}
	c.day.show(v.Day)
	for i, line := range c.meals {
		line.row.Hidden = i >= len(v.Servings)
		if i < len(v.Servings) {
			line.show(v.Servings[i])
		}
	}
}

func (c *mealsCard) onMeals(index int) {
	c.source.Set(draft.Meals, strconv.Itoa(index+domain.LeastMeals))
}

// mealLine is a row with what it shows now.
type mealLine struct {
	row *widgets.MealRow
	now serving
}

func newMealLine(name string) *mealLine {
	return &mealLine{row: widgets.Name(widgets.NewMealRow(mealSize), name)}
}

func (l *mealLine) show(s serving) {
	if s == l.now {
		return
	}
	l.now = s
	l.row.SetMeal(s.Name, s.Measures)
	l.row.SetNote(s.Brings)
}
