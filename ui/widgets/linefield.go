package widgets

import (
	"fyne.io/fyne/v2"

	"handbreadth/ui/theme"
)

// NewLineField returns a field on one line, for lists of many: the label at the
// left, a remark beside it, and a short entry at the right. How the text was
// understood and what is wrong with it stand below as in every field.
func NewLineField(label, remark string) *Field {
	f := &Field{}
	f.setUpAs(f, label, "", func(ringed fyne.CanvasObject) fyne.CanvasObject {
		about := NewLine(remark, Small)
		line := &fyne.Container{Layout: lineLayout{}, Objects: []fyne.CanvasObject{f.label, about, ringed}}
		return ColumnGap(0, line, f.understood, f.problem)
	})
	f.label.SetStyle(Body)
	f.understood.SetAlign(fyne.TextAlignTrailing)
	return f
}

// lineLayout sets a label, a remark and an entry on one line. The label wraps
// where it must; the remark and the entry keep their widths, so that they stand
// in columns.
type lineLayout struct{}

const (
	lineEntry  float32 = 96
	lineRemark float32 = 32
)

// labelWidth is what the remark and the entry leave.
func (lineLayout) labelWidth(width float32) float32 {
	return max(theme.Four, width-grown(lineEntry+lineRemark)-2*theme.Unit)
}

func (lineLayout) MinSize(objects []fyne.CanvasObject) fyne.Size {
	const least = 96
	return fyne.NewSize(least+grown(lineEntry+lineRemark)+2*theme.Unit, objects[2].MinSize().Height)
}

func (l lineLayout) heightFor(objects []fyne.CanvasObject, width float32) float32 {
	return max(objects[2].MinSize().Height, heightOf(objects[0], l.labelWidth(width)))
}

func (l lineLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	label, remark, entry := objects[0], objects[1], objects[2]
	labelHeight := heightOf(label, l.labelWidth(size.Width))
	remarkHeight, entryHeight := remark.MinSize().Height, entry.MinSize().Height
	place(label, 0, (size.Height-labelHeight)/2, l.labelWidth(size.Width), labelHeight)
	place(remark, size.Width-grown(lineEntry+lineRemark)-theme.Unit, (size.Height-remarkHeight)/2, grown(lineRemark), remarkHeight)
	place(entry, size.Width-grown(lineEntry), (size.Height-entryHeight)/2, grown(lineEntry), entryHeight)
}
