package handout

import (
	"context"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/storage"

	"handbreadth/ui/draft"
	"handbreadth/ui/task"
	"handbreadth/ui/widgets"
)

// onSave asks for a place and saves the paper there.
func (s *Screen) onSave() {
	if !s.mayLeave() {
		return
	}
	plan, _ := s.session.Plan()
	s.OnChoosePath(s.papers.SuggestedName(plan), s.saveTo)
}

func (s *Screen) saveTo(path string) {
	if path == "" || !s.mayLeave() {
		return
	}
	plan, choice := s.wanted()
	s.leave(wordsSaving, savedWords(path), task.Job{
		Label: "Saving the paper",
		Work:  func(ctx context.Context) error { return s.papers.Save(ctx, plan, choice, path) },
	})
}

// onPrint hands the paper to the system.
func (s *Screen) onPrint() {
	if !s.mayLeave() {
		return
	}
	plan, choice := s.wanted()
	s.leave(wordsPrinting, wordsPrinted, task.Job{
		Label: "Preparing to print",
		Work:  func(ctx context.Context) error { return s.papers.Print(ctx, plan, choice) },
	})
}

// mayLeave reports whether the paper may be saved or printed now. Where the next
// visit cannot be read it says so, since the paper would lack it.
func (s *Screen) mayLeave() bool {
	if s.stop != nil || !s.now.ready() || noPages(s.now.State, s.choices.choice()) {
		return false
	}
	visit := s.session.Form().Get(draft.NextVisit)
	if _, ok := visitWords(visit, s.session.Reading().Intake.Date); s.now.State == open && !ok {
		s.tell(wordsNoVisit, "", true)
		widgets.FocusOn(s.choices.visit)
		return false
	}
	return true
}

// leave runs a job by which the paper leaves the desk. What was kept by it
// shows on the paper, so the pages are made anew.
func (s *Screen) leave(during, after string, job task.Job) {
	var done bool
	job.Done = func(err error) {
		done = true
		s.left(after, err)
	}
	s.stop = func() {}
	s.show()
	s.tell(during, "Stop", false)
	stop := s.run.Start(job)
	if !done {
		s.stop = stop
	}
}

func (s *Screen) left(words string, err error) {
	s.stop = nil
	s.show()
	if err != nil {
		s.tell(err.Error(), "", !task.Canceled(err))
		return
	}
	s.tell(words, "", false)
	s.renew(s.preview.start)
}

func (s *Screen) onStop() {
	if s.stop != nil {
		s.stop()
	}
}

func (s *Screen) tell(words, button string, wrong bool) {
	s.choices.told.say(words, button, wrong)
	s.choices.object.Refresh()
	s.settle()
}

// askPath shows a file dialog over the window of the section.
func (s *Screen) askPath(proposed string, chosen func(path string)) {
	window := windowOf(s.object)
	if window == nil {
		return
	}
	ask := dialog.NewFileSave(func(file fyne.URIWriteCloser, err error) { s.pathGiven(file, err, chosen) }, window)
	ask.SetFileName(proposed)
	ask.SetFilter(storage.NewExtensionFileFilter([]string{".pdf"}))
	ask.Show()
}

// pathGiven takes what the dialog comes to; no file means that it was closed.
func (s *Screen) pathGiven(file fyne.URIWriteCloser, err error, chosen func(path string)) {
	if err == nil && file != nil {
		err = file.Close()
	}
	switch {
	case err != nil:
		s.tell(task.Words(err), "", true)
	case file != nil:
		chosen(file.URI().Path())
	}
}

func windowOf(object fyne.CanvasObject) fyne.Window {
	driver := fyne.CurrentApp().Driver()
	on := driver.CanvasForObject(object)
	for _, window := range driver.AllWindows() {
		if window.Canvas() == on {
			return window
		}
	}
	return nil
}
