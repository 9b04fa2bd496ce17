package screening

import (
	"slices"

	"fyne.io/fyne/v2"

	"handbreadth/domain/derive"
	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// outcome shows what the answers mean for the plan: the findings, gravest first,
// and for each hold the reason that lifts it. Cards are made once a finding and
// kept, so that typing a reason is not disturbed.
type outcome struct {
	object  *fyne.Container
	heading *widgets.Text
	cards   *fyne.Container
	source  Source
	made    map[string]*findingRow
	settle  func()
}

func newOutcome(s Source, settle func()) *outcome {
	o := &outcome{
		source: s, settle: settle, made: map[string]*findingRow{},
		heading: widgets.NewText("", widgets.Strong), cards: widgets.ColumnGap(theme.Unit),
	}
	o.object = widgets.ColumnGap(theme.Unit, o.heading, o.cards)
	return o
}

func (o *outcome) show(v view) {
	o.heading.SetText(v.Heading)
	objects := make([]fyne.CanvasObject, 0, len(v.Findings))
	for _, f := range v.Findings {
		objects = append(objects, o.row(f).object)
	}
	if !slices.Equal(objects, o.cards.Objects) {
		o.cards.Objects = objects
		o.cards.Refresh()
	}
}

func (o *outcome) row(f shown) *findingRow {
	key := f.Finding.Code + f.Finding.Level.String()
	row, known := o.made[key]
	if !known {
		row = newFindingRow(f, o.source)
		o.made[key] = row
	}
	row.show(f)
	return row
}

func (o *outcome) focus(field draft.Field) {
	for _, row := range o.made {
		if row.reason != nil && row.reason.focus(field) {
			return
		}
	}
}

// findingRow is one finding with its reason below.
type findingRow struct {
	object *fyne.Container
	card   *widgets.FindingCard
	remark *widgets.Text
	reason *reasonForm
	source Source
}

func newFindingRow(f shown, s Source) *findingRow {
	r := &findingRow{card: widgets.NewFindingCard(f.Finding), remark: widgets.NewText("", widgets.Small), source: s}
	r.object = widgets.ColumnGap(theme.Half, r.card, r.remark)
	if f.Finding.Level == derive.Hold {
		r.reason = newReasonForm(f.Finding.Code, s)
		r.object.Add(r.reason.object)
	}
	return r
}

func (r *findingRow) show(f shown) {
	if r.card.Finding() != f.Finding {
		r.card.SetFinding(f.Finding)
	}
	r.remark.SetText(f.Remark)
	r.remark.Hidden = f.Remark == ""
	if r.reason != nil {
		r.reason.object.Hidden = !f.Reason
		r.reason.show()
	}
}
