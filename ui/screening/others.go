package screening

import (
	"fyne.io/fyne/v2"

	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// others answers the questions that are left in one step, after it asked once,
// and takes that back in one step.
type others struct {
	source Source
	settle func()

	ask   *widgets.Button
	below *fyne.Container // the confirmation, then what was done

	words            *widgets.Text
	yes, no, back    *widgets.Button
	confirm, undoing *fyne.Container
	done             *widgets.Text

	asking bool
	filled bool // the last change of the form was made here
	own    bool // this change is
}

func newOthers(source Source, settle func()) *others {
	o := &others{source: source, settle: settle, words: widgets.NewText("", widgets.Body), done: widgets.NewText("", widgets.Body)}
	o.ask = widgets.Name(widgets.NewQuietButton("All others asked and answered no", o.onAsk), "screening.all_no")
	o.yes = widgets.Name(widgets.NewPrimaryButton("", o.onYes), "screening.all_no.confirm")
	o.no = widgets.Name(widgets.NewQuietButton("Go back", o.onNo), "screening.all_no.back")
	o.back = widgets.Name(widgets.NewQuietButton("Take it back", o.onBack), "screening.all_no.undo")
	o.back.SetIcon(widgets.IconUndo)
	o.confirm = widgets.Column(o.words, widgets.Row(o.yes, o.no))
	o.undoing = widgets.Row(o.done, o.back)
	o.below = widgets.Column(widgets.NewCard("", widgets.Column(o.confirm, o.undoing)))
	o.below = widgets.InsetSides(0, theme.Half, 0, 0, o.below)
	return o
}

// heard follows a change of the form; what was done here can be taken back as
// long as nothing else was.
func (o *others) heard(draft.Field) { o.filled = o.own }

// show follows how many questions are left.
func (o *others) show(left int) {
	o.asking = o.asking && left > 0
	o.words.SetText(confirmWords(left))
	o.yes.SetText(confirmLabel(left))
	o.ask.Hidden = o.asking || left == 0
	o.confirm.Hidden = !o.asking
	o.undoing.Hidden = !o.filled
	o.below.Hidden = !o.asking && !o.filled
}

func (o *others) reshow() {
	missing, _ := open(o.source.Reading())
	o.show(len(missing))
	o.settle()
}

func (o *others) onAsk() {
	o.asking = true
	o.reshow()
	widgets.FocusOn(o.no)
}

func (o *others) onNo() {
	o.asking = false
	o.reshow()
	widgets.FocusOn(o.ask)
}

func (o *others) onYes() {
	missing, _ := open(o.source.Reading())
	texts := map[draft.Field]string{}
	for _, code := range missing {
		texts[draft.Screening(code)] = draft.AnswerNo
	}
	o.asking, o.own = false, true
	o.done.SetText(doneWords(len(missing)))
	o.source.SetAll(texts)
	o.own = false
	widgets.FocusOn(o.back)
}

func (o *others) onBack() {
	if o.filled {
		o.source.Undo()
		widgets.FocusOn(o.ask)
	}
}
