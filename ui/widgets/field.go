package widgets

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"

	"handbreadth/ui/theme"
)

// Field is a labelled entry. Below it stands a hint of what is accepted, or how
// the text was understood; a problem appears below that once the field is left
// or Enter is pressed, never while typing, and goes as soon as it is mended.
type Field struct {
	composite

	// Check says how a text is understood ("= 72.6 kg", may be empty) or what is
	// wrong with it; see [ProblemWords]. It is not asked about blank text.
	Check func(text string) (understood string, err error)
	// OnChanged is called on every keystroke.
	OnChanged func(text string)
	// OnLeave is called when the field is left or Enter is pressed, if the text
	// has changed since the last time.
	OnLeave func(text string)
	// OnEnter is called on Enter after OnLeave; nil moves the focus on.
	OnEnter func(text string)

	label, hint, understood *Text
	problem                 *problemLine
	entry                   *entry
	frame                   *container.ThemeOverride
	ring                    *canvas.Rectangle
	left                    string // the text when the field was last left
	multi                   bool
}

// NewField returns an empty field. The hint may be empty.
func NewField(label, hint string) *Field {
	f := &Field{}
	f.setUp(f, label, hint)
	return f
}

// NewPasswordField returns a field whose text is hidden.
func NewPasswordField(label, hint string) *Field {
	f := &Field{}
	f.setUp(f, label, hint)
	f.entry.Password = true
	return f
}

// NewArea returns a field of several lines, of which at least so many are
// shown. Enter starts a new line; Tab goes on.
func NewArea(label, hint string, rows int) *Field {
	f := &Field{multi: true}
	f.setUp(f, label, hint)
	f.entry.MultiLine = true
	f.entry.Wrapping = fyne.TextWrapWord
	f.entry.SetMinRowsVisible(rows)
	return f
}

func (f *Field) setUp(self fyne.Widget, label, hint string) {
	f.setUpAs(self, label, hint, func(ringed fyne.CanvasObject) fyne.CanvasObject {
		return ColumnGap(theme.Half, f.label, ringed, f.hint, f.understood, f.problem)
	})
}

// setUpAs lays out the parts in a way of its own.
func (f *Field) setUpAs(self fyne.Widget, label, hint string, layOut func(ringed fyne.CanvasObject) fyne.CanvasObject) {
	f.label, f.hint, f.understood = NewText(label, Strong), NewText(hint, Small), NewText("", Small)
	f.understood.SetColour(theme.Spruce)
	f.problem = newProblemLine()
	f.entry = newEntry()
	f.entry.changed, f.entry.gained, f.entry.lost, f.entry.key = f.typed, f.gained, f.leave, f.key
	f.frame = rusty(f.entry)
	f.ring = newRing()
	ringed := &fyne.Container{Layout: ringLayout{}, Objects: []fyne.CanvasObject{f.frame, f.ring}}
	f.recolor = func() { f.label.SetColour(inkOf(f.entry.Disabled(), theme.Ink)) }
	f.init(self, layOut(ringed))
	f.arrange()
}

// ringLayout gives the first object the whole place and lays the second round it.
type ringLayout struct{}

func (ringLayout) MinSize(objects []fyne.CanvasObject) fyne.Size { return objects[0].MinSize() }

func (ringLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	place(objects[0], 0, 0, size.Width, size.Height)
	ring := objects[1].(*canvas.Rectangle)
	const closer = ringGap - theme.FocusWidth // the entry has a border of its own
	setRing(ring, ring.Visible(), closer, closer, size.Width-2*closer, size.Height-2*closer)
}

// FocusTarget returns the entry, which takes the focus.
func (f *Field) FocusTarget() fyne.Focusable { return f.entry }

// Text returns the text.
func (f *Field) Text() string { return f.entry.Text }

// SetText changes the text without calling back, checks it and takes it as left,
// so that a stored text that is wrong shows its problem.
func (f *Field) SetText(text string) {
	f.entry.setText(text)
	f.left = text
	f.check(true)
}

// SetLabel changes the label.
func (f *Field) SetLabel(label string) {
	f.label.SetText(label)
	f.arrange()
}

// Label returns the label.
func (f *Field) Label() string { return f.label.Text() }

// SetHint changes the hint.
func (f *Field) SetHint(hint string) {
	f.hint.SetText(hint)
	f.arrange()
}

// SetPlaceHolder shows a text in the empty entry.
func (f *Field) SetPlaceHolder(text string) { f.entry.SetPlaceHolder(text) }

// Problem returns the problem that is shown, or "".
func (f *Field) Problem() string { return f.problem.words() }

// SetProblem shows a problem until the text changes; "" shows none.
func (f *Field) SetProblem(words string) {
	f.problem.set(words)
	f.arrange()
}

// Understood returns how the text was understood, as shown.
func (f *Field) Understood() string { return f.understood.Text() }

// SetUnderstood shows how the text was understood; "" shows the hint instead.
func (f *Field) SetUnderstood(words string) {
	f.understood.SetText(words)
	f.arrange()
}

// Enable lets the field be used.
func (f *Field) Enable() {
	f.entry.Enable()
	f.Refresh()
}

// Disable switches the field off.
func (f *Field) Disable() {
	f.entry.Disable()
	f.Refresh()
}

// Disabled reports whether the field is switched off.
func (f *Field) Disabled() bool { return f.entry.Disabled() }

// Recheck asks Check again, for example after the units of the practice changed.
func (f *Field) Recheck() { f.check(f.entry.Text == f.left) }

func (f *Field) typed(text string) {
	f.check(false)
	if f.OnChanged != nil {
		f.OnChanged(text)
	}
}

func (f *Field) gained() {
	f.ring.Show()
	f.Refresh()
	reveal(f.self)
}

func (f *Field) leave() {
	f.ring.Hide()
	f.commit()
	f.Refresh()
}

// commit checks the text for good and tells that the field was left.
func (f *Field) commit() {
	changed := f.entry.Text != f.left
	f.left = f.entry.Text
	if changed || f.Problem() == "" {
		f.check(true)
	}
	if changed && f.OnLeave != nil {
		f.OnLeave(f.entry.Text)
	}
}

func (f *Field) key(key fyne.KeyName) bool {
	switch key {
	case fyne.KeyReturn, fyne.KeyEnter:
		if f.multi {
			return false
		}
		f.commit()
		if f.OnEnter != nil {
			f.OnEnter(f.entry.Text)
		} else {
			goOn(f.entry)
		}
		return true
	case fyne.KeyEscape:
		return commonKey(f.entry, key)
	}
	return false
}

// check shows how the text is understood. What is wrong is shown only when the
// field was left; while typing, a problem that is mended goes.
func (f *Field) check(left bool) {
	understood, problem := "", ""
	if f.Check != nil && strings.TrimSpace(f.entry.Text) != "" {
		words, err := f.Check(f.entry.Text)
		if err == nil {
			understood = words
		} else if left || f.Problem() != "" {
			problem = ProblemWords(err)
		}
	}
	f.understood.SetText(understood)
	f.problem.set(problem)
	f.arrange()
}

// arrange shows the lines that have something to say.
func (f *Field) arrange() {
	f.label.Hidden = f.label.Text() == ""
	f.understood.Hidden = f.understood.Text() == ""
	f.hint.Hidden = f.hint.Text() == "" || !f.understood.Hidden
	f.problem.Hidden = f.problem.words() == ""
	f.Refresh()
}
