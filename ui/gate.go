package ui

import (
	"context"
	"math/rand/v2"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/storage"

	"handbreadth/ui/clients"
	"handbreadth/ui/safety"
	"handbreadth/ui/task"
	"handbreadth/ui/unlock"
	"handbreadth/ui/widgets"
)

// gate is a page in front of the practice, or of one of its secrets: it has the
// whole window.
type gate interface {
	Object() fyne.CanvasObject
	FocusFirst()
	Escape()
}

// showGate makes a page and shows it. Its name is that of the state.
func (s *Shell) showGate(name string, build func() gate) {
	s.leaveGate() // first: it forgets the names of the page before
	g := build()
	s.gate, s.gateName, s.place = g, name, PlaceGate
	s.toast.Close()
	s.side.Hide()
	s.page.Refresh()
	s.show(g.Object())
	g.FocusFirst()
	s.changed()
}

// leaveGate forgets the page.
func (s *Shell) leaveGate() {
	if leaver, is := s.gate.(interface{ Leave() }); is {
		leaver.Leave()
	}
	if s.gate == nil {
		return
	}
	s.gate, s.gateName = nil, ""
	s.middle.Objects = nil
	widgets.Unname("unlock")
	widgets.Unname("restore")
}

// leaveGateFor goes from a page back to a place of the practice.
func (s *Shell) leaveGateFor(place Place) {
	s.leaveGate()
	s.side.Show()
	s.page.Refresh()
	s.Go(place)
}

// gateTools are what the pages work with. What they run is stopped at the end of
// the program.
func (s *Shell) gateTools() unlock.Tools { return unlock.Tools{Run: s.slow, Clock: s.tools.Clock} }

// beginPractice asks for the passphrase of a new practice.
func (s *Shell) beginPractice() {
	var door Door
	ways := unlock.ChooseWays{
		Seal: func(ctx context.Context, passphrase string, progress unlock.Progress) (code unlock.Code, err error) {
			if door, err = s.opener.Practice(ctx); err != nil {
				return code, err
			}
			return door.Seal(ctx, passphrase, progress)
		},
		Sealed: func(code unlock.Code, err error) {
			s.door = door
			s.showCode(code, err, s.goIn)
		},
		Back: func() { s.Start(false) },
	}
	s.showGate("passphrase", func() gate {
		return unlock.NewChoose(unlock.WordsFirst, s.opener.Advise, s.gateTools(), ways)
	})
}

// offerSealing offers a passphrase to a practice that has none.
func (s *Shell) offerSealing() { s.chooseFor(s.goIn, s.goIn) }

// sealFromDesk asks for a passphrase from within the practice.
func (s *Shell) sealFromDesk() {
	back := func() { s.leaveGateFor(PlacePractice) }
	s.chooseFor(func() {
		setShown(s.lock, s.door.Sealed())
		if s.door.Keeper().State().Unfinished {
			s.resume()
		}
		back()
	}, back)
}

func (s *Shell) chooseFor(then, back func()) {
	door := s.door
	ways := unlock.ChooseWays{
		Seal:   door.Seal,
		Sealed: func(code unlock.Code, err error) { s.showCode(code, err, then) },
		Back:   back,
	}
	s.showGate("passphrase", func() gate {
		return unlock.NewChoose(unlock.WordsLater, door.Advise, s.gateTools(), ways)
	})
}

// wordsRest is told beside the code where the sealing was not finished.
const wordsRest = "The passphrase holds. Not everything from before is sealed yet: that goes on while you work. "

// showCode shows a recovery code once, asks for two groups of it, and goes on.
func (s *Shell) showCode(code unlock.Code, trouble error, then func()) {
	s.idle.begin()
	note := ""
	if trouble != nil {
		note = wordsRest + task.Words(trouble)
	}
	var show, confirm func()
	show = func() {
		ways := unlock.CodeWays{On: func() { confirm() }, ChoosePath: s.choosePath}
		s.showGate("code", func() gate { return unlock.NewShowCode(code, s.door, s.gateTools(), ways, note) })
	}
	confirm = func() {
		ways := unlock.ConfirmWays{Done: then, Later: then, Back: show}
		s.showGate("confirm", func() gate { return unlock.NewConfirm(code, s.door, s.gateTools(), ways, rand.IntN) })
	}
	show()
}

// askPassphrase shows the locked window. It can be used once it is ready.
func (s *Shell) askPassphrase(note string) *unlock.Enter {
	var enter *unlock.Enter
	ways := unlock.EnterWays{Opened: s.goIn, Recover: func() { s.recover(note) }}
	s.showGate("locked", func() gate {
		enter = unlock.NewEnter(s.door, s.gateTools(), ways, note)
		return enter
	})
	return enter
}

