package screening

import (
	"strings"

	"fyne.io/fyne/v2"

	"handbreadth/domain/screen"
	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// scoreCard is one scored questionnaire: asked here in our own words, or the
// score of the published form.
type scoreCard struct {
	source Source
	settle func()
	q      screen.Questionnaire
	fold   *widgets.Fold

	way     *widgets.Choice
	form    *typed
	formBox *fyne.Container
	items   map[string]detail
	known   map[string]*widgets.Text
	own     *fyne.Container
	result  *widgets.Text
	meaning *widgets.Text

	byForm bool // the published form was picked
	made   bool
}

func newScoreCard(source Source, q screen.Questionnaire, settle func()) *scoreCard {
	c := &scoreCard{source: source, settle: settle, q: q, items: map[string]detail{}, known: map[string]*widgets.Text{}}
	c.fold = widgets.Name(widgets.NewFold(q.Name+": "+q.About, c.build), "screening.fold."+q.Code)
	c.fold.OnToggled = func(bool) {
		c.show()
		settle()
	}
	return c
}

func (c *scoreCard) build() fyne.CanvasObject {
	c.way = widgets.Name(widgets.NewChoice("How it was asked", []widgets.Option{
		{Label: "Here, in these words"}, {Label: "On the published form"},
	}, c.onWay), "screening."+c.q.Code+".way")
	c.form = newTyped(c.source, draft.ScoreOf(c.q.Code), "Score of the published form", scoreHint(c.q))
	c.own = widgets.ColumnGap(theme.Unit + theme.Half)
	for _, item := range c.q.Items {
		c.addItem(item)
	}
	c.result, c.meaning = widgets.NewText("", widgets.Strong), widgets.NewText("", widgets.Body)
	c.made = true
	const formWidth = 400
	c.formBox = widgets.Narrow(formWidth, c.form.Field)
	return widgets.ColumnGap(theme.Two, widgets.NewText(c.q.Wording, widgets.Small), c.way, c.formBox, c.own,
		widgets.ColumnGap(theme.Half, c.result, c.meaning), widgets.NewText("Source: "+c.q.Source.Text, widgets.Source))
}

// addItem adds an item, and the line that stands in its place where the intake
// tells its answer.
func (c *scoreCard) addItem(item screen.Item) {
	field := draft.ScoreItem(c.q.Code, item.Key)
	var d detail
	if isYesNo(item) {
		d = newAsked(c.source, field, item.Ask)
	} else {
		options, values := make([]widgets.Option, len(item.Choices)), make([]string, len(item.Choices))
		for i, choice := range item.Choices {
			options[i].Label, values[i] = choice.Label, choice.Key
		}
		d = newPicked(c.source, field, item.Ask, options, values)
	}
	c.items[item.Key], c.known[item.Key] = d, widgets.NewText("", widgets.Body)
	c.own.Add(c.known[item.Key])
	c.own.Add(d.Object())
}

// onWay picks how it was asked. A score of the published form goes with its way;
// undo brings it back.
func (c *scoreCard) onWay(index int) {
	const here = 0
	c.byForm = index != here
	if field := draft.ScoreOf(c.q.Code); !c.byForm && c.source.Get(field) != "" {
		c.source.SetAll(map[draft.Field]string{field: ""}) // a step of its own to undo
	}
	c.show()
	c.settle()
}

// show follows the form.
func (c *scoreCard) show() {
	form, r := c.source.Form(), c.source.Reading()
	words := scoreOf(c.q, form, r)
	c.fold.SetMark(markOf(c.q, words, r))
	if !c.made {
		return
	}
	field := draft.ScoreOf(c.q.Code)
	c.byForm = c.byForm || form.Get(field) != ""
	c.way.SetSelected(map[bool]int{true: 1}[c.byForm])
	setShown(c.formBox, c.byForm)
	setShown(c.own, !c.byForm)
	c.form.show()
	for _, item := range c.q.Items {
		c.showItem(item, form, r)
	}
	c.result.SetText(words.Result)
	c.meaning.SetText(words.Meaning)
	c.meaning.Hidden = words.Meaning == ""
}

func (c *scoreCard) showItem(item screen.Item, form draft.Form, r draft.Reading) {
	c.items[item.Key].show()
	words, known := knownWords(c.q, item, r)
	known = known && form.Get(draft.ScoreItem(c.q.Code, item.Key)) == ""
	c.known[item.Key].SetText(words)
	c.known[item.Key].Hidden = !known
	setShown(c.items[item.Key].Object(), !known)
}

func setShown(object fyne.CanvasObject, shown bool) {
	switch {
	case shown == object.Visible():
	case shown:
		object.Show()
	default:
		object.Hide()
	}
}

// focus opens the card of a field and moves the focus to it, or to the way in
// which it is asked; it reports whether the field is of this card.
func (c *scoreCard) focus(field draft.Field) bool {
	own, published := draft.ScoreItem(c.q.Code, ""), draft.ScoreOf(c.q.Code)
	key, isItem := strings.CutPrefix(string(field), string(own))
	if field != published && !isItem {
		return false
	}
	c.fold.SetOpen(true)
	c.byForm = c.byForm || field == published
	c.show()
	c.settle()
	target := fyne.CanvasObject(c.form.Field)
	if d, known := c.items[key]; known && !c.byForm && d.Object().Visible() {
		target = d.Object()
	} else if isItem {
		target = c.way
	}
	return widgets.FocusOn(target)
}

// markOf is what the head says while the card is closed.
func markOf(q screen.Questionnaire, words scoreWords, r draft.Reading) widgets.FoldMark {
	if _, wrong := r.Wrong(draft.ScoreOf(q.Code)); wrong {
		return widgets.FoldMark{Text: "1 to mend", Kind: widgets.MarkWrong}
	}
	return widgets.FoldMark{Text: words.Mark}
}
