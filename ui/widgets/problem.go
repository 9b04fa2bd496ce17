package widgets

import (
	"errors"
	"strings"

	"fyne.io/fyne/v2"

	"handbreadth/domain/unit"
	"handbreadth/ui/theme"
)

// ProblemWords puts an error of an input in words for the line below its field:
// what was typed and what to write instead.
func ProblemWords(err error) string {
	var problems unit.Problems
	if errors.As(err, &problems) {
		lines := make([]string, len(problems))
		for i, p := range problems {
			lines[i] = problemWords(p)
		}
		return strings.Join(lines, "\n")
	}
	var problem unit.Problem
	if errors.As(err, &problem) {
		return problemWords(problem)
	}
	return err.Error()
}

func problemWords(p unit.Problem) string {
	const shown = 40
	given := []rune(strings.Join(strings.Fields(p.Given), " "))
	if len(given) > shown {
		given = append(given[:shown], '…')
	}
	wanted := "Please write " + p.Accepted + "."
	if len(given) == 0 {
		return wanted
	}
	return "“" + string(given) + "” cannot be used here. " + wanted
}

// problemLine is a problem with a mark before it, so that it does not speak by
// colour alone.
type problemLine struct {
	composite
	mark *icon
	text *Text
}

func newProblemLine() *problemLine {
	p := &problemLine{mark: newIcon(IconCaution, theme.Brick, smallIcon()), text: NewText("", Problem)}
	p.recolor = func() { p.mark.setColour(theme.Brick) }
	p.init(p, &fyne.Container{Layout: markLayout(Problem), Objects: []fyne.CanvasObject{p.mark.image, p.text}})
	return p
}

func (p *problemLine) words() string { return p.text.Text() }

func (p *problemLine) set(words string) {
	p.text.SetText(words)
	p.Refresh()
}

// markLayout sets a small icon before the first line of the second object, which
// is set in this style.
type markLayout TextStyle

func (markLayout) MinSize(objects []fyne.CanvasObject) fyne.Size {
	rest := objects[1].MinSize()
	return fyne.NewSize(smallIcon()+theme.Unit+rest.Width, max(smallIcon(), rest.Height))
}

func (markLayout) heightFor(objects []fyne.CanvasObject, width float32) float32 {
	return max(smallIcon(), heightOf(objects[1], width-smallIcon()-theme.Unit))
}

func (l markLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	width := size.Width - smallIcon() - theme.Unit
	place(objects[0], 0, max(0, (TextStyle(l).measure("Hg").Height-smallIcon())/2), smallIcon(), smallIcon())
	place(objects[1], smallIcon()+theme.Unit, 0, width, heightOf(objects[1], width))
}