// recover asks for the recovery code.
func (s *Shell) recover(note string) {
	ways := unlock.RecoverWays{
		Recovered: func(code unlock.Code, err error) {
			if code.IsZero() {
				s.goIn()
				s.toast.Warn(task.Words(err))
				return
			}
			s.showCode(code, nil, s.goIn)
		},
		Back:    func() { s.askPassphrase(note).Ready() },
		Restore: s.restorePage,
	}
	s.showGate("recover", func() gate { return unlock.NewRecover(s.door, s.door.Advise, s.gateTools(), ways) })
}

// changePassphrase asks for another passphrase.
func (s *Shell) changePassphrase() {
	back := func() { s.leaveGateFor(PlacePractice) }
	ways := unlock.ChangeWays{
		Changed: func() {
			back()
			s.toast.Say("The passphrase is changed. Backups made until now still open with the old one.")
		},
		Back: back,
	}
	s.showGate("change", func() gate { return unlock.NewChange(s.door, s.door.Advise, s.gateTools(), ways) })
}

// newCode makes another recovery code.
func (s *Shell) newCode() {
	back := func() { s.leaveGateFor(PlacePractice) }
	ways := unlock.RenewWays{Made: func(code unlock.Code) { s.showCode(code, nil, back) }, Back: back}
	s.showGate("renew", func() gate { return unlock.NewRenew(s.door, s.gateTools(), ways) })
}

// restorePage restores a backup where no practice is open.
func (s *Shell) restorePage() {
	ways := safety.PageWays{
		ChooseFile: s.chooseBackup, Ask: s.askFor, Restore: s.restore, Back: func() { s.Start(false) },
	}
	s.showGate("restore", func() gate { return safety.NewRestorePage(s.opener, s.safetyTools(), ways) })
}

// restore puts a restored file in the place of the one in use, which is closed
// for it, and opens it. Where the last change cannot be saved it asks first.
func (s *Shell) restore(restoring safety.Restoring) {
	if err := s.Flush(); err != nil {
		s.ask(clients.Question{
			Title: "Restore without the last change?", Words: s.tools.Words(err),
			Yes: "Restore all the same", Do: func() { s.exchange(restoring) },
		})
		return
	}
	s.exchange(restoring)
}

func (s *Shell) exchange(restoring safety.Restoring) {
	s.clear()
	s.door, s.stay = nil, whereabouts{}
	note := "The backup is in place. Type the passphrase of the day on which it was made, or use its recovery code."
	s.runner.Start(task.Job{
		Label: "Restoring the backup",
		Work:  func(ctx context.Context) error { return s.opener.Restore(ctx, restoring) },
		Done: func(err error) {
			if err != nil {
				note = "The backup could not be put in place; everything is as it was. " + task.Words(err)
			}
			if s.opener.Begun() {
				s.openPractice(note)
				return
			}
			s.Start(false)
			s.toast.Say(note)
		},
	})
}

// askFor asks a question of the safe keeping.
func (s *Shell) askFor(q safety.Question) {
	s.ask(clients.Question{Title: q.Title, Words: q.Words, Yes: q.Yes, Do: q.Do})
}

// choosePath asks where to save a PDF, and hands over its path.
func (s *Shell) choosePath(name string, chosen func(path string)) {
	ask := dialog.NewFileSave(func(file fyne.URIWriteCloser, err error) {
		if err != nil || file == nil {
			return
		}
		if err := file.Close(); err != nil {
			s.toast.Warn(task.Words(err))
			return
		}
		chosen(file.URI().Path())
	}, s.window)
	ask.SetFileName(name)
	ask.SetFilter(storage.NewExtensionFileFilter([]string{".pdf"}))
	ask.Show()
}

// chooseFolder asks for a folder, and hands over its path.
func (s *Shell) chooseFolder(chosen func(path string)) {
	dialog.NewFolderOpen(func(folder fyne.ListableURI, err error) {
		if err == nil && folder != nil {
			chosen(folder.Path())
		}
	}, s.window).Show()
}

// chooseBackup asks for a backup file, and hands over its path.
func (s *Shell) chooseBackup(chosen func(path string)) {
	ask := dialog.NewFileOpen(func(file fyne.URIReadCloser, err error) {
		if err != nil || file == nil {
			return
		}
		_ = file.Close() // read by its path, when it is looked at
		chosen(file.URI().Path())
	}, s.window)
	ask.SetFilter(storage.NewExtensionFileFilter([]string{".backup"}))
	ask.Show()
}
