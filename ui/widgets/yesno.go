package widgets

import (
	"fyne.io/fyne/v2"

	"handbreadth/domain/screen"
	"handbreadth/ui/theme"
)

// yesNoAnswers are the answers in the order in which they are shown.
var yesNoAnswers = []screen.Answer{screen.NotAsked, screen.No, screen.Yes}

// YesNo is one screening question with the answers "not asked", "no" and "yes".
// By keyboard: n, y, and Delete or Backspace for "not asked"; left and right
// step through the answers, up and down go to the questions beside.
type YesNo struct {
	options
	OnChanged func(answer screen.Answer)

	note   *Text
	answer screen.Answer
}

// NewYesNo returns a question that was not asked. The callback may be nil.
func NewYesNo(question string, onChanged func(answer screen.Answer)) *YesNo {
	y := &YesNo{OnChanged: onChanged, note: NewText("", Small)}
	y.chosen = func(i int) bool { return yesNoAnswers[i] == y.answer }
	y.act = func(i int) { y.give(yesNoAnswers[i]) }
	y.setUp(y, question, []Option{{Label: "Not asked"}, {Label: "No"}, {Label: "Yes"}}, false)
	y.label.SetStyle(Body)
	return y
}

// Question returns the text of the question.
func (y *YesNo) Question() string { return y.label.Text() }

// Answer returns the answer.
func (y *YesNo) Answer() screen.Answer { return y.answer }

// SetAnswer gives an answer without calling back.
func (y *YesNo) SetAnswer(answer screen.Answer) {
	y.answer = answer
	for i, a := range yesNoAnswers {
		if a == answer {
			y.cursor = i
		}
	}
	y.Refresh()
}

// SetNote sets a remark below the question, such as what a yes means; "" removes
// it.
func (y *YesNo) SetNote(note string) {
	y.note.SetText(note)
	y.Refresh()
}

// TypedRune answers with y and n.
func (y *YesNo) TypedRune(r rune) {
	switch r {
	case 'y', 'Y':
		y.give(screen.Yes)
	case 'n', 'N':
		y.give(screen.No)
	}
}

// TypedKey steps through the answers and to the questions beside.
func (y *YesNo) TypedKey(key *fyne.KeyEvent) {
	switch key.Name {
	case fyne.KeyDelete, fyne.KeyBackspace:
		y.give(screen.NotAsked)
	case fyne.KeyUp:
		goBack(y)
	case fyne.KeyDown:
		goOn(y)
	case fyne.KeySpace:
		y.give(yesNoAnswers[(y.cursor+1)%len(yesNoAnswers)])
	default:
		if i, moved := y.step(key.Name); moved {
			y.give(yesNoAnswers[i])
			return
		}
		commonKey(y, key.Name)
	}
}

func (y *YesNo) give(answer screen.Answer) {
	if y.Disabled() || answer == y.answer {
		return
	}
	y.SetAnswer(answer)
	if y.OnChanged != nil {
		y.OnChanged(answer)
	}
}

// besideFrom is the width from which the answers stand beside the question.
const besideFrom float32 = 560

// besideText is the least width that the question then has.
const besideText float32 = 200

// HeightFor returns the height that the row needs at a width.
func (y *YesNo) HeightFor(width float32) float32 { return y.arrange(width, false) }

// CreateRenderer implements fyne.Widget.
func (y *YesNo) CreateRenderer() fyne.WidgetRenderer {
	r := y.options.CreateRenderer().(*renderer)
	r.parts = append(r.parts, y.note)
	r.min = func() fyne.Size {
		width := max(y.widest(), y.label.MinSize().Width)
		return fyne.NewSize(width, y.HeightFor(max(width, y.Size().Width)))
	}
	r.layout = func(size fyne.Size) { y.arrange(size.Width, true) }
	recolor := r.recolor
	r.recolor = func() {
		recolor()
		y.note.SetColour(inkOf(y.Disabled(), theme.Muted))
	}
	return r
}

func (y *YesNo) answersWidth() float32 {
	width := float32(0)
	for _, b := range y.boxes {
		width += b.naturalWidth()
	}
	return width + optionGap*float32(len(y.boxes)-1)
}

// arrange returns the height of the row and, where set is true, places its
// parts: the answers beside the question, or below it, wrapped where they must.
func (y *YesNo) arrange(width float32, set bool) float32 {
	answers := y.answersWidth()
	textWidth, beside := width, width >= max(besideFrom, answers+besideText)
	if beside {
		textWidth = width - answers - theme.Two
	}
	labelHeight := y.label.HeightFor(textWidth)
	textHeight := labelHeight
	if y.note.Text() != "" {
		textHeight += y.note.HeightFor(textWidth)
	}
	height, textY := float32(0), float32(0)
	if beside {
		boxHeight := y.flowAnswers(0, 0, answers, false)
		height = max(textHeight, boxHeight)
		textY = (height - textHeight) / 2
		y.flowAnswers(width-answers, (height-boxHeight)/2, answers, set)
	} else {
		top := textHeight + theme.Half
		height = top + y.flowAnswers(0, top, width, set)
	}
	if set {
		place(y.label, 0, textY, textWidth, labelHeight)
		place(y.note, 0, textY+labelHeight, textWidth, max(0, textHeight-labelHeight))
		b := y.boxes[y.cursor]
		setRing(y.ring, y.focused, b.at.X, b.at.Y, b.size.Width, b.size.Height)
	}
	return height
}

// flowAnswers returns the height of the answers in a width and, where set is
// true, places them from a corner on.
func (y *YesNo) flowAnswers(left, top, width float32, set bool) float32 {
	x, line, lineHeight := float32(0), float32(0), float32(0)
	for _, b := range y.boxes {
		w := min(b.naturalWidth(), width)
		if x > 0 && x+w > width+0.5 {
			x, line, lineHeight = 0, line+lineHeight+optionGap, 0
		}
		h := b.heightFor(w)
		if set {
			b.set(fyne.NewPos(left+x, top+line), fyne.NewSize(w, h))
		}
		x += w + optionGap
		lineHeight = max(lineHeight, h)
	}
	return line + lineHeight
}
