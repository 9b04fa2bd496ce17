package screening

import (
	"fyne.io/fyne/v2"

	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// allNoRow answers the questions that are left in one step, after it asked.
type allNoRow struct {
	object  *fyne.Container
	ask     *widgets.Button
	confirm *fyne.Container
	words   *widgets.Text
	settle  func()
	answer  func()
}

func newAllNoRow(answer, settle func()) *allNoRow {
	r := &allNoRow{words: widgets.NewText("", widgets.Body), answer: answer, settle: settle}
	r.ask = widgets.Name(widgets.NewQuietButton("All others asked, and no", r.open), "screening.all_no")
	yes := widgets.Name(widgets.NewPrimaryButton("Yes, all asked and no", r.yes), "screening.all_no.confirm")
	back := widgets.Name(widgets.NewTextButton("Go back", r.close), "screening.all_no.back")
	r.confirm = widgets.ColumnGap(theme.Unit, r.words, widgets.Row(yes, back))
	r.confirm.Hidden = true
	r.object = widgets.Column(widgets.Row(r.ask), r.confirm)
	return r
}

func (r *allNoRow) show(left int) {
	r.words.SetText(confirmWords(left))
	if left == 0 {
		r.ask.Hide()
		r.confirm.Hide()
		return
	}
	r.ask.Hidden = r.confirm.Visible()
}

func (r *allNoRow) open() {
	r.ask.Hide()
	r.confirm.Show()
	r.settle()
}

func (r *allNoRow) close() {
	r.confirm.Hide()
	r.ask.Show()
	r.settle()
}

func (r *allNoRow) yes() {
	r.confirm.Hide()
	r.answer()
}
