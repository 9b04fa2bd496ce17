package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"handbreadth/ui/clients"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// question is what is asked over the page before something that cannot be
// undone. The focus starts on the way back.
type question struct {
	shell *Shell
	popup *widget.PopUp
}

const questionWidth = 480

// ask asks a question.
func (s *Shell) ask(q clients.Question) {
	if s.asking != nil {
		return
	}
	if s.palette != nil {
		s.palette.close()
	}
	asked := &question{shell: s}
	no := widgets.Name(widgets.NewPrimaryButton("Go back", asked.close), "question.no")
	yes := widgets.Name(widgets.NewQuietButton(q.Yes, func() {
		asked.close()
		q.Do()
	}), "question.yes")
	content := widgets.Inset(theme.Two, widgets.ColumnGap(theme.Two,
		widgets.NewText(q.Title, widgets.Title),
		widgets.NewText(q.Words, widgets.Body),
		widgets.Row(no, yes),
	))
	asked.popup = widget.NewModalPopUp(content, s.window.Canvas())
	s.asking = asked
	asked.popup.Show()
	content.Resize(fyne.NewSize(questionWidth, content.MinSize().Height))
	asked.popup.Resize(fyne.NewSize(questionWidth, content.MinSize().Height+theme.Two))
	widgets.FocusOn(no)
	s.changed()
}

func (q *question) close() {
	q.popup.Hide()
	q.shell.asking = nil
	widgets.Unname("question")
	q.shell.changed()
}
