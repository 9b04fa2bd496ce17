package intake

import (
	"slices"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"

	"handbreadth/domain"
	"handbreadth/domain/energy"
	"handbreadth/domain/food"
	"handbreadth/ui/draft"
	"handbreadth/ui/widgets"
)

// control is what shows and takes one field of the form.
type control interface {
	// Object is what lies in the fold, Target what takes the focus.
	Object() fyne.CanvasObject
	Target() fyne.CanvasObject
	// Show shows a text of the form without moving a cursor where it is as before.
	Show(text string)
	// SetHint says what is accepted, and marks quietly what a plan still needs.
	SetHint(hint string, missing bool)
	// Judge shows how the text is understood or what is wrong with it, where that
	// has changed from outside.
	Judge(understood, problem string)
}

// typed is a field or an area that is typed into.
type typed struct {
	*widgets.Field
	object  fyne.CanvasObject
	width   float32 // the most that it takes; 0 is the whole column
	hint    string
	missing bool
}

func (c *typed) Target() fyne.CanvasObject { return c.object }

func (c *typed) Object() fyne.CanvasObject {
	if c.width == 0 {
		return c.object
	}
	return widgets.Narrow(c.width, c.object)
}

func (c *typed) Show(text string) {
	if c.Text() != text {
		c.SetText(text)
	}
}

func (c *typed) SetHint(hint string, missing bool) {
	if hint != c.hint {
		c.hint = hint
		c.Field.SetHint(hint)
	}
	if missing != c.missing {
		c.missing = missing
		c.SetPlaceHolder(map[bool]string{true: needed}[missing])
	}
}

func (c *typed) Judge(understood, problem string) {
	if c.Understood() != understood || c.Problem() != problem {
		c.Recheck()
	}
}

// chosen is a choice of one among values.
type chosen struct {
	*widgets.Choice
	values []string
	hint   *widgets.Text
	object fyne.CanvasObject
}

func (c *chosen) Target() fyne.CanvasObject { return c.Choice }
func (c *chosen) Object() fyne.CanvasObject { return c.object }
func (c *chosen) Judge(string, string)      {}

func (c *chosen) Show(text string) {
	if at := slices.Index(c.values, text); at != c.Selected() {
		c.SetSelected(at)
	}
}

func (c *chosen) SetHint(hint string, missing bool) {
	if missing {
		hint = strings.TrimSpace(sentence(needed) + ". " + hint)
	}
	c.hint.SetText(hint)
	c.hint.Hidden = hint == ""
}

// chips is the choice of allergens.
type chips struct {
	*widgets.MultiChoice
	hint, problem *widgets.Text
	mend          *fyne.Container // with the button that takes out what is not known
	object        fyne.CanvasObject
}

func (c *chips) Target() fyne.CanvasObject   { return c.MultiChoice }
func (c *chips) Object() fyne.CanvasObject   { return c.object }
func (c *chips) SetHint(hint string, _ bool) { c.hint.SetText(hint) }

func (c *chips) Show(text string) {
	var at []int
	for i, a := range food.Allergens() {
		if slices.Contains(avoided(text), a) {
			at = append(at, i)
		}
	}
	if !slices.Equal(at, c.Selected()) {
		c.SetSelected(at)
	}
}

func (c *chips) Judge(_, problem string) {
	c.problem.SetText(problem)
	c.problem.Hidden = problem == ""
	c.mend.Hidden = problem == ""
}

// The widths of what is short.
const (
	shortWidth = 400
	nameWidth  = 480
)

// newControl makes the control of a field.
func (s *Screen) newControl(field draft.Field) control {
	switch field {
	case draft.Born, draft.Date, draft.GoalBy:
		d := widgets.NewDateField(labels[field], "")
		return s.taking(field, &typed{Field: &d.Field, object: d, width: shortWidth})
	case draft.Why, draft.Notes:
		const rows = 3
		a := widgets.NewArea(labels[field], "", rows)
		return s.taking(field, &typed{Field: a, object: a})
	case draft.Name:
		f := widgets.NewField(labels[field], "")
		return s.taking(field, &typed{Field: f, object: f, width: nameWidth})
	case draft.Sex, draft.Activity, draft.GoalKind, draft.Pattern, draft.Meals:
		return s.newChosen(field)
	case draft.Avoid:
		return s.newChips()
	}
	f := widgets.NewField(labels[field], "")
	return s.taking(field, &typed{Field: f, object: f, width: shortWidth})
}

// taking lets what is typed go into the form at every keystroke.
func (s *Screen) taking(field draft.Field, c *typed) control {
	c.Check = func(text string) (string, error) {
		return understand(s.session.Form(), s.session.Style(), field, text)
	}
	c.OnChanged = func(text string) { s.session.Set(field, text) }
	return c
}

func (s *Screen) newChosen(field draft.Field) control {
	options, values := optionsOf(field)
	c := &chosen{values: values, hint: widgets.NewText("", widgets.Small)}
	c.Choice = widgets.NewChoice(labels[field], options, func(i int) { s.session.Set(field, values[i]) })
	c.object = widgets.ColumnGap(hintGap, c.Choice, c.hint)
	return c
}

func (s *Screen) newChips() control {
	all := food.Allergens()
	options := make([]widgets.Option, len(all))
	for i, a := range all {
		options[i].Label = sentence(a.Name())
	}
	c := &chips{hint: widgets.NewText("", widgets.Small), problem: widgets.NewText("", widgets.Problem)}
	c.MultiChoice = widgets.NewMultiChoice(labels[draft.Avoid], options, func(selected []int) {
		chosen := make([]food.Allergen, len(selected))
		for i, at := range selected {
			chosen[i] = all[at]
		}
		s.session.Set(draft.Avoid, withAllergens(s.session.Get(draft.Avoid), chosen))
	})
	mend := widgets.Name(widgets.NewTextButton("Leave it out", func() {
		s.session.Set(draft.Avoid, known(s.session.Get(draft.Avoid)))
	}), "intake.avoid.mend")
	c.mend = widgets.Row(mend)
	c.object = widgets.ColumnGap(hintGap, c.MultiChoice, c.hint, c.problem, c.mend)
	return c
}

// hintGap is the space between boxes and the hint below.
const hintGap = 6

// optionsOf lists the answers of a choice and what they put into the form.
func optionsOf(field draft.Field) (options []widgets.Option, values []string) {
	add := func(value, label, description string) {
		options = append(options, widgets.Option{Label: label, Description: description})
		values = append(values, value)
	}
	switch field {
	case draft.Sex:
		add(string(energy.Female), "Female", "")
		add(string(energy.Male), "Male", "")
	case draft.Activity:
		for _, c := range energy.Classes() {
			add(string(c.Category), c.Name, c.Describes)
		}
		add(draft.ActivityAsNumber, "A number", "Where the physical activity level (PAL) is known, for example from a measured day")
	case draft.GoalKind:
		for _, kind := range []energy.GoalKind{energy.Lose, energy.Maintain, energy.Gain} {
			add(string(kind), goalWords[kind], "")
		}
	case draft.Pattern:
		for _, p := range food.Patterns() {
			add(string(p), sentence(string(p)), "")
		}
	case draft.Meals:
		for n := domain.LeastMeals; n <= domain.MostMeals; n++ {
			add(strconv.Itoa(n), strconv.Itoa(n), "")
		}
	}
	return options, values
}
