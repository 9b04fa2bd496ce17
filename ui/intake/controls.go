package intake

import (
	"slices"
	"strings"

	"fyne.io/fyne/v2"

	"handbreadth/domain/food"
	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
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

// ways is a choice of the way in which something is told. It has no text of its
// own in the form.
type ways struct {
	*chosen
	list []way
}

// Show does nothing: which way is told follows from the fields that are filled
// in.
func (c *ways) Show(string) {}

func (c *ways) show(field draft.Field) {
	if at := indexOf(c.list, field); at != c.Selected() {
		c.SetSelected(at)
	}
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
	case draft.Born, draft.Date, draft.GoalBy, draft.PressureDate, draft.ConsentDate:
		d := widgets.NewDateField(labels[field], "")
		return s.taking(field, &typed{Field: &d.Field, object: d, width: shortWidth})
	case goalWay:
		return s.newWays(goalWays, labels[field], s.onGoalWay)
	case activityWay:
		return s.newWays(activityWays, labels[field], s.onActivityWay)
	case draft.Avoid:
		return s.newChips()
	case draft.Day:
		return newDayBox(s)
	}
	if rows := rowsOf(field); rows > 0 {
		a := widgets.NewArea(labels[field], "", rows)
		return s.taking(field, &typed{Field: a, object: a})
	}
	if options, values := optionsOf(field); len(options) > 0 {
		return s.newChosen(field, options, values)
	}
	f := widgets.NewField(labels[field], "")
	return s.taking(field, &typed{Field: f, object: f, width: widthOf(field)})
}

func widthOf(field draft.Field) float32 {
	switch field {
	case draft.Name:
		return nameWidth
	case draft.Dislikes, draft.MealTimes:
		return 0
	}
	return shortWidth
}

// taking lets what is typed go into the form at every keystroke.
func (s *Screen) taking(field draft.Field, c *typed) control {
	c.Check = func(text string) (string, error) { return understand(s.session, field, text) }
	c.OnChanged = func(text string) { s.session.Set(field, text) }
	return c
}

func (s *Screen) newChosen(field draft.Field, options []widgets.Option, values []string) *chosen {
	return newChosen(labels[field], options, values, func(i int) { s.session.Set(field, values[i]) })
}

func newChosen(label string, options []widgets.Option, values []string, onChosen func(int)) *chosen {
	c := &chosen{values: values, hint: widgets.NewText("", widgets.Small)}
	c.Choice = widgets.NewChoice(label, options, onChosen)
	c.object = widgets.ColumnGap(hintGap, c.Choice, c.hint)
	return c
}

func (s *Screen) newWays(list []way, label string, onWay func(draft.Field)) control {
	options := make([]widgets.Option, len(list))
	for i, w := range list {
		options[i].Label = w.Label
	}
	return &ways{list: list, chosen: newChosen(label, options, nil, func(i int) { onWay(list[i].Field) })}
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
const hintGap = theme.Half + 2
