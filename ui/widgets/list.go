package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"handbreadth/ui/theme"
)

// List is a list of any length that makes only the rows in view. One row is
// highlighted; the arrows, Page, Home and End move the highlight, Enter, Space
// and a click choose. The highlight is shown while the list has the focus or a
// [SearchField] steers it.
type List struct {
	widget.List
	OnChosen func(index int)
	OnMoved  func(index int)

	create  func() fyne.CanvasObject
	update  func(index int, row fyne.CanvasObject)
	cursor  int
	focused bool
	lit     bool
}

// NewList returns a list. All rows are as high as what create makes.
func NewList(length func() int, create func() fyne.CanvasObject, update func(index int, row fyne.CanvasObject)) *List {
	l := &List{create: create, update: update}
	l.Length = length
	l.CreateItem = func() fyne.CanvasObject { return newListRow(create()) }
	l.UpdateItem = l.updateRow
	l.OnSelected = l.clicked
	l.HideSeparators = false
	l.ExtendBaseWidget(l)
	return l
}

// Cursor returns the index of the highlighted row; it means nothing while the
// list is empty.
func (l *List) Cursor() int { return l.cursor }

// SetCursor highlights a row and brings it into view, without calling back.
func (l *List) SetCursor(index int) {
	l.cursor = max(0, min(index, l.Length()-1))
	if l.Length() > 0 {
		l.ScrollTo(l.cursor)
	}
	l.Refresh()
}

// FocusTarget returns the list itself.
func (l *List) FocusTarget() fyne.Focusable { return l }

// FocusGained shows the highlight.
func (l *List) FocusGained() {
	l.focused = true
	l.Refresh()
}

// FocusLost hides the highlight, unless a search field steers the list.
func (l *List) FocusLost() {
	l.focused = false
	l.Refresh()
}

// TypedKey moves the highlight and chooses.
func (l *List) TypedKey(key *fyne.KeyEvent) {
	if key.Name == fyne.KeySpace {
		l.choose(l.cursor)
		return
	}
	if !l.key(key.Name) {
		commonKey(l, key.Name)
	}
}

// key handles the keys that a search field hands on as well.
func (l *List) key(key fyne.KeyName) bool {
	last := l.Length() - 1
	switch key {
	case fyne.KeyUp:
		l.move(l.cursor - 1)
	case fyne.KeyDown:
		l.move(l.cursor + 1)
	case fyne.KeyPageUp:
		l.move(l.cursor - l.pageRows())
	case fyne.KeyPageDown:
		l.move(l.cursor + l.pageRows())
	case fyne.KeyHome:
		l.move(0)
	case fyne.KeyEnd:
		l.move(last)
	case fyne.KeyReturn, fyne.KeyEnter:
		if last < 0 {
			return false
		}
		l.choose(l.cursor)
	default:
		return false
	}
	return true
}

func (l *List) move(index int) {
	index = max(0, min(index, l.Length()-1))
	if index == l.cursor || l.Length() == 0 {
		return
	}
	l.SetCursor(index)
	if l.OnMoved != nil {
		l.OnMoved(index)
	}
}

func (l *List) choose(index int) {
	if index >= 0 && index < l.Length() && l.OnChosen != nil {
		l.OnChosen(index)
	}
}

// clicked takes what Fyne calls selected as chosen and keeps nothing selected.
func (l *List) clicked(index widget.ListItemID) {
	l.Unselect(index)
	l.move(index)
	l.choose(index)
}

// pageRows is how many rows fit in view, one less than that so that one row
// stays in sight.
func (l *List) pageRows() int {
	row := newListRow(l.create()).MinSize().Height + l.Theme().Size("padding")
	return max(1, int(l.Size().Height/row)-1)
}

func (l *List) updateRow(index widget.ListItemID, object fyne.CanvasObject) {
	row := object.(*listRow)
	l.update(index, row.content)
	row.show(index == l.cursor && (l.focused || l.lit), index == l.cursor && l.focused)
}

// listRow is one row: its content, on a tint with a bar where it is highlighted.
type listRow struct {
	widget.BaseWidget
	content      fyne.CanvasObject
	box, bar     *canvas.Rectangle
	ring         *canvas.Rectangle
	lit, focused bool
}

func newListRow(content fyne.CanvasObject) *listRow {
	r := &listRow{content: content, box: newBox(), bar: newBox(), ring: newRing()}
	r.ExtendBaseWidget(r)
	return r
}

func (r *listRow) show(lit, focused bool) {
	r.lit, r.focused = lit, focused
	r.Refresh()
}

// CreateRenderer implements fyne.Widget.
func (r *listRow) CreateRenderer() fyne.WidgetRenderer {
	r.paint()
	return &renderer{
		of: r, parts: []fyne.CanvasObject{r.box, r.bar, r.content, r.ring},
		min: func() fyne.Size {
			size := r.content.MinSize().AddWidthHeight(theme.Three, theme.Unit)
			return size.Max(fyne.NewSize(theme.Target, theme.Four+theme.Unit))
		},
		layout: func(size fyne.Size) {
			place(r.box, 0, 0, size.Width, size.Height)
			place(r.bar, 0, theme.Half, 3, size.Height-theme.Unit)
			height := heightOf(r.content, size.Width-theme.Three)
			place(r.content, theme.Unit+theme.Half, (size.Height-height)/2, size.Width-theme.Three, height)
			setRing(r.ring, r.focused, ringGap, ringGap, size.Width-2*ringGap, size.Height-2*ringGap)
		},
		recolor: r.paint,
	}
}

func (r *listRow) paint() {
	r.box.CornerRadius = theme.Radius
	r.box.FillColor, r.bar.FillColor = nothing, nothing
	if r.lit {
		r.box.FillColor = theme.Colour(theme.Tint)
		r.bar.FillColor = theme.Colour(theme.Spruce)
	}
}
