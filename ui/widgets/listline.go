package widgets

import "handbreadth/ui/theme"

// ListLine is the usual content of a list's row: a title, a remark below it and
// something at the right end.
type ListLine struct {
	composite
	title, detail, end *Text
}

// NewListLine returns an empty line.
func NewListLine() *ListLine {
	l := &ListLine{title: newCutLine("", Strong), detail: newCutLine("", Small), end: NewLine("", Small)}
	l.init(l, Ends(ColumnGap(0, l.title, l.detail), l.end))
	return l
}

// Set shows the three texts; any may be empty.
func (l *ListLine) Set(title, detail, end string) {
	l.title.SetText(title)
	l.detail.SetText(detail)
	l.end.SetText(end)
	l.Refresh()
}

// SetMuted shows the title as switched off, for what cannot be chosen.
func (l *ListLine) SetMuted(muted bool) { l.title.SetColour(inkOf(muted, theme.Ink)) }
