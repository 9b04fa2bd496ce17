package ui

import (
	"context"

	"handbreadth/ui/draft"
	"handbreadth/ui/task"
	"handbreadth/ui/unlock"
	"handbreadth/ui/widgets"
)

// whereabouts is where the practitioner was when the window was locked, and what
// could not be saved then: it is kept in memory only, and saved after unlocking.
type whereabouts struct {
	place    Place
	client   string // "": no file was open
	section  Section
	focus    string     // name of what had the focus
	form     draft.Form // nil: it is on the disk
	settings *Settings  // nil: they are on the disk
}

// wordsNothingToLock says why a practice without a passphrase is not locked.
const (
	wordsNothingToLock = "Without a passphrase there is nothing to lock with. Choose one in Practice, under Safe keeping."
	wordsDemoOpen      = "The demo has no passphrase: everything in it is invented."
)

// Lock saves what was typed, takes everything out of the window, and locks the
// file. After unlocking the work goes on at the same place.
func (s *Shell) Lock() {
	switch {
	case s.door == nil || s.door.Locked():
		return
	case s.door.Demo():
		s.toast.Say(wordsDemoOpen)
		return
	case !s.door.Sealed():
		s.toast.Say(wordsNothingToLock)
		return
	}
	s.stay = s.whereabouts()
	s.clear()
	enter, door := s.askPassphrase(""), s.door
	s.runner.Start(task.Job{
		Label: "Locking",
		Work:  func(ctx context.Context) error { door.Lock(ctx); return nil },
		Done:  func(error) { enter.Ready() },
	})
}

// whereabouts notes where the practitioner is, and saves what is not saved yet.
func (s *Shell) whereabouts() (w whereabouts) {
	if s.desk == nil {
		return w
	}
	w.place = s.place
	if s.place == PlaceGate {
		w.place = PlacePractice // the pages of its secrets are not gone back to
	}
	w.focus = s.focusedName()
	if s.settings.flush() != nil {
		kept := s.settings.value
		w.settings = &kept
	}
	f := s.file
	if f == nil {
		return w
	}
	w.client, w.section = f.id, f.section
	if f.flush() != nil {
		w.form = f.session.Form()
	}
	return w
}

// focusedName is the name of what has the focus, "" where it has none.
func (s *Shell) focusedName() string {
	focused := s.window.Canvas().Focused()
	if focused == nil {
		return ""
	}
	for name, object := range widgets.Named() {
		if f, is := object.(widgets.Focuser); is && f.FocusTarget() == focused {
			return name
		}
	}
	return ""
}

// clear ends the session and takes everything that belongs to it out of the
// window, which is built anew: nothing is only covered.
func (s *Shell) clear() {
	s.endSession()
	s.leaveGate()
	s.closeOverlays()
	s.toast.Close()
	s.desk, s.file, s.settings = nil, nil, nil
	s.clients, s.practice, s.safety, s.help = nil, nil, nil, nil
	s.window.Canvas().Unfocus()
	s.window.SetTitle(title)
	widgets.ResetNames()
	s.build()
}

// endSession stops what runs for the practice, and drops what it would show.
func (s *Shell) endSession() {
	if s.span != nil {
		s.span.End()
	}
	s.slow.End()
	s.slow = task.NewSpan(s.runner)
	s.span, s.tools.Run = nil, s.runner
	s.idle.end()
	s.duty.end()
}

// closeOverlays closes what lies over the page: palette, question and dialogs.
func (s *Shell) closeOverlays() {
	if s.palette != nil {
		s.palette.close()
	}
	if s.asking != nil {
		s.asking.close()
	}
	overlays := s.window.Canvas().Overlays()
	for top := overlays.Top(); top != nil; top = overlays.Top() {
		overlays.Remove(top)
	}
}

// goBack goes on where the window was locked.
func (s *Shell) goBack() {
	w := s.stay
	s.stay = whereabouts{}
	if w.settings != nil {
		s.changeSettings(*w.settings)
	}
	if w.client == "" {
		if w.place != PlaceWelcome && w.place != PlaceClients {
			s.Go(w.place)
		}
		s.focusAgain(w.focus)
		return
	}
	s.openFile(w.client, func(file File) {
		form := file.Form()
		if w.form != nil {
			form = w.form
		}
		s.file = s.newClientFile(w.client, file, form)
		s.Go(PlaceFile)
		s.file.show(w.section)
		if w.form != nil {
			s.file.saver.change(form)
		}
		if w.place != PlaceFile {
			s.Go(w.place)
		}
		s.focusAgain(w.focus)
	})
}

// focusAgain gives the focus to what had it.
func (s *Shell) focusAgain(name string) {
	if object, known := widgets.Named()[name]; known && object.Visible() {
		widgets.FocusOn(object)
	}
}

// Stop stops what takes long, for the end of the program: it goes on, or is done
// again, the next time.
func (s *Shell) Stop() { s.slow.End() }

// busy reports whether something runs whose result would be lost by locking now:
// a code that is shown once.
func (s *Shell) busy() bool {
	b, is := s.gate.(interface{ Busy() bool })
	return is && b.Busy()
}

var _ gate = (*unlock.Enter)(nil)
