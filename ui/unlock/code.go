package unlock

import (
	"context"

	"fyne.io/fyne/v2"

	"handbreadth/ui/task"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// CodeWays lead on from the page.
type CodeWays struct {
	On func() // the code is on paper
	// ChoosePath asks where to save a file and hands over its path.
	ChoosePath func(name string, chosen func(path string))
}

// ShowCode is the page that shows a recovery code, once.
type ShowCode struct {
	code  Code
	sheet Sheet
	tools Tools
	ways  CodeWays

	print, save *widgets.Button
	on          *widgets.Button
	told        told
	object      fyne.CanvasObject
	busy        bool
}

const (
	leadCode = "It opens your practice when the passphrase is forgotten; there is no other way in. It is shown this once. " +
		"Print it, or write it down, and keep it where you keep important papers, away from this computer."
	wordsSheetSaved   = "Saved. A saved sheet lies open: keep it on a stick, not on this computer."
	wordsSheetPrinted = "Handed to the printer or to the program that shows papers. Close it there when it is printed."
)

// NewShowCode returns the page. A note, where there is one, tells what else is
// to be known.
func NewShowCode(code Code, sheet Sheet, tools Tools, ways CodeWays, note string) *ShowCode {
	s := &ShowCode{code: code, sheet: sheet, tools: tools, ways: ways, told: newTold("unlock.told")}
	s.print = widgets.Name(widgets.NewQuietButton("Print the recovery sheet", s.onPrint), "unlock.print")
	s.save = widgets.Name(widgets.NewQuietButton("Save it as a file", s.onSave), "unlock.save")
	s.on = widgets.Name(widgets.NewPrimaryButton("I have it on paper", ways.On), "unlock.on")
	parts := []fyne.CanvasObject{
		widgets.NewCard("", s.groups()), widgets.Row(s.print, s.save, s.on), s.told.Text,
	}
	if note != "" {
		parts = append(parts, widgets.NewText(note, widgets.Small))
	}
	s.object = front("Your recovery code", leadCode, parts...)
	return s
}

// groups sets the code large, with the number of each group.
func (s *ShowCode) groups() fyne.CanvasObject {
	const least = 120
	cells := make([]fyne.CanvasObject, len(s.code.Groups))
	for i, group := range s.code.Groups {
		letters := widgets.Name(widgets.NewLine(group, widgets.Display), "unlock.group"+place(i))
		cells[i] = widgets.ColumnGap(0, widgets.NewLine(place(i), widgets.Small), letters)
	}
	return widgets.Grid(least, cells...)
}

// place is the number of a group as people count.
func place(i int) string { return string(rune('1' + i)) }

// Object is what is shown.
func (s *ShowCode) Object() fyne.CanvasObject { return s.object }

// FocusFirst gives the focus to printing.
func (s *ShowCode) FocusFirst() { widgets.FocusOn(s.print) }

// Escape does nothing: the code would be lost.
func (s *ShowCode) Escape() {}

func (s *ShowCode) onPrint() {
	s.do("Preparing the recovery sheet", wordsSheetPrinted, func(ctx context.Context) error {
		return s.sheet.PrintSheet(ctx, s.code)
	})
}

func (s *ShowCode) onSave() {
	s.ways.ChoosePath(s.sheet.SheetName(), func(path string) {
		s.do("Saving the recovery sheet", wordsSheetSaved, func(ctx context.Context) error {
			return s.sheet.SaveSheet(ctx, s.code, path)
		})
	})
}

// do runs a work on the sheet, one at a time.
func (s *ShowCode) do(label, after string, work func(ctx context.Context) error) {
	if s.busy {
		return
	}
	s.busy = true
	s.told.say(label + "…")
	s.object.Refresh()
	s.tools.Run.Start(task.Job{Label: label, Work: work, Done: func(err error) {
		s.busy = false
		if err != nil {
			s.told.warn(err.Error())
		} else {
			s.told.say(after)
		}
		s.object.Refresh()
	}})
}

// ConfirmWays lead on from the page.
type ConfirmWays struct {
	Done  func() // the sheet is good
	Later func()
	Back  func() // shows the code again
}

// Confirm is the page that asks for two groups of the code, to see that they
// are on paper.
type Confirm struct {
	code  Code
	guard Guard
	tools Tools
	ways  ConfirmWays

	asked  [2]int
	fields [2]*widgets.Field
	do     *widgets.Button
	told   told
	object fyne.CanvasObject
	busy   bool
}

// NewConfirm returns the page. Pick chooses which groups are asked for: it
// returns a number below n.
func NewConfirm(code Code, guard Guard, tools Tools, ways ConfirmWays, pick func(n int) int) *Confirm {
	s := &Confirm{code: code, guard: guard, tools: tools, ways: ways, told: newTold("unlock.told")}
	s.asked[0], s.asked[1] = twoOf(len(code.Groups), pick)
	for i, at := range s.asked {
		s.fields[i] = widgets.Name(widgets.NewField("Group "+place(at), ""), "unlock.asked"+place(at))
	}
	s.fields[1].OnEnter = func(string) { s.onDo() }
	s.do = widgets.Name(widgets.NewPrimaryButton("Go on", s.onDo), "unlock.do")
	later := widgets.Name(widgets.NewQuietButton("Later", ways.Later), "unlock.later")
	back := widgets.Name(widgets.NewTextButton("Look at the code again", ways.Back), "unlock.back")
	const narrow = 240
	s.object = front("Is it on paper?",
		"Type these two groups from the sheet, not from memory. If you do it later, Practice reminds you.",
		widgets.Narrow(narrow, widgets.ColumnGap(theme.Two, s.fields[0], s.fields[1])),
		widgets.Row(s.do, later, back), s.told.Text)
	return s
}

// Object is what is shown.
func (s *Confirm) Object() fyne.CanvasObject { return s.object }

// FocusFirst gives the focus to the first group.
func (s *Confirm) FocusFirst() { widgets.FocusOn(s.fields[0]) }

// Escape shows the code again.
func (s *Confirm) Escape() { s.ways.Back() }

func (s *Confirm) onDo() {
	if s.busy {
		return
	}
	for i, at := range s.asked {
		problem := groupProblem(s.code, at, s.fields[i].Text(), s.guard.ReadCode)
		s.fields[i].SetProblem(problem)
		if problem != "" {
			s.object.Refresh()
			widgets.FocusOn(s.fields[i])
			return
		}
	}
	s.busy = true
	s.tools.Run.Start(task.Job{
		Label: "Noting that the sheet is good",
		Work:  func(ctx context.Context) error { return s.guard.Confirm(ctx, s.code) },
		Done: func(err error) {
			s.busy = false
			if err != nil {
				s.told.warn(err.Error())
				s.object.Refresh()
				return
			}
			s.ways.Done()
		},
	})
}
